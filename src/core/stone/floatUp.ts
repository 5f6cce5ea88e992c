/**
 * What lifts the pattern while stone is poured round it, by Archimedes. The negative pour decides: in the positive pour
 * the pattern lies in its own negative and the stone presses it down.
 */

/** Standard gravity, m/s2. */
export const gravityMPerS2 = 9.80665;

export type PourMethod =
  /** Pressed into the stone from above, show face down, until the rim is flush. */
  | 'pressed in'
  /** Rim down on a board, sealed all round, stone poured over it. */
  | 'board, sealed'
  /** Rim down on a board; stone or its pressure finds a way under it. */
  | 'board, leaking';

export interface FloatChoices {
  readonly method: PourMethod;
  readonly slurryDensityGMl: number;
  /** Outer envelope of the pattern: what the slurry is displaced by. */
  readonly envelopeMl: number;
  readonly patternG: number;
  /** Slurry over the board, mm; only the board methods use it. */
  readonly slurryHeightMm: number;
  /** The pattern seen along the pull, mm2. */
  readonly planAreaMm2: number;
  /** Times the uplift that the counterweight holds, 1 or more. */
  readonly margin: number;
}

export interface FloatUp {
  /** Net force on the pattern while the pour stands, N; up is positive. */
  readonly netUpliftN: number;
  /** The same in grams of load. */
  readonly holdDownG: number;
  /** To lay on: the uplift with its margin, never negative. */
  readonly counterweightG: number;
  /** Should the seal let go: uplift in N, and the load that would hold it, with margin. Same as above for the other methods. */
  readonly ifLeakingN: number;
  readonly ifLeakingG: number;
  /** Pressure of the slurry at the board, kPa; what the seal stands against. null for the pressed-in pattern. */
  readonly sealPressureKPa: number | null;
}

/** Uplift of a held-down body of `volumeMl` and `massG`, N: (rho V - m) g. Negative: it sinks. */
export function netUpliftN(slurryDensityGMl: number, volumeMl: number, massG: number): number {
  return ((slurryDensityGMl * volumeMl - massG) * gravityMPerS2) / 1000;
}

/**
 * A leak is taken at its worst: the slurry's pressure gets under the whole pattern while its cavity stays empty. A tight
 * seal keeps the pressure out, and the stone standing over the pattern presses it down.
 */
export function floatUp(choices: FloatChoices): FloatUp {
  const { method, slurryDensityGMl, envelopeMl, patternG, slurryHeightMm, planAreaMm2, margin } = choices;
  const floatingN = netUpliftN(slurryDensityGMl, envelopeMl, patternG);
  const columnOverMl = (planAreaMm2 * slurryHeightMm) / 1000 - envelopeMl;
  const pressedN = -((slurryDensityGMl * Math.max(0, columnOverMl) + patternG) * gravityMPerS2) / 1000;
  const upliftN = method === 'board, sealed' ? pressedN : floatingN;
  const inGrams = (forceN: number) => (1000 * forceN) / gravityMPerS2;
  return {
    netUpliftN: upliftN,
    holdDownG: inGrams(upliftN),
    counterweightG: margin * Math.max(0, inGrams(upliftN)),
    ifLeakingN: floatingN,
    ifLeakingG: margin * Math.max(0, inGrams(floatingN)),
    sealPressureKPa:
      method === 'pressed in' ? null : (slurryDensityGMl * gravityMPerS2 * slurryHeightMm) / 1000,
  };
}
