/** The mesh, the inputs and the names that a run of the headless report works on. */
import { readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { bestPull } from '../core/mesh/bestPull';
import { findHealth } from '../core/mesh/health';
import { partFromSaved } from '../core/part/measureSaved';
import { preparePack, unpackMesh } from '../core/mesh/pack';
import { preparePattern } from '../core/part/preparePattern';
import type { IndexedMesh, Vec3 } from '../core/mesh/types';
import { Problem } from '../core/problem';
import type { PatternRecord } from '../steps/context';
import { defaultProjectInputs, type ProjectInputs } from '../steps/inputs';
import type { RecordLine } from '../workbook/project';
import { readProjectFile, tooLargeForProjectFile } from '../workbook/projectFile';
import type { ReportArguments } from './parseArguments';
import { setInput } from './setInput';

export type OnProgress = (doing: string, share: number) => void;

export interface LoadedPattern {
  readonly project: string;
  readonly part: string;
  readonly inputs: ProjectInputs;
  readonly record: Readonly<Record<string, RecordLine>>;
  readonly pattern: PatternRecord | null;
  /** The saved form, file units; null for a project without a pattern. */
  readonly mesh: IndexedMesh | null;
}

function readBytes(path: string): Uint8Array {
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

/** @throws Problem in the maker's words for anything that cannot be used */
export async function loadPattern(given: ReportArguments, onProgress: OnProgress): Promise<LoadedPattern> {
  await preparePack();
  const saved = given.projectPath === null ? null : loadProject(given.projectPath);
  const imported = given.meshPath === null ? null : importMesh(given.meshPath, onProgress);
  const mesh = imported?.mesh ?? saved?.mesh ?? null;
  const pattern = imported?.pattern ?? saved?.pattern ?? null;
  const inputs = withArguments(saved?.inputs ?? defaultProjectInputs, given, mesh, pattern, onProgress);
  return {
    project: saved?.project ?? 'Headless report',
    part: saved?.part ?? pattern?.fileName ?? 'no pattern',
    inputs,
    record: saved?.record ?? {},
    pattern,
    mesh,
  };
}

function loadProject(path: string): LoadedPattern {
  const sizeBytes = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
  const file =
    tooLargeForProjectFile(sizeBytes) ?? readProjectFile(new TextDecoder().decode(readBytes(path)));
  if ('message' in file) throw new Problem('file.project', `${basename(path)}: ${file.message}`);
  const { enclosure, name, inputs, record, pattern } = file.project;
  const mesh = file.packedMesh === null ? null : unpackMesh(file.packedMesh);
  return { project: enclosure, part: name, inputs, record, pattern, mesh };
}

function importMesh(path: string, onProgress: OnProgress): { mesh: IndexedMesh; pattern: PatternRecord } {
  const fileName = basename(path);
  const prepared = preparePattern(readBytes(path), fileName, onProgress);
  const { sha256, format, declaredUnit, triangles, degenerateFacets, notes, canonical } = prepared;
  const packErrorFileUnits = canonical.errorFileUnits;
  return {
    mesh: canonical.mesh,
    // Nothing is saved here, so the mesh has no key.
    pattern: {
      fileName,
      sha256,
      format,
      declaredUnit,
      triangles,
      degenerateFacets,
      packErrorFileUnits,
      notes,
      meshKey: '',
    },
  };
}

/** The project's inputs, changed by the flags; `--set` comes last and wins. */
function withArguments(
  inputs: ProjectInputs,
  given: ReportArguments,
  mesh: IndexedMesh | null,
  pattern: PatternRecord | null,
  onProgress: OnProgress,
): ProjectInputs {
  let changed = inputs;
  if (given.unit !== null) changed = setInput(changed, 'part.unit', given.unit);
  if (given.body !== null) changed = setInput(changed, 'part.body', given.body);
  if (given.scale !== null) changed = setInput(changed, 'part.scale', given.scale);
  if (given.pull !== null && given.pull !== 'best') changed = setInput(changed, 'part.pull', given.pull);
  for (const { path, value } of given.set) changed = setInput(changed, path, value);
  if (given.pull !== 'best' || mesh === null) return changed;
  const pull = findBestPull(mesh, changed, pattern, onProgress);
  return setInput(changed, 'part.pull', pull);
}

function findBestPull(
  mesh: IndexedMesh,
  { part }: ProjectInputs,
  pattern: PatternRecord | null,
  onProgress: OnProgress,
): Vec3 {
  const { partMesh } = partFromSaved(mesh, findHealth(mesh), {
    unit: part.unit === 'unconfirmed' ? null : part.unit,
    declaredUnit: pattern?.declaredUnit ?? null,
    body: part.body,
    scale: part.scale,
    winding: part.winding,
  });
  return bestPull(partMesh, undefined, (share) => onProgress('looking for the best pull', share)).pull;
}
