import { placeName } from '../core/mesh/place';
import { castRay } from '../core/mesh/rayWall';
import type { SurfaceIndex } from '../core/mesh/surfaceIndex';
import { facetKind, type FacetKind, type Measurement, type Vec3 } from '../core/mesh/types';
import type { Probe } from './told';

const orNull = (value: number) => (Number.isFinite(value) ? value : null);

const kindNames = Object.keys(facetKind) as FacetKind[];

/** What was measured where a line of sight meets the part; null when it misses. */
export function probePart(
  index: SurfaceIndex,
  measurement: Measurement,
  originMm: Vec3,
  direction: Vec3,
): Probe | null {
  const hit = castRay(index, originMm, direction);
  if (hit === null) return null;
  const { facet, distanceMm } = hit;
  const perLength = distanceMm / Math.hypot(...direction);
  const pointMm: Vec3 = [
    originMm[0] + direction[0] * perLength,
    originMm[1] + direction[1] * perLength,
    originMm[2] + direction[2] * perLength,
  ];
  const [nx, ny, nz] = measurement.normal.subarray(3 * facet, 3 * facet + 3);
  const kind = measurement.kind[facet]!;
  const { boxMinMm, boxMaxMm } = index;
  return {
    facet,
    pointMm,
    normal: [nx!, ny!, nz!],
    rayWallMm: orNull(measurement.rayWallMm[facet]!),
    ballWallMm: orNull(measurement.ballWallMm[facet]!),
    draftDeg: measurement.draftDeg[facet]!,
    cornerRadiusMm: orNull(measurement.cornerRadiusMm[facet]!),
    kind,
    place: placeName({ boxMinMm, boxMaxMm, pull: measurement.pull }, pointMm, kindNames[kind]!),
  };
}
