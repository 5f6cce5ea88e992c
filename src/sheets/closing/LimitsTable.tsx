import type { ClassShares } from '../../core/closing/classes';
import { formatNumber } from '../../core/units/formatNumber';
import type { ClosingState } from '../../steps/closedMold/state';
import { DataTable, type Column } from '../../ui/DataTable';

interface Limit {
  readonly name: string;
  readonly standOffMm: number;
  /** In fibers and resin together. */
  readonly laminateN: number;
  readonly landN: number;
  readonly shares: ClassShares;
  readonly used: boolean;
}

const percent = (share: number) => formatNumber(100 * share, 0);

const columns: readonly Column<Limit>[] = [
  {
    id: 'name',
    header: 'If',
    cell: ({ name, used }) => (
      <>
        {name}
        {used ? <span className="row-note">used by the verdicts</span> : null}
      </>
    ),
  },
  {
    id: 'standOff',
    header: 'stand-off mm',
    numeric: true,
    cell: ({ standOffMm }) => formatNumber(standOffMm, 2),
  },
  {
    id: 'laminate',
    header: 'laminate N',
    numeric: true,
    cell: ({ laminateN }) => formatNumber(laminateN, 0),
  },
  { id: 'lands', header: 'lands N', numeric: true, cell: ({ landN }) => formatNumber(landN, 0) },
  { id: 'loose', header: 'loose %', numeric: true, cell: ({ shares }) => percent(shares.loose) },
  { id: 'choked', header: 'too tight %', numeric: true, cell: ({ shares }) => percent(shares.choked) },
];

/** What is not known of resin and friction, as the ends between which the mold will lie. */
export function LimitsTable({ state }: { readonly state: ClosingState }) {
  const { free, trapped, main, withFriction, frictionShares } = state;
  const row = (name: string, { solution, shares }: typeof free, used: boolean): Limit => ({
    name,
    standOffMm: solution.standOffMm,
    laminateN: solution.laminateForceN + solution.resinForceN,
    landN: solution.landForceN,
    shares,
    used,
  });
  return (
    <DataTable
      caption="Ends between which the mold will lie"
      columns={columns}
      rows={[
        row('Resin held in', trapped, main === trapped),
        row('Resin free to leave', free, main === free),
        {
          name: 'Resin free, most friction',
          standOffMm: withFriction.standOffMm,
          laminateN: withFriction.laminateForceN,
          landN: withFriction.landForceN,
          shares: frictionShares,
          used: false,
        },
      ]}
      rowKey={({ name }) => name}
    />
  );
}
