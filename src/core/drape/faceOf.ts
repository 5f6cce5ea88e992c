/** The face of a measured part that a ply lies on, seen from the side of the mold half that forms the show face. */
import { Problem } from '../problem';
import { facetKind, reachBit, type IndexedMesh, type Measurement } from '../mesh/types';

export type FaceSide = 'show' | 'core';

type Measured = Pick<Measurement, 'reach' | 'kind' | 'draftDeg'>;

/** Steeper against its own half than this is not that half's face: rounding of files. */
const draftSlackDeg = 0.05;

/**
 * The largest connected piece of the face; its facets are wound as the show face is, so that left and right are the same on both.
 * @param twin `twinsOf` the mesh
 * @throws Problem `drape.noFace`
 */
export function faceOf(
  mesh: IndexedMesh,
  twin: Int32Array,
  { reach, kind, draftDeg }: Measured,
  side: FaceSide,
): IndexedMesh {
  const { facets } = mesh;
  const [bit, sign, others] =
    side === 'show'
      ? [reachBit.fromShowSide, 1, facetKind.core]
      : [reachBit.fromCoreSide, -1, facetKind.show];
  const wanted: number[] = [];
  for (let facet = 0; facet < facets.length / 3; facet++)
    if (
      (reach[facet]! & bit) !== 0 &&
      sign * draftDeg[facet]! > -draftSlackDeg &&
      kind[facet] !== facetKind.rim &&
      kind[facet] !== others
    )
      wanted.push(facet);
  const piece = largestPiece(mesh, twin, wanted);
  if (piece.length === 0)
    throw new Problem(
      'drape.noFace',
      `No ${side} face is found along this pull, so there is nothing to lay a ply on. Turn the pull at Part, or make the pattern at Pattern first.`,
    );
  return ofFacets(mesh, piece, side === 'core');
}

function largestPiece(mesh: IndexedMesh, twin: Int32Array, wanted: readonly number[]): readonly number[] {
  const piece = new Int32Array(mesh.facets.length / 3).fill(-2);
  for (const facet of wanted) piece[facet] = -1;
  let best: readonly number[] = [];
  let bestMm2 = 0;
  for (const first of wanted) {
    if (piece[first] !== -1) continue;
    const own = [first];
    piece[first] = first;
    let areaMm2 = 0;
    for (let at = 0; at < own.length; at++) {
      const facet = own[at]!;
      areaMm2 += areaOf(mesh, facet);
      for (let h = 3 * facet; h < 3 * facet + 3; h++) {
        const across = twin[h]! < 0 ? -1 : Math.floor(twin[h]! / 3);
        if (across < 0 || piece[across] !== -1) continue;
        piece[across] = first;
        own.push(across);
      }
    }
    if (areaMm2 > bestMm2) [best, bestMm2] = [own, areaMm2];
  }
  return best;
}

function areaOf({ positions, facets }: IndexedMesh, facet: number): number {
  return Math.hypot(...normalOf(positions, facets, facet)) / 2;
}

function ofFacets(
  { positions, facets }: IndexedMesh,
  chosen: readonly number[],
  turned: boolean,
): IndexedMesh {
  const vertexOf = new Int32Array(positions.length / 3).fill(-1);
  const points: number[] = [];
  const corners = new Uint32Array(3 * chosen.length);
  chosen.forEach((facet, at) => {
    for (let k = 0; k < 3; k++) {
      const vertex = facets[3 * facet + (turned ? 2 - k : k)]!;
      let own = vertexOf[vertex]!;
      if (own < 0) {
        own = points.length / 3;
        vertexOf[vertex] = own;
        for (let axis = 0; axis < 3; axis++) points.push(positions[3 * vertex + axis]!);
      }
      corners[3 * at + k] = own;
    }
  });
  return { positions: Float64Array.from(points), facets: corners };
}

/** Longest way of a corner's vertex, in depths. */
const longestMiter = 1.5;
const foldRounds = 8;

