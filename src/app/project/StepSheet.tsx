import { checklistHtml } from '../../checklist/checklistHtml';
import { ChecklistSheet } from '../../checklist/ChecklistSheet';
import { checklistModel } from '../../checklist/printModel';
import type { StepReport } from '../../core/figure';
import { ClosingSheet } from '../../sheets/closing/ClosingSheet';
import { CureSheet } from '../../sheets/cure/CureSheet';
import type { CuttingControl } from '../../sheets/cutting/cuttingControl';
import { CuttingSheet } from '../../sheets/cutting/CuttingSheet';
import type { HeatMoment } from '../../sheets/cure/heatMoment';
import type { OvenRunControl } from '../../sheets/cure/run/useOvenRun';
import type { CureForecast } from '../../sheets/cure/forecast';
import type { Measuring } from '../../sheets/measuring/useMeasured';
import { MoldSheet } from '../../sheets/mold/MoldSheet';
import { PartSheet } from '../../sheets/part/PartSheet';
import type { PatternControl } from '../../sheets/pattern/patternControl';
import { PatternSheet } from '../../sheets/pattern/PatternSheet';
import { PliesSheet } from '../../sheets/plies/PliesSheet';
import type { SheetProps } from '../../sheets/sheetProps';
import type { BenchTimers } from '../../sheets/timers/useBenchTimers';
import { WallsSheet } from '../../sheets/walls/WallsSheet';
import type { StepContext } from '../../steps/shared/context';
import type { Step } from '../../steps/registry';
import type { Project } from '../../workbook';
import { checklistFacts } from './checklistFacts';
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
  readonly cuttingControl: CuttingControl;
  readonly timers: BenchTimers;
  readonly forecast: CureForecast;
  readonly ovenRun: OvenRunControl;
  readonly heatMoment: HeatMoment;
  readonly onHeatMoment: (moment: HeatMoment) => void;
  readonly onPrint: () => void;
}

/** The sheet of one step, with what it needs of the open project. */
export function StepSheet(props: StepSheetProps) {
  const { step, report, context, readOnly, actions, measuring, control, forecast } = props;
  const sheet: SheetProps & { title: string; question: string } = {
    title: step.title,
    question: step.question,
    context,
    report,
    readOnly,
    change: actions.change,
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
    default:
      return <ChecklistOfProject {...props} />;
  }
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
      onSaveHtml={() => actions.saveChecklist(checklistHtml(model))}
    />
  );
}
