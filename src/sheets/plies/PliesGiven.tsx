import type { ReactNode } from 'react';
import { formatNumber } from '../../core/units/formatNumber';
import { pliesTable, type PliesInputs } from '../../steps/inputs/plies';
import type { Followed, Process } from '../../steps/shared/process';
import { FollowedField } from '../FollowedField';
import { InputFold, InputRows } from '../InputRows';

export interface PliesGivenProps {
  readonly plies: PliesInputs;
  readonly process: Process;
  readonly disabled: boolean;
  readonly onChange: (change: Partial<PliesInputs>) => void;
  readonly coatFromShelf?: ReactNode | undefined;
}

/** The numbers of the print, the cure, the coat and the layup. */
export function PliesGiven(props: PliesGivenProps) {
  const { plies, process, disabled, onChange, coatFromShelf } = props;
  const coated = plies.coatFace !== 'none';
  const followed = (field: 'stressFreeC' | 'roomTemperatureC' | 'coatSetC', value: Followed) => (
    <FollowedField
      spec={pliesTable[field]}
      followed={value}
      disabled={disabled}
      onChange={(ownC) => onChange({ [field]: ownC })}
    />
  );
  const rows = { table: pliesTable, values: plies, disabled, onChange };
  return (
    <>
      <InputRows {...rows} />
      <InputFold
        fold="Cure and use"
        remark={`free of stress at ${celsius(process.stressFree)}, used at ${celsius(process.inUse)}`}
        own={{
          stressFreeC: followed('stressFreeC', process.stressFree),
          roomTemperatureC: followed('roomTemperatureC', process.inUse),
        }}
        {...rows}
      />
      <InputFold
        fold="Measured on cured pieces"
        remark={measuredRemark(plies)}
        emptyWord="not measured"
        {...rows}
      />
      <InputFold
        fold="One-sided coat"
        remark={coated ? `${plies.coatThicknessMm} mm on the ${plies.coatFace} face` : 'none'}
        own={
          coated
            ? { coatSetC: followed('coatSetC', process.coatSet) }
            : { coatThicknessMm: null, coatSetC: null }
        }
        {...rows}
      >
        {coatFromShelf}
      </InputFold>
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