/**
 * The face moved along its normals, less where it would fold.
 * @param ways `vertexWays` of the face
 * @param depthMm towards the core; negative towards the show side
 */
export function movedIn(face: IndexedMesh, ways: Float64Array, depthMm: number): IndexedMesh {
  if (depthMm === 0) return face;
  const { positions, facets } = face;
  const share = new Float64Array(positions.length / 3).fill(1);
  const moved = new Float64Array(positions.length);
  for (let round = 0; round < foldRounds; round++) {
    for (let at = 0; at < positions.length; at++)
      moved[at] = positions[at]! - depthMm * share[Math.floor(at / 3)]! * ways[at]!;
    let folds = 0;
    for (let facet = 0; facet < facets.length / 3; facet++) {
      const before = normalOf(positions, facets, facet);
      const after = normalOf(moved, facets, facet);
      const same = before[0] * after[0] + before[1] * after[1] + before[2] * after[2];
      if (same > 0.5 * Math.hypot(...before) * Math.hypot(...after)) continue;
      folds++;
      for (let k = 0; k < 3; k++) {
        const vertex = facets[3 * facet + k]!;
        share[vertex] = round === foldRounds - 2 ? 0 : share[vertex]! / 2;
      }
    }
    if (folds === 0) break;
  }
  return { positions: moved, facets };
}

/** As long as twice the area. */
function normalOf(positions: Float64Array, facets: Uint32Array, facet: number): [number, number, number] {
  const a = 3 * facets[3 * facet]!;
  const b = 3 * facets[3 * facet + 1]!;
  const c = 3 * facets[3 * facet + 2]!;
  const ux = positions[b]! - positions[a]!;
  const uy = positions[b + 1]! - positions[a + 1]!;
  const uz = positions[b + 2]! - positions[a + 2]!;
  const vx = positions[c]! - positions[a]!;
  const vy = positions[c + 1]! - positions[a + 1]!;
  const vz = positions[c + 2]! - positions[a + 2]!;
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}

/** 3 per vertex: mean normal of its facets by their angle there, so long that flat neighbors move by the depth. */
export function vertexWays({ positions, facets }: IndexedMesh): Float64Array {
  const sum = new Float64Array(positions.length);
  for (let facet = 0; facet < facets.length / 3; facet++) {
    const normal = normalOf(positions, facets, facet);
    const size = Math.hypot(...normal);
    if (size === 0) continue;
    for (let k = 0; k < 3; k++) {
      const at = 3 * facets[3 * facet + k]!;
      const b = 3 * facets[3 * facet + ((k + 1) % 3)]!;
      const c = 3 * facets[3 * facet + ((k + 2) % 3)]!;
      let dot = 0;
      for (let x = 0; x < 3; x++)
        dot += (positions[b + x]! - positions[at + x]!) * (positions[c + x]! - positions[at + x]!);
      const angle = Math.atan2(size, dot);
      for (let x = 0; x < 3; x++) sum[at + x]! += (angle * normal[x]!) / size;
    }
  }
  const ways = sum.slice();
  for (let at = 0; at < sum.length; at += 3) {
    const size = Math.hypot(sum[at]!, sum[at + 1]!, sum[at + 2]!) || 1;
    for (let x = 0; x < 3; x++) ways[at + x] = sum[at + x]! / size;
  }
  // Off a corner by 1 over the cosine to its facets.
  const least = new Float64Array(sum.length / 3).fill(1);
  for (let facet = 0; facet < facets.length / 3; facet++) {
    const normal = normalOf(positions, facets, facet);
    const size = Math.hypot(...normal) || 1;
    for (let k = 0; k < 3; k++) {
      const vertex = facets[3 * facet + k]!;
      let cos = 0;
      for (let x = 0; x < 3; x++) cos += (normal[x]! / size) * ways[3 * vertex + x]!;
      least[vertex] = Math.min(least[vertex]!, Math.max(1 / longestMiter, cos));
    }
  }
  return ways.map((way, at) => way / least[Math.floor(at / 3)]!);
}
