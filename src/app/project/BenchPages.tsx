import { checklistModel } from '../../checklist/printModel';
import type { StepReport } from '../../core/figure';
import { BenchSheet } from '../../sheets/bench/BenchSheet';
import { benchPage, livePage } from '../../sheets/bench/benchPages';
import { LiveSheet } from '../../sheets/bench/LiveSheet';
import type { CureForecast } from '../../sheets/cure/forecast';
import type { OvenRunControl } from '../../sheets/cure/run/useOvenRun';
import type { BenchTimers } from '../../sheets/timers/useBenchTimers';
import type { PlannedTime } from '../../steps/mold/plannedTimes';
import type { StepContext } from '../../steps/shared/context';
import { decide } from '../../steps/shared/decision';
import { programOf } from '../../steps/shared/process';
import type { Project } from '../../workbook';
import { projectHref } from '../route';
import { checklistFacts } from './checklistFacts';
import type { ProjectActions } from './useProjectActions';

export interface BenchPagesProps {
  readonly project: Project;
  readonly stepId: typeof benchPage.id | typeof livePage.id;
  readonly reports: ReadonlyMap<string, StepReport>;
  readonly context: StepContext;
  readonly readOnly: boolean;
  readonly actions: ProjectActions;
  readonly timers: BenchTimers;
  readonly planned: readonly PlannedTime[];
  readonly forecast: CureForecast;
  readonly ovenRun: OvenRunControl;
}

/** What was measured, or what runs: the pages that are used with gloves on. */
export function BenchPages(props: BenchPagesProps) {
  const { project, stepId, context, reports, readOnly, actions, forecast } = props;
  if (stepId === livePage.id)
    return (
      <LiveSheet
        timers={props.timers}
        planned={props.planned}
        run={props.ovenRun}
        program={programOf(context.inputs)}
        prediction={forecast.lastPrediction}
        cure={context.inputs.cure}
        cureHref={projectHref(project.id, 'cure')}
        isHeld={decide(reports).word === 'stop'}
      />
    );
  return (
    <BenchSheet
      model={checklistModel(checklistFacts(project), context, project.record, reports)}
      context={context}
      reports={reports}
      readOnly={readOnly}
      liveHref={projectHref(project.id, livePage.id)}
      onReading={(path, value) => actions.reading(path, value)}
      onRecord={(lineId, line) => actions.record(lineId, line)}
    />
  );
}
