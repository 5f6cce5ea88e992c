import { formatNumber } from '../../core/units/formatNumber';
import { pliesSpecs, type PliesInputs } from '../../steps/plies/inputs';
import { ChoiceField } from '../../ui/ChoiceField';
import { Disclosure } from '../../ui/Disclosure';
import type { Followed, Process } from '../../steps/process';
import { NumberField } from '../../ui/NumberField';
import { FollowedField } from '../FollowedField';

export interface PliesGivenProps {
  readonly plies: PliesInputs;
  readonly process: Process;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<PliesInputs>) => void;
}

type NumberInput =
  'lineWidthMm' | 'bulkFactor' | 'cureShrinkagePercent' | 'plannedLayupH' | 'coatThicknessMm';

/** The numbers of the print, the cure, the coat and the layup. */
export function PliesGiven(props: PliesGivenProps) {
  const { plies, process, disabled, onChange } = props;
  const coated = plies.coatFace !== 'none';
  const followed = (field: 'stressFreeC' | 'roomTemperatureC' | 'coatSetC', value: Followed) => (
    <FollowedField
      spec={pliesSpecs[`plies.${field}`]}
      followed={value}
      disabled={disabled}
      onChange={(ownC) => onChange({ [field]: ownC })}
    />
  );
  return (
    <>
      <NumberInputs fields={['lineWidthMm', 'bulkFactor', 'plannedLayupH']} {...props} />
      <Disclosure
        title="Cure and use"
        remark={`free of stress at ${celsius(process.stressFree)}, used at ${celsius(process.inUse)}`}
      >
        {followed('stressFreeC', process.stressFree)}
        {followed('roomTemperatureC', process.inUse)}
        <NumberInputs fields={['cureShrinkagePercent']} {...props} />
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
        {coated ? (
          <>
            <NumberInputs fields={['coatThicknessMm']} {...props} />
            {followed('coatSetC', process.coatSet)}
          </>
        ) : null}
      </Disclosure>
    </>
  );
}

const celsius = ({ valueC }: Followed) => `${formatNumber(valueC, 0)} °C`;

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
