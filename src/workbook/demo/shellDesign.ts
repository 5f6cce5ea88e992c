/** What describes a thin domed enclosure half; `shellMesh` turns it into facets. All lengths in mm. */

/** A see-through opening in the top with rounded corners, its edges along x and y. */
export interface WindowDesign {
  readonly centerXMm: number;
  readonly halfLengthMm: number;
  readonly halfWidthMm: number;
}

/**
 * The show face looks up (+z), the open rim lies in the plane z = 0. The plan is a superellipse around the origin,
 * longest along x.
 */
export interface ShellDesign {
  /** Outside, at the rim. */
  readonly halfLengthMm: number;
  readonly halfWidthMm: number;
  /** Middle of the top over the rim. */
  readonly heightMm: number;
  /** How far the top falls from its middle to its edge, along x and along y. */
  readonly crownFallXMm: number;
  readonly crownFallYMm: number;
  /** Outside radius between top and side walls. */
  readonly shoulderRadiusMm: number;
  readonly sideDraftDeg: number;
  readonly wallMm: number;
  /** What stands up from the top (or is sunk, negative); both skins follow. Zero near the shoulder. */
  readonly reliefMm: (xMm: number, yMm: number) => number;
  /** Added to the wall of shoulder and sides, towards the inside. Zero where the top begins. */
  readonly sideExtraWallMm: (xMm: number, yMm: number, zMm: number) => number;
  readonly window: WindowDesign | null;
  /** Edge of a facet where the relief needs it fine. */
  readonly cellMm: number;
}

/** 0 up to `from`, 1 from `to`, smooth between; also with `from` over `to`. */
export function smoothStep(from: number, to: number, value: number): number {
  const t = Math.min(1, Math.max(0, (value - from) / (to - from)));
  return t * t * (3 - 2 * t);
}
