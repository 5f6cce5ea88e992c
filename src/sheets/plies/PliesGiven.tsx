import { pliesSpecs, type PliesInputs } from '../../steps/plies/inputs';
import { ChoiceField } from '../../ui/ChoiceField';
import { Disclosure } from '../../ui/Disclosure';
import { NumberField } from '../../ui/NumberField';

export interface PliesGivenProps {
  readonly plies: PliesInputs;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<PliesInputs>) => void;
}

type NumberInput =
  | 'lineWidthMm'
  | 'bulkFactor'
  | 'cureTemperatureC'
  | 'roomTemperatureC'
  | 'cureShrinkagePercent'
  | 'plannedLayupH'
  | 'coatThicknessMm'
  | 'coatSetC';

/** The numbers of the print, the cure, the coat and the layup. */
export function PliesGiven(props: PliesGivenProps) {
  const { plies, disabled, onChange } = props;
  const coated = plies.coatFace !== 'none';
  return (
    <>
      <NumberInputs fields={['lineWidthMm', 'bulkFactor', 'plannedLayupH']} {...props} />
      <Disclosure
        title="Cure and use"
        remark={`sets at ${plies.cureTemperatureC} °C, used at ${plies.roomTemperatureC} °C`}
      >
        <NumberInputs fields={['cureTemperatureC', 'roomTemperatureC', 'cureShrinkagePercent']} {...props} />
      </Disclosure>
      <Disclosure title="Measured on cured pieces" remark={measuredRemark(plies)}>
        {measuredFields.map((field) => (
          <NumberField
            key={field}
            spec={pliesSpecs[`plies.${field}`]}
            value={plies[field]}
            emptyWord="not measured"
            disabled={disabled}
            onChange={(value) => onChange({ [field]: value })}
          />
        ))}
      </Disclosure>
      <Disclosure
        title="One-sided coat"
        remark={coated ? `${plies.coatThicknessMm} mm on the ${plies.coatFace} face` : 'none'}
      >
        <ChoiceField
          label={pliesSpecs['plies.coatFace'].label}
          meaning={pliesSpecs['plies.coatFace'].meaning}
          choices={pliesSpecs['plies.coatFace'].choices}
          value={plies.coatFace}
          disabled={disabled}
          onChange={(coatFace) => onChange({ coatFace })}
        />
        {coated ? <NumberInputs fields={['coatThicknessMm', 'coatSetC']} {...props} /> : null}
      </Disclosure>
    </>
  );
}

/** A cured plate replaces what the cards fill; the part itself tells voids and bleed. */
const measuredFields = [
  'plateMassG',
  'plateAreaCm2',
  'plateThicknessMm',
  'voidPercent',
  'resinLostPercent',
] as const;

function measuredRemark(plies: PliesInputs): string {
  const count = measuredFields.filter((field) => plies[field] !== null).length;
  return count === 0 ? 'nothing yet' : `${count} of ${measuredFields.length} given`;
}

interface NumberInputsProps extends PliesGivenProps {
  readonly fields: readonly NumberInput[];
}

function NumberInputs({ fields, plies, disabled, onChange }: NumberInputsProps) {
  return fields.map((field) => (
    <NumberField
      key={field}
      spec={pliesSpecs[`plies.${field}`]}
      value={plies[field]}
      disabled={disabled}
      onChange={(value) => {
        if (value !== null) onChange({ [field]: value });
      }}
    />
  ));
}
