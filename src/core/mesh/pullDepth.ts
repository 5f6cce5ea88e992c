import type { FacetGeometry } from './facetGeometry';
import type { IndexedMesh, Vec3 } from './types';

/** Pixels along each side of a depth picture that undercuts are looked for in. */
export const pictureSide = 256;
/** Enough to see a hollow in; a ninth of the pixels. */
const smallPictureSide = 88;
/** Empty pixels around the part, so that a place moved out of its outline is still in the picture. */
const marginPixels = 2;
/** So many facets are held against the pictures at most. */
const mostSamples = 20_000;
/** A facet this little turned away from a direction counts as standing along it, as in `measureReach`. */
const uprightSine = Math.sin((0.1 * Math.PI) / 180);

/** What all looks at one part share. */
export interface LookSetup {
  readonly mesh: IndexedMesh;
  readonly geometry: FacetGeometry;
  /** Pixels along each side of the pictures. */
  readonly side: number;
  /** Facets drawn as triangles; the others are smaller than a pixel and show by their corners. */
  readonly drawnFacets: Uint32Array;
  /** Facets held against the pictures: one for each equal step of area, so a large one may come more than once. */
  readonly samples: Uint32Array;
}

/** The part seen from both ends of a direction. */
export interface DepthPictures {
  /** Area share, 0 to 1, that neither end sees. */
  readonly trappedShare: number;
  /** Highest and lowest place along the direction at each pixel, mm; `-Infinity` and `Infinity` where nothing stands. */
  readonly top: Float32Array;
  readonly bottom: Float32Array;
  /** Side of a pixel. */
  readonly pixelMm: number;
}

/** For undercuts: all facets larger than a pixel are drawn, and samples of all are held against the pictures. */
export function prepareLooks(mesh: IndexedMesh, geometry: FacetGeometry): LookSetup {
  const { areaMm2 } = geometry;
  const pixelMm = longestSide(mesh.positions) / pictureSide;
  let whole = 0;
  for (const area of areaMm2) whole += area;
  const stepMm2 = whole / Math.min(areaMm2.length, mostSamples);
  const drawn: number[] = [];
  const samples: number[] = [];
  let running = 0;
  let next = stepMm2 / 2;
  areaMm2.forEach((area, facet) => {
    if (area > pixelMm * pixelMm) drawn.push(facet);
    for (running += area; running > next; next += stepMm2) samples.push(facet);
  });
  return {
    mesh,
    geometry,
    side: pictureSide,
    drawnFacets: Uint32Array.from(drawn),
    samples: Uint32Array.from(samples),
  };
}

/**
 * For the shape of the part alone, in small pictures: no facet is held against them. Facets longer than a pixel are drawn with
 * their edges, so that a rim thinner than a pixel still holds water.
 */
export function prepareSmallLooks(mesh: IndexedMesh, geometry: FacetGeometry): LookSetup {
  const { positions, facets } = mesh;
  const leastMm = longestSide(positions) / smallPictureSide;
  const isLong = (from: number, to: number) =>
    Math.abs(positions[from]! - positions[to]!) > leastMm ||
    Math.abs(positions[from + 1]! - positions[to + 1]!) > leastMm ||
    Math.abs(positions[from + 2]! - positions[to + 2]!) > leastMm;
  const drawn: number[] = [];
  for (let at = 0; at < facets.length; at += 3) {
    const [a, b, c] = [3 * facets[at]!, 3 * facets[at + 1]!, 3 * facets[at + 2]!];
    if (isLong(a, b) || isLong(b, c) || isLong(c, a)) drawn.push(at / 3);
  }
  return {
    mesh,
    geometry,
    side: smallPictureSide,
    drawnFacets: Uint32Array.from(drawn),
    samples: new Uint32Array(0),
  };
}

function longestSide(positions: Float64Array): number {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let at = 0; at < positions.length; at++) {
    const axis = at % 3;
    if (positions[at]! < low[axis]!) low[axis] = positions[at]!;
    if (positions[at]! > high[axis]!) high[axis] = positions[at]!;
  }
  return Math.max(...high.map((value, axis) => value - low[axis]!));
}

/**
 * A quick look at how much of a part neither end of a straight pull reaches, for ranking directions. The part is
 * drawn into two square depth pictures; each sample facet's center, moved out of the surface by a pixel, is then
 * held against them. Undercuts smaller than a pixel or two are missed: confirm with `measureReach`.
 * @param direction unit vector
 */
