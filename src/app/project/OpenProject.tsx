import { useCallback, useEffect, useEffectEvent, useMemo, useRef, useState } from 'react';
import { incompleteReasons } from '../../checklist/incomplete';
import { IncompleteStamp } from '../../checklist/IncompleteStamp';
import { worstWord, type StepReport } from '../../core/figure';
import { thermocoupleOf } from '../../sheets/cure/run/keptLog';
import { useOvenRun } from '../../sheets/cure/run/useOvenRun';
import { firstMoment } from '../../sheets/cure/heatMoment';
import { benchPages, livePage } from '../../sheets/bench/benchPages';
import { DecisionSheet } from '../../sheets/decision/DecisionSheet';
import { MoldCutDrawing } from '../../sheets/decision/MoldCutDrawing';
import { decisionPage } from '../../sheets/decision/decisionPage';
import { stillFits, type FoundPlan } from '../../sheets/decision/planning';
import { triedAdvice } from '../../sheets/decision/say';
import { forecastOf } from '../../sheets/cure/forecast';
import type { AnswerShelf } from '../../pipeline/answerShelf';
import type { MadeHere, UsedPattern } from '../../sheets/pattern/patternControl';
import { useMeasured } from '../../sheets/measuring/useMeasured';
import { RightWayUpQuestion } from '../../sheets/part/RightWayUpQuestion';
import { RunStrip } from '../../sheets/timers/RunStrip';
import { runningWords } from '../../sheets/timers/runningWords';
import { TimerStrip } from '../../sheets/timers/TimerStrip';
import { useBenchTimers } from '../../sheets/timers/useBenchTimers';
import type { StepContext } from '../../steps/shared/context';
import { decide } from '../../steps/shared/decision';
import { plannedTimes } from '../../steps/mold/plannedTimes';
import { reportJson } from '../../pipeline/reportJson';
import { withCutPlies, type CutAndNested } from '../../steps/cutting/report';
import { withMadePattern } from '../../steps/pattern/report';
import { stepReports, steps } from '../../steps/registry';
import type { ProjectInputs } from '../../steps/inputs/project';
import { Advice, type AdviceOf } from '../../ui/advice';
import { Announcer } from '../../ui/Announcer';
import { Button } from '../../ui/Button';
import { Note } from '../../ui/Note';
import { useSameText } from '../../ui/useSameText';
import type { Project } from '../../workbook';
import { originsOf } from '../../workbook/cardPicks';
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
import { BenchPages } from './BenchPages';
import { BenchPane } from './BenchPane';
import { OfferCards } from './OfferCards';
import { SheetProgress } from './SheetProgress';
import { StepSheet } from './StepSheet';
import { useBenchControl } from './useBenchControl';
import { useFit } from './useFit';
import { useCutPlies } from './useCutPlies';
import { useMadePattern } from './useMadePattern';
import { useOtherHalf } from './useOtherHalf';
import { usePlanning } from './usePlanning';
import { usePrinting } from './usePrinting';
import { useProjectActions } from './useProjectActions';
import { useSplit } from './useSplit';

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
  cut: CutAndNested | null,
): ReadonlyMap<string, StepReport> {
  const reports = new Map(stepReports(context));
  const pattern = reports.get('pattern');
  const { layerMm } = context.inputs.pattern;
  if (pattern !== undefined && made !== null)
    reports.set('pattern', withMadePattern(pattern, made.choices, made.summary, layerMm));
  else if (pattern !== undefined && used !== null)
    reports.set('pattern', withMadePattern(pattern, used.choices, used.summary, layerMm));
  const cutting = reports.get('cutting');
  if (cutting !== undefined && cut !== null)
    reports.set('cutting', withCutPlies(cutting, context.inputs, cut));
  return reports;
}

/** What a plan says of a verdict while it fits the inputs; at a stop without one, where a plan is looked for. */
function adviceWith(found: FoundPlan | null, inputs: ProjectInputs): AdviceOf {
  if (found !== null && stillFits(found, inputs)) return (verdict) => triedAdvice(found.plan, verdict);
  return ({ word, fix }) =>
    word === 'stop' && fix === '' ? 'Decision looks for what would mend it, and tries it.' : fix;
}

