/**
 * The collections of meshes that lie beside the project and are never copied into it. Where they are absent the same questions
 * are asked of meshes of our own: publicMeshes.ts and brokenFiles.ts choose.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const folder = fileURLToPath(new URL('../../../shared/meshes/', import.meta.url));

export const hasSharedMeshes = (collection: 'public' | 'nasty') => existsSync(`${folder}${collection}`);

/** Bytes of a file of the collections, e.g. `nasty/one_triangle.stl`. */
export const sharedMesh = (path: string): Uint8Array => new Uint8Array(readFileSync(`${folder}${path}`));

/** A JSON file of the collections; the caller states its shape. */
export const sharedJson = (path: string): unknown => JSON.parse(readFileSync(`${folder}${path}`, 'utf8'));

/** Where a file of the collections lies. */
export const sharedPath = (path: string): string => `${folder}${path}`;
