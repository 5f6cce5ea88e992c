/** Model files for the browser tests: real shells where they lie beside the project, our own otherwise. */
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeStlBinary } from '../../../src/core/mesh/writeStl';
import type { IndexedMesh } from '../../../src/core/mesh/types';
import { domeShell } from '../../support/meshes';

const publicFolder = join(import.meta.dirname, '../../../../shared/meshes/public');
const nastyFolder = join(import.meta.dirname, '../../../../shared/meshes/nasty');

export const publicMeshesAreHere = existsSync(publicFolder);

export function writeModel(name: string, mesh: IndexedMesh): string {
  // One folder for each of the runner's workers: a file that is written anew while a page of the other reads it cannot be read.
  const folder = join(tmpdir(), 'workbook-browser-models', process.env['TEST_PARALLEL_INDEX'] ?? 'listing');
  mkdirSync(folder, { recursive: true });
  const path = join(folder, name);
  writeFileSync(path, writeStlBinary(mesh));
  return path;
}

export interface ShellModel {
  readonly path: string;
  readonly fileName: string;
  readonly triangles: number;
  readonly what: string;
}

/** A pocket device's top half by other people, open downward; our own dome shell where it is absent. */
export function realShell(): ShellModel {
  const path = join(publicFolder, 'handheld_top_ascii.stl');
  if (existsSync(path))
    return {
      path,
      fileName: 'handheld_top_ascii.stl',
      triangles: 2652,
      what: 'a real shell from the shared meshes',
    };
  // Like a real one it is too thick for a usual stack in some places and too thin in others.
  const mesh = domeShell(24, 48, (tiltRad) => 0.8 + 1.2 * Math.cos(tiltRad));
  return {
    path: writeModel('dome-shell.stl', mesh),
    fileName: 'dome-shell.stl',
    triangles: mesh.facets.length / 3,
    what: 'our own dome shell (the shared meshes are not beside the project)',
  };
}

/** A broken file of the shared collection, or null where it is absent. */
export function brokenFile(name: string): string | null {
  const path = join(nastyFolder, name);
  return existsSync(path) ? path : null;
}
