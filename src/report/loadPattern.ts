/** The mesh on its bench, the inputs and the names that a run of the headless report works on. */
import { readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { Problem } from '../core/problem';
import { openPacked, readPatternFile } from '../pipeline/patternFile';
import type { Question } from '../pipeline/question';
import { StageMemory } from '../pipeline/stageMemory';
import type { OnProgress } from '../pipeline/told';
import type { PatternRecord } from '../steps/shared/context';
import { defaultProjectInputs, type ProjectInputs } from '../steps/inputs/project';
import type { RecordLine } from '../workbook/project';
import type { CardCopy } from '../workbook/shelfCards';
import { readProjectFile, tooLargeForProjectFile } from '../workbook/projectFile';
import type { ReportArguments } from './parseArguments';
import { contentsIn } from './contentsFile';
import { setInput } from './setInput';

export interface LoadedPattern {
  readonly project: string;
  readonly part: string;
  readonly inputs: ProjectInputs;
  readonly record: Readonly<Record<string, RecordLine>>;
  readonly pattern: PatternRecord | null;
  /** Copies of cards that a project file carries. */
  readonly cards: readonly CardCopy[];
  /** Has the mesh open that the question is about. */
  readonly memory: StageMemory;
  /** null for a project without a pattern. */
  readonly question: Question | null;
}

export function readBytes(path: string): Uint8Array<ArrayBuffer> {
  try {
    return readFileSync(path);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    const why =
      code === 'ENOENT'
        ? 'there is no such file'
        : code === 'EISDIR'
          ? 'this is a folder, not a file'
          : `it cannot be read (${code})`;
    throw new Problem('file.unreadable', `${path}: ${why}.`);
  }
}

/** Name of the one mesh of a run. */
const meshName = 'pattern';

interface SavedProject extends Omit<LoadedPattern, 'memory' | 'question'> {
  readonly hasMesh: boolean;
}

/** @throws Problem in the maker's words for anything that cannot be used */
export async function loadPattern(given: ReportArguments, onProgress: OnProgress): Promise<LoadedPattern> {
  const memory = new StageMemory();
  const saved = given.projectPath === null ? null : await loadProject(given.projectPath, memory);
  const imported = given.meshPath === null ? null : await importMesh(given.meshPath, memory, onProgress);
  const pattern = imported ?? saved?.pattern ?? null;
  const hasMesh = imported !== null || saved?.hasMesh === true;
  const asked = (inputs: ProjectInputs): Question | null =>
    pattern && hasMesh
      ? { mesh: meshName, declaredUnit: pattern.declaredUnit, inputs, thermocouple: null }
      : null;
  const flagged = withArguments(saved?.inputs ?? defaultProjectInputs, given);
  const inputs = await withPull(flagged, given, asked, memory, onProgress);
  return {
    project: saved?.project ?? 'Headless report',
    part: saved?.part ?? pattern?.fileName ?? 'no pattern',
    inputs,
    record: saved?.record ?? {},
    pattern,
    cards: saved?.cards ?? [],
    memory,
    question: asked(inputs),
  };
}

async function loadProject(path: string, memory: StageMemory): Promise<SavedProject> {
  const sizeBytes = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
  const file =
    tooLargeForProjectFile(sizeBytes) ?? readProjectFile(new TextDecoder().decode(readBytes(path)));
  if ('message' in file) throw new Problem('file.project', `${basename(path)}: ${file.message}`);
  const { packedMesh } = file;
  const { enclosure, name, inputs, record, pattern, cards } = file.project;
  if (packedMesh !== null) memory.openMesh(meshName, await openPacked(packedMesh));
  return { project: enclosure, part: name, inputs, record, pattern, cards, hasMesh: packedMesh !== null };
}

async function importMesh(path: string, memory: StageMemory, onProgress: OnProgress): Promise<PatternRecord> {
  const fileName = basename(path);
  const { facts, canonical } = await readPatternFile(readBytes(path), fileName, onProgress);
  memory.openMesh(meshName, canonical.mesh);
  // Nothing is saved here, so the mesh has no key.
  return { ...facts, fileName, meshKey: '' };
}

/** The project's inputs, changed by the flags; `--set` comes last and wins. */
function withArguments(
  inputs: ProjectInputs,
  { unit, body, scale, pull, set, contentsPath, matePath }: ReportArguments,
): ProjectInputs {
  let changed = inputs;
  if (unit !== null) changed = setInput(changed, 'part.unit', unit);
  if (body !== null) changed = setInput(changed, 'part.body', body);
  if (scale !== null) changed = setInput(changed, 'part.scale', scale);
  if (pull !== null && pull !== 'best') changed = setInput(changed, 'part.pull', pull);
  if (pull !== null) changed = setInput(changed, 'part.rightWayUp', 'settled');
  if (contentsPath !== null)
    changed = setInput(changed, 'fit.contents', contentsIn(contentsPath, readBytes(contentsPath)));
  if (matePath !== null) changed = setInput(changed, 'fit.mate', { projectId: '', name: basename(matePath) });
  for (const { path, value } of set) changed = setInput(changed, path, value);
  return changed;
}

/**
 * With `--pull best`: along the rim's normal. Of a new mesh without a word on the pull: by its shape, where that tells, else
 * it is asked; as the page does on import.
 */
async function withPull(
  inputs: ProjectInputs,
  given: ReportArguments,
  asked: (inputs: ProjectInputs) => Question | null,
  memory: StageMemory,
  onProgress: OnProgress,
): Promise<ProjectInputs> {
  const question = asked(inputs);
  if (question === null) return inputs;
  if (given.pull === 'best') {
    const { pull } = await memory.ask('best pull', question, null, onProgress);
    return setInput(inputs, 'part.pull', pull);
  }
  const isSaid = given.pull !== null || given.set.some(({ path }) => path.startsWith('part.pull'));
  if (isSaid || given.projectPath !== null) return inputs;
  const { pull, toldBy } = await memory.ask('right way up', question, null, onProgress);
  return toldBy === null ? setInput(inputs, 'part.rightWayUp', 'asked') : setInput(inputs, 'part.pull', pull);
}
