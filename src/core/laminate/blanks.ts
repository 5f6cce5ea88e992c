/**
 * Blanks that the plies of a tray-shaped part are cut from. The developed plan of a box without lid is its plan with the
 * walls folded flat: (length + 2 height) by (width + 2 height); a blank has a margin to trim all round. A ply at an angle
 * is cut from the roll's own rectangle round its turned blank, so it takes more.
 */

export interface Blank {
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** Upper bound for walls with draft: what they gain in slope the floor loses more of. */
export function developedBlank(plan: Blank, wallHeightMm: number, marginMm: number): Blank {
  const beyondMm = 2 * (wallHeightMm + marginMm);
  return { lengthMm: plan.lengthMm + beyondMm, widthMm: plan.widthMm + beyondMm };
}

/**
 * The rectangle along warp and weft round a blank whose length lies at `angleDeg` to the warp:
 * (L |cos| + W |sin|) by (L |sin| + W |cos|); at 45° a square of side (L + W) / √2.
 */
export function blankOnRoll({ lengthMm, widthMm }: Blank, angleDeg: number): Blank {
  const angle = (angleDeg * Math.PI) / 180;
  const [cos, sin] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
  return { lengthMm: lengthMm * cos + widthMm * sin, widthMm: lengthMm * sin + widthMm * cos };
}
