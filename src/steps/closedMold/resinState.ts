/**
 * The resin of the closed mold: what pressure it has when it gels, what it needs against moisture, how far it travels, and
 * how a mold with an open rim sinks on it.
 */
import { bedForceN } from '../../core/closing/balance';
import type { BedCurve } from '../../core/closing/bedCurve';
import {
  bleedAt,
  bleedCurve,
  flowLengthMm,
  inPlaneBleedS,
  residualAirShare,
  type BleedMoment,
} from '../../core/closing/bleed';
import { totalClampForceN, vacuumBagKpa, type ClampSpring } from '../../core/closing/clamps';
import type { ClosingHistogram } from '../../core/closing/closingTypes';
import { planAreaMm2 } from '../../core/closing/fixes';
import {
  aminePrepregEpoxy,
  flowLawFactor,
  leastVoidFreeAtm,
  permeabilityM2,
  viscosityPaS,
} from '../../core/closing/flow';
import type { ClosingSolution, Lands } from '../../core/closing/tiltedBalance';
import { equilibriumPressureAtm } from '../../core/cure/dehydration';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { waterLeft } from '../stone/waterLeft';
import type { KnownStack } from '../shared/stack';
import { processOf } from '../shared/process';

export interface ResinNeed {
  /** Absolute, from the roll's humidity. */
  readonly moistureKPa: number;
  /** Absolute, of the crystal water of stone that is not sealed; 0 where it is. */
  readonly stoneKPa: number;
  /** The larger of the two. */
  readonly neededKPa: number;
  /** `neededKPa` at the ends of humidity and of the temperature at which the resin gels. */
  readonly bandKPa: readonly [number, number];
  readonly atC: number;
  /** Where that temperature is from. */
  readonly atHow: string;
  /** The relation with its numbers, for the figures that show it. */
  readonly working: readonly string[];
}

export interface ResinState {
  readonly need: ResinNeed;
  /** Held in: what clamps leave to the resin, kPa over none. */
  readonly heldInKPa: number;
  /** When it gels, in the case that verdicts use, absolute kPa: the air counts only in a bag. */
  readonly atGelKPa: number;
  /** The same with an open rim, by a resin that runs easier and harder; null where the resin is held in. */
  readonly atGelBandKPa: readonly [number, number] | null;
  /** Stand-off and pressure over time with an open rim. */
  readonly bleed: readonly BleedMoment[];
  /** Time until the open rim has let the pressure under the need, s; null where it never had it or keeps it. */
  readonly lostAfterS: number | null;
  /** Time in which the laminate itself would lose its excess to the rim, s; null without pressure or excess. */
  readonly inPlaneS: number | null;
  /** How far it travels before it gels, mm: in the case that verdicts use, and where it is held in. */
  readonly flowLengthMm: number;
  readonly heldInReachMm: number;
  readonly viscosityPaS: number;
  /** Until it gels, at the temperature of the need, s. */
  readonly gelS: number;
  /** With the stack as debulked, before the resin runs, mm. */
  readonly coldStandOffMm: number;
  /** Air of the debulked stack that stays as voids under that pressure, 0 to 1. */
  readonly residualAirShare: number;
  /** The same under another pressure, kPa absolute. */
  readonly residualAirAt: (resinKPa: number) => number;
}

interface Closed {
  readonly stack: KnownStack;
  readonly histogram: ClosingHistogram;
  readonly curve: BedCurve;
  readonly clamps: readonly ClampSpring[];
  readonly lands: Lands | null;
  /** With the resin held in. */
  readonly trapped: ClosingSolution;
  readonly landMm: number;
  readonly laidMm: number;
}

const kpaPerAtm = 101.325;
/** A bag of the usual 95 % vacuum leaves this of the air. */
const airUnderVacuumKPa = kpaPerAtm - vacuumBagKpa(0.95, kpaPerAtm);
export const fiberRadiusM = 3.5e-6;
export const acrossK0 = 11;
const alongK0 = 0.7;

/** Stone as damp as this steams against the laminate, so it counts as full humidity (an analogy), %. */
const dampFromPercent = 10;

/**
 * How far the roll's humidity may be off either way, points of relative humidity: a dial reads to 5, the air of a room
 * changes over the day, and a roll follows it slowly (common practice).
 */
const humidityOffPercent = 10;

const moistureAt = (atC: number, percent: number) => leastVoidFreeAtm(atC, percent) * kpaPerAtm;

