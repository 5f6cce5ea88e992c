import type { IndexedMesh, Vec3 } from './types';

/** Figures of groups of facets, one entry per group (boxes: 3). Units of the mesh. */
export interface GroupFigures {
  readonly facetCount: Uint32Array;
  /** Lowest facet number. */
  readonly firstFacet: Uint32Array;
  /** Signed; meaningful for a closed group only. */
  readonly volume: Float64Array;
  readonly area: Float64Array;
  readonly boxMin: Float64Array;
  readonly boxMax: Float64Array;
}

/**
 * Volume, area and box of every group (body or sheet) in one pass over the facets, however many groups there are.
 * Volumes are summed with the rounding error kept (Neumaier), about one corner of the mesh. Facets flagged 1 in
 * `turned` count as turned around.
 */
export function groupFigures(
  mesh: IndexedMesh,
  groupOfFacet: Uint32Array,
  groupCount: number,
  turned: Uint8Array,
): GroupFigures {
  const { positions, facets } = mesh;
  const facetCount = new Uint32Array(groupCount);
  const firstFacet = new Uint32Array(groupCount);
  const volume = new Float64Array(groupCount);
  const lost = new Float64Array(groupCount);
  const area = new Float64Array(groupCount);
  const boxMin = new Float64Array(3 * groupCount).fill(Infinity);
  const boxMax = new Float64Array(3 * groupCount).fill(-Infinity);
  const [originX, originY, originZ] = facets.length === 0 ? [0, 0, 0] : cornerAt(mesh, facets[0]!);

  for (let facet = groupOfFacet.length - 1; facet >= 0; facet--) {
    const group = groupOfFacet[facet]!;
    facetCount[group]!++;
    firstFacet[group] = facet;
    for (let corner = 3 * facet; corner < 3 * facet + 3; corner++) {
      const at = 3 * facets[corner]!;
      for (let axis = 0; axis < 3; axis++) {
        const coordinate = positions[at + axis]!;
        if (coordinate < boxMin[3 * group + axis]!) boxMin[3 * group + axis] = coordinate;
        if (coordinate > boxMax[3 * group + axis]!) boxMax[3 * group + axis] = coordinate;
      }
    }
    const a = 3 * facets[3 * facet]!;
    const b = 3 * facets[3 * facet + 1]!;
    const c = 3 * facets[3 * facet + 2]!;
    const ax = positions[a]!;
    const ay = positions[a + 1]!;
    const az = positions[a + 2]!;
    const ux = positions[b]! - ax;
    const uy = positions[b + 1]! - ay;
    const uz = positions[b + 2]! - az;
    const vx = positions[c]! - ax;
    const vy = positions[c + 1]! - ay;
    const vz = positions[c + 2]! - az;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    area[group]! += Math.sqrt(nx * nx + ny * ny + nz * nz) / 2;
    const sixth = ((ax - originX) * nx + (ay - originY) * ny + (az - originZ) * nz) / 6;
    const term = turned[facet] === 1 ? -sixth : sixth;
    const sum = volume[group]!;
    const next = sum + term;
    lost[group]! += Math.abs(sum) >= Math.abs(term) ? sum - next + term : term - next + sum;
    volume[group] = next;
  }
  for (let group = 0; group < groupCount; group++) volume[group]! += lost[group]!;
  return { facetCount, firstFacet, volume, area, boxMin, boxMax };
}

function cornerAt({ positions }: IndexedMesh, vertex: number): Vec3 {
  return [positions[3 * vertex]!, positions[3 * vertex + 1]!, positions[3 * vertex + 2]!];
}

/** The three entries of a group in a box array. */
export function boxCorner(box: Float64Array, group: number): Vec3 {
  return [box[3 * group]!, box[3 * group + 1]!, box[3 * group + 2]!];
}
