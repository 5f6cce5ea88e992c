import type { Figure } from '../../core/figure';
import { formatFigure } from '../../core/units/formatFigure';
import { DataTable } from '../../ui/DataTable';

const rows = [
  { field: 'volumeMl', label: 'Stone' },
  { field: 'powderG', label: 'Powder' },
  { field: 'waterG', label: 'Water' },
  { field: 'batches', label: 'Batches' },
  { field: 'freshG', label: 'Fresh from the box' },
  { field: 'dryTargetG', label: 'Dry when it weighs' },
] as const;

/** Both pours side by side: what is carried to the scale. The lines under it have the working. */
export function PoursTable({ figures }: { readonly figures: readonly Figure[] }) {
  const value = (id: string) => {
    const figure = figures.find((one) => one.id === id);
    return figure === undefined ? '' : formatFigure(figure);
  };
  return (
    <DataTable
      caption="The two pours, losses included"
      columns={[
        { id: 'what', header: 'What', cell: ({ label }) => label },
        {
          id: 'negative',
          header: 'Negative',
          numeric: true,
          cell: ({ field }) => value(`mold.negative.${field}`),
        },
        {
          id: 'positive',
          header: 'Positive',
          numeric: true,
          cell: ({ field }) => value(`mold.positive.${field}`),
        },
      ]}
      rows={rows}
      rowKey={({ field }) => field}
    />
  );
}