/** Against moisture in the resin, and against the stone's own vapor, at the temperature at which the resin gels. */
export function resinNeed({ inputs, mold }: Pick<StepContext, 'inputs' | 'mold'>): ResinNeed {
  const { gel, gelBand, storageHumidityPercent } = processOf(inputs);
  const gelC = gel.valueC;
  const isDamp = waterLeft(inputs, mold).percent >= dampFromPercent;
  const humidityPercent = isDamp ? 100 : storageHumidityPercent;
  const stoneAt = (atC: number) =>
    inputs.mold.sealerCoats > 0 ? 0 : equilibriumPressureAtm(atC) * kpaPerAtm;
  const moistureKPa = moistureAt(gelC, humidityPercent);
  const stoneKPa = stoneAt(gelC);
  const gelEndsC = [gelC, ...(gelBand ?? []).map(({ temperatureC }) => temperatureC)];
  const [coolestC, hottestC] = [Math.min(...gelEndsC), Math.max(...gelEndsC)];
  // That damp stone steams like full humidity is an analogy: at the other end the roll's own humidity counts.
  const driest = Math.max(0, storageHumidityPercent - humidityOffPercent);
  const dampest = isDamp ? 100 : Math.min(100, storageHumidityPercent + humidityOffPercent);
  return {
    moistureKPa,
    stoneKPa,
    neededKPa: Math.max(moistureKPa, stoneKPa),
    bandKPa: [
      Math.max(moistureAt(coolestC, driest), stoneAt(coolestC)),
      Math.max(moistureAt(hottestC, dampest), stoneAt(hottestC)),
    ],
    atC: gelC,
    atHow: gel.how,
    working: [
      `${isDamp ? 'Damp stone steams like full humidity' : 'Moisture of the roll'}: 4962 exp(−4892 / T) × ${formatNumber(humidityPercent, 0)} % at the ${formatNumber(gelC, 0)} °C at which the resin gels (${gel.how}) = ${formatNumber(moistureKPa, 0)} kPa absolute. Once it has gelled, no void opens.`,
      `Range: ${formatNumber(driest, 0)} to ${formatNumber(dampest, 0)} % of humidity${coolestC < hottestC ? `, gelled at ${formatNumber(coolestC, 0)} to ${formatNumber(hottestC, 0)} °C` : ''}.`,
      stoneKPa > 0
        ? `Stone without sealer steams against it: ${formatNumber(stoneKPa, 0)} kPa where gypsum and its vapor balance at ${formatNumber(gelC, 0)} °C (indicative).`
        : 'The stone is sealed, so its own vapor is left out.',
    ],
  };
}

export function resinState(context: StepContext, closed: Closed): ResinState {
  const { closing } = context.inputs;
  const { stack, histogram, curve, clamps, lands, trapped, landMm, laidMm } = closed;
  const need = resinNeed(context);
  const planMm2 = planAreaMm2(histogram);
  const floorMm = lands?.shimMm ?? 0;
  const heldInKPa = 1000 * trapped.resinPressureMPa;
  const viscosity = viscosityPaS(aminePrepregEpoxy, need.atC, 0);
  const pressureAt = (standOffMm: number) =>
    standOffMm <= floorMm && lands !== null
      ? 0
      : (1000 * (totalClampForceN(clamps, standOffMm) - bedForceN(histogram, curve, standOffMm))) / planMm2;
  const [halfU, halfV] = histogram.frame.halfSizeMm;
  const rim = { landMm: Math.max(landMm, 1), lengthMm: 4 * (halfU + halfV), planMm2 };
  const bleed =
    heldInKPa > 0
      ? bleedCurve(rim, viscosity, trapped.standOffMm, floorMm, pressureAt)
      : [{ timeS: 0, standOffMm: trapped.standOffMm, pressureKPa: 0 }];
  const gelS = processOf(context.inputs).flowS;
  const isHeldIn = closing.resin === 'trapped';
  const overNone = isHeldIn ? heldInKPa : bleedAt(bleed, gelS).pressureKPa;
  const bagKPa = closing.bagged === 'bagged' ? kpaPerAtm : 0;
  const atGelKPa = overNone + bagKPa;
  // Every time of the bleeding is in proportion to the viscosity.
  const withViscosity = (factor: number) => bleedAt(bleed, gelS / factor).pressureKPa + bagKPa;
  const t0Mm = stack.volume.voidFreeMm;
  const fiberFraction = stack.volume.fiberMm / t0Mm;
  const along = permeabilityM2(fiberRadiusM, fiberFraction, alongK0);
  const reachMm = (kPa: number) => flowLengthMm(viscosity, fiberFraction, along, 1000 * kPa, gelS);
  const [meanWallMm, areaMm2] = meanWall(histogram);
  const excess = (t0Mm - meanWallMm) / t0Mm;
  const residualAirAt = (resinKPa: number) =>
    residualAirShare(
      Math.max(0, 1 - t0Mm / laidMm),
      closing.debulk === 'under vacuum' ? airUnderVacuumKPa : kpaPerAtm,
      resinKPa,
    );
  return {
    need,
    heldInKPa,
    atGelKPa,
    atGelBandKPa: isHeldIn ? null : [withViscosity(1 / flowLawFactor), withViscosity(flowLawFactor)],
    bleed,
    lostAfterS: bleed.find(({ pressureKPa }) => pressureKPa < need.neededKPa)?.timeS ?? null,
    inPlaneS:
      heldInKPa > 0 && excess > 0
        ? inPlaneBleedS(excess, viscosity, Math.min(halfU, halfV) / 1000, along, 1000 * heldInKPa)
        : null,
    flowLengthMm: reachMm(overNone),
    heldInReachMm: reachMm(heldInKPa),
    viscosityPaS: viscosity,
    gelS,
    coldStandOffMm: Math.max(
      floorMm,
      trapped.standOffMm,
      planMm2 > 0 ? ((laidMm - meanWallMm) * areaMm2) / planMm2 : 0,
    ),
    residualAirShare: residualAirAt(atGelKPa),
    residualAirAt,
  };
}

function meanWall({ areaMm2, wallMm }: ClosingHistogram): readonly [meanMm: number, areaMm2: number] {
  let [area, wall] = [0, 0];
  for (let bin = 0; bin < areaMm2.length; bin++) {
    area += areaMm2[bin]!;
    wall += areaMm2[bin]! * wallMm[bin]!;
  }
  return [area > 0 ? wall / area : 0, area];
}
