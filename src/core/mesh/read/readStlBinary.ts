import { Problem } from '../../problem';
import type { RawTriangles } from './finishFileMesh';
import { limits } from '../limits';

const startOfFacets = 84;
const bytesPerFacet = 50;
const cornersAt = 12;
/** Facets between two calls of `onProgress`. */
const facetsPerReport = 100_000;
/** Facets looked at to tell a damaged count from a file of another kind. */
const facetsToJudge = 500;
const leastSoundShare = 0.9;

/** True when the length of the file is exactly what its facet count asks for. */
export function isStlBinaryBySize(bytes: Uint8Array): boolean {
  if (bytes.length < startOfFacets) return false;
  return bytes.length === startOfFacets + bytesPerFacet * declaredCount(bytes);
}

/** True when the bytes after the header read as coordinates of a drawing, whatever the facet count says. */
export function looksLikeStlBinary(bytes: Uint8Array): boolean {
  const facets = Math.min(facetsToJudge, Math.floor((bytes.length - startOfFacets) / bytesPerFacet));
  if (facets < 1) return false;
  const view = viewOf(bytes);
  let sound = 0;
  for (let facet = 0; facet < facets; facet++) {
    let ok = true;
    for (let k = 0; k < 9; k++) {
      const size = Math.abs(view.getFloat32(startOfFacets + bytesPerFacet * facet + cornersAt + 4 * k, true));
      if (!(size < 1e9 && (size === 0 || size > 1e-12))) ok = false;
    }
    if (ok) sound++;
  }
  return sound >= leastSoundShare * facets;
}

/**
 * Reads binary STL: 80 bytes of header, a count, then 50 bytes per facet. The stored normals and the two last bytes
 * of a facet are not used. The length of the file is believed rather than a count that does not fit it.
 */
export function readStlBinary(bytes: Uint8Array, onProgress?: (share: number) => void): RawTriangles {
  const declared = declaredCount(bytes);
  const space = bytes.length - startOfFacets;
  const whole = Math.floor(space / bytesPerFacet);
  const notes: string[] = [];
  let count = declared;
  if (declared > whole) {
    count = whole;
    notes.push(
      `The file says that it holds ${declared} triangles but ends after ${whole}: ${whole} were read. If the part looks torn, the file was cut off; export or copy it again.`,
    );
  } else if (declared < whole && space % bytesPerFacet === 0 && looksLikeStlBinary(bytes)) {
    count = whole;
    notes.push(
      `The file says that it holds ${declared} triangles but has room for exactly ${whole}: all ${whole} were read.`,
    );
  } else if (space > bytesPerFacet * declared) {
    notes.push(
      `${space - bytesPerFacet * declared} bytes after the last triangle were passed over; ${declared} triangles were read.`,
    );
  }
  if (count > limits.triangles) {
    throw new Problem(
      'mesh.tooManyTriangles',
      `The file holds ${count} triangles; up to ${limits.triangles} can be worked with here. Export it with a coarser mesh.`,
    );
  }

  const view = viewOf(bytes);
  const corners = new Float32Array(9 * count);
  for (let facet = 0; facet < count; facet++) {
    const from = startOfFacets + bytesPerFacet * facet + cornersAt;
    const to = 9 * facet;
    for (let k = 0; k < 9; k++) corners[to + k] = view.getFloat32(from + 4 * k, true);
    if (facet % facetsPerReport === 0) onProgress?.(facet / count);
  }
  return { format: 'stl-binary', declaredUnit: null, corners, notes };
}

const viewOf = (bytes: Uint8Array) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
const declaredCount = (bytes: Uint8Array) => viewOf(bytes).getUint32(startOfFacets - 4, true);
