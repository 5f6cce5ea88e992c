import type { PatternSummary } from '../../core/pattern/makePattern';
import { formatNumber } from '../../core/units/formatNumber';
import { mostFilledShown } from '../../steps/pattern/keptSummary';
import { Button } from '../../ui/Button';
import { DataTable, type Column } from '../../ui/DataTable';
import { Disclosure } from '../../ui/Disclosure';

type Hole = PatternSummary['holes'][number];
type FilledPlace = PatternSummary['filled'][number];

const placeColumn: Column<Hole | FilledPlace> = {
  id: 'place',
  header: 'Place x, y, z, mm',
  numeric: true,
  cell: ({ centerMm }) => centerMm.map((one) => formatNumber(one, 1)).join(', '),
};

const holeColumns: readonly Column<Hole>[] = [
  placeColumn,
  { id: 'area', header: 'Area, mm²', numeric: true, cell: ({ areaMm2 }) => formatNumber(areaMm2, 0) },
  { id: 'depth', header: 'Depth, mm', numeric: true, cell: ({ depthMm }) => formatNumber(depthMm, 1) },
  { id: 'what', header: 'What', cell: ({ plugged }) => (plugged ? 'cut after the cure' : 'stays open') },
];

const filledColumns: readonly Column<FilledPlace>[] = [
  placeColumn,
  { id: 'volume', header: 'Volume, mm³', numeric: true, cell: ({ volumeMm3 }) => formatNumber(volumeMm3, 0) },
];

/** Holes in the show face, and where else material came in; places in the axes of the import. */
export function HolesToCut({
  summary: { holes, filled, template },
  onSaveTemplate,
}: {
  readonly summary: PatternSummary;
  readonly onSaveTemplate: () => void;
}) {
  return (
    <>
      {holes.length === 0 ? (
        <p className="quiet below-table">No holes in the show face: nothing to cut after the cure.</p>
      ) : (
        <>
          <DataTable
            caption="Holes in the show face, in the axes of the model"
            columns={holeColumns}
            rows={holes}
            rowKey={(_, index) => String(index)}
          />
          {template === null ? null : (
            <div className="button-row">
              <Button onClick={onSaveTemplate}>Save drill template, 1:1</Button>
            </div>
          )}
        </>
      )}
      {filled.length === 0 ? null : (
        <Disclosure title="Filled places" remark="largest first">
          <DataTable
            caption={
              filled.length >= mostFilledShown
                ? `The ${mostFilledShown} largest`
                : 'Covered holes and undercuts'
            }
            columns={filledColumns}
            rows={filled.slice(0, mostFilledShown)}
            rowKey={(_, index) => String(index)}
          />
        </Disclosure>
      )}
    </>
  );
}
