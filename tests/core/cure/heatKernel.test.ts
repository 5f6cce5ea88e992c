import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanBetween } from '../../../src/core/cure/curve';
import { dehydrationTreatments } from '../../../src/core/cure/dehydration';
import { dehydrationTable } from '../../../src/core/cure/dehydrationTable';
import type { HeatCase } from '../../../src/core/cure/heatCase';
import { emptyLedger } from '../../../src/core/cure/heatLedger';
import { runHeat } from '../../../src/core/cure/heatRun';
import { heatState, refreshConductivity, sumOf, type HeatState } from '../../../src/core/cure/heatState';
import { leapsPastOven, takeStep, tryStep, type StepInput } from '../../../src/core/cure/heatStep';
import { heatKernel } from '../../../src/core/cure/kernel/heatKernel';
import { boxMoldVoxels, voxelCount } from '../../../src/core/cure/moldVoxels';
import type { VoxelArrays, VoxelWork } from '../../../src/core/cure/voxelWork';
import { options, programEndS, stoneCase, type CaseChoices } from '../../support/cureCases';
import { plainHeatWork, plainRoom } from '../../support/plainHeatWork';
import { propertySeed } from '../../support/propertySeed';

/** Odd and even counts along each axis, so that every tail of a pair is met. */
const voxelsOf = (blockMm: readonly [number, number, number]) =>
  boxMoldVoxels({ blockMm, laminateMm: [20, 15, 0.7], voxelMm: 5 });

const arraysOf = ({ system, ...own }: VoxelArrays): Record<string, Float64Array | Float32Array> => ({
  temperatureC: own.temperatureC,
  risePerS: own.risePerS,
  heldKg: own.heldKg,
  dryCapacityJPerK: own.dryCapacityJPerK,
  dehydrationJ: own.dehydrationJ,
  turnedShare: own.turnedShare,
  turnBase: own.turnBase,
  turnPerK: own.turnPerK,
  peakC: own.peakC,
  mass: system.mass,
  source: system.source,
  rise: system.rise,
  filmX: system.filmX,
  filmY: system.filmY,
  filmZ: system.filmZ,
  halfX: system.conductances.halfX,
  halfY: system.conductances.halfY,
  halfZ: system.conductances.halfZ,
});

/** Shares of the largest of its kind that a number may be off. */
const float64Off = 1e-11;
const float32Off = 1e-6;
/** Kelvins that a rise may be off besides: it comes of fluxes that nearly balance. */
const riseOffK = 1e-10;
/** J or kg that a sum over all voxels may be off besides: rises and falls may cancel. */
const sumOff = 1e-9;

function expectNear(
  value: ArrayLike<number>,
  expected: ArrayLike<number>,
  share: number,
  told: string,
  besides = 0,
): void {
  let largest = 0;
  for (let at = 0; at < expected.length; at++) largest = Math.max(largest, Math.abs(expected[at]!));
  for (let at = 0; at < expected.length; at++)
    if (!(Math.abs(value[at]! - expected[at]!) <= besides + share * largest))
      throw new Error(`${told} at ${at}: ${value[at]} in place of ${expected[at]}`);
}

/** The kernel's work; each piece of it is done by the plain one too, from the same numbers, and compared. */
function comparedWork(
  state: HeatState,
  kernel: VoxelWork,
  plainState: HeatState,
  plain: VoxelWork,
): VoxelWork {
  const [own, other] = [arraysOf(state), arraysOf(plainState)];
  const together = <Answer>(told: string, work: (one: VoxelWork) => Answer): [Answer, Answer] => {
    for (const name of Object.keys(own)) other[name]!.set(own[name]!);
    const answers: [Answer, Answer] = [work(kernel), work(plain)];
    for (const [name, values] of Object.entries(own))
      expectNear(
        values,
        other[name]!,
        values instanceof Float64Array ? float64Off : float32Off,
        `${name} after ${told}`,
        name.startsWith('rise') ? riseOffK : 0,
      );
    return answers;
  };
  return {
    prepare: (step) => void together('prepare', (one) => one.prepare(step)),
    conduct: () => void together('conduct', (one) => one.conduct()),
    surpriseK(stepS) {
      const [value, expected] = together('surprise', (one) => one.surpriseK(stepS));
      expectNear([value], [expected], float64Off, 'surprise', riseOffK);
      return value;
    },
    leapsPast(airC, besidesK) {
      const [value, expected] = together('leap', (one) => one.leapsPast(airC, besidesK));
      expect(value).toBe(expected);
      return value;
    },
    take(step) {
      const [value, expected] = together('take', (one) => one.take(step));
      for (const name of ['storedJ', 'dehydratedJ', 'boiledKg'] as const)
        expectNear([value[name]], [expected[name]], 1e-9, name, sumOff);
      return value;
    },
  };
}

const longestStepS = 120;
const shortestStepS = 0.05;

