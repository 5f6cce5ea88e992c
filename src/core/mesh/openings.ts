import { pending, wall } from './kindWork';
import { labelRegions } from './regions';
import { side, type FacetFindings } from './skinSides';
import { facetKind } from './types';

/** A through-opening whose wall differs by more than this from the usual one is the land of a window or bore. */
const openingWallShare = 0.3;

/**
 * Marks the insides of bores: upright regions that both halves reach and that look inward (a hole) are lands when the
 * wall behind them is not the usual one; then the outside of the boss is no wall either.
 */
export function markOpenings(
  findings: FacetFindings,
  sides: Int8Array,
  kind: Uint8Array,
  usualMm: number,
): void {
  const { rayWallMm, rayFacet, neighbor, reach, geometry } = findings;
  const { areaMm2, centerMm, normal } = geometry;
  const throughWall = new Uint8Array(kind.length);
  for (let facet = 0; facet < kind.length; facet++) {
    if (kind[facet] === wall && reach[facet] === 3) throughWall[facet] = 1;
  }
  const { label, count } = labelRegions(throughWall, neighbor);
  if (count === 0) return;
  // Sums per region: area, center times area (3), n . c times area, n times area (3), wall times area.
  const fields = 9;
  const sums = new Float64Array(count * fields);
  for (let facet = 0; facet < kind.length; facet++) {
    const region = label[facet]!;
    if (region < 0) continue;
    const at = region * fields;
    const area = areaMm2[facet]!;
    sums[at] = sums[at]! + area;
    for (let axis = 0; axis < 3; axis++) {
      const n = normal[3 * facet + axis]! * area;
      const c = centerMm[3 * facet + axis]!;
      sums[at + 1 + axis] = sums[at + 1 + axis]! + c * area;
      sums[at + 4] = sums[at + 4]! + n * c;
      sums[at + 5 + axis] = sums[at + 5 + axis]! + n;
    }
    sums[at + 8] = sums[at + 8]! + rayWallMm[facet]! * area;
  }
  const isLand = new Uint8Array(count);
  for (let region = 0; region < count; region++) {
    const at = region * fields;
    const area = sums[at]!;
    let outward = sums[at + 4]!;
    for (let axis = 0; axis < 3; axis++) outward -= (sums[at + 5 + axis]! * sums[at + 1 + axis]!) / area;
    const meanWallMm = sums[at + 8]! / area;
    if (outward < 0 && Math.abs(meanWallMm - usualMm) > openingWallShare * usualMm) isLand[region] = 1;
  }
  for (let facet = 0; facet < kind.length; facet++) {
    if (label[facet]! >= 0 && isLand[label[facet]!] === 1) kind[facet] = facetKind.rim;
  }
  for (let facet = 0; facet < kind.length; facet++) {
    if (kind[facet] === wall && sides[facet] === side.core && kind[rayFacet[facet]!] === facetKind.rim) {
      kind[facet] = pending;
    }
  }
}
