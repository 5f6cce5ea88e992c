import { halfEdgeLength } from '../../mesh/edgeTurns';
import { castRay } from '../../mesh/rayWall';
import type { SurfaceIndex } from '../../mesh/surfaceIndex';
import type { IndexedMesh, Vec3 } from '../../mesh/types';
import { leastStoneMm } from './leastStone';

/** Sharp outside edges of one half: stone that chips first. */
export interface KnifeEdges {
  readonly lengthMm: number;
  /** Smallest angle of stone between the two faces of such an edge, degrees. */
  readonly sharpestDeg: number;
  readonly atMm: Vec3;
}

/** An edge with less stone than this between its faces is a knife edge: our own judgement. */
const knifeDeg = 60;
/** Shorter edges than this share of the diagonal are too small to tell their angle. */
const leastEdgeShare = 1e-4;

/**
 * Edges with little stone between their faces. One whose faces end before they are `leastStoneMm` apart is no edge of
 * the half but a flake or a wrinkle of the cut: it is left out of the length, not of `onKnife`.
 * @param turnRad per half-edge, of `edgeTurns`
 * @param normal per facet
 */
export function findKnifeEdges(
  mesh: IndexedMesh,
  index: SurfaceIndex,
  neighbor: Int32Array,
  turnRad: Float32Array,
  normal: Float32Array,
): { readonly onKnife: Uint8Array; readonly knifeEdges: KnifeEdges | null } {
  const { positions, facets } = mesh;
  const leastMm = leastEdgeShare * index.diagonalMm;
  const onKnife = new Uint8Array(facets.length / 3);
  const knifeTurnRad = Math.PI * (1 - knifeDeg / 180);
  let lengthMm = 0;
  let sharpest = -1;
  for (let halfEdge = 0; halfEdge < turnRad.length; halfEdge++) {
    if (!(turnRad[halfEdge]! > knifeTurnRad)) continue;
    onKnife[(halfEdge / 3) | 0] = 1;
    const edgeMm = halfEdgeLength(mesh, halfEdge);
    if (edgeMm < leastMm || !widens(halfEdge)) continue;
    // Both of its half-edges come by.
    lengthMm += edgeMm / 2;
    if (sharpest < 0 || turnRad[halfEdge]! > turnRad[sharpest]!) sharpest = halfEdge;
  }
  if (sharpest < 0) return { onKnife, knifeEdges: null };
  const corner = 3 * facets[sharpest]!;
  const sharpestDeg = 180 - (turnRad[sharpest]! * 180) / Math.PI;
  return {
    onKnife,
    knifeEdges: {
      lengthMm,
      sharpestDeg,
      atMm: [positions[corner]!, positions[corner + 1]!, positions[corner + 2]!],
    },
  };

  /** Whether both faces of an edge reach on to where they are `leastStoneMm` apart, with stone between them. */
  function widens(halfEdge: number): boolean {
    const one = 3 * ((halfEdge / 3) | 0);
    const other = 3 * neighbor[halfEdge]!;
    const halfAngleRad = (Math.PI - turnRad[halfEdge]!) / 2;
    const inMm = leastStoneMm / 2 / Math.tan(halfAngleRad);
    const faceMm = inMm * Math.sin(halfAngleRad);
    const from = 3 * facets[halfEdge]!;
    const to = 3 * facets[halfEdge % 3 === 2 ? halfEdge - 2 : halfEdge + 1]!;
    const [ax, ay, az] = [normal[one]!, normal[one + 1]!, normal[one + 2]!];
    const [bx, by, bz] = [normal[other]!, normal[other + 1]!, normal[other + 2]!];
    const sum = Math.hypot(ax + bx, ay + by, az + bz);
    if (!(sum > 0)) return false;
    const origin: Vec3 = [
      (positions[from]! + positions[to]!) / 2 - (inMm * (ax + bx)) / sum,
      (positions[from + 1]! + positions[to + 1]!) / 2 - (inMm * (ay + by)) / sum,
      (positions[from + 2]! + positions[to + 2]!) / 2 - (inMm * (az + bz)) / sum,
    ];
    return isFaceAhead(origin, [ax, ay, az], faceMm) && isFaceAhead(origin, [bx, by, bz], faceMm);
  }

  /** Whether a ray out of stone comes through a face at about the given distance. */
  function isFaceAhead(origin: Vec3, direction: Vec3, faceMm: number): boolean {
    const hit = castRay(index, origin, direction);
    if (hit === null || Math.abs(hit.distanceMm - faceMm) > faceMm / 2) return false;
    const at = 3 * hit.facet;
    return normal[at]! * direction[0] + normal[at + 1]! * direction[1] + normal[at + 2]! * direction[2] > 0;
  }
}
