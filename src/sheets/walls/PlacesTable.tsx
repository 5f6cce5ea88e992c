import { useState } from 'react';
import type { Patch } from '../../core/mesh/types';
import { formatNumber } from '../../core/units/formatNumber';
import { Button } from '../../ui/Button';
import { DataTable, type Column } from '../../ui/DataTable';

const shownFirst = 6;

/** The worst value with the unit that its finding is told in. */
function worstText({ finding, worst }: Patch): string {
  switch (finding) {
    case 'thick':
    case 'thin':
    case 'boss or rib':
      return `${formatNumber(worst, 2)} mm`;
    case 'drags':
      return `${formatNumber(worst, 1)}°`;
    case 'tight corner':
      return `R ${formatNumber(worst, 2)} mm`;
    case 'locks':
      return 'locks';
  }
}

export interface PlacesTableProps {
  /** Worst first; null while they are being looked for. */
  readonly patches: readonly Patch[] | null;
  /** Number of the place shown on the view. */
  readonly shown: Patch | null;
  readonly onJump: (patch: Patch) => void;
}

/** The ranked places with a finding; a place's button turns the view to it. */
export function PlacesTable({ patches, shown, onJump }: PlacesTableProps) {
  const [all, setAll] = useState(false);
  if (patches === null) return <p className="quiet">Looking for places…</p>;
  if (patches.length === 0) return <p>No place with a finding.</p>;
  const columns: readonly Column<Patch>[] = [
    {
      id: 'place',
      header: 'Place',
      cell: (patch, index) => (
        <button
          type="button"
          className="place-button"
          aria-pressed={shown === patch}
          onClick={() => onJump(patch)}
        >
          {index + 1} · {patch.place}
        </button>
      ),
    },
    { id: 'finding', header: 'Finding', cell: (patch) => patch.finding },
    { id: 'area', header: 'Area, mm²', numeric: true, cell: (patch) => formatNumber(patch.areaMm2, 1) },
    { id: 'worst', header: 'Worst', numeric: true, cell: worstText },
    { id: 'draft', header: 'Draft, °', numeric: true, cell: (patch) => formatNumber(patch.draftDeg, 1) },
  ];
  return (
    <>
      <DataTable
        caption="Places, worst first. Choose one to turn the view to it."
        columns={columns}
        rows={all ? patches : patches.slice(0, shownFirst)}
        rowKey={(patch) => `${patch.finding} ${patch.worstFacet} ${patch.place}`}
        marked={(patch) => patch === shown}
      />
      {patches.length > shownFirst ? (
        <Button onClick={() => setAll(!all)}>
          {all ? 'Show the worst only' : `Show all ${formatNumber(patches.length, 0)} places`}
        </Button>
      ) : null}
    </>
  );
}
