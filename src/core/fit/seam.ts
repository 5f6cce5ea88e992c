/** The seam round the rim: bead or gasket, what it takes and what it squeezes out, and what holds the halves together. */

export interface SeamChoices {
  /** Along the rim. */
  readonly lengthMm: number;
  /** Width of the land that the bead lies on. */
  readonly landMm: number;
  /** Open width that is to be filled: the measured or the worked-out gap, and what is left on purpose. */
  readonly gapMm: number;
  /** Of the round bead as laid. */
  readonly beadMm: number;
  /** Lost in nozzle and at the ends, share of what is taken. */
  readonly lossShare: number;
  readonly cartridgeMl: number;
}

export interface Seam {
  /** Round bead, pi d² / 4. */
  readonly beadMm2: number;
  /** Land times gap: what the closed seam holds. */
  readonly slotMm2: number;
  /** Bead along the rim. */
  readonly beadMl: number;
  /** What is taken, losses included. */
  readonly takenMl: number;
  readonly cartridgeShare: number;
  /** More bead than the closed seam holds: it comes out at both edges; below 0 it does not fill the seam. */
  readonly squeezedMl: number;
  /** Of a soft round cord laid in: how flat it is pressed, share of its diameter. */
  readonly pressedShare: number;
}

/** Volumes by length times cross-section; exact geometry. */
export function seamOf({ lengthMm, landMm, gapMm, beadMm, lossShare, cartridgeMl }: SeamChoices): Seam {
  const beadMm2 = (Math.PI * beadMm * beadMm) / 4;
  const slotMm2 = landMm * gapMm;
  const beadMl = (lengthMm * beadMm2) / 1000;
  const takenMl = beadMl / (1 - lossShare);
  return {
    beadMm2,
    slotMm2,
    beadMl,
    takenMl,
    cartridgeShare: takenMl / cartridgeMl,
    squeezedMl: (lengthMm * (beadMm2 - slotMm2)) / 1000,
    pressedShare: beadMm > 0 ? 1 - gapMm / beadMm : 0,
  };
}

/** Hole in a laminate: middle to edge, and middle to middle, in diameters (common practice for bolted laminates). */
const holeRules = { edgeDiameters: 3, pitchDiameters: 4 } as const;

export interface Fasteners {
  readonly count: number;
  readonly pitchMm: number;
  /** Middle of a hole to any edge of the laminate, at least. */
  readonly edgeMm: number;
  /** A lug or flange that holds such a hole is at least this wide. */
  readonly lugMm: number;
}

/** As many screws or clips as keep the pitch along the rim; at least two. */
export function fastenersAlong(lengthMm: number, wantedPitchMm: number, diameterMm: number): Fasteners {
  const least = holeRules.pitchDiameters * diameterMm;
  const count = Math.max(2, Math.ceil(lengthMm / Math.max(wantedPitchMm, least)));
  const edgeMm = holeRules.edgeDiameters * diameterMm;
  return { count, pitchMm: lengthMm / count, edgeMm, lugMm: 2 * edgeMm };
}
