/**
 * Sweeps along the pull that make what a field describes release: in the direction of the pull the distance to the outside may
 * only fall, by at least sin(draft) per mm. A cone of half-angle d in a cone of half-angle d is that cone, so what one sweep
 * leaves is the largest body that releases, and offsetting it by balls changes nothing about that.
 */
import type { PatternGrid } from './grid';

/** Everything under a place is at most as far from the surface; below the rim it flares, so that the lowest layer has its draft. */
export function fillBelow(
  { countX, countY, countZ, layerMm, rimLayer }: PatternGrid,
  fieldMm: Float32Array,
  sinDraft: number,
  sinBelowRim: number,
): void {
  const plane = countX * countY;
  for (let k = countZ - 2; k >= 0; k--) {
    const fall = layerMm * (k >= rimLayer ? sinDraft : sinBelowRim);
    for (let node = k * plane; node < (k + 1) * plane; node++) {
      const above = fieldMm[node + plane]! - fall;
      if (above < fieldMm[node]!) fieldMm[node] = above;
    }
  }
}

/** The depth inside a body, drawn in towards the top with the rim as it is; below the rim the walls run on as they lean. */
export function drawIn(
  { countX, countY, countZ, layerMm, rimLayer }: PatternGrid,
  depthMm: Float32Array,
  sinDraft: number,
): void {
  const plane = countX * countY;
  const fall = layerMm * sinDraft;
  for (let k = rimLayer - 1; k >= 0; k--)
    for (let node = k * plane; node < (k + 1) * plane; node++) depthMm[node] = depthMm[node + plane]! + fall;
  for (let k = rimLayer + 1; k < countZ; k++) {
    for (let node = k * plane; node < (k + 1) * plane; node++) {
      const below = depthMm[node - plane]! - fall;
      if (below < depthMm[node]!) depthMm[node] = below;
    }
  }
}
