import { cureChoiceSpecs, cureNumberSpecs, type CureInputs } from '../../steps/cure/inputs';
import { kineticsFields, kineticsFormSpec, kineticsSpecs } from '../../steps/cure/kineticsInputs';
import { followedSpecs } from '../../steps/cure/programInputs';
import type { WaterLeft } from '../../steps/stone/waterLeft';
import type { Followed, Process } from '../../steps/process';
import { formatNumber } from '../../core/units/formatNumber';
import { ChoiceField } from '../../ui/ChoiceField';
import { Disclosure } from '../../ui/Disclosure';
import { NumberField } from '../../ui/NumberField';
import { FollowedField } from '../FollowedField';

export interface CureGivenProps {
  readonly cure: CureInputs;
  readonly process: Process;
  /** What the oven run starts with; weighings stand before the number typed here. */
  readonly water: WaterLeft;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<CureInputs>) => void;
}

type FieldProps = Omit<CureGivenProps, 'water' | 'process'>;
type NumberName = keyof typeof cureNumberSpecs;
type ChoiceName = keyof typeof cureChoiceSpecs;

function Numbers({
  fields,
  cure,
  disabled,
  onChange,
}: FieldProps & { readonly fields: readonly NumberName[] }) {
  return fields.map((field) => (
    <NumberField
      key={field}
      spec={cureNumberSpecs[field]}
      value={cure[field]}
      disabled={disabled}
      onChange={(value) => {
        if (value !== null) onChange({ [field]: value });
      }}
    />
  ));
}

function Choice({ field, cure, disabled, onChange }: FieldProps & { readonly field: ChoiceName }) {
  const { label, meaning, choices } = cureChoiceSpecs[field];
  return (
    <ChoiceField<string>
      label={label}
      meaning={meaning}
      choices={choices}
      value={cure[field]}
      disabled={disabled}
      onChange={(value) => onChange({ [field]: value })}
    />
  );
}

/** Oven, mold, limits and kinetics. */
export function CureGiven({ water, process, ...props }: CureGivenProps) {
  const { cure, disabled, onChange } = props;
  const given = kineticsFields[cure.kineticsForm].filter((field) => cure.kinetics[field] !== null).length;
  const followed = (field: keyof typeof followedSpecs, value: Followed) => (
    <FollowedField
      spec={followedSpecs[field]}
      followed={value}
      disabled={disabled}
      onChange={(ownC) => onChange({ [field]: ownC })}
    />
  );
  return (
    <>
      <Numbers fields={['freeWaterLeftPercent']} {...props} />
      {water.weighed.length === 0 ? null : (
        <p className="quiet">
          The run starts with {formatNumber(water.percent, 0)} %. {water.how}
        </p>
      )}
      <Choice field="air" {...props} />
      {cure.air === 'own' ? <Numbers fields={['ownFilmWPerM2K']} {...props} /> : null}
      <Choice field="support" {...props} />
      {cure.support === 'rack' ? null : <Numbers fields={['trayGapMm']} {...props} />}
      <Choice field="patternInside" {...props} />
      <Disclosure
        title="The oven itself"
        remark={`starts at ${formatNumber(process.start.valueC, 0)} °C, runs over by ${cure.overshootK} K`}
      >
        <Numbers fields={['supplierRampKPerMin']} {...props} />
        {followed('startC', process.start)}
        <Numbers fields={['ovenLagS', 'ovenFastestKPerMin', 'overshootK']} {...props} />
      </Disclosure>
      <Disclosure
        title="Limits"
        remark={`stone ${cure.stoneLimitC} °C, clamps ${cure.clampLimitC} °C, demold ${cure.demoldC} °C`}
      >
        <Choice field="clampLimitFrom" {...props} />
        <Numbers fields={['stoneLimitC', 'clampLimitC', 'patternLimitC', 'demoldC', 'serviceC']} {...props} />
      </Disclosure>
      <Disclosure
        title="Water and dehydration"
        remark={`rate × ${cure.dehydrationRateFactor}, sealed: ${cure.sealedFaces}`}
      >
        <Choice field="drying" {...props} />
        <Choice field="sealedFaces" {...props} />
        <Numbers
          fields={['dehydrationRateFactor', 'stoneConductivityWPerMK', 'stoneHeatJPerKgK']}
          {...props}
        />
      </Disclosure>
      <Disclosure
        title="Kinetics and Tg of this resin"
        remark={cure.kineticsForm === 'none' ? 'none' : `${given} numbers given`}
      >
        <ChoiceField<string>
          label={kineticsFormSpec.label}
          meaning={kineticsFormSpec.meaning}
          choices={kineticsFormSpec.choices}
          value={cure.kineticsForm}
          disabled={disabled}
          onChange={(kineticsForm) => onChange({ kineticsForm: kineticsForm as CureInputs['kineticsForm'] })}
        />
        {followed('gelC', process.gel)}
        {kineticsFields[cure.kineticsForm].map((field) => (
          <NumberField
            key={field}
            spec={kineticsSpecs[field]}
            value={cure.kinetics[field]}
            emptyWord="not given"
            disabled={disabled}
            onChange={(value) => onChange({ kinetics: { ...cure.kinetics, [field]: value } })}
          />
        ))}
      </Disclosure>
      <Disclosure title="How finely it is worked out" remark={`bricks of ${cure.voxelMm} mm`}>
        <Numbers fields={['voxelMm']} {...props} />
      </Disclosure>
    </>
  );
}
