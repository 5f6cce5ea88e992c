/**
 * A triangle mesh to lay cloth on. Each facet has a plane frame of its own: origin in its first corner, x along its first edge, y to
 * the left, seen from the side that the cloth is seen from. What walks over an edge is carried from frame to frame.
 */
import { buildAdjacency } from '../mesh/adjacency';
import type { IndexedMesh } from '../mesh/types';

/** What a facet is to the ply. */
export const region = {
  /** The face that is laid. */
  face: 0,
  /** Past the rim, still cut from the cloth. */
  allowance: 1,
  /** Past what is cut: only for the net to run out on. */
  beyond: 2,
  /** Cover of a hole in the face. */
  hole: 3,
} as const;

export interface DrapeSurface extends IndexedMesh {
  /** Per half-edge: the half-edge on the other side, -1 for none. */
  readonly twin: Int32Array;
  /** 3 per facet: length of its first edge, then x and y of its third corner. */
  readonly frame: Float64Array;
  /** 6 per facet: its x and y axes as unit vectors. */
  readonly axes: Float64Array;
  /** `region` value per facet. */
  readonly region: Uint8Array;
  /** Vertices around what is cut, with the cloth on their left. */
  readonly rim: Int32Array;
  /** Vertices around each hole, with the hole on their right. */
  readonly holes: readonly Int32Array[];
  readonly faceAreaMm2: number;
  readonly holesAreaMm2: number;
}

type Parts = Pick<DrapeSurface, 'region' | 'rim' | 'holes'>;

/** @param twin of the mesh, where it is known already: it is the same for every mesh of the same facets */
export function drapeSurface(mesh: IndexedMesh, parts: Parts, twin = twinsOf(mesh)): DrapeSurface {
  const { frame, axes } = framesOf(mesh);
  let faceAreaMm2 = 0;
  let holesAreaMm2 = 0;
  for (let facet = 0; facet < parts.region.length; facet++) {
    const areaMm2 = 0.5 * frame[3 * facet]! * frame[3 * facet + 2]!;
    if (parts.region[facet] === region.face) faceAreaMm2 += areaMm2;
    if (parts.region[facet] === region.hole) holesAreaMm2 += areaMm2;
  }
  return { ...mesh, ...parts, twin, frame, axes, faceAreaMm2, holesAreaMm2 };
}

/** The half-edge across each half-edge; -1 where there is none, or where facets do not agree on the side. */
export function twinsOf(mesh: IndexedMesh): Int32Array {
  const { facets } = mesh;
  const { neighbor, sameWay } = buildAdjacency(mesh);
  const twin = new Int32Array(facets.length).fill(-1);
  for (let h = 0; h < facets.length; h++) {
    const across = neighbor[h]!;
    if (across < 0 || sameWay[h] === 1) continue;
    const from = facets[h % 3 === 2 ? h - 2 : h + 1];
    const to = facets[h];
    for (let k = 3 * across; k < 3 * across + 3; k++)
      if (facets[k] === from && facets[k % 3 === 2 ? k - 2 : k + 1] === to) twin[h] = k;
  }
  return twin;
}

function framesOf({ positions, facets }: IndexedMesh): { frame: Float64Array; axes: Float64Array } {
  const count = facets.length / 3;
  const frame = new Float64Array(3 * count);
  const axes = new Float64Array(6 * count);
  for (let f = 0; f < count; f++) {
    const a = 3 * facets[3 * f]!;
    const b = 3 * facets[3 * f + 1]!;
    const c = 3 * facets[3 * f + 2]!;
    const ex = positions[b]! - positions[a]!;
    const ey = positions[b + 1]! - positions[a + 1]!;
    const ez = positions[b + 2]! - positions[a + 2]!;
    const gx = positions[c]! - positions[a]!;
    const gy = positions[c + 1]! - positions[a + 1]!;
    const gz = positions[c + 2]! - positions[a + 2]!;
    const lengthMm = Math.sqrt(ex * ex + ey * ey + ez * ez);
    const share = (ex * gx + ey * gy + ez * gz) / (lengthMm * lengthMm);
    const hx = gx - share * ex;
    const hy = gy - share * ey;
    const hz = gz - share * ez;
    const heightMm = Math.sqrt(hx * hx + hy * hy + hz * hz);
    frame[3 * f] = lengthMm;
    frame[3 * f + 1] = share * lengthMm;
    frame[3 * f + 2] = heightMm;
    axes[6 * f] = ex / lengthMm;
    axes[6 * f + 1] = ey / lengthMm;
    axes[6 * f + 2] = ez / lengthMm;
    if (heightMm === 0) continue;
    axes[6 * f + 3] = hx / heightMm;
    axes[6 * f + 4] = hy / heightMm;
    axes[6 * f + 5] = hz / heightMm;
  }
  return { frame, axes };
}

/** A place on the surface, in the frame of its facet. */
export interface Place {
  facet: number;
  x: number;
  y: number;
}

/** Writes the point of a place into `points` from entry `at` on. */
export function writePoint(
  { positions, facets, axes }: DrapeSurface,
  { facet, x, y }: Place,
  points: Float64Array,
  at: number,
): void {
  const first = 3 * facets[3 * facet]!;
  for (let k = 0; k < 3; k++)
    points[at + k] = positions[first + k]! + x * axes[6 * facet + k]! + y * axes[6 * facet + 3 + k]!;
}
