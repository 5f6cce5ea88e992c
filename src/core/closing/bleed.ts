/**
 * How resin leaves a mold that stands open on it, and how far it travels before it gels. While the mold stands off, clamps
 * are carried by the fiber bed and by resin; what resin has left has no pressure any more.
 */

/** Rim over which resin can leave. */
export interface BleedRim {
  /** Width of the land that it must cross, mm. */
  readonly landMm: number;
  /** Length of the rim round the part, mm. */
  readonly lengthMm: number;
  /** Plan area of the part, mm². */
  readonly planMm2: number;
}

/**
 * Time for a stand-off to fall from h0 to h1 (mm) while the excess leaves over a flat land, s:
 * t = 6 μ w A / (S P) (1/h1² − 1/h0²), flow in a slot of the stand-off's height (`slotFlow` in core/sources).
 * @param viscosityPaS of the resin; constant, so an upper bound on the speed once it cures
 * @param pressurePa in the resin, more than 0
 */
export function landBleedS(
  { landMm, lengthMm, planMm2 }: BleedRim,
  viscosityPaS: number,
  pressurePa: number,
  fromMm: number,
  toMm: number,
): number {
  if (!(toMm < fromMm)) return 0;
  if (!(toMm > 0)) return Infinity;
  return (
    ((6 * viscosityPaS * landMm * planMm2) / (lengthMm * pressurePa)) * (1 / toMm ** 2 - 1 / fromMm ** 2)
  );
}

/**
 * Time in which a saturated strip loses the excess over its own length, s: t = e μ L² / (3 K P), e = (t0 − g)/t0 the share
 * of the thickness that must go (consolidation of a saturated strip, `slotFlow` in core/sources).
 */
export function inPlaneBleedS(
  excessShare: number,
  viscosityPaS: number,
  lengthM: number,
  permeabilityM2: number,
  pressurePa: number,
): number {
  return (Math.max(0, excessShare) * viscosityPaS * lengthM ** 2) / (3 * permeabilityM2 * pressurePa);
}

/** One moment of the mold sinking on its resin. */
export interface BleedMoment {
  readonly timeS: number;
  readonly standOffMm: number;
  readonly pressureKPa: number;
}

/** Steps from the first stand-off to where the lands touch. */
const moments = 24;
/** Cast stone is flat to about this; closer, land touches land (common practice). */
const touchMm = 0.005;

/**
 * Stand-off over time with an open rim: the slot law in steps of the stand-off, the pressure taken anew at each, until
 * the fibers carry all or the lands touch; then the resin has no pressure any more.
 * @param standOffMm when the resin first carries
 * @param floorMm where lands stop it
 * @param pressureAt resin pressure at a stand-off, kPa; 0 or less where fibers carry all
 */
export function bleedCurve(
  rim: BleedRim,
  viscosityPaS: number,
  standOffMm: number,
  floorMm: number,
  pressureAt: (standOffMm: number) => number,
): readonly BleedMoment[] {
  const slotMm = standOffMm - floorMm;
  const first = { timeS: 0, standOffMm, pressureKPa: Math.max(0, pressureAt(standOffMm)) };
  if (!(slotMm > touchMm) || first.pressureKPa === 0) return [{ ...first, pressureKPa: 0 }];
  const curve: BleedMoment[] = [first];
  const shrink = (touchMm / slotMm) ** (1 / moments);
  let timeS = 0;
  for (let step = 1, from = slotMm; step <= moments; step++) {
    const to = from * shrink;
    const kPa = pressureAt(floorMm + (from + to) / 2);
    if (!(kPa > 0)) {
      // From here on the fibers carry all.
      curve[curve.length - 1] = { ...curve.at(-1)!, pressureKPa: 0 };
      break;
    }
    timeS += landBleedS(rim, viscosityPaS, 1000 * kPa, from, to);
    const left = step === moments ? 0 : Math.max(0, pressureAt(floorMm + to));
    curve.push({ timeS, standOffMm: floorMm + to, pressureKPa: left });
    from = to;
  }
  return curve;
}

/** Where such a curve stands at a time; its last moment holds on. */
export function bleedAt(curve: readonly BleedMoment[], timeS: number): BleedMoment {
  const next = curve.findIndex((moment) => moment.timeS >= timeS);
  if (next < 0) return { ...curve.at(-1)!, timeS };
  if (next === 0) return { ...curve[0]!, timeS };
  const [before, after] = [curve[next - 1]!, curve[next]!];
  const share = (timeS - before.timeS) / (after.timeS - before.timeS);
  const between = (one: number, other: number) => one + share * (other - one);
  return {
    timeS,
    standOffMm: between(before.standOffMm, after.standOffMm),
    pressureKPa: between(before.pressureKPa, after.pressureKPa),
  };
}

/**
 * How far resin travels in the plane before it gels, mm: L = √(2 K P t / (μ (1 − Vf))), the Darcy front of `flowTimeS`
 * solved for its length.
 */
export function flowLengthMm(
  viscosityPaS: number,
  fiberFraction: number,
  permeabilityM2: number,
  pressurePa: number,
  timeS: number,
): number {
  if (!(pressurePa > 0 && timeS > 0)) return 0;
  return 1000 * Math.sqrt((2 * permeabilityM2 * pressurePa * timeS) / (viscosityPaS * (1 - fiberFraction)));
}

/**
 * Air that stays in the laminate as voids once the resin has its pressure: f × p_air / p_resin, absolute; the air of the
 * debulked stack, compressed (gas law at one temperature).
 */
export function residualAirShare(airShare: number, airKPa: number, resinAbsoluteKPa: number): number {
  return resinAbsoluteKPa > airKPa ? (airShare * airKPa) / resinAbsoluteKPa : airShare;
}
