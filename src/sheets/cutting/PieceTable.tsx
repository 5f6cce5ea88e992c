import { outlineAreaMm2 } from '../../core/drape/smoothOutline';
import type { PlyPiece } from '../../core/templates/piece';
import { formatNumber } from '../../core/units/formatNumber';
import { Button } from '../../ui/Button';
import { DataTable, type Column } from '../../ui/DataTable';

export interface PieceTableProps {
  readonly pieces: readonly PlyPiece[];
  readonly picked: string;
  readonly onPick: (name: string) => void;
}

const span = (values: readonly number[]) => formatNumber(Math.max(...values) - Math.min(...values), 1);

const sizeOf = ({ outlineMm }: PlyPiece) =>
  `${span(outlineMm.map(([x]) => x))} × ${span(outlineMm.map(([, y]) => y))}`;

const columns: readonly Column<PlyPiece>[] = [
  { id: 'fabric', header: 'From', cell: ({ fabric }) => fabric },
  { id: 'angle', header: 'Warp, °', numeric: true, cell: ({ fiberDeg }) => formatNumber(fiberDeg, 0) },
  { id: 'size', header: 'Along × across warp, mm', numeric: true, cell: sizeOf },
  {
    id: 'area',
    header: 'Area, cm²',
    numeric: true,
    cell: ({ outlineMm }) => formatNumber(outlineAreaMm2(outlineMm) / 100, 1),
  },
  {
    id: 'up',
    header: 'Side up when cut',
    cell: ({ upGoesToMold, mirrored }) =>
      `${upGoesToMold ? 'to the mold' : 'to the core'}${mirrored ? ', mirrored' : ''}`,
  },
];

const pickColumn = (picked: string, onPick: (name: string) => void): Column<PlyPiece> => ({
  id: 'piece',
  header: 'Piece',
  cell: ({ name }) => (
    <Button onClick={() => onPick(name)} aria-pressed={name === picked}>
      {name}
    </Button>
  ),
});

/** Every piece to cut; one is picked and drawn. */
export function PieceTable({ pieces, picked, onPick }: PieceTableProps) {
  return (
    <DataTable
      caption="Pieces to cut, lengths as on the surface"
      columns={[pickColumn(picked, onPick), ...columns]}
      rows={pieces}
      rowKey={({ name }) => name}
      marked={({ name }) => name === picked}
    />
  );
}
