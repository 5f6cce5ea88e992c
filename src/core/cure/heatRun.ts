/**
 * The closed mold in the oven, from the start to the end of a run: implicit steps that shrink where something sudden
 * happens and grow where nothing does. Plain and synchronous; minutes of oven take milliseconds.
 */
import { Problem } from '../problem';
import { meanBetween, type Curve } from './curve';
import { cureSteps, type CureSteps } from './cureSteps';
import { dehydrationTable } from './dehydrationTable';
import { checkHeatCase, type HeatCase, type HeatOptions } from './heatCase';
import { checkWithin, heatBounds } from './heatBounds';
import { frameKeeper, type HeatFrame } from './heatFrames';
import { emptyLedger, type HeatLedger } from './heatLedger';
import { heatState, refreshConductivity, sumOf, type HeatState } from './heatState';
import { leapsPastOven, takeStep, tryStep, type StepInput } from './heatStep';
import { heatKernel } from './kernel/heatKernel';
import {
  keepTemperatures,
  laminateRecord,
  recordSpacingS,
  recordStep,
  type LaminateRecord,
} from './laminateRecord';
import { voxelCount } from './moldVoxels';
import { intoAirS, nextStepS, stepLimits } from './stepSize';

export interface WaterAt {
  readonly timeS: number;
  readonly heldG: number;
}

export interface HeatRun {
  readonly endS: number;
  /** Whether `stopWhen` ended it. */
  readonly stoppedEarly: boolean;
  readonly steps: number;
  readonly laminate: LaminateRecord;
  /** Degree of cure of each laminate place at the end; zeros without kinetics. */
  readonly degreeOfCure: Float64Array;
  /** Per voxel, at the end. */
  readonly turnedShare: Float64Array;
  readonly heldKg: Float64Array;
  readonly peakC: Float32Array;
  /** Free water in the mold at the kept times. */
  readonly water: readonly WaterAt[];
  readonly frames: readonly HeatFrame[];
  readonly ledger: Readonly<HeatLedger>;
}

/** First step after a jump, s, and the shortest at all. */
const firstStepS = 2;
const shortestStepS = 0.05;
/** The cure may warm a voxel by no more than this in one step, K. */
const mostReactionK = 2;
/** Conductivities are brought up to date when the mold has lost this share of its water since. */
const staleWaterShare = 0.03;
/** Each voxel that boils dry kinks its neighbors' warming; no step shrinks below this for that, s. */
const boilingStepS = 20;
const mostSteps = 200_000;

/**
 * @throws Problem `cure.runaway` when the heat of reaction can no longer be followed, `cure.notFollowed` where the steps came
 * apart, and those of `checkHeatCase` and `heatKernel`
 */
