import type { WallStackPair } from '../../core/laminate/pairing';
import { formatNumber } from '../../core/units/formatNumber';
import { DataTable, type Column } from '../../ui/DataTable';

function mismatchWords(pair: WallStackPair): string {
  if (pair.exact) return 'exact';
  const size = formatNumber(Math.abs(pair.mismatchMm), 2);
  return pair.mismatchMm > 0 ? `${size} loose` : `${size} tight`;
}

const columns: readonly Column<WallStackPair>[] = [
  { id: 'lines', header: 'Lines', numeric: true, cell: (pair) => formatNumber(pair.lines, 0) },
  { id: 'plies', header: 'Plies', numeric: true, cell: (pair) => formatNumber(pair.plies, 0) },
  { id: 'wall', header: 'Wall, mm', numeric: true, cell: (pair) => formatNumber(pair.wallMm, 2) },
  { id: 'stack', header: 'Stack as laid, mm', numeric: true, cell: (pair) => formatNumber(pair.stackMm, 2) },
  { id: 'mismatch', header: 'Wall less stack, mm', numeric: true, cell: mismatchWords },
  {
    id: 'nearest',
    header: 'Nearest',
    cell: (pair) => (pair.exact ? '◆ exact' : pair.nearest ? '◇ nearest' : ''),
  },
];

/** Whole printed lines against whole plies: common practice, plain arithmetic of the maker's two numbers. */
export function PairingTable({ pairs }: { readonly pairs: readonly WallStackPair[] }) {
  return (
    <DataTable
      caption="Walls of whole printed lines against stacks of whole plies"
      captionHidden
      columns={columns}
      rows={pairs}
      rowKey={(pair) => `${pair.lines}:${pair.plies}`}
      marked={(pair) => pair.nearest}
    />
  );
}
