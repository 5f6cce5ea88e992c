/** The files that the headless report writes into a folder. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Problem } from '../core/problem';
import type { CutPlies } from '../core/drape/cutPlies';
import type { PatternChoices, PatternSummary } from '../core/pattern/makePattern';
import type { OnProgress } from '../pipeline/told';
import { cuttingChoicesOf } from '../steps/cutting/choicesOf';
import { patternChoicesOf } from '../steps/pattern/choicesOf';
import type { LoadedPattern } from './loadPattern';

export interface SavedFiles {
  readonly choices: PatternChoices;
  readonly summary: PatternSummary;
  /** The pieces of the stack, or why there are none, in the maker's words. */
  readonly cut: CutPlies | string;
}

/**
 * Makes the pattern and writes it as `pattern.stl`, in mm and in the axes of the file.
 * @throws Problem for a project without a mesh, what cannot be made, and a folder that cannot be written
 */
export async function saveFiles(
  { memory, question, inputs }: LoadedPattern,
  folder: string,
  onProgress: OnProgress,
): Promise<SavedFiles> {
  if (question === null)
    throw new Problem(
      'pattern.noMesh',
      '--out: the project has no model to make a pattern from. Give one with --stl FILE.',
    );
  const choices = patternChoicesOf(inputs);
  const { summary, stl } = await memory.ask('pattern', question, choices, onProgress);
  try {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'pattern.stl'), stl);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    throw new Problem('file.unwritable', `--out ${folder}: pattern.stl cannot be written there (${code}).`);
  }
  return { choices, summary, cut: await cutOf({ memory, question, inputs }, onProgress) };
}

async function cutOf(
  { memory, question, inputs }: Pick<LoadedPattern, 'memory' | 'question' | 'inputs'>,
  onProgress: OnProgress,
): Promise<CutPlies | string> {
  if (question === null) return 'There is no model to lay cloth on.';
  try {
    return await memory.ask('cutting', question, cuttingChoicesOf(inputs), onProgress);
  } catch (error) {
    if (error instanceof Problem) return error.message;
    throw error;
  }
}