export function lookAlong(
  { mesh, geometry, side, drawnFacets, samples }: LookSetup,
  direction: Vec3,
): DepthPictures {
  const { positions, facets } = mesh;
  const { normal, centerMm } = geometry;
  const [dx, dy, dz] = direction;
  const [[rx, ry, rz], [ux, uy, uz]] = planeAxes(direction);

  // Corners in picture coordinates: right, up, depth along the direction.
  const seen = new Float32Array(positions.length);
  let [minRight, minUp, maxRight, maxUp] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let at = 0; at < positions.length; at += 3) {
    const x = positions[at]!;
    const y = positions[at + 1]!;
    const z = positions[at + 2]!;
    const right = x * rx + y * ry + z * rz;
    const up = x * ux + y * uy + z * uz;
    seen[at] = right;
    seen[at + 1] = up;
    seen[at + 2] = x * dx + y * dy + z * dz;
    if (right < minRight) minRight = right;
    if (right > maxRight) maxRight = right;
    if (up < minUp) minUp = up;
    if (up > maxUp) maxUp = up;
  }
  const pixelMm = Math.max(maxRight - minRight, maxUp - minUp, 1e-9) / (side - 2 * marginPixels - 1);
  const perMm = 1 / pixelMm;
  const offsetRight = minRight - marginPixels * pixelMm;
  const offsetUp = minUp - marginPixels * pixelMm;
  const top = new Float32Array(side * side).fill(-Infinity);
  const bottom = new Float32Array(side * side).fill(Infinity);
  for (let at = 0; at < seen.length; at += 3) {
    const right = (seen[at]! - offsetRight) * perMm;
    const up = (seen[at + 1]! - offsetUp) * perMm;
    seen[at] = right;
    seen[at + 1] = up;
    const depth = seen[at + 2]!;
    const pixel = (up | 0) * side + (right | 0);
    if (depth > top[pixel]!) top[pixel] = depth;
    if (depth < bottom[pixel]!) bottom[pixel] = depth;
  }
  for (const facet of drawnFacets) drawFacet(seen, facets, facet, side, top, bottom);
  if (side < pictureSide) for (const facet of drawnFacets) drawEdges(seen, facets, facet, side, top, bottom);

  let trapped = 0;
  const slackMm = 1.5 * pixelMm;
  for (const facet of samples) {
    const at = 3 * facet;
    const x = centerMm[at]! + normal[at]! * pixelMm;
    const y = centerMm[at + 1]! + normal[at + 1]! * pixelMm;
    const z = centerMm[at + 2]! + normal[at + 2]! * pixelMm;
    const column = ((x * rx + y * ry + z * rz - offsetRight) * perMm) | 0;
    const row = ((x * ux + y * uy + z * uz - offsetUp) * perMm) | 0;
    const pixel = row * side + column;
    const depth = x * dx + y * dy + z * dz;
    const sine = normal[at]! * dx + normal[at + 1]! * dy + normal[at + 2]! * dz;
    const fromTop = sine > -uprightSine && top[pixel]! <= depth + slackMm;
    const fromBottom = sine < uprightSine && bottom[pixel]! >= depth - slackMm;
    if (!fromTop && !fromBottom) trapped++;
  }
  return { trappedShare: samples.length > 0 ? trapped / samples.length : 0, top, bottom, pixelMm };
}

/** Draws one facet into both pictures at the pixel centers that it covers. */
function drawFacet(
  seen: Float32Array,
  facets: Uint32Array,
  facet: number,
  side: number,
  top: Float32Array,
  bottom: Float32Array,
): void {
  const a = 3 * facets[3 * facet]!;
  const b = 3 * facets[3 * facet + 1]!;
  const c = 3 * facets[3 * facet + 2]!;
  const aRight = seen[a]!;
  const aUp = seen[a + 1]!;
  const aDepth = seen[a + 2]!;
  const bRight = seen[b]! - aRight;
  const bUp = seen[b + 1]! - aUp;
  const bDepth = seen[b + 2]! - aDepth;
  const cRight = seen[c]! - aRight;
  const cUp = seen[c + 1]! - aUp;
  const cDepth = seen[c + 2]! - aDepth;
  const twice = bRight * cUp - cRight * bUp;
  if (Math.abs(twice) < 1e-6) return;
  const perTwice = 1 / twice;
  const fromColumn = Math.ceil(aRight + Math.min(0, bRight, cRight) - 0.5);
  const toColumn = Math.floor(aRight + Math.max(0, bRight, cRight) - 0.5);
  const fromRow = Math.ceil(aUp + Math.min(0, bUp, cUp) - 0.5);
  const toRow = Math.floor(aUp + Math.max(0, bUp, cUp) - 0.5);
  for (let row = fromRow; row <= toRow; row++) {
    const up = row + 0.5 - aUp;
    for (let column = fromColumn; column <= toColumn; column++) {
      const right = column + 0.5 - aRight;
      const shareB = (right * cUp - cRight * up) * perTwice;
      const shareC = (bRight * up - right * bUp) * perTwice;
      if (shareB < 0 || shareC < 0 || shareB + shareC > 1) continue;
      const depth = aDepth + shareB * bDepth + shareC * cDepth;
      const pixel = row * side + column;
      if (depth > top[pixel]!) top[pixel] = depth;
      if (depth < bottom[pixel]!) bottom[pixel] = depth;
    }
  }
}

/** Draws the edges of a facet, every pixel that they cross. */
function drawEdges(
  seen: Float32Array,
  facets: Uint32Array,
  facet: number,
  side: number,
  top: Float32Array,
  bottom: Float32Array,
): void {
  for (let corner = 0; corner < 3; corner++) {
    const from = 3 * facets[3 * facet + corner]!;
    const to = 3 * facets[3 * facet + ((corner + 1) % 3)]!;
    const right = seen[to]! - seen[from]!;
    const up = seen[to + 1]! - seen[from + 1]!;
    const depth = seen[to + 2]! - seen[from + 2]!;
    const steps = Math.ceil(2 * Math.max(Math.abs(right), Math.abs(up)));
    for (let step = 1; step < steps; step++) {
      const share = step / steps;
      const pixel = ((seen[from + 1]! + share * up) | 0) * side + ((seen[from]! + share * right) | 0);
      const at = seen[from + 2]! + share * depth;
      if (at > top[pixel]!) top[pixel] = at;
      if (at < bottom[pixel]!) bottom[pixel] = at;
    }
  }
}

/** Two unit vectors at right angles to a direction and to each other. */
function planeAxes(direction: Vec3): readonly [Vec3, Vec3] {
  const [x, y, z] = direction;
  const least = Math.min(Math.abs(x), Math.abs(y), Math.abs(z));
  const helper: Vec3 = least === Math.abs(x) ? [1, 0, 0] : least === Math.abs(y) ? [0, 1, 0] : [0, 0, 1];
  const across = cross(helper, direction);
  const length = Math.hypot(...across);
  const right: Vec3 = [across[0] / length, across[1] / length, across[2] / length];
  return [right, cross(direction, right)];
}

function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
