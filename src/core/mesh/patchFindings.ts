import { dragsBelowDeg } from './draft';
import { longRayRatio } from './skinSides';
import { facetKind, reachBit, type Measurement, type Patch, type PatchBand } from './types';

export type Finding = Patch['finding'];

/** One question asked of every facet. */
export interface FindingSearch {
  readonly finding: Finding;
  /** The value told, NaN where the facet has no such finding. */
  readonly valueOf: (facet: number) => number;
  /** How far off a value is, 0 (just) to 1 (fully). */
  readonly missOf: (value: number) => number;
  /** Facets with the finding belong together across one facet without it: those along a corner touch in points only. */
  readonly bridges?: true;
}

const share = (miss: number, limit: number) => (limit > 0 ? Math.min(1, miss / limit) : 1);

/** The questions that a band asks of a measured part. */
export function findingSearches(measurement: Measurement, band: PatchBand): FindingSearch[] {
  const { kind, cornerOf, draftDeg, rayWallMm, rayFacet, ballWallMm, reach } = measurement;
  const { cornerRadiusMm, outerEdgeRadiusMm } = measurement;
  const { fromCoreSide } = reachBit;
  const { show, core, rim, detail, trapped } = facetKind;
  const wallMm = band.measure === 'ray' ? rayWallMm : ballWallMm;
  const hasOwnWall = (facet: number) => kind[facet] === show && cornerOf[facet]! < 0;
  const isSkin = (facet: number) => kind[facet] === show || kind[facet] === core;
  /** A detail inside the part, or one on the show face that is as thick as its ray says. */
  const isBossOrRib = (facet: number) => {
    const hit = rayFacet[facet]!;
    if (kind[facet] !== detail || kind[hit] === rim) return false;
    const isInside = reach[facet] === fromCoreSide || reach[hit] === fromCoreSide;
    return isInside || (kind[hit] === detail && rayWallMm[facet]! <= longRayRatio * ballWallMm[facet]!);
  };
  const { lowMm, highMm, leastDraftDeg, leastCornerRadiusMm, leastOuterEdgeRadiusMm } = band;
  const dragsBelow = dragsBelowDeg(leastDraftDeg);
  const list: FindingSearch[] = [
    {
      finding: 'thick',
      valueOf: (facet) => (hasOwnWall(facet) && wallMm[facet]! > highMm ? wallMm[facet]! : NaN),
      missOf: (wall) => share(wall - highMm, highMm),
    },
    {
      finding: 'thin',
      valueOf: (facet) => (hasOwnWall(facet) && wallMm[facet]! < lowMm ? wallMm[facet]! : NaN),
      missOf: (wall) => share(lowMm - wall, lowMm),
    },
    {
      finding: 'locks',
      valueOf: (facet) => (kind[facet] === trapped ? draftDeg[facet]! : NaN),
      missOf: () => 1,
    },
    {
      finding: 'drags',
      valueOf: (facet) => {
        if (!isSkin(facet)) return NaN;
        const toward = kind[facet] === show ? draftDeg[facet]! : -draftDeg[facet]!;
        return toward < dragsBelow ? toward : NaN;
      },
      missOf: (draft) => share(leastDraftDeg - draft, Math.max(1, leastDraftDeg)),
    },
    {
      finding: 'boss or rib',
      valueOf: (facet) => (isBossOrRib(facet) ? rayWallMm[facet]! : NaN),
      missOf: () => 1,
    },
  ];
  const tight = (finding: Finding, radiusMm: Float32Array, leastMm: number | null) => {
    if (leastMm === null) return;
    list.push({
      finding,
      valueOf: (facet) => (radiusMm[facet]! < leastMm ? radiusMm[facet]! : NaN),
      bridges: true,
      missOf: (radius) => share(leastMm - radius, leastMm),
    });
  };
  tight('tight corner', cornerRadiusMm, leastCornerRadiusMm);
  tight('tight edge', outerEdgeRadiusMm, leastOuterEdgeRadiusMm);
  return list;
}

/** Whether a value is further off than the worst one so far. Misses stop at 1, so values decide. */
export function isWorse(finding: Finding, value: number, worst: number): boolean {
  return finding === 'thick' || finding === 'boss or rib' ? value > worst : value < worst;
}
