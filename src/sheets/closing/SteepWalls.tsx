import type { ClosingPlace } from '../../core/closing/places';
import { formatNumber } from '../../core/units/formatNumber';
import type { ClosingState } from '../../steps/closing/state';
import { noticedSlideMm } from '../../steps/closing/verdicts';
import { DataTable, type Column } from '../../ui/DataTable';
import { VerdictMark } from '../../ui/VerdictMark';

function slideWords({ slideMm }: ClosingPlace, depthMm: number): string {
  if (slideMm === 0) return 'comes clear';
  if (slideMm >= depthMm) return 'wipes all the way';
  return slideMm > noticedSlideMm ? 'slides on the stack' : 'hardly touches';
}

/** Each steep wall and how far it slides on the stack before the mold is closed. */
export function SteepWalls({ state }: { readonly state: ClosingState }) {
  const { depthMm } = state.histogram.frame;
  const steep = state.places.filter((place) => place.steep).toSorted((a, b) => b.slideMm - a.slideMm);
  if (steep.length === 0) return <p className="below-table">The part has no steep wall.</p>;
  const columns: readonly Column<ClosingPlace>[] = [
    { id: 'place', header: 'Steep wall', cell: ({ place }) => place.replace(/, steep$/u, '') },
    { id: 'wall', header: 'wall mm', numeric: true, cell: ({ wallMm }) => formatNumber(wallMm, 2) },
    { id: 'draft', header: 'draft °', numeric: true, cell: ({ draftDeg }) => formatNumber(draftDeg, 1) },
    {
      id: 'slide',
      header: 'longest slide mm',
      numeric: true,
      cell: ({ slideMm }) => formatNumber(slideMm, 1),
    },
    {
      id: 'verdict',
      header: 'so it',
      cell: (place) => (
        <span className="slide-verdict">
          <VerdictMark word={place.slideMm > noticedSlideMm ? 'look again' : 'go'} sizePx={18} decorative />
          {slideWords(place, depthMm)}
        </span>
      ),
    },
  ];
  return (
    <DataTable
      caption="Steep walls, longest slide first"
      columns={columns}
      rows={steep}
      rowKey={({ place }) => place}
    />
  );
}
