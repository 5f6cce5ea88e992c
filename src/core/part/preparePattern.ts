/** From a file's bytes to the mesh that is saved and measured; the worker and the headless command both call it. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { canonicalMesh, type CanonicalMesh } from '../mesh/canonicalMesh';
import { readMeshFile } from '../mesh/read/readMeshFile';
import type { MeshFormat } from '../mesh/types';
import type { LengthUnit } from '../units/length';
import { weld } from '../mesh/weld';

export interface PreparedPattern {
  /** Of the file's bytes, lower-case hex. */
  readonly sha256: string;
  readonly format: MeshFormat;
  /** Unit that the file itself declares, else null. */
  readonly declaredUnit: LengthUnit | null;
  /** Triangles as read from the file, before facets without area were left out. */
  readonly triangles: number;
  /** Facets without area that were left out. */
  readonly degenerateFacets: number;
  /** File units. What is measured and what is packed is this mesh. */
  readonly canonical: CanonicalMesh;
  /** Plain sentences on how odd things in the file were read. */
  readonly notes: readonly string[];
}

/**
 * Reads, welds and puts in the saved form. `preparePack()` must have resolved once before.
 * Throws `Problem` in the maker's words for a file that cannot be used.
 */
export function preparePattern(
  bytes: Uint8Array,
  fileName: string,
  onProgress: (doing: string, share: number) => void = () => {},
): PreparedPattern {
  const pattern = readPattern(bytes, fileName, onProgress);
  onProgress('naming the file', 1);
  return { sha256: bytesToHex(sha256(bytes)), ...pattern };
}

/** `preparePattern` without the name of the bytes, for a caller that has them hashed elsewhere meanwhile. */
export function readPattern(
  bytes: Uint8Array,
  fileName: string,
  onProgress: (doing: string, share: number) => void = () => {},
): Omit<PreparedPattern, 'sha256'> {
  onProgress('reading the file', 0);
  const file = readMeshFile(bytes, fileName, (share) => onProgress('reading the file', 0.5 * share));
  onProgress('joining corners', 0.5);
  const welded = weld(file);
  onProgress('putting the mesh in its saved form', 0.75);
  const canonical = canonicalMesh(welded.mesh);
  return {
    format: file.format,
    declaredUnit: file.declaredUnit,
    triangles: file.corners.length / 9,
    degenerateFacets: welded.degenerateFacets,
    canonical,
    notes: [...file.notes, ...welded.notes],
  };
}
