/**
 * A canonical mesh as text for localStorage and project files, and back, bit for bit.
 *
 * Facets go through the index codec of meshoptimizer, vertices through its vertex codec; both leave
 * runs that deflate shortens further.
 */
import { deflateSync, inflateSync } from 'fflate';
import { MeshoptDecoder } from 'meshoptimizer/decoder';
import { MeshoptEncoder } from 'meshoptimizer/encoder';
import { Problem } from '../problem';
import { sha256 } from '../sha256';
import { turnToSmallestFirst } from './canonicalMesh';
import { countsDoNotFit, packPayload, packText, readPackHeader } from './packHeader';
import { gridPosition } from './quantize';
import type { CanonicalMesh } from './canonicalMesh';
import type { IndexedMesh } from './types';

export { meshKey } from './meshKey';

/** Makes the codecs ready; once, before the first `packMesh` or `unpackMesh`. */
export async function preparePack(): Promise<void> {
  await Promise.all([MeshoptEncoder.ready, MeshoptDecoder.ready]);
}

export function packMesh(canonical: CanonicalMesh): string {
  const { mesh, grid, bits, errorFileUnits } = canonical;
  const vertexCount = mesh.positions.length / 3;
  const facetCount = mesh.facets.length / 3;
  const steps = new Int32Array(mesh.positions.length);
  for (let i = 0; i < steps.length; i++) {
    const axis = i % 3;
    const count =
      Math.round((mesh.positions[i] as number) * grid.stepsPerUnit) - (grid.origin[axis] as number);
    if (gridPosition(grid, axis, count) !== mesh.positions[i])
      throw new Error('packMesh takes a canonical mesh only');
    steps[i] = count;
  }
  const facetCode = MeshoptEncoder.encodeIndexBuffer(asBytes(mesh.facets), mesh.facets.length, 4);
  const vertexCode = MeshoptEncoder.encodeVertexBuffer(asBytes(steps), vertexCount, 12);
  const codes = new Uint8Array(4 + facetCode.length + vertexCode.length);
  new DataView(codes.buffer).setUint32(0, facetCode.length, true);
  codes.set(facetCode, 4);
  codes.set(vertexCode, 4 + facetCode.length);
  const payload = deflateSync(codes, { level: 6 });
  const header = {
    vertexCount,
    facetCount,
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
  const facets = new Uint32Array(3 * header.facetCount);
  const steps = new Int32Array(3 * header.vertexCount);
  try {
    const codes = inflateSync(payload);
    const facetBytes = new DataView(codes.buffer, codes.byteOffset).getUint32(0, true);
    MeshoptDecoder.decodeIndexBuffer(asBytes(facets), facets.length, 4, codes.subarray(4, 4 + facetBytes));
    MeshoptDecoder.decodeVertexBuffer(asBytes(steps), header.vertexCount, 12, codes.subarray(4 + facetBytes));
  } catch {
    // The checksum held, so the codes are whole; they are codes for other counts.
    throw countsDoNotFit();
  }
  for (const vertex of facets) if (vertex >= header.vertexCount) throw countsDoNotFit();
  turnToSmallestFirst(facets);
  const positions = new Float64Array(steps.length);
  for (let i = 0; i < steps.length; i++) positions[i] = gridPosition(header.grid, i % 3, steps[i] as number);
  return { positions, facets };
}

function checksumOf(payload: Uint8Array): number {
  return new DataView(sha256(payload).buffer).getUint32(0);
}

function asBytes(numbers: Uint32Array | Int32Array): Uint8Array {
  return new Uint8Array(numbers.buffer, numbers.byteOffset, numbers.byteLength);
}
