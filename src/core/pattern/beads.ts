/** How many lines of the print lie side by side in a wall, and how wide each is for the wall to come out exactly. */

/** Width of a bead that most nozzles lay well, in diameters of the nozzle; common practice, from memory. */
const usualShare = 1.1;
/** Common practice, from memory: thinner ones tear, wider ones are no longer pressed down. */
const widestShare = 1.6;
const narrowestShare = 0.8;

export interface Beads {
  readonly count: number;
  readonly widthMm: number;
  /** Whether a nozzle of that diameter can lay them. */
  readonly isUsual: boolean;
}

/**
 * The count whose beads are nearest to the usual width, by ratio.
 * @param wallMm of the print, above 0
 * @param nozzleMm above 0
 */
export function beadsFor(wallMm: number, nozzleMm: number): Beads {
  const most = Math.max(1, Math.ceil(wallMm / (narrowestShare * nozzleMm)));
  let count = 1;
  const off = (beads: number) => Math.abs(Math.log(wallMm / beads / (usualShare * nozzleMm)));
  for (let beads = 2; beads <= most; beads++) if (off(beads) < off(count)) count = beads;
  const widthMm = wallMm / count;
  const share = widthMm / nozzleMm;
  return { count, widthMm, isUsual: share >= narrowestShare && share <= widestShare };
}
