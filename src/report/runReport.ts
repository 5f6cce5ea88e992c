/** One run of the headless report, from the words of the command line to what is written and the exit code. */
import { checklistText } from '../checklist/checklistText';
import { checklistModel } from '../checklist/printModel';
import { stepReports } from '../steps/registry';
import { closedMoldVoxels } from '../core/cure/closedMold';
import { predictCure } from '../core/cure/predictCure';
import { measureSaved, type MeasuredMesh } from '../core/part/measureSaved';
import { closingHistogram } from '../core/closing/closingHistogram';
import { closingSamples } from '../core/closing/closingSamples';
import { repairedSamples } from '../core/closing/repairedSamples';
import type { PartSummary } from '../core/part/partSummary';
import { Problem } from '../core/problem';
import { castHalves } from '../core/stone/pours/castHalves';
import { prepareSolids } from '../core/stone/pours/solids';
import { findPatches } from '../core/mesh/patches';
import { patchBand } from '../steps/band';
import type { MeasuredPart, StepContext } from '../steps/context';
import type { ProjectInputs } from '../steps/inputs';
import { cureChoicesOf } from '../steps/cure/cureChoicesOf';
import { pourChoicesOf } from '../steps/mold/pourChoicesOf';
import { currentFormat } from '../workbook/migrations';
import { inputsList } from './inputsList';
import { loadPattern, type LoadedPattern, type OnProgress } from './loadPattern';
import { parseArguments, usage } from './parseArguments';
import { reportJson } from './reportJson';

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
  const measured = measure(loaded, onProgress);
  const cast = await castMold(loaded, measured, onProgress);
  const context: StepContext = {
    inputs: loaded.inputs,
    pattern: loaded.pattern,
    measured: measured === null ? null : measuredPart(loaded, measured),
    ...cast,
    ...predictRun(loaded, measured, cast, onProgress),
  };
  const reports = stepReports(context);
  const facts = {
    project: loaded.project,
    part: loaded.part,
    date,
    appVersion,
    formatNumber: currentFormat,
  };
  const output = given.json
    ? reportJson({ pattern: loaded.pattern, measured, reports })
    : checklistText(checklistModel(facts, context, loaded.record, reports));
  const stops = [...reports.values()].some(({ verdicts }) => verdicts.some(({ word }) => word === 'stop'));
  return { output, exitCode: stops ? 1 : 0 };
}

function measure({ mesh, inputs, pattern }: LoadedPattern, onProgress: OnProgress): MeasuredMesh | null {
  if (mesh === null) return null;
  const { unit, body, scale, pull, winding } = inputs.part;
  return measureSaved(
    mesh,
    {
      unit: unit === 'unconfirmed' ? null : unit,
      declaredUnit: pattern?.declaredUnit ?? null,
      body,
      scale,
      pull,
      winding,
    },
    { onProgress },
  );
}

function measuredPart({ inputs }: LoadedPattern, measured: MeasuredMesh): MeasuredPart {
  const { health, summary, unitGuess, fileBoxSize } = measured;
  const patches = findPatches(measured.measuring.mesh, measured.measurement, patchBand(inputs));
  return { health, summary: asRepaired(summary, inputs, measured), patches, unitGuess, fileBoxSize };
}

/** Closing sees the mold as it is: with what was filled and scraped on its stone. */
function asRepaired(
  summary: PartSummary,
  { mold }: ProjectInputs,
  { measuring, measurement }: MeasuredMesh,
): PartSummary {
  if (mold.repairs.length === 0) return summary;
  const samples = repairedSamples(closingSamples(measuring.mesh, measurement), measurement, mold.repairs);
  return { ...summary, closing: closingHistogram(samples, measurement.centerMm) };
}

type CastPart = Pick<StepContext, 'mold' | 'pourFindings' | 'moldProblem'>;

/** Both stone halves; a box that cannot be is said by the report, not by the exit. */
async function castMold(
  { inputs }: LoadedPattern,
  measured: MeasuredMesh | null,
  onProgress: OnProgress,
): Promise<CastPart> {
  if (measured === null) return { mold: null };
  await prepareSolids();
  try {
    const { geometry, findings } = castHalves(measured.partMesh, pourChoicesOf(inputs), onProgress);
    return { mold: geometry, pourFindings: findings };
  } catch (error) {
    if (error instanceof Problem) return { mold: null, moldProblem: error.message };
    throw error;
  }
}

/** The oven run; a program that cannot be is said by the report, not by the exit. */
function predictRun(
  { inputs }: LoadedPattern,
  measured: MeasuredMesh | null,
  { mold }: CastPart,
  onProgress: OnProgress,
): Pick<StepContext, 'cure' | 'cureProblem'> {
  const choices = cureChoicesOf(inputs, mold);
  if (measured === null || !choices.known) return {};
  const voxelsAt = (mm: number) => closedMoldVoxels(measured.partMesh, choices.value.pour, mm);
  try {
    return { cure: predictCure(choices.value, voxelsAt, 'refined', onProgress) };
  } catch (error) {
    if (error instanceof Problem) return { cureProblem: error.message };
    throw error;
  }
}
