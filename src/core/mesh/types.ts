/**
 * The plain data that mesh code passes around. Lengths are mm unless a name says otherwise.
 *
 * Route: file bytes -> FileMesh (file units, as read) -> IndexedMesh (welded, file units, what is saved)
 *        -> IndexedMesh in mm (one body, scaled, wound) -> Measurement (per facet) -> PartSummary (core/part).
 */

import type { LengthUnit } from '../units/length';

export type MeshFormat = 'stl-binary' | 'stl-ascii' | 'obj' | '3mf';
export type Vec3 = readonly [number, number, number];

/** Triangles exactly as a file gives them, nothing welded, nothing dropped but non-finite facets (told in notes). */
export interface FileMesh {
  readonly format: MeshFormat;
  /** Unit that the file itself declares (3MF), else null: the maker confirms a guess. */
  readonly declaredUnit: LengthUnit | null;
  /** 9 numbers per triangle (three corners x, y, z), file units, relative to `origin`. */
  readonly corners: Float32Array | Float64Array;
  /** Added to `corners` to get file coordinates; non-zero when the file lies far from its origin. */
  readonly origin: Vec3;
  /** Plain sentences on anything odd that was met and how it was read. */
  readonly notes: readonly string[];
}

/** A welded triangle mesh. */
export interface IndexedMesh {
  /** 3 numbers per vertex. */
  readonly positions: Float64Array;
  /** 3 vertex numbers per facet, counter-clockwise seen from outside. */
  readonly facets: Uint32Array;
}

/** One connected body (facets joined over shared edges). */
export interface BodyFacts {
  readonly facetCount: number;
  readonly closed: boolean;
  /** In the units of the mesh it was computed from, cubed; null when the body is not closed. */
  readonly volume: number | null;
  readonly boxMin: Vec3;
  readonly boxMax: Vec3;
}

/** What is wrong with a mesh, counted, and which facets show it. Facet lists are sorted. */
export interface MeshHealth {
  readonly facetCount: number;
  readonly vertexCount: number;
  /** Every edge has exactly two facets with opposite directions. */
  readonly watertight: boolean;
  readonly openEdges: number;
  /** Edges with more than two facets. */
  readonly crowdedEdges: number;
  /** Facets wound against the rest of their body (or a whole body that is inside out). */
  readonly flippedFacets: number;
  readonly degenerateFacets: number;
  readonly duplicateFacets: number;
  /** Facets that cut or touch another facet without sharing a corner; null when not looked for yet. */
  readonly selfTouchingFacets: number | null;
  readonly bodies: readonly BodyFacts[];
  /** 1-based body number of each facet is `bodyOfFacet[f] + 1`, bodies sorted by facet count, largest first. */
  readonly bodyOfFacet: Uint32Array;
  /** Facet numbers to show on the view, per finding. */
  readonly show: {
    readonly openEdges: Uint32Array;
    readonly crowdedEdges: Uint32Array;
    readonly flippedFacets: Uint32Array;
    readonly degenerateFacets: Uint32Array;
    readonly duplicateFacets: Uint32Array;
    readonly selfTouching: Uint32Array;
  };
}

/** What a facet is to the mold. Values of `Measurement.kind`. */
export const facetKind = {
  /** Outside meets the negative; a core face stands behind it: this is where the verdict is taken. */
  show: 0,
  /** Outside meets the positive; the show face stands behind it. */
  core: 1,
  /** Lands between show and core skin (open rim, window edge). */
  rim: 2,
  /** Boss, rib or other local detail: the material behind it is not the wall. */
  detail: 3,
  /** Neither half reaches it along the pull. */
  trapped: 4,
  /** Reachable, but no wall could be measured behind it (open surface). */
  unmeasured: 5,
} as const;
export type FacetKind = keyof typeof facetKind;

/** Bits of `Measurement.reach`. */
export const reachBit = { fromShowSide: 1, fromCoreSide: 2 } as const;

