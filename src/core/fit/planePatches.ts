/** Plane patches of a mesh: connected facets that lie in one plane. */
import { dot, minus } from '../numeric/vectors';
import type { Vector3 } from '../numeric/matrix3';
import type { IndexedMesh } from '../mesh/types';

export interface PlanePatch {
  /** Unit normal of the facet that it grew from, outward. */
  readonly normal: Vector3;
  readonly facets: readonly number[];
  readonly areaMm2: number;
}

/** Facets lean by no more than this against the plane, */
const mostLeanCosine = Math.cos((1 * Math.PI) / 180);
/** and their corners stand no farther out of it. */
const mostOffMm = 0.03;

/** What of a facet is asked again and again. */
export interface FacetPlanes {
  /** 3 per facet, unit normal; zero for a facet without area. */
  readonly normals: Float64Array;
  readonly areasMm2: Float64Array;
}

export const cornerAt = ({ positions, facets }: IndexedMesh, corner: number): Vector3 => {
  const at = 3 * facets[corner]!;
  return [positions[at]!, positions[at + 1]!, positions[at + 2]!];
};

export const normalAt = (normals: Float64Array, facet: number): Vector3 => [
  normals[3 * facet]!,
  normals[3 * facet + 1]!,
  normals[3 * facet + 2]!,
];

export function facetPlanes({ positions, facets }: IndexedMesh): FacetPlanes {
  const count = facets.length / 3;
  const normals = new Float64Array(3 * count);
  const areasMm2 = new Float64Array(count);
  for (let facet = 0; facet < count; facet++) {
    const [a, b, c] = [3 * facets[3 * facet]!, 3 * facets[3 * facet + 1]!, 3 * facets[3 * facet + 2]!];
    const [ux, uy, uz] = [
      positions[b]! - positions[a]!,
      positions[b + 1]! - positions[a + 1]!,
      positions[b + 2]! - positions[a + 2]!,
    ];
    const [vx, vy, vz] = [
      positions[c]! - positions[a]!,
      positions[c + 1]! - positions[a + 1]!,
      positions[c + 2]! - positions[a + 2]!,
    ];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    areasMm2[facet] = length / 2;
    if (length === 0) continue;
    normals[3 * facet] = nx / length;
    normals[3 * facet + 1] = ny / length;
    normals[3 * facet + 2] = nz / length;
  }
  return { normals, areasMm2 };
}

/**
 * All plane patches among the facets that `isWanted` names. They grow from large facets first: the plane of a sliver is not its
 * neighbors' plane.
 * @param neighbor facet across each half-edge, negative for none
 */
export function planePatches(
  mesh: IndexedMesh,
  { normals, areasMm2 }: FacetPlanes,
  neighbor: Int32Array,
  isWanted: (facet: number) => boolean,
): readonly PlanePatch[] {
  const count = areasMm2.length;
  const taken = new Uint8Array(count);
  const patches: PlanePatch[] = [];
  const meanMm2 = areasMm2.reduce((sum, area) => sum + area, 0) / Math.max(1, count);
  const grow = (seed: number): void => {
    const normal = normalAt(normals, seed);
    const origin = cornerAt(mesh, 3 * seed);
    const lies = (facet: number): boolean => {
      if (dot(normalAt(normals, facet), normal) < mostLeanCosine && areasMm2[facet]! > 1e-9) return false;
      for (let corner = 3 * facet; corner < 3 * facet + 3; corner++)
        if (Math.abs(dot(minus(cornerAt(mesh, corner), origin), normal)) > mostOffMm) return false;
      return true;
    };
    const facets = [seed];
    taken[seed] = 1;
    let areaMm2 = 0;
    for (let at = 0; at < facets.length; at++) {
      const facet = facets[at]!;
      areaMm2 += areasMm2[facet]!;
      for (let halfEdge = 3 * facet; halfEdge < 3 * facet + 3; halfEdge++) {
        const other = neighbor[halfEdge]!;
        if (other < 0 || taken[other] === 1 || !lies(other)) continue;
        taken[other] = 1;
        facets.push(other);
      }
    }
    patches.push({ normal, facets, areaMm2 });
  };
  for (const leastMm2 of [meanMm2, 1e-9])
    for (let facet = 0; facet < count; facet++)
      if (taken[facet] === 0 && areasMm2[facet]! >= leastMm2 && isWanted(facet)) grow(facet);
  return patches;
}
