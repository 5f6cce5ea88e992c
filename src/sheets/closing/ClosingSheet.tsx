import type { Figure } from '../../core/figure';
import type { PartShape } from '../../pipeline/told';
import type { ClosingInputs } from '../../steps/inputs/closing';
import { closingState } from '../../steps/closedMold/state';
import { landWidthMm } from '../../steps/stone/landWidth';
import { processOf } from '../../steps/shared/process';
import { FigureRow } from '../../ui/FigureRow';
import { SectionHead } from '../../ui/SectionHead';
import { Sheet } from '../Sheet';
import type { SheetProps } from '../sheetProps';
import { ClampList } from './ClampList';
import { ClampPlan } from './ClampPlan';
import { ClassShareBar } from './ClassShareBar';
import { ClosingGiven } from './ClosingGiven';
import { figureGroups, type GroupTitle } from './figureGroups';
import { LimitsTable } from './LimitsTable';
import { SteepWalls } from './SteepWalls';
import './closing.css';

export interface ClosingSheetProps extends SheetProps {
  readonly title: string;
  readonly question: string;
  /** The drawn part, for its outline on the plan; null while there is none. */
  readonly shape: Pick<PartShape, 'display'> | null;
}

const rows = (figures: readonly Figure[]) =>
  figures.map((figure) => <FigureRow key={figure.id} figure={figure} />);

/** When I clamp it, does the load go into the laminate everywhere? */
export function ClosingSheet(props: ClosingSheetProps) {
  const { context, report, readOnly, change, shape } = props;
  const { closing, plies } = context.inputs;
  const state = closingState(context);
  const set = (closingChange: Partial<ClosingInputs>) => change('closing', closingChange);
  const groups = figureGroups(report.figures);
  const used = new Set(plies.stack.map(({ materialId }) => materialId));

  /** What stands in a group besides its rows. */
  const drawn: Partial<Record<GroupTitle, React.ReactNode>> = state.known
    ? {
        'What becomes of the laminate': (
          <>
            <ClassShareBar title="In the closed mold" shares={state.main.shares} />
            <ClassShareBar title="As drawn, if it were shut" shares={state.sharesAtShut} />
          </>
        ),
        'Steep walls and friction': <SteepWalls state={state} />,
        'Resin and the limits': <LimitsTable state={state} />,
      }
    : {};

  return (
    <Sheet title={props.title} question={props.question} report={report}>
      <section aria-label="Clamps">
        <SectionHead title="Clamps" remark="count × force of one" />
        <ClampList clamps={closing.clamps} disabled={readOnly} onChange={(clamps) => set({ clamps })} />
        {props.fromShelf?.('clamps')}
        {state.known ? <ClampPlan state={state} clamps={closing.clamps} shape={shape} /> : null}
      </section>
      <ClosingGiven
        landMm={landWidthMm(context.inputs)}
        closing={closing}
        process={processOf(context.inputs)}
        materials={plies.materials.filter(({ id }) => used.has(id))}
        disabled={readOnly}
        onChange={set}
        onGelC={(gelC) => change('cure', { gelC })}
      />
      {[...groups].map(([title, figures]) => (
        <section key={title} aria-label={title}>
          <SectionHead title={title} />
          {drawn[title]}
          {rows(figures)}
        </section>
      ))}
    </Sheet>
  );
}
