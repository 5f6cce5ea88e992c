/**
 * One flat piece of cloth: what the drape makes, and what nesting, paper and plotter files take. A length on the piece is a length on
 * the surface. Frame of a piece: x along its warp fibers, y to the left of them, seen from the side that faces up when it is cut.
 */
export type Point2 = readonly [xMm: number, yMm: number];

/** Closed: the last point joins the first, which is not repeated. */
export type Outline = readonly Point2[];

/** A short line on the border of a piece that meets the line of the same label on another border, or on the mate. */
export interface MatchMark {
  readonly atMm: Point2;
  /** Unit vector into the piece. */
  readonly into: Point2;
  readonly label: string;
}

export interface PlyPiece {
  /** "2A" is the first piece of the second ply. */
  readonly name: string;
  /** From 1, counted from the show face. */
  readonly ply: number;
  /** Row of the ply schedule that it is cut from: one fabric, one roll. */
  readonly fabric: string;
  /** Counterclockwise. */
  readonly outlineMm: Outline;
  /** Cut out after the cure, so drawn but not cut. Clockwise. */
  readonly holesMm: readonly Outline[];
  /** How the ply lies: from the part's datum to its warp, degrees, counterclockwise seen against the pull. */
  readonly fiberDeg: number;
  /** Line through the start point of the drape along the part's datum, for laying. */
  readonly datumMm: readonly [Point2, Point2];
  readonly marks: readonly MatchMark[];
  /** A pair, so that a piece is laid where it belongs. */
  readonly registrationMm: readonly Point2[];
  /** Whether the side that faces up when it is cut goes against the mold. */
  readonly upGoesToMold: boolean;
  /** Mirror image of a show ply for the mate. */
  readonly mirrored: boolean;
}