/** An open project: contents, the sheet of one step, and the bench view beside it. */
export function OpenProject({ project, stepId, shelf }: OpenProjectProps) {
  const workbook = useWorkbook();
  const saveState = useWorkbookState((state) => state.saveState);
  const readOnly = saveState === 'readOnly';
  const [heatMoment, setHeatMoment] = useState(firstMoment);
  const { inputs, pattern, cards } = project;
  const packedMesh = useCallback(() => workbook.packedMeshOf(project.id), [workbook, project.id]);
  const setMeshAside = useCallback(() => workbook.setMeshAside(project.id), [workbook, project.id]);
  const ovenRun = useOvenRun();
  const thermocouple = useSameText(thermocoupleOf(ovenRun.run));
  const measuring = useMeasured({ pattern, inputs, thermocouple, packedMesh, setMeshAside }, shelf);
  const { desk, found, incoming } = measuring;
  const { otherHalf, isAwaited: isOtherHalfAwaited } = useOtherHalf(project, measuring);
  const { fit, fitTrouble, isAwaited: isFitAwaited, mates } = useFit(project, measuring);
  const forecast = forecastOf(measuring);
  const planned = useMemo(() => plannedTimes(inputs), [inputs]);
  const timers = useBenchTimers(planned);
  const control = useBenchControl(measuring.reply);
  const actions = useProjectActions(project, desk);
  const splitting = useSplit(project, measuring);
  const planning = usePlanning(project, desk, { fit, otherHalf });
  const patternControl = useMadePattern(project, measuring, actions);
  const cuttingControl = useCutPlies(project, measuring, actions);
  useUndoKeys(workbook);
  const importGiven = useEffectEvent(() => {
    const model = takeGivenModel(project.id);
    if (model !== null) void actions.importFile(model);
  });
  useEffect(() => importGiven(), []);

  const awaited = useSameText(awaitedResults(measuring, isOtherHalfAwaited, isFitAwaited));
  const origins = useMemo(() => originsOf({ inputs, cards }), [inputs, cards]);
  const context: StepContext = useMemo(
    () => ({ inputs, pattern: incoming ?? pattern, ...found, otherHalf, fit, fitTrouble, awaited, origins }),
    [inputs, incoming, pattern, found, otherHalf, fit, fitTrouble, awaited, origins],
  );
  const { made, used } = patternControl;
  const { cut } = cuttingControl;
  const reports = useMemo(() => reportsWith(context, made, used, cut), [context, made, used, cut]);
  const decision = useMemo(() => decide(reports), [reports]);
  const adviceOf = useMemo(() => adviceWith(planning.found, inputs), [planning.found, inputs]);
  const step = steps.find((one) => one.id === stepId);
  const report = reports.get(stepId);
  const ownPage = benchPages.find(({ id }) => id === stepId);
  const { title } = step ?? ownPage ?? decisionPage;

  const running = runningWords(timers.timers, planned, ovenRun.run, Math.max(timers.nowMs, ovenRun.nowMs));
  useEffect(() => {
    document.title = [running, project.name, title, 'Mold & Layup Workbook'].filter(Boolean).join(' · ');
  }, [running, title, project.name]);

  const shownStep = useRef(stepId);
  useEffect(() => {
    if (shownStep.current === stepId) return;
    shownStep.current = stepId;
    // A new sheet is read from its top, by eye and by screen reader.
    document.querySelector<HTMLElement>('.sheet-pane h1')?.focus();
    document.querySelector('.sheet-pane')?.scrollTo({ top: 0 });
  }, [stepId]);

  const isOnChecklist = stepId === 'checklist';
  const printing = usePrinting({
    isUnderWay: awaited.some(({ isUnderWay }) => isUnderWay),
    importProblem: measuring.importProblem,
    isOnChecklist,
    openChecklist: useCallback(() => goTo(projectHref(project.id, 'checklist')), [project.id]),
  });

  const isWithoutView = isOnChecklist || ownPage !== undefined;
  const incomplete = incompleteReasons(context);

  return (
    <div className={`shell ${isWithoutView ? 'shell-without-view' : ''}`}>
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
          <OfferCards project={project} />
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
        {stepId === 'mold' || stepId === livePage.id ? null : (
          <TimerStrip bench={timers} planned={planned} href={projectHref(project.id, livePage.id)} />
        )}
        {stepId === livePage.id ? null : (
          <RunStrip control={ovenRun} href={projectHref(project.id, livePage.id)} />
        )}
        <Announcer
          message={
            measuring.progress
              ? ''
              : `${title}: ${report === undefined ? decision.word : worstWord(report.verdicts)}`
          }
        />
        {ownPage !== undefined ? (
          <BenchPages
            project={project}
            stepId={ownPage.id}
            reports={reports}
            context={context}
            readOnly={readOnly}
            actions={actions}
            timers={timers}
            planned={planned}
            forecast={forecast}
            ovenRun={ovenRun}
          />
        ) : step === undefined || report === undefined ? (
          <DecisionSheet
            decision={decision}
            reports={reports}
            inputs={inputs}
            planning={planning}
            readOnly={readOnly}
            question={
              <RightWayUpQuestion
                part={inputs.part}
                hasPattern={context.pattern !== null && !measuring.importing}
                desk={desk}
                disabled={readOnly}
                onPull={(pull) => actions.change('part', { pull: [...pull], rightWayUp: 'settled' })}
              />
            }
            drawing={<MoldCutDrawing context={context} measuredAs={measuring.reply} desk={desk} />}
            hrefOf={(id) => projectHref(project.id, id)}
          />
        ) : (
          <Advice value={adviceOf}>
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
              mates={mates}
              splitting={splitting}
              timers={timers}
              forecast={forecast}
              ovenRun={ovenRun}
              heatMoment={heatMoment}
              onHeatMoment={setHeatMoment}
              onPrint={printing.print}
            />
          </Advice>
        )}
        <SheetProgress
          measuring={measuring}
          forecast={forecast}
          printing={printing}
          incomplete={incomplete}
        />
      </main>
      {isWithoutView ? null : (
        <BenchPane
          stepId={stepId}
          context={context}
          measuring={measuring}
          control={control}
          made={made}
          forecast={forecast}
          heatMoment={heatMoment}
          onHeatMoment={setHeatMoment}
          onSaveText={(fileName, text) => saveTextFile({ fileName, text }, 'text/csv')}
        />
      )}
    </div>
  );
}
