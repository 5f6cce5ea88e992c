/** How far each facet of a made shell leans away from the pull, on the side that it is released to. */
import type { IndexedMesh } from '../mesh/types';

/** A made shell in the frame of the pattern. */
export interface Shell {
  readonly mesh: IndexedMesh;
  /** Vertices from here on belong to the core face or to the land. */
  readonly coreFrom: number;
  readonly rimMm: number;
}

/** Of a facet in the rim plane. */
export const onRim = Infinity;

export interface FacetLeans {
  readonly areaMm2: Float64Array;
  /** Draft as asin(n · pull) for the show face and asin(-n · pull) for the core face, degrees; `onRim` for the land. */
  readonly draftDeg: Float64Array;
  /** 1 for the core face. */
  readonly isCore: Uint8Array;
}

/**
 * Draft of every facet, in the frame of the pattern.
 */
export function facetLeans({ mesh: { positions, facets }, coreFrom, rimMm }: Shell): FacetLeans {
  const count = facets.length / 3;
  const areaMm2 = new Float64Array(count);
  const draftDeg = new Float64Array(count);
  const isCore = new Uint8Array(count);
  const isAtRim = (at: number) => Math.abs(positions[at + 2]! - rimMm) < 1e-5;
  for (let f = 0; f < count; f++) {
    const [a, b, c] = [3 * facets[3 * f]!, 3 * facets[3 * f + 1]!, 3 * facets[3 * f + 2]!];
    const ux = positions[b]! - positions[a]!;
    const uy = positions[b + 1]! - positions[a + 1]!;
    const uz = positions[b + 2]! - positions[a + 2]!;
    const vx = positions[c]! - positions[a]!;
    const vy = positions[c + 1]! - positions[a + 1]!;
    const vz = positions[c + 2]! - positions[a + 2]!;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    areaMm2[f] = length / 2;
    isCore[f] = facets[3 * f]! >= coreFrom ? 1 : 0;
    if (length === 0 || (isAtRim(a) && isAtRim(b) && isAtRim(c))) draftDeg[f] = onRim;
    else draftDeg[f] = (Math.asin(((isCore[f] === 1 ? -1 : 1) * nz) / length) * 180) / Math.PI;
  }
  return { areaMm2, draftDeg, isCore };
}

export function centerOf({ positions, facets }: IndexedMesh, f: number): [number, number, number] {
  const center: [number, number, number] = [0, 0, 0];
  for (let corner = 0; corner < 3; corner++)
    for (let axis = 0; axis < 3; axis++) center[axis]! += positions[3 * facets[3 * f + corner]! + axis]! / 3;
  return center;
}
