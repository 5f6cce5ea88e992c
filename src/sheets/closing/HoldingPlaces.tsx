import { useState } from 'react';
import type { ClosingPlace } from '../../core/closing/places';
import { formatNumber } from '../../core/units/formatNumber';
import type { ClosingState } from '../../steps/closedMold/state';
import { Button } from '../../ui/Button';
import { DataTable, type Column } from '../../ui/DataTable';
import { closingClassWords } from '../../viewer/closingMapViews';
import { signed } from '../../viewer/signed';

const shownAtFirst = 5;

export interface HoldingPlacesProps {
  readonly state: ClosingState;
  /** The place that is marked on the view. */
  readonly held: string | null;
  readonly onHold: (place: string | null) => void;
  readonly onSaveWallChanges: () => void;
}

function placeButton(
  place: string,
  index: number,
  held: string | null,
  onHold: HoldingPlacesProps['onHold'],
) {
  return (
    <button
      type="button"
      className="place-jump"
      aria-pressed={held === place}
      onClick={() => onHold(held === place ? null : place)}
    >
      {index + 1} · {place}
    </button>
  );
}

/** The places of the show face, the ones that hold the mold open first. */
export function HoldingPlaces({ state, held, onHold, onSaveWallChanges }: HoldingPlacesProps) {
  const [all, setAll] = useState(false);
  const { places, wantedWallMm } = state;
  const carries = places.some(({ pushN }) => pushN > 0);
  const columns: readonly Column<ClosingPlace>[] = [
    {
      id: 'place',
      header: 'Place',
      cell: ({ place }, index) => placeButton(place, index, held, onHold),
    },
    {
      id: 'load',
      header: 'load %',
      numeric: true,
      cell: ({ pushShare }) => formatNumber(100 * pushShare, 0),
    },
    { id: 'class', header: 'mostly', cell: ({ mostly }) => closingClassWords[mostly] },
    { id: 'gap', header: 'gap mm', numeric: true, cell: ({ gapMm }) => formatNumber(gapMm, 2) },
    {
      id: 'wants',
      header: 'wall wants mm',
      numeric: true,
      cell: ({ wallMm }) => signed(wantedWallMm - wallMm, 2),
    },
  ];
  return (
    <div className="places-table">
      <DataTable
        caption={
          carries
            ? 'What holds the mold open, most load first'
            : 'Nothing holds the mold open; places by area'
        }
        columns={columns}
        rows={all ? places : places.slice(0, shownAtFirst)}
        rowKey={({ place }) => place}
        marked={({ place }) => place === held}
      />
      <div className="button-row places-actions">
        {places.length > shownAtFirst ? (
          <Button onClick={() => setAll(!all)} aria-expanded={all}>
            {all ? 'Show the first five' : `Show all ${places.length} places`}
          </Button>
        ) : null}
        <Button onClick={onSaveWallChanges}>Save wall changes as CSV</Button>
      </div>
    </div>
  );
}