/** Per-facet measurement of one body in mm, pulled along `pull`. Every array has one entry per facet unless said. */
export interface Measurement {
  readonly facetCount: number;
  readonly pull: Vec3;
  readonly areaMm2: Float32Array;
  /** 3 per facet, unit outward normal; zero for a degenerate facet. */
  readonly normal: Float32Array;
  /** 3 per facet, facet center in mm. */
  readonly centerMm: Float32Array;
  /** Along the inward normal to the first surface that faces back; NaN where nothing is met. */
  readonly rayWallMm: Float32Array;
  /** Facet that the ray met, -1 where none. */
  readonly rayFacet: Int32Array;
  /** Diameter of the largest ball inside the material that touches the facet center; NaN where unknown. */
  readonly ballWallMm: Float32Array;
  /** asin(n . pull) in degrees, positive where the facet looks along the pull. */
  readonly draftDeg: Float32Array;
  /** `reachBit` flags: which mold half can reach the facet along the pull (occlusion by rays). */
  readonly reach: Uint8Array;
  /** `facetKind` value. */
  readonly kind: Uint8Array;
  /**
   * For a facet of a skin at its wall's own outside corner, where the ray runs along the next wall and measures
   * nothing of the wall: the facet of the same skin whose wall goes on there. -1 for all others.
   */
  readonly cornerOf: Int32Array;
  /** Smallest inside-corner (concave) radius at the facet's own edges; 0 for a sharp corner, NaN where none. */
  readonly cornerRadiusMm: Float32Array;
  /** Length of the edge that gives `cornerRadiusMm`, 0 where there is none. */
  readonly cornerEdgeMm: Float32Array;
  /** Smallest radius at the facet's own edges to other show facets; 0 for a sharp edge, NaN where none. */
  readonly outerEdgeRadiusMm: Float32Array;
  /** Length of the edge that gives it, 0 where there is none. */
  readonly outerEdgeMm: Float32Array;
  /** 3 per facet: the facet across the edge from corner k to the next, negative for none (open or crowded edge). */
  readonly neighbor: Int32Array;
  /** Per edge as in `neighbor`: signed turn across it in radians, positive where it folds away from the outside. */
  readonly turnRad: Float32Array;
  /** Every edge has exactly two facets with opposite directions. */
  readonly closed: boolean;
}

/** Walls of the facets that the verdict looks at, sorted, for instant area shares against any band. */
export interface WallDistribution {
  /** Ascending. */
  readonly wallMm: Float32Array;
  /** Running area up to and including entry i. */
  readonly cumulativeAreaMm2: Float64Array;
}

/** Draft of the facets that must let go of stone, sorted, for instant area shares against any least draft. */
export interface DraftDistribution {
  /** Degrees toward the facet's own mold half, positive where it releases; ascending. */
  readonly draftDeg: Float32Array;
  /** Running area up to and including entry i. */
  readonly cumulativeAreaMm2: Float64Array;
}

/** Area-weighted quantiles over the facets that were hit; a quantile is the smallest value whose weight reaches q. */
export interface WallQuantiles {
  readonly p5: number | null;
  readonly median: number | null;
  readonly p95: number | null;
  readonly min: number | null;
  readonly max: number | null;
  /** Share of area with a hit, 0 to 1. */
  readonly hitShare: number;
}

/** A connected patch of facets with the same finding. */
export interface Patch {
  readonly finding: 'thick' | 'thin' | 'locks' | 'drags' | 'tight corner' | 'tight edge' | 'boss or rib';
  /** Short place in words from the part's own axes, e.g. "show face, middle" or "+x side". */
  readonly place: string;
  readonly areaMm2: number;
  /** Value furthest from the wanted one: mm of wall, degrees of draft or mm of radius. */
  readonly worst: number;
  /** Where the worst value stands. */
  readonly worstAtMm: Vec3;
  readonly worstFacet: number;
  readonly draftDeg: number;
  readonly facetCount: number;
}

/** What counts as a finding when patches are looked for. */
export interface PatchBand {
  readonly measure: 'ray' | 'ball';
  readonly lowMm: number;
  readonly highMm: number;
  /** Faces under it by more than `draftToleranceDeg` drag. */
  readonly leastDraftDeg: number;
  /** Inside corners tighter than this are patches; null for none. */
  readonly leastCornerRadiusMm: number | null;
  /** Outer edges of the show face tighter than this are patches; null for none. */
  readonly leastOuterEdgeRadiusMm: number | null;
}

/** A plane across one axis. */
export interface SectionPlane {
  readonly axis: 'x' | 'y' | 'z';
  readonly atMm: number;
}

/** A plane cut through the part. */
export interface Section {
  readonly plane: SectionPlane;
  /**
   * Polylines in the plane, 2 numbers per point in mm: (y,z), (z,x) or (x,y) for a cut across x, y or z. The material
   * lies on their left. A closed line does not repeat its first point.
   */
  readonly lines: readonly { readonly pointsMm: Float64Array; readonly closed: boolean }[];
  /** Wall within the plane of the cut at places along it, for dimension lines: from outside point to inside point. */
  readonly walls: readonly {
    readonly fromMm: readonly [number, number];
    readonly toMm: readonly [number, number];
    readonly wallMm: number;
  }[];
}

/** The pull that traps least and drafts most. */
export interface PullChoice {
  readonly pull: Vec3;
  readonly trappedShare: number;
  /** Area-weighted median draft of the reachable facets, degrees. */
  readonly medianDraftDeg: number;
}
