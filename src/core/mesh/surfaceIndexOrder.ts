import type { IndexedMesh } from './types';

/** A mesh whose facets stand along a space-filling curve, so that neighbors in space are neighbors in memory. */
export interface CurveOrder {
  /** 3 numbers per point. */
  readonly points: Float64Array<ArrayBuffer>;
  /** 3 point numbers per slot. */
  readonly corners: Uint32Array<ArrayBuffer>;
  /** Facet of the mesh that stands in each slot. */
  readonly facetOfSlot: Uint32Array;
}

const gridBits = 10;

/** Spreads the low 10 bits of a number so that two zero bits follow each. */
function spreadBits(value: number): number {
  let spread = value & 0x3ff;
  spread = (spread | (spread << 16)) & 0x030000ff;
  spread = (spread | (spread << 8)) & 0x0300f00f;
  spread = (spread | (spread << 4)) & 0x030c30c3;
  return (spread | (spread << 2)) & 0x09249249;
}

/**
 * Place of a cell along a Hilbert curve through a cube of 2^10 cells a side (Skilling 2004, Programming the Hilbert
 * curve): cells that follow each other along it always share a face, so that any run of it is compact.
 */
function hilbertCode(x: number, y: number, z: number): number {
  // Without branches: whether a bit is set is anyone's guess. `...Set` is all ones when it is.
  for (let place = gridBits - 1; place > 0; place--) {
    const below = (1 << place) - 1;
    x ^= below & -((x >>> place) & 1);
    const ySet = -((y >>> place) & 1);
    x ^= below & ySet;
    const withY = (x ^ y) & below & ~ySet;
    x ^= withY;
    y ^= withY;
    const zSet = -((z >>> place) & 1);
    x ^= below & zSet;
    const withZ = (x ^ z) & below & ~zSet;
    x ^= withZ;
    z ^= withZ;
  }
  y ^= x;
  z ^= y;
  // Each bit of `turn` is the parity of the bits of z above it.
  let turn = z ^ (z >>> 1);
  turn ^= turn >>> 2;
  turn ^= turn >>> 4;
  turn = (turn ^ (turn >>> 8)) >>> 1;
  return (spreadBits(x ^ turn) << 2) | (spreadBits(y ^ turn) << 1) | spreadBits(z ^ turn);
}

/** Slots sorted along the curve through the facet centers: three passes of a 10-bit radix sort. */
function curveOrder(mesh: IndexedMesh, boxMin: readonly number[], boxMax: readonly number[]): Uint32Array {
  const { positions, facets } = mesh;
  const facetCount = facets.length / 3;
  const widest = Math.max(boxMax[0]! - boxMin[0]!, boxMax[1]! - boxMin[1]!, boxMax[2]! - boxMin[2]!);
  const scale = widest > 0 ? (2 ** gridBits - 1) / (3 * widest) : 0;
  const codes = new Uint32Array(facetCount);
  for (let facet = 0; facet < facetCount; facet++) {
    const a = 3 * facets[3 * facet]!;
    const b = 3 * facets[3 * facet + 1]!;
    const c = 3 * facets[3 * facet + 2]!;
    codes[facet] = hilbertCode(
      Math.floor((positions[a]! + positions[b]! + positions[c]! - 3 * boxMin[0]!) * scale),
      Math.floor((positions[a + 1]! + positions[b + 1]! + positions[c + 1]! - 3 * boxMin[1]!) * scale),
      Math.floor((positions[a + 2]! + positions[b + 2]! + positions[c + 2]! - 3 * boxMin[2]!) * scale),
    );
  }
  let order = new Uint32Array(facetCount).map((_, slot) => slot);
  let sorted = new Uint32Array(facetCount);
  for (let shift = 0; shift < 3 * gridBits; shift += gridBits) {
    const starts = new Uint32Array(2 ** gridBits + 1);
    for (const code of codes) starts[((code >>> shift) & 0x3ff) + 1]!++;
    for (let digit = 0; digit < 2 ** gridBits; digit++) starts[digit + 1]! += starts[digit]!;
    for (const facet of order) sorted[starts[(codes[facet]! >>> shift) & 0x3ff]!++] = facet;
    [order, sorted] = [sorted, order];
  }
  return order;
}

/**
 * Puts the facets of a mesh along a Hilbert curve and numbers its points by first use. Also worth it for a mesh whose
 * facets already follow each other: in long strips, as a packed mesh has them, rays took up to six times as long and
 * balls twice, since the boxes over runs of slots are then long and thin.
 */
export function orderAlongCurve(
  mesh: IndexedMesh,
  boxMin: readonly number[],
  boxMax: readonly number[],
): CurveOrder {
  const facetOfSlot = curveOrder(mesh, boxMin, boxMax);
  const points = new Float64Array(mesh.positions.length);
  const corners = new Uint32Array(mesh.facets.length);
  const newNumber = new Uint32Array(mesh.positions.length / 3); // plus one; 0 = not seen yet
  let seen = 0;
  for (let slot = 0; slot < facetOfSlot.length; slot++) {
    for (let corner = 0; corner < 3; corner++) {
      const vertex = mesh.facets[3 * facetOfSlot[slot]! + corner]!;
      if (newNumber[vertex] === 0) {
        for (let axis = 0; axis < 3; axis++) points[3 * seen + axis] = mesh.positions[3 * vertex + axis]!;
        newNumber[vertex] = ++seen;
      }
      corners[3 * slot + corner] = newNumber[vertex]! - 1;
    }
  }
  return { points, corners, facetOfSlot };
}
