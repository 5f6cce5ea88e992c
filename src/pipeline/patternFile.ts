/** A pattern file and the saved mesh: how one becomes the other. */
import type { CanonicalMesh } from '../core/mesh/canonicalMesh';
import { meshKey } from '../core/mesh/meshKey';
import { packMesh, preparePack, unpackMesh } from '../core/mesh/pack';
import { readPattern } from '../core/part/preparePattern';
import type { IndexedMesh } from '../core/mesh/types';
import { hashOf } from './hashOf';
import type { FileFacts, OnProgress } from './told';

export interface ReadPatternFile {
  readonly facts: FileFacts;
  /** In its saved form: what is measured is what is saved. */
  readonly canonical: CanonicalMesh;
}

/** The open mesh as it is saved. */
export interface PackedMesh {
  readonly meshKey: string;
  readonly packed: string;
}

/** @throws Problem in the maker's words for a file that cannot be used */
export async function readPatternFile(
  bytes: Uint8Array<ArrayBuffer>,
  fileName: string,
  progress: OnProgress,
): Promise<ReadPatternFile> {
  await preparePack();
  const hash = hashOf(bytes);
  const { canonical, ...facts } = readPattern(bytes, fileName, progress);
  return { facts: { ...facts, sha256: await hash, packErrorFileUnits: canonical.errorFileUnits }, canonical };
}

export function packPattern(canonical: CanonicalMesh): PackedMesh {
  const packed = packMesh(canonical);
  return { packed, meshKey: meshKey(packed) };
}

/** @throws Problem `pack.*` for a text that is damaged */
export async function openPacked(packed: string): Promise<IndexedMesh> {
  await preparePack();
  return unpackMesh(packed);
}
