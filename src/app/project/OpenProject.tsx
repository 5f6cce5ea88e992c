import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { worstWord } from '../../core/figure';
import { checklistHtml } from '../../checklist/checklistHtml';
import { checklistModel } from '../../checklist/printModel';
import { ChecklistSheet } from '../../checklist/ChecklistSheet';
import { ClosingSheet } from '../../sheets/closing/ClosingSheet';
import { CureSheet } from '../../sheets/cure/CureSheet';
import { airCurve, columnCurve, thermocoupleOf } from '../../sheets/cure/run/keptLog';
import { useOvenRun } from '../../sheets/cure/run/useOvenRun';
import { firstMoment } from '../../sheets/cure/heatMoment';
import { useCurePrediction } from '../../sheets/cure/useCurePrediction';
import type { StoneHalf } from '../../jobs/protocol';
import type { MeasureCache } from '../../sheets/measuring/measureCache';
import { useMeasured } from '../../sheets/measuring/useMeasured';
import { PartSheet } from '../../sheets/part/PartSheet';
import { PliesSheet } from '../../sheets/plies/PliesSheet';
import { MoldSheet } from '../../sheets/mold/MoldSheet';
import type { ChangeInputs, SheetProps } from '../../sheets/sheetProps';
import { TimerStrip } from '../../sheets/timers/TimerStrip';
import { useBenchTimers } from '../../sheets/timers/useBenchTimers';
import { WallsSheet } from '../../sheets/walls/WallsSheet';
import type { StepContext } from '../../steps/context';
import type { ProjectInputs } from '../../steps/inputs';
import { cureChoicesOf } from '../../steps/cure/cureChoicesOf';
import { plannedTimes } from '../../steps/mold/plannedTimes';
import { pourChoicesOf } from '../../steps/mold/pourChoicesOf';
import { stepReports, steps } from '../../steps/registry';
import { Announcer } from '../../ui/Announcer';
import { Button } from '../../ui/Button';
import { Note } from '../../ui/Note';
import { ProgressBar } from '../../ui/ProgressBar';
import type { OvenRunLog, Outcome, Project } from '../../workbook';
import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';
import { Contents } from '../Contents';
import { goTo, projectHref } from '../route';
import { SaveNote } from '../SaveNote';
import { saveBytes, saveTextFile } from '../saveTextFile';
import { TopBar } from '../TopBar';
import { useUndoKeys } from '../useUndoKeys';
import { WorkbookNotes } from '../WorkbookNotes';
import { BenchPane } from './BenchPane';
import { checklistFacts } from './checklistFacts';
import { useBenchControl } from './useBenchControl';
import { useOtherHalf } from './useOtherHalf';

export interface OpenProjectProps {
  readonly project: Project;
  readonly stepId: string;
  readonly cache: MeasureCache;
}

/** What belonged to the old file does not fit the new one; the rest of the inputs stays. */
function inputsForNewFile(inputs: ProjectInputs): ProjectInputs {
  return { ...inputs, part: { ...inputs.part, unit: 'unconfirmed', body: 0, scale: 1 } };
}

