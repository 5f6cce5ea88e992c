/**
 * What the pour bench needs to know of the two stone halves, as plain numbers. Worked out by the pour geometry
 * (solid booleans, or integration along the pull), read by the mold step. Lengths mm, areas mm2, volumes mm3. The box
 * frame has its third axis along the pull.
 */
import type { Vec3 } from '../mesh/types';

export type BoxShape = 'rectangle' | 'rounded rectangle' | 'cup';

/** The box round the pattern, seen from inside: what the sheets are cut for and what stone fills. */
export interface MoldBox {
  readonly shape: BoxShape;
  /** Inner length, width and total height (both pours) at the parting; for a cup length = width = diameter. */
  readonly innerMm: Vec3;
  /** Inner height of each pour, from the parting to its back. Their sum is `innerMm[2]`. */
  readonly negativeHeightMm: number;
  readonly positiveHeightMm: number;
  /** Of the corners; 0 for a rectangle, half the diameter for a cup. */
  readonly cornerRadiusMm: number;
  /** By which each wall leans outward toward its open end. */
  readonly wallDraftDeg: number;
}

/** The thinnest stone of one half and where it stands, in the part's own axes. */
export interface ThinnestStone {
  readonly mm: number;
  readonly atMm: Vec3;
}

export interface MoldGeometry {
  /** How the volumes were had. */
  readonly method: 'solid booleans' | 'integration along the pull';
  /** One plain sentence: why this method, e.g. what is wrong with the mesh. */
  readonly why: string;
  readonly box: MoldBox;
  /**
   * By which the box is turned about the pull from the part's own axes, so that it lies along the least rectangle round the
   * part; counter-clockwise seen against the pull.
   */
  readonly boxTurnDeg: number;
  /** Stone of the half over the show face, keys and pry slots taken into account. */
  readonly negativeMm3: number;
  /** Stone of the half in the cavity, with its backing. */
  readonly positiveMm3: number;
  /** The pattern's outer envelope: its material and its cavity, below the show face. */
  readonly envelopeMm3: number;
  /** Inside the pattern's inner skin, up to the rim. */
  readonly cavityMm3: number;
  /** The pattern's material alone. */
  readonly patternMm3: number;
  /** By how much the pattern and each of the other volumes may be off either way; 0 for what solids enclose. */
  readonly errorMm3: { readonly pattern: number; readonly others: number };
  /** In the box but in neither half nor the pattern: pry slots, enclosed voids that no pour reaches. */
  readonly gapFillMm3: number;
  /** Working faces that are sealed and released: the pattern's face and the lands of that half. */
  readonly negativeFaceMm2: number;
  readonly positiveFaceMm2: number;
  /** Area of the pattern seen along the pull, openings filled. */
  readonly planAreaMm2: number;
  /**
   * Outer rim loop of the pattern seen along the pull, closed without repeating its first point, in the two axes across
   * the pull that follow the part's own (the turn of the box taken back); null when no rim loop was found. Two halves of one enclosure are compared by it.
   */
  readonly rimOutlineMm: readonly (readonly [number, number])[] | null;
  /** null when it was not measured (integration along the pull). */
  readonly thinnest: { readonly negative: ThinnestStone; readonly positive: ThinnestStone } | null;
  /** (negative + positive + pattern + gap fill) over the box volume; 1 when nothing is lost. */
  readonly volumeCheck: number;
}
