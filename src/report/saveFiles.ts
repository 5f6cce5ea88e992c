/** The files that the headless report writes into a folder. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Problem } from '../core/problem';
import type { PatternChoices, PatternSummary } from '../core/pattern/makePattern';
import type { OnProgress } from '../pipeline/told';
import type { StepReport } from '../core/figure';
import { calendarText, figuresCsv } from '../steps/finish/texts';
import { patternChoicesOf } from '../steps/pattern/choicesOf';
import type { LoadedPattern } from './loadPattern';

/**
 * Makes the pattern and writes it as `pattern.stl`, in mm and in the axes of the file.
 * @throws Problem for a project without a mesh, what cannot be made, and a folder that cannot be written
 */
export async function saveFiles(
  { memory, question, inputs }: LoadedPattern,
  folder: string,
  onProgress: OnProgress,
): Promise<{ readonly choices: PatternChoices; readonly summary: PatternSummary }> {
  if (question === null)
    throw new Problem(
      'pattern.noMesh',
      '--out: the project has no model to make a pattern from. Give one with --stl FILE.',
    );
  const choices = patternChoicesOf(inputs);
  const { summary, stl } = await memory.ask('pattern', question, choices, onProgress);
  write(folder, 'pattern.stl', stl);
  return { choices, summary };
}

/** The table of all figures as `figures.csv`, and the job as `calendar.ics` where it can be planned. */
export function saveTexts(
  folder: string,
  { inputs, project, part }: Pick<LoadedPattern, 'inputs' | 'project' | 'part'>,
  reports: ReadonlyMap<string, StepReport>,
): void {
  write(folder, 'figures.csv', figuresCsv([...reports.values()]));
  const before = [...reports.values()].map((report) => ({ title: '', report }));
  const calendar = calendarText(inputs, before, `${project}, ${part}`);
  if (calendar !== null) write(folder, 'calendar.ics', calendar);
}

function write(folder: string, name: string, what: Uint8Array | string): void {
  try {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, name), what);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    throw new Problem('file.unwritable', `--out ${folder}: ${name} cannot be written there (${code}).`);
  }
}
