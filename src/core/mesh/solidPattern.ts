import { selectQuantiles } from './selectQuantiles';
import { reachBit, type IndexedMesh, type Measurement } from './types';

/** A solid pattern fills at least this share of the space between its show skin and its lowest level. */
const leastFilledShare = 0.7;
/** Area vectors of a closed surface sum to nothing; a larger share than this of the area and the surface is torn. */
const mostOpenShare = 0.01;
/** Thinner than this it is a plate or a shell, whatever it fills. */
const leastBallMm = 4;
/** The ball of a solid spans at least this share of the smallest side of the box. */
const leastBallShare = 0.3;

/**
 * Whether the pattern is drawn solid: no inner skin stands behind the show face. All of these must hold: the volume
 * fills at least 0.7 of the columns that run along the pull from the faces reached from the show side down to the
 * lowest level of the part; the area-weighted median ball wall of those faces is at least 4 mm and at least 0.3 of the
 * smallest side of the part's box. A shell fills little of its columns; a shell pulled the wrong way, a plate or a
 * panel fills them but its ball is its thin wall. A surface that is torn open (by more than a crack) is never called
 * solid. The limits are our own judgement.
 * @param volumeMm3 signed volume
 */
export function isDrawnSolid(mesh: IndexedMesh, measurement: Measurement, volumeMm3: number): boolean {
  const { facetCount, pull, areaMm2, normal, centerMm, reach, ballWallMm } = measurement;
  const [px, py, pz] = pull;
  const { positions } = mesh;
  let lowest = Infinity;
  const boxMin = [Infinity, Infinity, Infinity];
  const boxMax = [-Infinity, -Infinity, -Infinity];
  for (let at = 0; at < positions.length; at += 3) {
    const height = positions[at]! * px + positions[at + 1]! * py + positions[at + 2]! * pz;
    if (height < lowest) lowest = height;
    for (let axis = 0; axis < 3; axis++) {
      const value = positions[at + axis]!;
      if (value < boxMin[axis]!) boxMin[axis] = value;
      if (value > boxMax[axis]!) boxMax[axis] = value;
    }
  }
  const fromShow = new Uint8Array(facetCount);
  let columnsMm3 = 0;
  let areaSum = 0;
  let areaX = 0;
  let areaY = 0;
  let areaZ = 0;
  for (let facet = 0, at = 0; facet < facetCount; facet++, at += 3) {
    areaSum += areaMm2[facet]!;
    const area = areaMm2[facet]!;
    areaX += area * normal[at]!;
    areaY += area * normal[at + 1]!;
    areaZ += area * normal[at + 2]!;
    if ((reach[facet]! & reachBit.fromShowSide) === 0) continue;
    fromShow[facet] = 1;
    const cosine = normal[at]! * px + normal[at + 1]! * py + normal[at + 2]! * pz;
    const height = centerMm[at]! * px + centerMm[at + 1]! * py + centerMm[at + 2]! * pz;
    columnsMm3 += areaMm2[facet]! * Math.max(0, cosine) * (height - lowest);
  }
  if (Math.hypot(areaX, areaY, areaZ) > mostOpenShare * areaSum) return false;
  if (!(columnsMm3 > 0) || volumeMm3 / columnsMm3 < leastFilledShare) return false;
  const medianBallMm = selectQuantiles(ballWallMm, areaMm2, [0.5], fromShow).at[0] ?? null;
  const smallestSideMm = Math.min(...boxMax.map((max, axis) => max - boxMin[axis]!));
  return medianBallMm !== null && medianBallMm >= Math.max(leastBallMm, leastBallShare * smallestSideMm);
}
