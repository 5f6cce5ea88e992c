/**
 * A ply is stiff over its own thickness: it bridges a crumb of the mesh smaller than that, so such a facet carries what
 * the wall round it carries, not the crushing strength of stone over a few hundredths of a square millimeter.
 */
import type { Measurement } from '../mesh/types';

/** About the thickness of one ply; facets of less area than its square are bridged (common practice). */
const bridgedMm = 0.25;
const bridgedMm2 = bridgedMm ** 2;
/** Crumbs lie beside crumbs: so many rounds of neighbors are taken in. */
const rounds = 2;

/** Walls in mm per facet, crumbs at the mean of themselves and their neighbors by area; 0 and NaN stay as they are. */
export function bridgedWalls(
  { areaMm2, neighbor }: Pick<Measurement, 'areaMm2' | 'neighbor'>,
  wallMm: Float32Array,
): Float32Array {
  let walls = wallMm;
  for (let round = 0; round < rounds; round++) {
    const before = walls;
    const next = before.slice();
    let any = false;
    for (let facet = 0; facet < next.length; facet++) {
      const own = areaMm2[facet]!;
      if (own >= bridgedMm2 || !(before[facet]! > 0)) continue;
      let area = own;
      let sum = own * before[facet]!;
      for (let edge = 3 * facet; edge < 3 * facet + 3; edge++) {
        const other = neighbor[edge]!;
        if (other < 0 || !(before[other]! > 0)) continue;
        area += areaMm2[other]!;
        sum += areaMm2[other]! * before[other]!;
      }
      next[facet] = sum / area;
      any = true;
    }
    if (!any) return walls;
    walls = next;
  }
  return walls;
}