/** An open project: contents, the sheet of one step, and the bench view beside it. */
export function OpenProject({ project, stepId, cache }: OpenProjectProps) {
  const workbook = useWorkbook();
  const saveState = useWorkbookState((state) => state.saveState);
  const readOnly = saveState === 'readOnly';
  const [refusal, setRefusal] = useState<string | null>(null);
  const [heatMoment, setHeatMoment] = useState(firstMoment);
  const { inputs, pattern } = project;
  const packedMesh = useCallback(() => workbook.packedMeshOf(project.id), [workbook, project.id]);
  const setMeshAside = useCallback(() => workbook.setMeshAside(project.id), [workbook, project.id]);
  const measuring = useMeasured({ pattern, inputs, packedMesh, setMeshAside }, cache);
  const { desk, measured, incoming, mold, moldProblem } = measuring;
  const otherHalf = useOtherHalf(project, measuring);
  const ovenRun = useOvenRun(project.id);
  const forecast = useCurePrediction(measuring, inputs, thermocoupleOf(ovenRun.run));
  const planned = useMemo(() => plannedTimes(inputs), [inputs]);
  const timers = useBenchTimers(project.id, planned);
  const control = useBenchControl(measuring.reply);
  useUndoKeys(workbook);

  const context: StepContext = useMemo(
    () => ({
      inputs,
      pattern: incoming ?? pattern,
      measured,
      mold: mold?.geometry ?? null,
      pourFindings: mold?.findings ?? null,
      moldProblem,
      otherHalf,
      cure: forecast.prediction,
      cureProblem: forecast.problem,
    }),
    [
      inputs,
      incoming,
      pattern,
      measured,
      mold,
      moldProblem,
      otherHalf,
      forecast.prediction,
      forecast.problem,
    ],
  );
  const reports = useMemo(() => stepReports(context), [context]);
  const step = steps.find((one) => one.id === stepId) ?? steps[0];
  const report = reports.get(stepId);

  const shownStep = useRef(stepId);
  useEffect(() => {
    document.title = `${project.name} · ${step?.title ?? ''} · Mold & Layup Workbook`;
    if (shownStep.current === stepId) return;
    shownStep.current = stepId;
    // A new sheet is read from its top, by eye and by screen reader.
    document.querySelector<HTMLElement>('.sheet-pane h1')?.focus();
    document.querySelector('.sheet-pane')?.scrollTo({ top: 0 });
  }, [stepId, step, project.name]);

  const printWhenShown = useRef(false);
  useEffect(() => {
    if (!printWhenShown.current || stepId !== 'checklist') return;
    printWhenShown.current = false;
    window.print();
  }, [stepId]);

  const told = (outcome: Outcome) => setRefusal(outcome.done ? null : outcome.reason);
  const change: ChangeInputs = (stepKey, patch) =>
    told(
      workbook.updateInputs(
        (draft) => {
          Object.assign(draft[stepKey], patch);
        },
        `${stepKey}.${Object.keys(patch).join('.')}`,
      ),
    );
  const importFile = async (file: File) => {
    const fresh = inputsForNewFile(inputs);
    const imported = await desk.importFile(file, fresh);
    if (imported === null) return;
    told(
      workbook.setPattern(imported.pattern, imported.packed, (draft) => {
        draft.part = fresh.part;
      }),
    );
  };
  const saveHalf = async (half: StoneHalf) => {
    const bytes = await desk.run(`saving the ${half}`, (job) =>
      desk.client.saveHalf(half, pourChoicesOf(inputs), job),
    );
    if (bytes !== null) saveBytes(`${project.enclosure} - ${project.name} ${half}.stl`, bytes, 'model/stl');
  };
  const fitToLog = async (log: OvenRunLog) => {
    const choices = cureChoicesOf(inputs);
    const laminate = columnCurve(log, log.laminate);
    if (!choices.known || laminate === null) return null;
    return desk.run('fitting to the log', (job) =>
      desk.client.fitCure(choices.value, { laminate, air: airCurve(log), place: log.place }, job),
    );
  };
  const saveFile = () => {
    const outcome = workbook.exportProjectFile(project.id);
    told(outcome);
    if (outcome.done) saveTextFile(outcome.file);
  };
  const openFile = async (file: File) => {
    const outcome = workbook.importProjectFile(await file.text());
    told(outcome);
    if (outcome.done) goTo(projectHref(outcome.id));
  };
  const print = () => {
    if (stepId === 'checklist') {
      window.print();
      return;
    }
    printWhenShown.current = true;
    goTo(projectHref(project.id, 'checklist'));
  };

  if (step === undefined || report === undefined) return null;
  const sheetProps: SheetProps & { title: string; question: string } = {
    title: step.title,
    question: step.question,
    context,
    report,
    readOnly,
    change,
  };
  const withView = step.id !== 'checklist';

  const sheet = () => {
    switch (step.id) {
      case 'part':
        return (
          <PartSheet
            {...sheetProps}
            measuring={measuring}
            bench={control}
            onImportFile={(file) => void importFile(file)}
          />
        );
      case 'walls':
        return <WallsSheet {...sheetProps} />;
      case 'plies':
        return <PliesSheet {...sheetProps} />;
      case 'mold':
        return (
          <MoldSheet
            {...sheetProps}
            bench={control}
            timers={timers}
            cast={mold}
            castStopped={measuring.castStopped}
            onCastAgain={() => desk.castAgain()}
            onSaveHalf={(half) => void saveHalf(half)}
          />
        );
      case 'closing':
        return <ClosingSheet {...sheetProps} shape={measuring.reply?.shape ?? null} />;
      case 'cure':
        return (
          <CureSheet
            {...sheetProps}
            forecast={forecast}
            moment={heatMoment}
            onMoment={setHeatMoment}
            run={ovenRun}
            onFit={forecast.prediction === null ? null : fitToLog}
            onCompare={(choices) =>
              desk.run('comparing programs', (job) =>
                desk.client.compareCure(choices, inputs.cure.stoneLimitC, job),
              )
            }
          />
        );
      default: {
        const model = checklistModel(checklistFacts(project), context, project.record, reports);
        return (
          <ChecklistSheet
            model={model}
            readOnly={readOnly}
            onRecord={(lineId, patch) => told(workbook.setRecord(lineId, patch))}
            onPrint={() => window.print()}
            onSaveHtml={() =>
              saveTextFile(
                {
                  fileName: `${project.enclosure} - ${project.name} checklist.html`,
                  text: checklistHtml(model),
                },
                'text/html',
              )
            }
          />
        );
      }
    }
  };

  return (
    <div className={`shell ${withView ? '' : 'shell-without-view'}`}>
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
        onSaveFile={saveFile}
        onOpenFile={(file) => void openFile(file)}
        onPrint={print}
      />
      <Contents
        projectId={project.id}
        stepId={step.id}
        reports={steps.flatMap((one) => reports.get(one.id) ?? [])}
      />
      <main className="sheet-pane" id="sheet" tabIndex={-1}>
        <div className="sheet-notes screen-only">
          <WorkbookNotes />
          <SaveNote saveState={saveState} />
          {refusal ? <Note problem>{refusal}</Note> : null}
          {measuring.problem ? <Note problem>{measuring.problem}</Note> : null}
          {measuring.stopped ? (
            <Note>
              The pattern is not measured. <Button onClick={() => desk.measureAgain()}>Measure again</Button>
            </Note>
          ) : null}
        </div>
        {step.id === 'mold' ? null : (
          <TimerStrip bench={timers} planned={planned} href={projectHref(project.id, 'mold')} />
        )}
        <Announcer message={measuring.progress ? '' : `${step.title}: ${worstWord(report.verdicts)}`} />
        {sheet()}
        {measuring.progress ? (
          <div className="sheet-progress">
            <ProgressBar {...measuring.progress} onCancel={() => desk.cancel()} />
          </div>
        ) : null}
      </main>
      {withView ? (
        <BenchPane
          stepId={step.id}
          context={context}
          measuring={measuring}
          control={control}
          forecast={forecast}
          heatMoment={heatMoment}
          onHeatMoment={setHeatMoment}
          onSaveText={(fileName, text) => saveTextFile({ fileName, text }, 'text/csv')}
        />
      ) : null}
    </div>
  );
}
