/**
 * A canonical mesh as text for localStorage and project files, and back, bit for bit.
 *
 * Facets go through the index codec of meshoptimizer, vertices as differences from their guesses
 * (vertexPrediction.ts), byte planes apart; deflate shortens both.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { deflateSync } from 'fflate';
import { MeshoptDecoder } from 'meshoptimizer/decoder';
import { MeshoptEncoder } from 'meshoptimizer/encoder';
import { inflateSteps } from '../inflateSteps';
import { Problem } from '../problem';
import { turnToSmallestFirst } from './canonicalMesh';
import { countsDoNotFit, packPayload, packText, readPackHeader, type PackHeader } from './packHeader';
import { gridPosition } from './quantize';
import { limits } from './limits';
import { differencesFromGuesses, stepsFromDifferences } from './vertexPrediction';
import type { CanonicalMesh } from './canonicalMesh';
import type { IndexedMesh } from './types';

/** Makes the codecs ready; once, before the first `canonicalMesh`, `packMesh` or `unpackMesh`. */
export async function preparePack(): Promise<void> {
  await Promise.all([MeshoptEncoder.ready, MeshoptDecoder.ready]);
}

export function packMesh(canonical: CanonicalMesh): string {
  const { mesh, grid, bits, errorFileUnits } = canonical;
  const facetCode = MeshoptEncoder.encodeIndexBuffer(asBytes(mesh.facets), mesh.facets.length, 4);
  const vertexCode = toPlanes(differencesFromGuesses(mesh.facets, stepsOf(canonical)));
  const codes = new Uint8Array(vertexCode.length + facetCode.length);
  codes.set(vertexCode);
  codes.set(facetCode, vertexCode.length);
  const payload = deflateSync(codes, { level: 6 });
  const header = {
    vertexCount: mesh.positions.length / 3,
    facetCount: mesh.facets.length / 3,
    grid,
    bits,
    errorFileUnits,
    payloadBytes: payload.length,
    checksum: checksumOf(payload),
  };
  return packText(header, payload);
}

/**
 * @throws Problem `pack.notAMesh`, `pack.newer`, `pack.truncated`, `pack.counts` or `pack.damaged`
 */
export function unpackMesh(packed: string): IndexedMesh {
  const header = readPackHeader(packed);
  const payload = packPayload(packed, header);
  if (checksumOf(payload) !== header.checksum) {
    throw new Problem(
      'pack.damaged',
      'The saved model is damaged: its checksum does not match. Import the model file again.',
    );
  }
  const planeBytes = 12 * header.vertexCount;
  const codes = inflatedCodes(payload, header);
  const facets = new Uint32Array(3 * header.facetCount);
  try {
    MeshoptDecoder.decodeIndexBuffer(asBytes(facets), facets.length, 4, codes.subarray(planeBytes));
  } catch {
    // The checksum held, so the codes are whole; they are codes for other counts.
    throw countsDoNotFit();
  }
  for (const vertex of facets) if (vertex >= header.vertexCount) throw countsDoNotFit();
  turnToSmallestFirst(facets);
  const steps = stepsFromDifferences(facets, fromPlanes(codes.subarray(0, planeBytes)));
  const positions = new Float64Array(steps.length);
  for (let i = 0; i < steps.length; i++) positions[i] = gridPosition(header.grid, i % 3, steps[i] as number);
  checkSize(positions);
  return { positions, facets };
}

/** The reader takes no larger models, so none was ever saved; twice as large, since a grid moves corners a little. */
function checkSize(positions: Float64Array): void {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i++) {
    const axis = i % 3;
    low[axis] = Math.min(low[axis]!, positions[i]!);
    high[axis] = Math.max(high[axis]!, positions[i]!);
  }
  const diagonal = Math.hypot(...high.map((most, axis) => most - low[axis]!));
  if (!(diagonal <= 2 * limits.largestDiagonal)) {
    throw new Problem(
      'pack.damaged',
      'The saved model is damaged: no model is as large as it says. Import the model file again.',
    );
  }
}

/** What the index codec takes for a facet, at least and at most, and for its head and tail, bytes (its bound, version 1). */
const [leastFacetBytes, mostFacetBytes, codecEndBytes] = [1, 16, 32] as const;

/** No more than the header's counts can need is ever unpacked, and nothing is laid out for counts that the codes cannot hold. */
function inflatedCodes(payload: Uint8Array, { vertexCount, facetCount }: PackHeader): Uint8Array {
  const planeBytes = 12 * vertexCount;
  const mostBytes = planeBytes + mostFacetBytes * facetCount + codecEndBytes;
  let codes: Uint8Array | null;
  try {
    codes = inflateSteps(payload, (_, wholeBytes) => {
      if (wholeBytes > mostBytes) throw countsDoNotFit();
    });
  } catch {
    throw countsDoNotFit();
  }
  if (codes === null || codes.length < planeBytes + leastFacetBytes * facetCount) throw countsDoNotFit();
  return codes;
}

/** Whole steps from the grid's origin, 3 per vertex. */
function stepsOf({ mesh, grid }: CanonicalMesh): Int32Array {
  const steps = new Int32Array(mesh.positions.length);
  for (let i = 0; i < steps.length; i++) {
    const axis = i % 3;
    const position = mesh.positions[i] as number;
    const count = Math.round(position * grid.stepsPerUnit) - (grid.origin[axis] as number);
    if (gridPosition(grid, axis, count) !== position) throw new Error('packMesh takes a canonical mesh only');
    steps[i] = count;
  }
  return steps;
}

/** Lowest bytes of all numbers first, then the next: the upper planes are mostly zeros. */
function toPlanes(numbers: Uint32Array): Uint8Array {
  const count = numbers.length;
  const planes = new Uint8Array(4 * count);
  for (let i = 0; i < count; i++) {
    const number = numbers[i] as number;
    for (let plane = 0; plane < 4; plane++) planes[plane * count + i] = number >>> (8 * plane);
  }
  return planes;
}

function fromPlanes(planes: Uint8Array): Uint32Array {
  const count = planes.length / 4;
  const numbers = new Uint32Array(count);
  for (let i = 0; i < count; i++) {
    let number = 0;
    for (let plane = 3; plane >= 0; plane--) number = (number << 8) | (planes[plane * count + i] as number);
    numbers[i] = number;
  }
  return numbers;
}

function checksumOf(payload: Uint8Array): number {
  return new DataView(sha256(payload).buffer).getUint32(0);
}

function asBytes(numbers: Uint32Array): Uint8Array {
  return new Uint8Array(numbers.buffer, numbers.byteOffset, numbers.byteLength);
}
