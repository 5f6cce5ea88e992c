import { cureTable, type CureInputs } from '../../steps/inputs/cure';
import { kineticsFields, kineticsTable } from '../../steps/inputs/kinetics';
import type { WaterLeft } from '../../steps/stone/waterLeft';
import type { Followed, Process } from '../../steps/shared/process';
import { formatNumber } from '../../core/units/formatNumber';
import { FollowedField } from '../FollowedField';
import { InputFold, InputRows } from '../InputRows';
import type { FromShelf } from '../sheetProps';

export interface CureGivenProps {
  readonly cure: CureInputs;
  readonly process: Process;
  /** What the oven run starts with; weighings stand before the number typed here. */
  readonly water: WaterLeft;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<CureInputs>) => void;
  readonly fromShelf?: FromShelf | undefined;
}

/** Oven, mold, limits and kinetics. */
export function CureGiven(props: CureGivenProps) {
  const { cure, water, process, disabled, onChange, fromShelf } = props;
  const rows = { table: cureTable, values: cure, disabled, onChange };
  const given = kineticsFields[cure.kineticsForm].filter((field) => cure.kinetics[field] !== null).length;
  const followed = (field: 'gelC' | 'startC', value: Followed) => (
    <FollowedField
      spec={cureTable[field]}
      followed={value}
      disabled={disabled}
      onChange={(ownC) => onChange({ [field]: ownC })}
    />
  );
  return (
    <>
      <InputRows {...rows} fields={['freeWaterLeftPercent']} />
      {water.weighed.length === 0 ? null : (
        <p className="quiet">
          The run starts with {formatNumber(water.percent, 0)} %. {water.how}
        </p>
      )}
      <InputRows
        {...rows}
        fields={['air', 'ownFilmWPerM2K', 'support', 'trayGapMm', 'patternInside']}
        own={{
          ...(cure.air === 'own' ? {} : { ownFilmWPerM2K: null }),
          ...(cure.support === 'rack' ? { trayGapMm: null } : {}),
        }}
      />
      <InputFold
        fold="The oven itself"
        remark={`starts at ${formatNumber(process.start.valueC, 0)} °C, runs over by ${cure.overshootK} K`}
        own={{ startC: followed('startC', process.start) }}
        {...rows}
      >
        {fromShelf?.('oven')}
      </InputFold>
      <InputFold
        fold="Limits"
        remark={`stone ${cure.stoneLimitC} °C, clamps ${cure.clampLimitC} °C, demold ${cure.demoldC} °C`}
        {...rows}
      />
      <InputFold
        fold="Water and dehydration"
        remark={`rate × ${cure.dehydrationRateFactor}, sealed: ${cure.sealedFaces}`}
        {...rows}
      />
      <InputFold
        fold="Kinetics and Tg of this resin"
        remark={cure.kineticsForm === 'none' ? 'none' : `${given} numbers given`}
        own={{ gelC: followed('gelC', process.gel) }}
        {...rows}
      >
        <InputRows
          table={kineticsTable}
          values={cure.kinetics}
          fields={kineticsFields[cure.kineticsForm]}
          emptyWord="not given"
          disabled={disabled}
          onChange={(change) => onChange({ kinetics: { ...cure.kinetics, ...change } })}
        />
      </InputFold>
      <InputFold fold="How finely it is worked out" remark={`cells of ${cure.voxelMm} mm`} {...rows} />
    </>
  );
}
