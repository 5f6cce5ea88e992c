import { closingHistogram } from '../closing/closingHistogram';
import { closingSamples } from '../closing/closingSamples';
import type { FacetSamples } from '../closing/closingTypes';
import { draftShares } from '../mesh/draft';
import type { DrawnFacets } from '../mesh/drawnFacets';
import { wholePart, type WholePart } from '../mesh/enclosedVolume';
import { distribute, quantile, wallQuantiles, type WeightedDistribution } from '../mesh/quantiles';
import { isHollowAlong } from '../mesh/rightWayUp';
import { selectQuantiles } from '../mesh/selectQuantiles';
import { isDrawnSolid } from '../mesh/solidPattern';
import {
  facetKind,
  type DraftDistribution,
  type FacetKind,
  type IndexedMesh,
  type MeshHealth,
  type Measurement,
  type WallDistribution,
  type WallQuantiles,
} from '../mesh/types';
import type { PartSummary } from './partSummary';

/**
 * The figures of a measured part. Areas and volumes are exact sums over the facets; wall quantiles are weighted by
 * facet area, inside corners by the length of the edge that gives them (each edge counts for both its facets).
 *
 * Figures over all facets (`facetCount`, `rayWall`, `ballWall`, `draft`, `insideCornerRadiusMm`) take one measurement
 * per drawn facet, so that they compare with anybody else's; whatever tells show and core apart (`showRayWall`,
 * `showWall`, `kindAreaMm2`, `releaseDraft`, `solid` and the like) is taken on the split facets.
 * @param mesh the mesh as drawn, mm
 * @param health of that mesh or of the whole file that it was taken from: when that is watertight, so is each body
 * @param measurement of the mesh, or of the one that it was split into
 * @param drawn one measurement per facet of `mesh`; left out when nothing was split
 * @param faces closing samples of the mesh that was measured; left out when nothing was split
 * @param whole of `mesh`, for a caller that has it
 */
export function summarize(
  mesh: IndexedMesh,
  health: MeshHealth,
  measurement: Measurement,
  drawn: DrawnFacets = measurement,
  faces: FacetSamples = closingSamples(mesh, measurement),
  whole: WholePart = wholePart(mesh, health.watertight || measurement.closed),
): PartSummary {
  const { areaMm2, rayWallMm, ballWallMm, kind, cornerOf, facetCount } = measurement;
  const { show } = facetKind;
  const { enclosed } = whole;
  const isWhole = enclosed !== null && enclosed.openBy === 0;

  const kindAreaMm2: Record<FacetKind, number> = {
    show: 0,
    core: 0,
    rim: 0,
    detail: 0,
    trapped: 0,
    unmeasured: 0,
  };
  const kindNames = Object.keys(facetKind) as FacetKind[];
  const areaOfKind = new Float64Array(kindNames.length);
  // Show facets whose ray measures their wall: at an outside corner it runs along the next one.
  const hasOwnWall = new Uint8Array(facetCount);
  let ownWallAreaMm2 = 0;
  for (let facet = 0; facet < facetCount; facet++) {
    const area = areaMm2[facet]!;
    const own = kind[facet]!;
    areaOfKind[own] = areaOfKind[own]! + area;
    if (own !== show || cornerOf[facet]! >= 0) continue;
    hasOwnWall[facet] = 1;
    ownWallAreaMm2 += area;
  }
  let areaSum = 0;
  let trappedArea = 0;
  for (let facet = 0; facet < drawn.facetCount; facet++) {
    const area = drawn.areaMm2[facet]!;
    areaSum += area;
    if (drawn.reach[facet] === 0) trappedArea += area;
  }
  for (const name of kindNames) kindAreaMm2[name] = areaOfKind[facetKind[name]]!;

  const showRay = distribute(rayWallMm, areaMm2, hasOwnWall);
  const showBall = distribute(ballWallMm, areaMm2, hasOwnWall);
  const corners = distribute(drawn.cornerRadiusMm, drawn.cornerEdgeMm);
  const edges = distribute(measurement.outerEdgeRadiusMm, measurement.outerEdgeMm);
  return {
    facetCount: drawn.facetCount,
    volumeMm3: enclosed?.volume ?? null,
    volumeBandMm3:
      enclosed === null || isWhole
        ? null
        : [enclosed.volume - enclosed.openBy, enclosed.volume + enclosed.openBy],
    areaMm2: whole.area,
    centroidMm: (isWhole ? whole.centroid : null) ?? whole.surfaceCentroid,
    boxMinMm: whole.boxMin,
    boxMaxMm: whole.boxMax,
    rayWall: quantilesOverAll(drawn.rayWallMm, drawn.areaMm2, areaSum),
    ballWall: quantilesOverAll(drawn.ballWallMm, drawn.areaMm2, areaSum),
    showRayWall: wallQuantiles(showRay, ownWallAreaMm2),
    showBallWall: wallQuantiles(showBall, ownWallAreaMm2),
    draft: {
      ...draftShares(drawn.draftDeg, drawn.areaMm2),
      trappedShare: areaSum > 0 ? trappedArea / areaSum : 0,
    },
    outerEdgeRadiusMm: { p5: quantile(edges, 0.05), min: edges.values[0] ?? null },
    insideCornerRadiusMm: { p5: quantile(corners, 0.05), min: corners.values[0] ?? null },
    kindAreaMm2,
    releaseDraft: releaseDraft(measurement),
    showWall: asWalls(showRay),
    showWallByBall: asWalls(showBall),
    closing: closingHistogram(faces, measurement.centerMm),
    hollowAlongPull: isHollowAlong(mesh, measurement.pull),
    solid: isDrawnSolid(mesh, measurement, enclosed?.volume ?? whole.volume),
  };
}

function quantilesOverAll(wallMm: Float32Array, areaMm2: Float32Array, wholeAreaMm2: number): WallQuantiles {
  const { at, min, max, wholeWeight } = selectQuantiles(wallMm, areaMm2, [0.05, 0.5, 0.95]);
  const [p5, median, p95] = at;
  return {
    p5: p5 ?? null,
    median: median ?? null,
    p95: p95 ?? null,
    min,
    max,
    hitShare: wholeAreaMm2 > 0 ? Math.min(1, wholeWeight / wholeAreaMm2) : 0,
  };
}

function asWalls(distribution: WeightedDistribution): WallDistribution {
  return { wallMm: distribution.values, cumulativeAreaMm2: distribution.cumulativeWeight };
}

/** Draft toward the facet's own mold half: along the pull for show facets, against it for core facets. */
function releaseDraft(measurement: Measurement): DraftDistribution {
  const { draftDeg, kind, areaMm2, facetCount } = measurement;
  const { show, core } = facetKind;
  const toward = new Float32Array(facetCount);
  for (let facet = 0; facet < facetCount; facet++) {
    if (kind[facet] === show) toward[facet] = draftDeg[facet]!;
    else if (kind[facet] === core) toward[facet] = -draftDeg[facet]!;
    else toward[facet] = NaN;
  }
  const { values, cumulativeWeight } = distribute(toward, areaMm2);
  return { draftDeg: values, cumulativeAreaMm2: cumulativeWeight };
}