/**
 * Drives a mold through its program by compared steps: short after each jump, then longer, shorter again where a voxel would
 * leap past the oven.
 * @param reactionWPerG heat of reaction, the same all the while
 * @returns what has happened on the way
 */
function driven(one: HeatCase, untilS: number, reactionWPerG: number) {
  const kernel = heatKernel(voxelCount(one.voxels));
  const state = heatState(one, kernel.room);
  const plainState = heatState(one, plainRoom);
  const table = one.dehydration.treatment === 'none' ? null : dehydrationTable(one.dehydration);
  const work = comparedWork(state, kernel.workOn(state, table), plainState, plainHeatWork(plainState, table));
  const ledger = emptyLedger();
  const jumpsS = one.air.timesS.filter((timeS, at) => timeS === one.air.timesS[at - 1]);
  let [timeS, stepS, steps, leaps] = [0, 2, 0, 0];
  while (timeS < untilS) {
    const stopS = jumpsS.find((jumpS) => jumpS > timeS + 1e-9) ?? untilS;
    const size = Math.min(stepS, stopS - timeS);
    const input: StepInput = {
      airC: meanBetween(one.air, timeS, timeS + size),
      stepS: size,
      reactionJ: reactionWPerG === 0 ? null : state.resinG.map((resinG) => resinG * reactionWPerG * size),
      wet: sumOf(state.heldKg) > 0,
    };
    tryStep(one, state, work, input);
    work.surpriseK(size);
    if (leapsPastOven(work, input, 0) && size > shortestStepS) {
      leaps++;
      stepS = Math.max(shortestStepS, size / 3);
      continue;
    }
    takeStep(one, state, work, input, ledger);
    timeS += size;
    stepS = timeS >= stopS - 1e-9 ? 2 : Math.min(longestStepS, 1.5 * size);
    if (++steps % 10 === 0) refreshConductivity(one, state);
  }
  return { ...ledger, steps, leaps };
}

const cases: readonly (readonly [string, CaseChoices])[] = [
  ['dry', { heldShare: 0 }],
  ['damp, water leaves as it boils', { rule: 'stays' }],
  ['damp, water leaves as it boils, vapor-held', { rule: 'stays', heldShare: 0.3, treatment: 'vapor-held' }],
  ['damp, open air', { treatment: 'open air' }],
  ['vapor-held', { heldShare: 0.3, treatment: 'vapor-held' }],
];
const blocksMm = [
  [60, 40, 30],
  [65, 45, 35],
  [45, 60, 25],
] as const;

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('the heat kernel', () => {
  it.each(
    cases.flatMap(([name, choices]) =>
      blocksMm.map((blockMm) => ({ name: `${name}, ${blockMm.join(' x ')} mm`, choices, blockMm })),
    ),
  )('does at every step what is done plainly: $name', ({ choices, blockMm }) => {
    const went = driven(stoneCase({ ...choices, voxels: voxelsOf(blockMm) }), programEndS, 0.01);
    // All of the law was asked for.
    expect(went.steps).toBeGreaterThan(100);
    expect(went.boiledKg > 0).toBe(choices.rule === 'stays');
    expect(went.leaps > 0).toBe(choices.rule === 'stays');
    expect(went.dehydratedJ > 0).toBe(choices.treatment !== undefined);
    expect(went.driedKg > 0).toBe(choices.heldShare !== 0 && choices.rule !== 'stays');
  });

  it(`does so in any mold (seed ${propertySeed})`, () => {
    const anyCase = fc.record({
      blockMm: fc.tuple(number(15, 60), number(15, 60), number(15, 40)),
      voxelMm: number(4, 8),
      thickMm: number(0.3, 3),
      heldShare: fc.oneof(fc.constant(0), number(0.005, 1)),
      reactionWPerG: fc.constantFrom(0, 0.01, 0.2),
      rule: fc.constantFrom('wicks' as const, 'stays' as const),
      treatment: fc.constantFrom(...dehydrationTreatments),
    });
    fc.assert(
      fc.property(anyCase, ({ blockMm, voxelMm, thickMm, reactionWPerG, ...choices }) => {
        const laminateMm = [0.7 * blockMm[0], 0.7 * blockMm[1], thickMm] as const;
        const voxels = boxMoldVoxels({ blockMm, laminateMm, voxelMm });
        expect(driven(stoneCase({ ...choices, voxels }), programEndS, reactionWPerG).steps).toBeGreaterThan(
          100,
        );
      }),
      { numRuns: 10 },
    );
  });

  it('keeps what a run gave when the next one takes its memory over', () => {
    const small = stoneCase({ voxels: voxelsOf([60, 40, 30]), treatment: 'open air' });
    const large = stoneCase({ voxels: voxelsOf([90, 60, 40]), heldShare: 0 });
    const first = runHeat(small, options(3600));
    const kept = structuredClone(first);
    runHeat(large, options(3600));
    expect(first).toEqual(kept);
    expect(runHeat(small, options(3600))).toEqual(kept);
  });
});
