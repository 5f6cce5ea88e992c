import type { FacetGeometry } from './facetGeometry';
import type { IndexedMesh, Vec3 } from './types';

/** Pixels along each side of the picture. */
export const pictureSide = 256;

/** The part seen from both ends of a direction, as two depth pictures. */
export interface DepthPictures {
  /** Area that neither end sees, mm2, and the area looked at. */
  readonly trappedMm2: number;
  readonly lookedAtMm2: number;
  /** Highest (and lowest) place along the direction at each pixel, mm; `-Infinity` (`Infinity`) where nothing stands. */
  readonly top: Float32Array;
  readonly bottom: Float32Array;
}

/**
 * A quick look at how much of a part neither end of a straight pull reaches, for ranking directions. Facets are drawn
 * into 256 x 256 depth pictures; each facet center, moved out of the surface by a pixel, is then held against them.
 * It misses undercuts smaller than a pixel or two: confirm the best directions with `measureReach`.
 * @param direction unit vector
 * @param facetStep look at every so many-th facet; facets that are left out must be small against a pixel
 */
export function lookAlong(
  mesh: IndexedMesh,
  geometry: FacetGeometry,
  direction: Vec3,
  facetStep: number,
): DepthPictures {
  const { positions, facets } = mesh;
  const { areaMm2, normal, centerMm } = geometry;
  const [dx, dy, dz] = direction;
  const [across, up] = planeAxes(direction);
  const pointCount = positions.length / 3;

  // Corners in picture coordinates: right, up, depth along the direction.
  const seen = new Float32Array(pointCount * 3);
  let [minU, minV, minW, maxU, maxV, maxW] = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
  for (let at = 0; at < positions.length; at += 3) {
    const x = positions[at]!;
    const y = positions[at + 1]!;
    const z = positions[at + 2]!;
    const u = x * across[0] + y * across[1] + z * across[2];
    const v = x * up[0] + y * up[1] + z * up[2];
    const w = x * dx + y * dy + z * dz;
    seen[at] = u;
    seen[at + 1] = v;
    seen[at + 2] = w;
    if (u < minU) minU = u;
    if (u > maxU) maxU = u;
    if (v < minV) minV = v;
    if (v > maxV) maxV = v;
    if (w < minW) minW = w;
    if (w > maxW) maxW = w;
  }
  // Two pixels of margin, so that a place moved out of the silhouette is still in the picture.
  const pixelMm = Math.max(maxU - minU, maxV - minV, 1e-9) / (pictureSide - 4);
  const perMm = 1 / pixelMm;
  const offsetU = minU - 2 * pixelMm;
  const offsetV = minV - 2 * pixelMm;
  const top = new Float32Array(pictureSide * pictureSide).fill(-Infinity);
  const bottom = new Float32Array(pictureSide * pictureSide).fill(Infinity);

  for (let facet = 0; facet < facets.length / 3; facet += facetStep) {
    const a = 3 * facets[3 * facet]!;
    const b = 3 * facets[3 * facet + 1]!;
    const c = 3 * facets[3 * facet + 2]!;
    const au = (seen[a]! - offsetU) * perMm;
    const av = (seen[a + 1]! - offsetV) * perMm;
    const aw = seen[a + 2]!;
    const bu = (seen[b]! - offsetU) * perMm;
    const bv = (seen[b + 1]! - offsetV) * perMm;
    const bw = seen[b + 2]!;
    const cu = (seen[c]! - offsetU) * perMm;
    const cv = (seen[c + 1]! - offsetV) * perMm;
    const cw = seen[c + 2]!;
    const center = (((av + bv + cv) / 3) | 0) * pictureSide + (((au + bu + cu) / 3) | 0);
    const centerW = (aw + bw + cw) / 3;
    if (centerW > top[center]!) top[center] = centerW;
    if (centerW < bottom[center]!) bottom[center] = centerW;
    const twice = (bu - au) * (cv - av) - (cu - au) * (bv - av);
    if (Math.abs(twice) < 0.5) continue;
    const fromU = Math.ceil(Math.min(au, bu, cu) - 0.5);
    const toU = Math.floor(Math.max(au, bu, cu) - 0.5);
    const fromV = Math.ceil(Math.min(av, bv, cv) - 0.5);
    const toV = Math.floor(Math.max(av, bv, cv) - 0.5);
    const perTwice = 1 / twice;
    for (let row = fromV; row <= toV; row++) {
      const v = row + 0.5;
      for (let column = fromU; column <= toU; column++) {
        const u = column + 0.5;
        const shareB = ((u - au) * (cv - av) - (cu - au) * (v - av)) * perTwice;
        const shareC = ((bu - au) * (v - av) - (u - au) * (bv - av)) * perTwice;
        if (shareB < 0 || shareC < 0 || shareB + shareC > 1) continue;
        const w = aw + shareB * (bw - aw) + shareC * (cw - aw);
        const pixel = row * pictureSide + column;
        if (w > top[pixel]!) top[pixel] = w;
        if (w < bottom[pixel]!) bottom[pixel] = w;
      }
    }
  }

  let trappedMm2 = 0;
  let lookedAtMm2 = 0;
  const slackMm = 1.5 * pixelMm;
  const uprightSine = Math.sin((0.1 * Math.PI) / 180);
  for (let facet = 0; facet < areaMm2.length; facet += facetStep) {
    const area = areaMm2[facet]!;
    const at = 3 * facet;
    const x = centerMm[at]! + normal[at]! * pixelMm;
    const y = centerMm[at + 1]! + normal[at + 1]! * pixelMm;
    const z = centerMm[at + 2]! + normal[at + 2]! * pixelMm;
    const column = ((x * across[0] + y * across[1] + z * across[2] - offsetU) * perMm) | 0;
    const row = ((x * up[0] + y * up[1] + z * up[2] - offsetV) * perMm) | 0;
    const pixel = row * pictureSide + column;
    const w = x * dx + y * dy + z * dz;
    const sine = normal[at]! * dx + normal[at + 1]! * dy + normal[at + 2]! * dz;
    lookedAtMm2 += area;
    const fromTop = sine > -uprightSine && top[pixel]! <= w + slackMm;
    const fromBottom = sine < uprightSine && bottom[pixel]! >= w - slackMm;
    if (!fromTop && !fromBottom) trappedMm2 += area;
  }

  return { trappedMm2, lookedAtMm2, top, bottom };
}

/** Two unit vectors at right angles to a direction and to each other. */
function planeAxes(direction: Vec3): readonly [Vec3, Vec3] {
  const [x, y, z] = direction;
  const least = Math.min(Math.abs(x), Math.abs(y), Math.abs(z));
  const helper: Vec3 = least === Math.abs(x) ? [1, 0, 0] : least === Math.abs(y) ? [0, 1, 0] : [0, 0, 1];
  const across = unit(cross(helper, direction));
  return [across, cross(direction, across)];
}

function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit([x, y, z]: Vec3): Vec3 {
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}
