import { formatNumber } from '../../core/units/formatNumber';
import type { MeasuredShape, SelfTouching } from '../../pipeline/told';
import { Button } from '../../ui/Button';
import { DataTable, type Column } from '../../ui/DataTable';
import type { BenchControl, Marked } from '../benchControl';
import { healthFindings, type HealthFinding } from './healthFindings';

export interface HealthTableProps {
  readonly reply: MeasuredShape;
  /** Left out on reading, so the saved mesh doesn't hold them. */
  readonly degenerateFacets: number;
  /** Facets found to cut through others; null when not looked for yet. */
  readonly selfTouching: SelfTouching | null;
  readonly bench: BenchControl;
  readonly onFindSelfTouching: () => void;
}

/** What is wrong with the mesh, how often, what it means, and where. */
export function HealthTable({
  reply,
  degenerateFacets,
  selfTouching,
  bench,
  onFindSelfTouching,
}: HealthTableProps) {
  const { health, findingFacets } = reply;
  const facetsOf = (finding: HealthFinding) =>
    finding.id === 'selfTouching'
      ? (selfTouching?.facets ?? findingFacets.selfTouching)
      : findingFacets[finding.id];
  const countOf = (finding: HealthFinding) => {
    if (finding.id === 'degenerateFacets') return degenerateFacets;
    return finding.id === 'selfTouching' && selfTouching !== null
      ? selfTouching.facetCount
      : finding.count(health);
  };

  const columns: readonly Column<HealthFinding>[] = [
    { id: 'finding', header: 'Finding', cell: (finding) => findingCell(finding, countOf(finding)) },
    {
      id: 'count',
      header: 'Count',
      numeric: true,
      cell: (finding) => countText(countOf(finding)),
    },
    {
      id: 'show',
      header: 'On the view',
      cell: (finding) =>
        countOf(finding) === null
          ? lookButton(onFindSelfTouching)
          : showButton({ label: finding.label, facets: facetsOf(finding) }, bench),
    },
  ];
  return (
    <>
      <DataTable
        caption="Findings on the mesh"
        captionHidden
        columns={columns}
        rows={healthFindings}
        rowKey={(finding) => finding.id}
      />
      <p className="below-table">
        {health.watertight ? 'The surface is closed' : 'The surface is not closed'};{' '}
        {health.bodies.length === 1 ? 'one body' : `${formatNumber(health.bodies.length, 0)} separate bodies`}
        , {formatNumber(health.facetCount, 0)} facets.
      </p>
    </>
  );
}

const countText = (count: number | null) => (count === null ? '–' : formatNumber(count, 0));

function findingCell(finding: HealthFinding, count: number | null) {
  return (
    <>
      {finding.label}
      {count ? <span className="row-note">{finding.meaning}</span> : null}
    </>
  );
}

function lookButton(onLook: () => void) {
  return <Button onClick={onLook}>Look for them</Button>;
}

function showButton(marked: Marked, bench: BenchControl) {
  if (marked.facets.length === 0) return null;
  const shown = bench.marked?.label === marked.label;
  return (
    <Button
      aria-pressed={shown}
      aria-label={`Show: ${marked.label}`}
      onClick={() => bench.mark(shown ? null : marked)}
    >
      {shown ? 'Hide' : 'Show'}
    </Button>
  );
}
