/**
 * The collections of meshes that lie beside the project and are never copied into it. A suite that finds none says so
 * in its title and runs nothing from there.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const folder = fileURLToPath(new URL('../../../shared/meshes/', import.meta.url));

export const hasSharedMeshes = (collection: 'public' | 'nasty') => existsSync(`${folder}${collection}`);

/** Bytes of a file of the collections, e.g. `nasty/one_triangle.stl`. */
export const sharedMesh = (path: string): Uint8Array => new Uint8Array(readFileSync(`${folder}${path}`));

/** A JSON file of the collections; the caller states its shape. */
export const sharedJson = (path: string): unknown => JSON.parse(readFileSync(`${folder}${path}`, 'utf8'));

/** Title of a suite with how many files it runs, or that there are none. */
export const suiteTitle = (what: string, files: number) =>
  files === 0
    ? `${what}: the shared meshes are not beside the project, none were run`
    : `${what}: ${files} files`;
