import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const chooses = /from '[./]*support\/(?:sharedMeshes|publicMeshes|brokenFiles)'/u;

/** Unit tests that ask the shared meshes, or our own where those are absent; paths from the project's root, in order. */
export function choosingTests(): string[] {
  return readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.test.ts'))
    .filter((path) => chooses.test(readFileSync(join(import.meta.dirname, path), 'utf8')))
    .map((path) => join('tests', path))
    .toSorted();
}
