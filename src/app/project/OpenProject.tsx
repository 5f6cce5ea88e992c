import { useCallback, useEffect, useEffectEvent, useMemo, useRef, useState } from 'react';
import { incompleteReasons } from '../../checklist/incomplete';
import { IncompleteStamp } from '../../checklist/IncompleteStamp';
import type { CutPlies } from '../../core/drape/cutPlies';
import { worstWord, type StepReport } from '../../core/figure';
import { thermocoupleOf } from '../../sheets/cure/run/keptLog';
import { useOvenRun } from '../../sheets/cure/run/useOvenRun';
import { firstMoment } from '../../sheets/cure/heatMoment';
import { DecisionSheet } from '../../sheets/decision/DecisionSheet';
import { decisionPage } from '../../sheets/decision/decisionPage';
import { forecastOf } from '../../sheets/cure/forecast';
import type { AnswerShelf } from '../../pipeline/answerShelf';
import type { MadeHere, UsedPattern } from '../../sheets/pattern/patternControl';
import { useMeasured } from '../../sheets/measuring/useMeasured';
import { TimerStrip } from '../../sheets/timers/TimerStrip';
import { useBenchTimers } from '../../sheets/timers/useBenchTimers';
import type { StepContext } from '../../steps/shared/context';
import { decide } from '../../steps/shared/decision';
import { plannedTimes } from '../../steps/mold/plannedTimes';
import { reportJson } from '../../pipeline/reportJson';
import { withCutPlies } from '../../steps/cutting/report';
import { cautionsFor, withMadePattern } from '../../steps/pattern/report';
import { stepReports, steps } from '../../steps/registry';
import { Announcer } from '../../ui/Announcer';
import { Button } from '../../ui/Button';
import { Note } from '../../ui/Note';
import { useSameText } from '../../ui/useSameText';
import type { Project } from '../../workbook';
import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';
import { Contents } from '../Contents';
import { takeGivenModel } from '../givenFile';
import { goTo, projectHref } from '../route';
import { SaveNote } from '../SaveNote';
import { saveTextFile } from '../saveTextFile';
import { TopBar } from '../TopBar';
import { useUndoKeys } from '../useUndoKeys';
import { WorkbookNotes } from '../WorkbookNotes';
import { awaitedResults, isMeasurementStopped } from './awaitedResults';
import { BenchPane } from './BenchPane';
import { SheetProgress } from './SheetProgress';
import { StepSheet } from './StepSheet';
import { useBenchControl } from './useBenchControl';
import { useCutPlies } from './useCutPlies';
import { useMadePattern } from './useMadePattern';
import { useOtherHalf } from './useOtherHalf';
import { usePlanning } from './usePlanning';
import { usePrinting } from './usePrinting';
import { useProjectActions } from './useProjectActions';

export interface OpenProjectProps {
  readonly project: Project;
  readonly stepId: string;
  readonly shelf: AnswerShelf;
}

/** With what is known of the pattern that was made of this model, or that this model is, and of the pieces of its plies. */
function reportsWith(
  context: StepContext,
  made: MadeHere | null,
  used: UsedPattern | null,
  cut: CutPlies | null,
): ReadonlyMap<string, StepReport> {
  const reports = new Map(stepReports(context));
  const pattern = reports.get('pattern');
  if (pattern !== undefined && made !== null)
    reports.set('pattern', withMadePattern(pattern, made.choices, made.summary));
  else if (pattern !== undefined && used !== null)
    reports.set('pattern', { ...pattern, cautions: cautionsFor(used.made.summary) });
  const cutting = reports.get('cutting');
  if (cutting !== undefined && cut !== null)
    reports.set('cutting', withCutPlies(cutting, context.inputs, cut));
  return reports;
}

