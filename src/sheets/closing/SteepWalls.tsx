import { useState } from 'react';
import type { ClosingPlace } from '../../core/closing/places';
import { formatNumber } from '../../core/units/formatNumber';
import type { ClosingState } from '../../steps/closedMold/state';
import { noticedSlideMm } from '../../steps/closing/verdicts';
import { Button } from '../../ui/Button';
import { DataTable, type Column } from '../../ui/DataTable';
import { VerdictMark } from '../../ui/VerdictMark';

const shownAtFirst = 4;

function slideWords({ slideMm }: ClosingPlace, depthMm: number): string {
  if (slideMm === 0) return 'comes clear';
  if (slideMm >= depthMm) return 'wipes all the way';
  return slideMm > noticedSlideMm ? 'slides on the stack' : 'hardly touches';
}

function slideVerdict(place: ClosingPlace, depthMm: number) {
  return (
    <span className="slide-verdict">
      <VerdictMark word={place.slideMm > noticedSlideMm ? 'look again' : 'go'} sizePx={18} decorative />
      {slideWords(place, depthMm)}
    </span>
  );
}

/** Each steep wall and how far it slides on the stack before the mold is closed. */
export function SteepWalls({ state }: { readonly state: ClosingState }) {
  const [all, setAll] = useState(false);
  const { depthMm } = state.histogram.frame;
  const steep = state.places.filter((place) => place.steep).toSorted((a, b) => b.slideMm - a.slideMm);
  if (steep.length === 0) return <p className="below-table">The part has no steep wall.</p>;
  const columns: readonly Column<ClosingPlace>[] = [
    { id: 'place', header: 'Steep wall', cell: ({ place }) => place.replace(/^show face, |, steep$/gu, '') },
    { id: 'wall', header: 'wall mm', numeric: true, cell: ({ wallMm }) => formatNumber(wallMm, 2) },
    { id: 'draft', header: 'draft °', numeric: true, cell: ({ draftDeg }) => formatNumber(draftDeg, 1) },
    {
      id: 'slide',
      header: 'slide mm',
      numeric: true,
      cell: ({ slideMm }) => formatNumber(slideMm, 1),
    },
    {
      id: 'verdict',
      header: 'verdict',
      cell: (place) => slideVerdict(place, depthMm),
    },
  ];
  return (
    <>
      <DataTable
        caption="Steep walls of the show face, longest slide on the stack first"
        columns={columns}
        rows={all ? steep : steep.slice(0, shownAtFirst)}
        rowKey={({ place }) => place}
      />
      {steep.length > shownAtFirst ? (
        <div className="button-row below-table">
          <Button aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? 'Show the first four' : `Show all ${steep.length} steep walls`}
          </Button>
        </div>
      ) : null}
    </>
  );
}
