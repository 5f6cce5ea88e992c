/** What the measuring hands to the balance: plain data, no imports, so that mesh and closing can both speak of it. */

type Triple = readonly [number, number, number];

/** Where things stand on the mold: the pull, two axes across it, and the middle of the part's plan. */
export interface ClosingFrame {
  readonly pull: Triple;
  /** Unit vectors across the pull; u × v = pull. For a pull along +z they are x and y. */
  readonly u: Triple;
  readonly v: Triple;
  /** Middle of the part's box on plan, at the height of the lands: the lowest of the box along the pull. */
  readonly originMm: Triple;
  /** Half the part's size on plan along u and v. */
  readonly halfSizeMm: readonly [number, number];
  /** Depth of the part along the pull. */
  readonly depthMm: number;
}

/**
 * Places of the show face as the balance sees them, one entry each: facets, or bins of facets. When the negative
 * stands off by s and turns by small angles α about u and β about v, the gap is wall + c s + armU α + armV β.
 */
export interface ClosingSamples {
  /** Of the mid-surface, mm²; 0 for entries that take no part. */
  readonly areaMm2: Float32Array | Float64Array;
  readonly wallMm: Float32Array | Float64Array;
  /** c = |normal · pull|: 1 across the pull, 0 on an upright wall. */
  readonly pullCosine: Float32Array | Float64Array;
  /** Change of the gap per turn about u, mm: c × (place along v) − (normal along v) × height. */
  readonly armUMm: Float32Array | Float64Array;
  /** Change of the gap per turn about v, mm: (normal along u) × height − c × (place along u). */
  readonly armVMm: Float32Array | Float64Array;
}

/** One entry per facet of the part. */
export interface FacetSamples extends ClosingSamples {
  readonly frame: ClosingFrame;
  /** False for a pattern drawn solid: areas and places are those of its outside, walls are 0. */
  readonly wallsKnown: boolean;
}

/**
 * The show face in a few thousand bins of like wall, pull cosine and tilt arms, each with its area and its means. A balance
 * over them costs the same for any mesh and follows a slider.
 */
export interface ClosingHistogram extends ClosingSamples {
  readonly frame: ClosingFrame;
  readonly wallsKnown: boolean;
  /** 3 per bin: mean place in the part's own coordinates, mm. */
  readonly centerMm: Float64Array;
  /** Least and largest wall of the bin's facets, mm. */
  readonly wallLowMm: Float64Array;
  readonly wallHighMm: Float64Array;
}