/** An open project: contents, the sheet of one step, and the bench view beside it. */
export function OpenProject({ project, stepId, shelf }: OpenProjectProps) {
  const workbook = useWorkbook();
  const saveState = useWorkbookState((state) => state.saveState);
  const readOnly = saveState === 'readOnly';
  const [heatMoment, setHeatMoment] = useState(firstMoment);
  const { inputs, pattern } = project;
  const packedMesh = useCallback(() => workbook.packedMeshOf(project.id), [workbook, project.id]);
  const setMeshAside = useCallback(() => workbook.setMeshAside(project.id), [workbook, project.id]);
  const ovenRun = useOvenRun();
  const thermocouple = useSameText(thermocoupleOf(ovenRun.run));
  const measuring = useMeasured({ pattern, inputs, thermocouple, packedMesh, setMeshAside }, shelf);
  const { desk, found, incoming } = measuring;
  const { otherHalf, isAwaited: isOtherHalfAwaited } = useOtherHalf(project, measuring);
  const forecast = forecastOf(measuring);
  const planned = useMemo(() => plannedTimes(inputs), [inputs]);
  const timers = useBenchTimers(planned);
  const control = useBenchControl(measuring.reply);
  const actions = useProjectActions(project, desk);
  const planning = usePlanning(project, desk);
  const patternControl = useMadePattern(project, measuring, actions);
  const cuttingControl = useCutPlies(project, measuring, actions);
  useUndoKeys(workbook);
  const importGiven = useEffectEvent(() => {
    const model = takeGivenModel(project.id);
    if (model !== null) void actions.importFile(model);
  });
  useEffect(() => importGiven(), []);

  const awaited = useSameText(awaitedResults(measuring, isOtherHalfAwaited));
  const context: StepContext = useMemo(
    () => ({ inputs, pattern: incoming ?? pattern, ...found, otherHalf, awaited }),
    [inputs, incoming, pattern, found, otherHalf, awaited],
  );
  const { made, used } = patternControl;
  const { cut } = cuttingControl;
  const reports = useMemo(() => reportsWith(context, made, used, cut), [context, made, used, cut]);
  const decision = useMemo(() => decide(reports), [reports]);
  const step = steps.find((one) => one.id === stepId);
  const report = reports.get(stepId);
  const { title } = step ?? decisionPage;

  const shownStep = useRef(stepId);
  useEffect(() => {
    document.title = `${project.name} · ${title} · Mold & Layup Workbook`;
    if (shownStep.current === stepId) return;
    shownStep.current = stepId;
    // A new sheet is read from its top, by eye and by screen reader.
    document.querySelector<HTMLElement>('.sheet-pane h1')?.focus();
    document.querySelector('.sheet-pane')?.scrollTo({ top: 0 });
  }, [stepId, title, project.name]);

  const isOnChecklist = stepId === 'checklist';
  const printing = usePrinting({
    isUnderWay: awaited.some(({ isUnderWay }) => isUnderWay),
    importProblem: measuring.importProblem,
    isOnChecklist,
    openChecklist: useCallback(() => goTo(projectHref(project.id, 'checklist')), [project.id]),
  });

  const incomplete = incompleteReasons(context);

  return (
    <div className={`shell ${isOnChecklist ? 'shell-without-view' : ''}`}>
      {incomplete.length > 0 ? <IncompleteStamp /> : null}
      <a
        className="skip-link"
        href="#sheet"
        onClick={(event) => {
          event.preventDefault();
          document.querySelector<HTMLElement>('.sheet-pane h1')?.focus();
        }}
      >
        Skip to the sheet
      </a>
      <TopBar
        projectName={`${project.enclosure} · ${project.name}`}
        pattern={context.pattern}
        shape={measuring.shape}
        onSaveFile={() => actions.saveFile()}
        onSaveFigures={() =>
          actions.saveFigures(reportJson({ pattern: context.pattern, answers: measuring.answers, reports }))
        }
        onOpenFile={(file) => void actions.openFile(file)}
        onPrint={printing.print}
      />
      <Contents
        projectId={project.id}
        stepId={stepId}
        decision={decision.word}
        reports={steps.flatMap((one) => reports.get(one.id) ?? [])}
      />
      <main className="sheet-pane" id="sheet" tabIndex={-1}>
        <div className="sheet-notes screen-only">
          <WorkbookNotes />
          <SaveNote saveState={saveState} />
          {actions.refusal ? <Note problem>{actions.refusal}</Note> : null}
          {measuring.problem ? <Note problem>{measuring.problem}</Note> : null}
          {measuring.isSilent ? (
            <Note>
              Nothing has been heard of the measuring for 20 seconds. A large part may take that long; if
              nothing moves, its worker has ended.{' '}
              <Button onClick={() => desk.client.startAnew()}>Start it anew</Button>
            </Note>
          ) : null}
          {isMeasurementStopped(measuring.stopped) ? (
            <Note>
              The pattern is not measured. <Button onClick={() => desk.goOn()}>Measure again</Button>
            </Note>
          ) : null}
        </div>
        {stepId === 'mold' ? null : (
          <TimerStrip bench={timers} planned={planned} href={projectHref(project.id, 'mold')} />
        )}
        <Announcer
          message={
            measuring.progress
              ? ''
              : `${title}: ${report === undefined ? decision.word : worstWord(report.verdicts)}`
          }
        />
        {step === undefined || report === undefined ? (
          <DecisionSheet
            decision={decision}
            reports={reports}
            inputs={inputs}
            planning={planning}
            readOnly={readOnly}
            hrefOf={(id) => projectHref(project.id, id)}
          />
        ) : (
          <StepSheet
            project={project}
            step={step}
            report={report}
            reports={reports}
            context={context}
            readOnly={readOnly}
            actions={actions}
            measuring={measuring}
            control={control}
            patternControl={patternControl}
            cuttingControl={cuttingControl}
            timers={timers}
            forecast={forecast}
            ovenRun={ovenRun}
            heatMoment={heatMoment}
            onHeatMoment={setHeatMoment}
            onPrint={printing.print}
          />
        )}
        <SheetProgress
          measuring={measuring}
          forecast={forecast}
          printing={printing}
          incomplete={incomplete}
        />
      </main>
      {isOnChecklist ? null : (
        <BenchPane
          stepId={stepId}
          context={context}
          measuring={measuring}
          control={control}
          forecast={forecast}
          heatMoment={heatMoment}
          onHeatMoment={setHeatMoment}
          onSaveText={(fileName, text) => saveTextFile({ fileName, text }, 'text/csv')}
        />
      )}
    </div>
  );
}
