/** Plane and interval of one facet against another's plane; reused from pair to pair. */
interface Interval {
  low: number;
  high: number;
  /** The facet has corners well on both sides of the other's plane. */
  crosses: boolean;
}

/** 9 numbers: three corners x, y, z. */
type Corners = Float64Array;

function planeOf(corners: Corners, plane: Float64Array): boolean {
  const ux = corners[3]! - corners[0]!;
  const uy = corners[4]! - corners[1]!;
  const uz = corners[5]! - corners[2]!;
  const vx = corners[6]! - corners[0]!;
  const vy = corners[7]! - corners[1]!;
  const vz = corners[8]! - corners[2]!;
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
  if (!(length > 0)) return false;
  plane[0] = nx / length;
  plane[1] = ny / length;
  plane[2] = nz / length;
  return true;
}

/** Heights of three corners over a plane through `origin`; below the tolerance they count as lying in it. */
function heightsOver(
  corners: Corners,
  plane: Float64Array,
  origin: Corners,
  toleranceMm: number,
  heights: Float64Array,
): void {
  for (let corner = 0; corner < 3; corner++) {
    const height =
      plane[0]! * (corners[3 * corner]! - origin[0]!) +
      plane[1]! * (corners[3 * corner + 1]! - origin[1]!) +
      plane[2]! * (corners[3 * corner + 2]! - origin[2]!);
    heights[corner] = Math.abs(height) <= toleranceMm ? 0 : height;
  }
}

/** The part of the common line of both planes that lies in the facet. */
function intervalOn(corners: Corners, heights: Float64Array, line: Float64Array, interval: Interval): void {
  interval.low = Infinity;
  interval.high = -Infinity;
  interval.crosses = false;
  for (let corner = 0; corner < 3; corner++) {
    const next = (corner + 1) % 3;
    const here = heights[corner]!;
    const there = heights[next]!;
    const along =
      line[0]! * corners[3 * corner]! +
      line[1]! * corners[3 * corner + 1]! +
      line[2]! * corners[3 * corner + 2]!;
    let at: number;
    if (here === 0) {
      at = along;
    } else if (here * there < 0) {
      const alongNext =
        line[0]! * corners[3 * next]! + line[1]! * corners[3 * next + 1]! + line[2]! * corners[3 * next + 2]!;
      at = along + ((alongNext - along) * here) / (here - there);
      interval.crosses = true;
    } else continue;
    interval.low = Math.min(interval.low, at);
    interval.high = Math.max(interval.high, at);
  }
}

/** Facets in one plane overlap when no edge of either parts them by more than minus the tolerance. */
function overlapInPlane(first: Corners, second: Corners, plane: Float64Array, toleranceMm: number): boolean {
  for (let turn = 0; turn < 2; turn++) {
    const [edged, other] = turn === 0 ? [first, second] : [second, first];
    for (let corner = 0; corner < 3; corner++) {
      const at = 3 * corner;
      const next = 3 * ((corner + 1) % 3);
      const opposite = 3 * ((corner + 2) % 3);
      const ux = edged[next]! - edged[at]!;
      const uy = edged[next + 1]! - edged[at + 1]!;
      const uz = edged[next + 2]! - edged[at + 2]!;
      // In-plane normal of the edge, turned toward the facet's own third corner.
      let nx = plane[1]! * uz - plane[2]! * uy;
      let ny = plane[2]! * ux - plane[0]! * uz;
      let nz = plane[0]! * uy - plane[1]! * ux;
      const inside =
        nx * (edged[opposite]! - edged[at]!) +
        ny * (edged[opposite + 1]! - edged[at + 1]!) +
        nz * (edged[opposite + 2]! - edged[at + 2]!);
      const length = Math.sqrt(nx * nx + ny * ny + nz * nz) * Math.sign(inside);
      nx /= length;
      ny /= length;
      nz /= length;
      let deepest = -Infinity;
      for (let point = 0; point < 9; point += 3) {
        const depth =
          nx * (other[point]! - edged[at]!) +
          ny * (other[point + 1]! - edged[at + 1]!) +
          nz * (other[point + 2]! - edged[at + 2]!);
        if (depth > deepest) deepest = depth;
      }
      if (!(deepest > toleranceMm)) return false;
    }
  }
  return true;
}

/**
 * A test whether two facets cut each other, stand on each other's inside, or overlap in one plane (interval test of Moller
 * 1997). Contact along edges only, as between neighbors whose corners don't match, is not a cut; nor is anything
 * shallower than the tolerance. Facets without area cut nothing.
 */
export function facetCutTest(toleranceMm: number): (first: Float64Array, second: Float64Array) => boolean {
  const planeA = new Float64Array(3);
  const planeB = new Float64Array(3);
  const heightsA = new Float64Array(3);
  const heightsB = new Float64Array(3);
  const line = new Float64Array(3);
  const intervalA: Interval = { low: 0, high: 0, crosses: false };
  const intervalB: Interval = { low: 0, high: 0, crosses: false };

  return (first, second) => {
    if (!planeOf(first, planeA)) return false;
    heightsOver(second, planeA, first, toleranceMm, heightsB);
    if (oneSided(heightsB)) return false;
    if (!planeOf(second, planeB)) return false;
    heightsOver(first, planeB, second, toleranceMm, heightsA);
    if (oneSided(heightsA)) return false;
    if (allZero(heightsA) || allZero(heightsB)) return overlapInPlane(first, second, planeA, toleranceMm);
    line[0] = planeA[1]! * planeB[2]! - planeA[2]! * planeB[1]!;
    line[1] = planeA[2]! * planeB[0]! - planeA[0]! * planeB[2]!;
    line[2] = planeA[0]! * planeB[1]! - planeA[1]! * planeB[0]!;
    const length = Math.sqrt(line[0] * line[0] + line[1] * line[1] + line[2] * line[2]);
    if (!(length > 0)) return false;
    for (let axis = 0; axis < 3; axis++) line[axis]! /= length;
    intervalOn(first, heightsA, line, intervalA);
    intervalOn(second, heightsB, line, intervalB);
    if (!intervalA.crosses && !intervalB.crosses) return false;
    const low = Math.max(intervalA.low, intervalB.low);
    const high = Math.min(intervalA.high, intervalB.high);
    if (high - low > toleranceMm) return true;
    return standsInside(intervalA, intervalB, toleranceMm) || standsInside(intervalB, intervalA, toleranceMm);
  };
}

function oneSided(heights: Float64Array): boolean {
  return (
    (heights[0]! > 0 && heights[1]! > 0 && heights[2]! > 0) ||
    (heights[0]! < 0 && heights[1]! < 0 && heights[2]! < 0)
  );
}

function allZero(heights: Float64Array): boolean {
  return heights[0] === 0 && heights[1] === 0 && heights[2] === 0;
}

/** A single corner of one facet touches the inside of the other. */
function standsInside(touching: Interval, touched: Interval, toleranceMm: number): boolean {
  return (
    touching.high - touching.low <= toleranceMm &&
    touched.crosses &&
    touching.low > touched.low + toleranceMm &&
    touching.high < touched.high - toleranceMm
  );
}
