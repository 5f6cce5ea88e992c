/** What the maker asks of a run: the coldest and hottest places of the laminate, lag, dwells, dose, stone and water. */
import { firstReachS, timeOverS, upTo, type Curve } from './curve';
import { vaporPerDihydrate } from './dehydration';
import { doseAlong, type DoseAlong } from './dose';
import type { HeatCase } from './heatCase';
import type { HeatRun } from './heatRun';
import { curveAtPlace, extremePlaces, type LaminateRecord } from './laminateRecord';
import { halfCode } from './moldVoxels';
import type { Dwell } from './ovenProgram';

/** A place counts as having reached a dwell when it is within this of it, K. */
export const dwellSlackK = 5;

export interface DwellReached {
  readonly targetC: number;
  /** When the oven's dial, and when the place reached it; null when it never did before the oven cooled. */
  readonly ovenAtS: number;
  readonly atS: number | null;
  /** Of the two, how much later the place. */
  readonly lagS: number | null;
  /** Seconds at the dwell less the slack or over it, while the oven heats. */
  readonly timeAtS: number;
}

export interface PlaceAnswer {
  /** Index into the laminate record. */
  readonly place: number;
  readonly curve: Curve;
  readonly peakC: number;
  readonly dwells: readonly DwellReached[];
  /** null without a supplier's cure. */
  readonly dose: DoseAlong | null;
  /** null without kinetics. */
  readonly degreeOfCure: number | null;
}

export interface LaminateAnswers {
  readonly coldest: PlaceAnswer;
  readonly hottest: PlaceAnswer;
  /** Largest difference between two places at one time, and when. */
  readonly spreadK: number;
  readonly spreadAtS: number;
  /** Hottest voxel of the stone at any time. */
  readonly stonePeakC: number;
  /** Of the gypsum's water that goes at this step, %; averaged over the mold. */
  readonly crystalWaterLostPercent: number;
  readonly crystalWaterLostG: number;
  /** Depth of a skin over the whole outside that would hold as much turned stone; the loss itself is spread out. */
  readonly stoneTurnedMm: number;
  readonly freeWaterLeftG: number;
}

export function laminateAnswers(one: HeatCase, run: HeatRun, dwells: readonly Dwell[]): LaminateAnswers {
  const { coldest, hottest } = extremePlaces(run.laminate);
  const answer = (place: number): PlaceAnswer => {
    const curve = curveAtPlace(run.laminate, place);
    return {
      place,
      curve,
      peakC: run.laminate.peakC[place]!,
      dwells: dwells.map((dwell) => dwellReached(curve, dwell, dwells.at(-1)!.untilS)),
      dose: one.supplier === null ? null : doseAlong(one.supplier, curve),
      degreeOfCure: one.kinetics === null ? null : run.degreeOfCure[place]!,
    };
  };
  return {
    coldest: answer(coldest),
    hottest: answer(hottest),
    ...widestSpread(run.laminate),
    ...stoneAnswers(one, run),
    freeWaterLeftG: run.water.at(-1)!.heldG,
  };
}

/** `heatedS`: when the oven stops heating; what the place reaches on the way down does not count. */
function dwellReached(curve: Curve, { targetC, fromS }: Dwell, heatedS: number): DwellReached {
  const heated = upTo(curve, heatedS);
  const level = targetC - dwellSlackK;
  const atS = firstReachS(heated, level, fromS);
  return {
    targetC,
    ovenAtS: fromS,
    atS,
    lagS: atS === null ? null : atS - fromS,
    timeAtS: timeOverS(heated, level),
  };
}

function widestSpread({ timesS, temperatureC }: LaminateRecord) {
  let [spreadK, spreadAtS] = [0, 0];
  temperatureC.forEach((all, i) => {
    let [low, high] = [Infinity, -Infinity];
    for (const one of all) {
      if (one < low) low = one;
      if (one > high) high = one;
    }
    const spread = high - low;
    if (spread > spreadK) [spreadK, spreadAtS] = [spread, timesS[i]!];
  });
  return { spreadK, spreadAtS };
}

function stoneAnswers(one: HeatCase, run: HeatRun) {
  const { half, laminateShare, filledShare, sizeMm, nx, ny, nz, faceAreaFactor } = one.voxels;
  const voxelMm3 = sizeMm[0] * sizeMm[1] * sizeMm[2];
  let [stoneMm3, turnedMm3, outsideMm2, stonePeakC] = [0, 0, 0, -Infinity];
  const area = [sizeMm[1] * sizeMm[2], sizeMm[0] * sizeMm[2], sizeMm[0] * sizeMm[1]];
  const counts = [nx, ny, nz];
  [1, nx, nx * ny].forEach((stride, axis) => {
    const face = area[axis]! * faceAreaFactor[axis]!;
    for (let at = 0; at < half.length; at++) {
      if (half[at] === halfCode.outside) continue;
      const place = Math.floor(at / stride) % counts[axis]!;
      if (place === 0 || half[at - stride] === halfCode.outside) outsideMm2 += face;
      if (place === counts[axis]! - 1 || half[at + stride] === halfCode.outside) outsideMm2 += face;
    }
  });
  for (let at = 0; at < half.length; at++) {
    if (half[at] === halfCode.outside) continue;
    const mm3 = voxelMm3 * filledShare[at]! * (1 - laminateShare[at]!);
    stoneMm3 += mm3;
    turnedMm3 += mm3 * run.turnedShare[at]!;
    if (mm3 > 0) stonePeakC = Math.max(stonePeakC, run.peakC[at]!);
  }
  const dihydrateG = turnedMm3 * 1e-6 * one.stone.dryDensityKgM3 * one.stone.dihydrateShare;
  return {
    stonePeakC,
    crystalWaterLostPercent: (100 * turnedMm3) / stoneMm3,
    crystalWaterLostG: dihydrateG * vaporPerDihydrate,
    stoneTurnedMm: turnedMm3 / outsideMm2,
  };
}