export function runHeat(one: HeatCase, options: HeatOptions): HeatRun {
  checkHeatCase(one, options);
  const { untilS } = options;
  const table = one.dehydration.treatment === 'none' ? null : dehydrationTable(one.dehydration);
  const kernel = heatKernel(voxelCount(one.voxels));
  const state = heatState(one, kernel.room);
  const work = kernel.workOn(state, table);
  const cure = one.kinetics === null ? null : cureSteps(one.kinetics);
  const ledger = emptyLedger();
  const laminate = laminateRecord(state);
  const recordEveryS = recordSpacingS(options.recordEveryS, untilS, laminate.voxels.length);
  const before = Float64Array.from(laminate.voxels, (at) => state.temperatureC[at]!);
  const fullKg = sumOf(state.fullKg);
  const water: WaterAt[] = [{ timeS: 0, heldG: 1000 * sumOf(state.heldKg) }];
  const fields = frameKeeper(state, options);
  const limits = stepLimits(one, state, options);
  const bounds = heatBounds(one, state);
  const jumps = jumpsOf(one.air).filter((timeS) => timeS > 0 && timeS < untilS);
  let [timeS, stepS, steps, freshKg] = [0, firstStepS, 0, sumOf(state.heldKg)];
  let heldKg = freshKg;
  let stoppedEarly = false;
  while (timeS < untilS && !stoppedEarly) {
    const nextStopS = jumps.find((jump) => jump > timeS + 1e-9) ?? untilS;
    const room = nextStopS - timeS;
    stepS = intoAirS(limits, one.air, timeS, stepS);
    // Two even steps rather than a whole and a sliver.
    const size = room <= stepS ? room : Math.min(stepS, Math.max(room / 2, shortestStepS));
    const cured = cure === null ? null : cureAhead(cure, one.kinetics!.heatJPerG, state, size);
    const input: StepInput = {
      airC: meanBetween(one.air, timeS, timeS + size),
      stepS: size,
      reactionJ: cured?.heatJ ?? null,
      wet: heldKg > 0,
    };
    if (++steps > mostSteps || size < shortestStepS / 100) throw runaway();
    const tooHot = cured !== null && cured.mostK > mostReactionK;
    if (!tooHot) tryStep(one, state, work, input);
    const surprise = tooHot ? Infinity : work.surpriseK(size);
    const floorS = input.wet && state.boiling ? boilingStepS : shortestStepS;
    if (surprise > 4 * limits.toleranceK && (size > floorS || tooHot) && size > shortestStepS) {
      stepS = Math.max(tooHot ? shortestStepS : floorS, size / (tooHot ? 2 : 3));
      continue;
    }
    if (tooHot) throw runaway();
    if (size > shortestStepS && leapsPastOven(work, input, cured?.mostK ?? 0)) {
      stepS = Math.max(shortestStepS, size / 3);
      continue;
    }
    takeStep(one, state, work, input, ledger);
    if (cured !== null) state.degreeOfCure.set(cured.degrees);
    const atEnd = room <= size;
    timeS = atEnd ? nextStopS : timeS + size;
    recordStep(laminate, state, before, size, one.supplier);
    heldKg = input.wet ? sumOf(state.heldKg) : 0;
    if (freshKg - heldKg > staleWaterShare * fullKg || (heldKg === 0 && freshKg > 0)) {
      refreshConductivity(one, state);
      freshKg = heldKg;
    }
    const now = stopState(timeS, laminate, before);
    checkWithin(bounds, now.coldestLaminateC, now.hottestLaminateC);
    stoppedEarly = options.stopWhen?.(now) ?? false;
    const last = timeS >= untilS || stoppedEarly;
    if (last || timeS - laminate.timesS.at(-1)! >= recordEveryS - 1e-6) {
      keepTemperatures(laminate, timeS, before);
      water.push({ timeS, heldG: 1000 * heldKg });
    }
    fields?.look(timeS, last || atEnd);
    options.onProgress?.(timeS / untilS);
    const mayWait = heldKg === 0 && table === null;
    stepS = nextStepS(limits, { stepS: size, surpriseK: surprise, floorS, mayWait });
    if (atEnd && timeS < untilS) stepS = firstStepS;
  }
  checkWithin(bounds, hottestOf(state.peakC));
  return {
    endS: timeS,
    stoppedEarly,
    steps,
    laminate,
    degreeOfCure: state.degreeOfCure,
    // Copies: the kernel's memory serves the next run.
    turnedShare: state.turnedShare.slice(),
    heldKg: state.heldKg.slice(),
    peakC: state.peakC.slice(),
    water,
    frames: fields?.frames ?? [],
    ledger,
  };
}

const runaway = () =>
  new Problem(
    'cure.runaway',
    'The laminate runs away: its own heat of reaction drives it faster than can be followed. Check the kinetics and the heat of reaction.',
  );

const hottestOf = (peakC: Float32Array) => peakC.reduce((high, one) => Math.max(high, one), -Infinity);

/** Times at which the air jumps. */
function jumpsOf({ timesS, valuesC }: Curve): number[] {
  return timesS.filter((timeS, i) => timeS === timesS[i - 1] && valuesC[i] !== valuesC[i - 1]);
}

/** Degree of cure of each laminate place after a step, and the heat it gives; the temperature is taken to go on as it went. */
function cureAhead({ advance }: CureSteps, heatJPerG: number, state: HeatState, stepS: number) {
  const { laminateVoxels, temperatureC, risePerS, degreeOfCure, resinG, dryCapacityJPerK } = state;
  const degrees = new Float64Array(degreeOfCure.length);
  const heatJ = new Float64Array(degreeOfCure.length);
  let mostK = 0;
  for (let place = 0; place < degrees.length; place++) {
    const at = laminateVoxels[place]!;
    const nowC = temperatureC[at]!;
    const before = degreeOfCure[place]!;
    const after = advance(before, nowC, nowC + risePerS[at]! * stepS, stepS);
    const heat = resinG[place]! * heatJPerG * (after - before);
    degrees[place] = after;
    heatJ[place] = heat;
    mostK = Math.max(mostK, heat / dryCapacityJPerK[at]!);
  }
  return { degrees, heatJ, mostK };
}

function stopState(timeS: number, laminate: LaminateRecord, now: Float64Array) {
  let [coldestDose, hottestLaminateC, coldestLaminateC] = [Infinity, -Infinity, Infinity];
  for (let place = 0; place < now.length; place++) {
    coldestDose = Math.min(coldestDose, laminate.dose[place]!);
    hottestLaminateC = Math.max(hottestLaminateC, now[place]!);
    coldestLaminateC = Math.min(coldestLaminateC, now[place]!);
  }
  return { timeS, coldestDose, hottestLaminateC, coldestLaminateC };
}
