/** The files that the headless report writes into a folder. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cutTemplateSvg } from '../core/pattern/cutTemplate';
import { Problem } from '../core/problem';
import type { PatternChoices, PatternSummary } from '../core/pattern/makePattern';
import type { OnProgress } from '../pipeline/told';
import type { StepReport } from '../core/figure';
import { calendarText, figuresCsv } from '../steps/finish/texts';
import { cuttingChoicesOf } from '../steps/cutting/choicesOf';
import type { CutAndNested } from '../steps/cutting/report';
import { nestAskedOf } from '../steps/cutting/rolls';
import { patternChoicesOf } from '../steps/pattern/choicesOf';
import type { LoadedPattern } from './loadPattern';

export interface SavedFiles {
  readonly choices: PatternChoices;
  readonly summary: PatternSummary;
  /** The pieces of the stack, or why there are none, in the maker's words. */
  readonly cut: CutAndNested | string;
}

/**
 * Makes the pattern and writes it as `pattern.stl`, in mm and in the axes of the file; and as `pattern to print` in STL and 3MF,
 * standing on its rim, larger by the print scale of the size chain. `holes to cut.svg` is the drill template at true size, where holes are covered.
 * The plies are laid on that pattern: `templates.pdf`, `templates.svg` and `templates.dxf` are their pieces at true size.
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
  const { printScale } = inputs.mold;
  const placed = (format: 'stl' | '3mf') =>
    memory.ask('print file', question, { stl, pull: choices.pull, printScale, format }, onProgress);
  write(folder, {
    'pattern.stl': stl,
    'pattern to print.stl': await placed('stl'),
    'pattern to print.3mf': await placed('3mf'),
    ...(summary.template === null
      ? {}
      : { 'holes to cut.svg': new TextEncoder().encode(cutTemplateSvg(summary.template)) }),
  });
  const cut = await cutOf({ memory, question, inputs }, stl, onProgress);
  if (typeof cut === 'string') return { choices, summary, cut };
  const noPaper = await saveTemplates({ memory, question, inputs }, cut, folder, onProgress);
  return { choices, summary, cut: { ...cut, noPaper } };
}

/** What a refusal says, in its place. */
async function orWhy<Value>(work: () => Promise<Value>): Promise<Value | string> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof Problem) return error.message;
    throw error;
  }
}

/** The plies on the pattern just made, and the nest of their pieces. */
async function cutOf(
  { memory, question, inputs }: Pick<LoadedPattern, 'memory' | 'question' | 'inputs'>,
  stl: Uint8Array,
  onProgress: OnProgress,
): Promise<CutAndNested | string> {
  const cut = await orWhy(async () =>
    memory.ask('cutting', question, { choices: cuttingChoicesOf(inputs), stl }, onProgress),
  );
  if (typeof cut === 'string') return cut;
  const { pieces } = cut;
  const asked = { pieces, ...nestAskedOf(inputs, pieces) };
  return { cut, nests: await orWhy(() => memory.ask('nest', question, asked, onProgress)), noPaper: '' };
}

/** @returns why there are none; '' where they are written, or the nest has said why already */
async function saveTemplates(
  { memory, question, inputs }: Pick<LoadedPattern, 'memory' | 'question' | 'inputs'>,
  { nests }: CutAndNested,
  folder: string,
  onProgress: OnProgress,
): Promise<string> {
  if (typeof nests === 'string') return '';
  const { paper } = inputs.cutting;
  const files = await orWhy(() => memory.ask('templates', question, { nests, paper }, onProgress));
  if (typeof files === 'string') return files;
  const encoder = new TextEncoder();
  write(folder, {
    'templates.pdf': files.pdf,
    'templates.svg': encoder.encode(files.svg),
    'templates.dxf': encoder.encode(files.dxf),
  });
  return '';
}

/** The table of all figures as `figures.csv`, and the job as `calendar.ics` where it can be planned. */
export function saveTexts(
  folder: string,
  { inputs, project, part }: Pick<LoadedPattern, 'inputs' | 'project' | 'part'>,
  reports: ReadonlyMap<string, StepReport>,
): void {
  const encoder = new TextEncoder();
  const table = encoder.encode(figuresCsv([...reports.values()]));
  const before = [...reports.values()].map((report) => ({ title: '', report }));
  const calendar = calendarText(inputs, before, `${project}, ${part}`);
  write(folder, {
    'figures.csv': table,
    ...(calendar === null ? {} : { 'calendar.ics': encoder.encode(calendar) }),
  });
}

/** The two halves of a closed solid, parted across the pull, each as STL in mm in the axes of the solid. */
export async function saveSplit(
  { memory, question }: Pick<LoadedPattern, 'memory' | 'question'>,
  heightMm: number,
  folder: string,
  onProgress: OnProgress,
): Promise<void> {
  if (question === null)
    throw new Problem(
      'split.noMesh',
      '--split: the project has no model to split. Give one with --stl FILE.',
    );
  const fileNames = ['half along the pull.stl', 'half against the pull.stl'] as const;
  const { along, against } = await memory.ask('split', question, { heightMm, fileNames }, onProgress);
  write(folder, { [fileNames[0]]: along.stl, [fileNames[1]]: against.stl });
}

/** @throws Problem `file.unwritable` */
function write(folder: string, files: Readonly<Record<string, Uint8Array>>): void {
  for (const [name, bytes] of Object.entries(files)) {
    try {
      mkdirSync(folder, { recursive: true });
      writeFileSync(join(folder, name), bytes);
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? String(error.code) : '';
      throw new Problem('file.unwritable', `--out ${folder}: ${name} cannot be written there (${code}).`);
    }
  }
}
