import { facetKind, reachBit, type IndexedMesh, type Measurement } from '../mesh/types';
import { bridgedWalls } from './bridgedWalls';
import { closingFrame } from './closingFrame';
import type { FacetSamples } from './closingTypes';
import { facingWallMm } from './facingWall';
import { midSurfaceAreas } from './midSurfaceArea';

/**
 * One entry per facet of the part. Show facets with a wall take part; when there are none (a pattern drawn solid), the
 * facets that the negative reaches and that don't look away from the pull, with no wall of their own.
 */
export function closingSamples(mesh: IndexedMesh, measurement: Measurement): FacetSamples {
  const { facetCount, normal, centerMm, areaMm2, kind, cornerOf, reach, pull } = measurement;
  const frame = closingFrame(mesh.positions, pull);
  const measuredMm = new Float32Array(facetCount);
  let wallsKnown = false;
  for (let facet = 0; facet < facetCount; facet++) {
    if (kind[facet] !== facetKind.show) continue;
    // At an outside corner the wall goes on as it is beside it.
    const wall = facingWallMm(measurement, cornerOf[facet]! >= 0 ? cornerOf[facet]! : facet);
    if (!(wall > 0)) continue;
    measuredMm[facet] = wall;
    wallsKnown = true;
  }
  const wallMm = bridgedWalls(measurement, measuredMm);
  let area = midSurfaceAreas(mesh, measurement, wallMm);
  if (!wallsKnown) {
    area = new Float32Array(facetCount);
    for (let facet = 0; facet < facetCount; facet++) {
      const looksUp = measurement.draftDeg[facet]! > -0.01;
      if (looksUp && (reach[facet]! & reachBit.fromShowSide) !== 0) area[facet] = areaMm2[facet]!;
    }
  }
  const pullCosine = new Float32Array(facetCount);
  const armUMm = new Float32Array(facetCount);
  const armVMm = new Float32Array(facetCount);
  const { u, v, originMm } = frame;
  for (let facet = 0; facet < facetCount; facet++) {
    if (area[facet] === 0) continue;
    const at = 3 * facet;
    const nx = normal[at]!;
    const ny = normal[at + 1]!;
    const nz = normal[at + 2]!;
    const rx = centerMm[at]! - originMm[0];
    const ry = centerMm[at + 1]! - originMm[1];
    const rz = centerMm[at + 2]! - originMm[2];
    const c = Math.abs(nx * pull[0] + ny * pull[1] + nz * pull[2]);
    const height = rx * pull[0] + ry * pull[1] + rz * pull[2];
    pullCosine[facet] = c;
    armUMm[facet] = c * (rx * v[0] + ry * v[1] + rz * v[2]) - (nx * v[0] + ny * v[1] + nz * v[2]) * height;
    armVMm[facet] = (nx * u[0] + ny * u[1] + nz * u[2]) * height - c * (rx * u[0] + ry * u[1] + rz * u[2]);
  }
  return { areaMm2: area, wallMm, pullCosine, armUMm, armVMm, frame, wallsKnown };
}
