import type { ClosingHistogram } from '../closing/closingTypes';
import type { DraftDistribution, FacetKind, Vec3, WallDistribution, WallQuantiles } from '../mesh/types';

/** The summary that figures are made from. All facets of the body unless a name says otherwise. */
export interface PartSummary {
  readonly facetCount: number;
  /** With holes closed flat; null when the holes could hold too much of it. */
  readonly volumeMm3: number | null;
  /** Lowest and highest volume, by what the holes could hold; null where there is no hole (or no volume). */
  readonly volumeBandMm3: readonly [number, number] | null;
  readonly areaMm2: number;
  /** Of the volume when nothing of it is open, else of the surface. null for an empty measurement. */
  readonly centroidMm: Vec3 | null;
  readonly boxMinMm: Vec3;
  readonly boxMaxMm: Vec3;
  readonly rayWall: WallQuantiles;
  readonly ballWall: WallQuantiles;
  /** Over the facets of kind `show` only, those at a wall's outside corner (`cornerOf`) left out. */
  readonly showRayWall: WallQuantiles;
  readonly showBallWall: WallQuantiles;
  readonly draft: {
    /** Area shares, 0 to 1: -0.01 <= draft < 1 (3) degrees. */
    readonly under1DegShare: number;
    readonly under3DegShare: number;
    /** draft < -0.01 degrees. */
    readonly awayShare: number;
    readonly trappedShare: number;
  };
  readonly insideCornerRadiusMm: { readonly p5: number | null; readonly min: number | null };
  /** Outer edges of the show face, weighted by their length. */
  readonly outerEdgeRadiusMm: { readonly p5: number | null; readonly min: number | null };
  /** Area per facet kind, mm2. */
  readonly kindAreaMm2: Readonly<Record<FacetKind, number>>;
  /** Area of the show and core facets (rims and details left out) by draft toward their own mold half. */
  readonly releaseDraft: DraftDistribution;
  /** Ray walls of the same facets. */
  readonly showWall: WallDistribution;
  /** Ball walls of the same facets. */
  readonly showWallByBall: WallDistribution;
  /** The show face as the balance of mold closing sees it. */
  readonly closing: ClosingHistogram;
  /** True when no inner skin stands behind the show face: the pattern is drawn solid. */
  readonly solid: boolean;
  /** The hollow side looks along the pull, so that the negative would meet floor and ribs. */
  readonly hollowAlongPull: boolean;
}
