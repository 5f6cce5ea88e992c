import type { WallStackPair } from '../../core/laminate/pairing';
import { formatNumber } from '../../core/units/formatNumber';
import { DataTable, type Column } from '../../ui/DataTable';
import { VerdictMark } from '../../ui/VerdictMark';

/** What whole beads leave over: air, or more fiber than before. */
function leftOver({ voidShare, fiberFraction }: WallStackPair): string {
  return voidShare > 0
    ? `${formatNumber(100 * voidShare, 0)} % air`
    : `${formatNumber(100 * fiberFraction, 0)} % fiber`;
}

const columns: readonly Column<WallStackPair>[] = [
  { id: 'plies', header: 'Plies', numeric: true, cell: ({ plies }) => formatNumber(plies, 0) },
  { id: 'wants', header: 'want mm', numeric: true, cell: ({ wantedMm }) => formatNumber(wantedMm, 2) },
  { id: 'beads', header: 'Beads', numeric: true, cell: ({ beads }) => formatNumber(beads, 0) },
  { id: 'wall', header: 'are mm', numeric: true, cell: ({ wallMm }) => formatNumber(wallMm, 2) },
  {
    id: 'left',
    header: 'Then',
    cell: (pair) => (
      <span className="slide-verdict">
        <VerdictMark word={pair.word} sizePx={18} />
        {leftOver(pair)}
      </span>
    ),
  },
  {
    id: 'fitting',
    header: 'Bead that fits, mm',
    numeric: true,
    cell: ({ fittingBeadMm }) => formatNumber(fittingBeadMm, 3),
  },
];

export interface PairingTableProps {
  readonly pairs: readonly WallStackPair[];
  /** Plies of the present stack. */
  readonly plies: number;
}

/** Whole printed beads against whole plies: plain arithmetic, judged by the limits of the Walls step. */
export function PairingTable({ pairs, plies }: PairingTableProps) {
  return (
    <DataTable
      caption="Stacks of whole plies against walls of whole beads"
      captionHidden
      columns={columns}
      rows={pairs}
      rowKey={(pair) => String(pair.plies)}
      marked={(pair) => pair.plies === plies}
    />
  );
}
