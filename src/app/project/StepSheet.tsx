import { ChecklistSheet } from '../../checklist/ChecklistSheet';
import { checklistModel } from '../../checklist/printModel';
import { recordHtml } from '../../checklist/recordHtml';
import type { StepReport } from '../../core/figure';
import { ClosingSheet } from '../../sheets/closing/ClosingSheet';
import { CureSheet } from '../../sheets/cure/CureSheet';
import type { CuttingControl } from '../../sheets/cutting/cuttingControl';
import { CuttingSheet } from '../../sheets/cutting/CuttingSheet';
import type { HeatMoment } from '../../sheets/cure/heatMoment';
import type { OvenRunControl } from '../../sheets/cure/run/useOvenRun';
import type { CureForecast } from '../../sheets/cure/forecast';
import type { Measuring } from '../../sheets/measuring/useMeasured';
import { FinishSheet } from '../../sheets/finish/FinishSheet';
import { FitSheet, type MateOffer } from '../../sheets/fit/FitSheet';
import type { SplitControl } from '../../sheets/fit/SplitPlace';
import { MoldSheet } from '../../sheets/mold/MoldSheet';
import { PartSheet } from '../../sheets/part/PartSheet';
import type { PatternControl } from '../../sheets/pattern/patternControl';
import { PatternSheet } from '../../sheets/pattern/PatternSheet';
import { PliesSheet } from '../../sheets/plies/PliesSheet';
import type { SheetProps } from '../../sheets/sheetProps';
import type { BenchTimers } from '../../sheets/timers/useBenchTimers';
import { WallsSheet } from '../../sheets/walls/WallsSheet';
import type { StepContext } from '../../steps/shared/context';
import { plannedJob } from '../../steps/finish/job';
import { calendarText } from '../../steps/finish/texts';
import type { Step } from '../../steps/registry';
import type { Project } from '../../workbook';
import { checklistFacts } from './checklistFacts';
import { FromShelf } from './FromShelf';
import type { ViewControl } from './useBenchControl';
import type { ProjectActions } from './useProjectActions';

export interface StepSheetProps {
  readonly project: Project;
  readonly step: Step;
  readonly report: StepReport;
  readonly reports: ReadonlyMap<string, StepReport>;
  readonly context: StepContext;
  readonly readOnly: boolean;
  readonly actions: ProjectActions;
  readonly measuring: Measuring;
  readonly control: ViewControl;
  readonly patternControl: PatternControl;
  readonly mates: MateOffer;
  readonly splitting: SplitControl;
  readonly cuttingControl: CuttingControl;
  readonly timers: BenchTimers;
  readonly forecast: CureForecast;
  readonly ovenRun: OvenRunControl;
  readonly heatMoment: HeatMoment;
  readonly onHeatMoment: (moment: HeatMoment) => void;
  readonly onPrint: () => void;
}

/** What the sheets ask of the shelf, for this project. */
const shelfOf =
  (project: Project, readOnly: boolean): NonNullable<SheetProps['fromShelf']> =>
  (kind) => <FromShelf project={project} kind={kind} readOnly={readOnly} />;

/** The sheet of one step, with what it needs of the open project. */
export function StepSheet(props: StepSheetProps) {
  const { project, step, report, context, readOnly, actions, measuring, control, forecast } = props;
  const sheet: SheetProps & { title: string; question: string } = {
    title: step.title,
    question: step.question,
    context,
    report,
    readOnly,
    change: actions.change,
    fromShelf: shelfOf(project, readOnly),
  };
  switch (step.id) {
    case 'part':
      return (
        <PartSheet
          {...sheet}
          measuring={measuring}
          bench={control}
          onImportFile={(file) => void actions.importFile(file)}
        />
      );
    case 'pattern':
      return <PatternSheet {...sheet} control={props.patternControl} />;
    case 'walls':
      return <WallsSheet {...sheet} />;
    case 'plies':
      return <PliesSheet {...sheet} />;
    case 'cutting':
      return <CuttingSheet {...sheet} control={props.cuttingControl} />;
    case 'mold':
      return (
        <MoldSheet
          {...sheet}
          bench={control}
          timers={props.timers}
          cast={measuring.mold}
          castStopped={measuring.stopped === 'halves'}
          onCastAgain={() => measuring.desk.goOn()}
          onSaveHalf={(half) => void actions.saveHalf(half)}
        />
      );
    case 'closing':
      return <ClosingSheet {...sheet} shape={measuring.reply?.shape ?? null} />;
    case 'cure':
      return (
        <CureSheet
          {...sheet}
          forecast={forecast}
          moment={props.heatMoment}
          onMoment={props.onHeatMoment}
          run={props.ovenRun}
          onFit={forecast.prediction === null ? null : (log) => actions.fitToLog(log)}
          onCompare={(choices) => actions.comparePrograms(choices)}
        />
      );
    case 'fit':
      return <FitSheet {...sheet} mates={props.mates} splitting={props.splitting} />;
    case 'finish':
      return <FinishOfProject {...props} sheet={sheet} />;
    default:
      return <ChecklistOfProject {...props} />;
  }
}

function FinishOfProject({
  sheet,
  context: { inputs },
  reports,
  actions,
  project,
}: StepSheetProps & { readonly sheet: SheetProps & { title: string; question: string } }) {
  const before = [...reports.values()].map((report) => ({ title: '', report }));
  const text = calendarText(inputs, before, `${project.enclosure}, ${project.name}`);
  return (
    <FinishSheet
      {...sheet}
      job={plannedJob(inputs, before)}
      onSaveCalendar={() => text !== null && actions.saveCalendar(text)}
    />
  );
}

function ChecklistOfProject(props: StepSheetProps) {
  const { project, context, reports, readOnly, actions, onPrint } = props;
  const model = checklistModel(checklistFacts(project), context, project.record, reports);
  return (
    <ChecklistSheet
      model={model}
      readOnly={readOnly}
      onRecord={(lineId, line) => actions.record(lineId, line)}
      onPrint={onPrint}
      onSaveRecord={() => actions.saveRecord(recordHtml(model, reports))}
    />
  );
}
