import { useState } from 'react';
import type { Patch } from '../core/mesh/types';
import { formatNumber } from '../core/units/formatNumber';
import { Button } from '../ui/Button';
import { DataTable, type Column } from '../ui/DataTable';

const shownAtFirst = 5;

/** The worst value in the unit that its finding is about. */
function worstText({ finding, worst }: Patch, stackMm: number | null): string {
  if (finding === 'locks') return '–';
  if (finding === 'drags') return `${formatNumber(worst, 1)}°`;
  if (finding === 'tight corner' || finding === 'tight edge') return `R ${formatNumber(worst, 2)} mm`;
  if (stackMm === null) return `${formatNumber(worst, 2)} mm`;
  const less = worst - stackMm;
  return `${less > 0 ? '+' : ''}${formatNumber(less, 2)} mm`;
}

export interface PlacesTableProps {
  /** Ranked; null while they are being looked for. */
  readonly patches: readonly Patch[] | null;
  readonly selected: Patch | null;
  readonly onSelect: (patch: Patch | null) => void;
  /** Walls are told as wall less stack when the stack is known. */
  readonly stackMm: number | null;
}

function placeButton(
  patch: Patch,
  index: number,
  selected: Patch | null,
  onSelect: PlacesTableProps['onSelect'],
) {
  return (
    <button
      type="button"
      className="place-jump"
      aria-pressed={patch === selected}
      onClick={() => onSelect(patch === selected ? null : patch)}
    >
      {index + 1} · {patch.place}
    </button>
  );
}

/** Ranked places with a finding; a place's button shows it on the view, pressed again takes the mark off. */
export function PlacesTable({ patches, selected, onSelect, stackMm }: PlacesTableProps) {
  const [all, setAll] = useState(false);
  if (patches === null) return <p className="places-note">Looking for places…</p>;
  if (patches.length === 0) return <p className="places-note">No place is out of the band.</p>;
  const columns: Column<Patch>[] = [
    {
      id: 'place',
      header: 'Place',
      cell: (patch, index) => placeButton(patch, index, selected, onSelect),
    },
    { id: 'finding', header: 'finding', cell: ({ finding }) => (finding === 'locks' ? 'undercut' : finding) },
    {
      id: 'area',
      header: 'area cm²',
      numeric: true,
      cell: (patch) => formatNumber(patch.areaMm2 / 100, patch.areaMm2 < 100 ? 2 : 1),
    },
    { id: 'worst', header: 'worst', numeric: true, cell: (patch) => worstText(patch, stackMm) },
    {
      id: 'draft',
      header: 'draft °',
      numeric: true,
      cell: (patch) => (patch.finding === 'locks' ? 'undercut' : formatNumber(patch.draftDeg, 1)),
    },
  ];
  return (
    <div className="places-table">
      <DataTable
        caption="Places with a finding, worst first"
        captionHidden
        columns={columns}
        rows={all ? patches : patches.slice(0, shownAtFirst)}
        rowKey={(patch) => `${patch.finding} ${patch.worstFacet}`}
        marked={(patch) => patch === selected}
      />
      {patches.length > shownAtFirst ? (
        <Button onClick={() => setAll(!all)} aria-expanded={all}>
          {all ? 'Show the first five' : `Show all ${patches.length} places`}
        </Button>
      ) : null}
    </div>
  );
}
