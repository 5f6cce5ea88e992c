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
  | 'resinLostPercent'
  | 'voidPercent'
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
        remark={`sets at ${plies.cureTemperatureC} °C, used at ${plies.roomTemperatureC} °C, ${plies.resinLostPercent} % resin lost`}
      >
        <NumberInputs
          fields={[
            'cureTemperatureC',
            'roomTemperatureC',
            'resinLostPercent',
            'voidPercent',
            'cureShrinkagePercent',
          ]}
          {...props}
        />
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
