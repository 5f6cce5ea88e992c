/** One run of the headless report, from the words of the command line to what is written and the exit code. */
import { checklistText } from '../checklist/checklistText';
import { checklistModel } from '../checklist/printModel';
import { contextOf, evaluate, type Answers } from '../pipeline/evaluate';
import type { StepReport } from '../core/figure';
import type { FitFindings } from '../core/fit/findings';
import { forThePage } from '../pipeline/planWith';
import { planFor } from '../pipeline/remedies';
import type { OnProgress } from '../pipeline/told';
import type { StepContext } from '../steps/shared/context';
import { withCuttingProblem, withCutPlies } from '../steps/cutting/report';
import { withMadePattern } from '../steps/pattern/report';
import { stepReports } from '../steps/registry';
import { originsOf } from '../workbook/cardPicks';
import { currentFormat } from '../workbook/migrations';
import { asksForFit, fitChoicesOf } from '../steps/fit/choicesOf';
import { inputsList } from './inputsList';
import { loadMate } from './mateFile';
import { loadPattern, readBytes, type LoadedPattern } from './loadPattern';
import { saveFiles, saveSplit, saveTexts } from './saveFiles';
import { parseArguments, usage, type ReportArguments } from './parseArguments';
import { planText } from './planText';
import { reportJson } from '../pipeline/reportJson';

export interface ReportRun {
  readonly output: string;
  /** 0, or 1 when a verdict says stop. */
  readonly exitCode: 0 | 1;
}

export interface ReportSurroundings {
  readonly appVersion: string;
  /** As it is to be printed. */
  readonly date: string;
  readonly onProgress: OnProgress;
}

/** @throws Problem for bad input */
export async function runReport(
  words: readonly string[],
  { appVersion, date, onProgress }: ReportSurroundings,
): Promise<ReportRun> {
  const given = parseArguments(words);
  if (given.help) return { output: usage, exitCode: 0 };
  if (given.listInputs) return { output: inputsList(), exitCode: 0 };
  const loaded = await loadPattern(given, onProgress);
  const answers = await answersTo(loaded, onProgress);
  const { pattern, question, memory, record, project, part } = loaded;
  const plan =
    given.plan && question !== null
      ? await planFor(
          { question, answers, memory },
          {
            pattern,
            taken: { fit: await fitOf(loaded, given, onProgress) },
            skips: forThePage,
            onProgress,
          },
        )
      : null;
  const shown = given.applyPlan && plan !== null ? plan.evaluated : { question, answers };
  const inputs = shown.question?.inputs ?? loaded.inputs;
  const asked = { ...loaded, question: shown.question, inputs };
  const context: StepContext = {
    inputs,
    pattern,
    ...contextOf(shown.answers),
    fit: await fitOf(asked, given, onProgress),
    origins: originsOf({ inputs, cards: loaded.cards }),
  };
  const reports = await reportsOf(context, asked, given.outFolder, onProgress);
  if (given.splitMm !== null && given.outFolder !== null)
    await saveSplit(asked, given.splitMm, given.outFolder, onProgress);
  const facts = { project, part, date, appVersion, formatNumber: currentFormat };
  const fixes = given.applyPlan ? null : (plan?.fixes ?? null);
  const output = given.json
    ? reportJson({ pattern, answers: shown.answers, reports, plan, fixes })
    : [
        checklistText(checklistModel(facts, context, record, reports)),
        ...(plan === null ? [] : [planText(plan)]),
      ].join('\n\n');
  const stops = [...reports.values()].some(({ verdicts }) => verdicts.some(({ word }) => word === 'stop'));
  return { output, exitCode: stops ? 1 : 0 };
}

/** With the made pattern, where files are to be saved. */
async function reportsOf(
  context: StepContext,
  loaded: LoadedPattern,
  outFolder: string | null,
  onProgress: OnProgress,
): Promise<ReadonlyMap<string, StepReport>> {
  const reports = stepReports(context);
  if (outFolder === null) return reports;
  const { choices, summary, cut } = await saveFiles(loaded, outFolder, onProgress);
  const cutting = reports.get('cutting')!;
  const whole = new Map(reports)
    .set('pattern', withMadePattern(reports.get('pattern')!, choices, summary, loaded.inputs.pattern.layerMm))
    .set(
      'cutting',
      typeof cut === 'string' ? withCuttingProblem(cutting, cut) : withCutPlies(cutting, loaded.inputs, cut),
    );
  saveTexts(outFolder, loaded, whole);
  return whole;
}

/** null while nothing is entered that it could be asked for. */
async function fitOf(
  { memory, question, inputs }: LoadedPattern,
  { matePath, mateBody }: ReportArguments,
  onProgress: OnProgress,
): Promise<FitFindings | null> {
  if (question === null || !asksForFit(inputs)) return null;
  const loaded =
    matePath === null ? null : await loadMate(matePath, readBytes(matePath), inputs, mateBody, onProgress);
  const choices = fitChoicesOf(inputs, loaded?.inputs ?? null);
  return memory.ask('contents', question, { choices, mate: loaded?.mate ?? null }, onProgress);
}

async function answersTo({ memory, question }: LoadedPattern, onProgress: OnProgress): Promise<Answers> {
  if (question === null) return {};
  return evaluate(question, (name, asked) => memory.tell(name, asked, onProgress), forThePage);
}
