import { facetKind, type FacetKind } from '../core/mesh/types';
import { formatNumber } from '../core/units/formatNumber';
import { DataTable } from '../ui/DataTable';
import { kindLabels } from './mapColors';

/** The map of kinds as a table. */
export function KindAreas({ kindAreaMm2 }: { readonly kindAreaMm2: Readonly<Record<FacetKind, number>> }) {
  const kinds = Object.keys(facetKind) as FacetKind[];
  const total = kinds.reduce((sum, kind) => sum + kindAreaMm2[kind], 0) || 1;
  const rows = kinds.map((kind) => ({
    kind,
    text: kindLabels[facetKind[kind]]!,
    areaMm2: kindAreaMm2[kind],
  }));
  return (
    <DataTable
      caption="What each face is"
      columns={[
        { id: 'kind', header: 'Face', cell: ({ text }) => text.label },
        { id: 'meaning', header: 'meaning', cell: ({ text }) => text.meaning },
        { id: 'area', header: 'cm²', numeric: true, cell: ({ areaMm2 }) => formatNumber(areaMm2 / 100, 1) },
        {
          id: 'share',
          header: '%',
          numeric: true,
          cell: ({ areaMm2 }) => formatNumber((100 * areaMm2) / total, 1),
        },
      ]}
      rows={rows}
      rowKey={({ kind }) => kind}
    />
  );
}
