import { describe, expect, it } from 'vitest';
import type { HeatCase } from '../../../src/core/cure/heatCase';
import { runHeat } from '../../../src/core/cure/heatRun';
import { heatKernel } from '../../../src/core/cure/kernel/heatKernel';
import { boxMoldVoxels } from '../../../src/core/cure/moldVoxels';
import { kineticsForLearning } from '../../../src/core/cure/publishedKinetics';
import { options, programEndS, stoneCase, type CaseChoices } from '../../support/cureCases';

const withKinetics = (one: HeatCase): HeatCase => {
  const set = kineticsForLearning.find(({ letter }) => letter === 'E');
  return { ...one, kinetics: { ...set!.kinetics, heatJPerG: 400 } };
};

/** Odd and even counts along each axis, so that every tail of a pair is met. */
const voxelsOf = (blockMm: readonly [number, number, number]) =>
  boxMoldVoxels({ blockMm, laminateMm: [20, 15, 0.7], voxelMm: 5 });

const cases: readonly (readonly [string, CaseChoices])[] = [
  ['dry', { heldShare: 0 }],
  ['damp, water leaves as it boils', { rule: 'stays' }],
  ['damp, open air', { treatment: 'open air' }],
  ['vapor-held', { heldShare: 0.3, treatment: 'vapor-held' }],
];

describe('the heat kernel', () => {
  it.each(
    cases.flatMap(([name, choices]) =>
      (
        [
          [60, 40, 30],
          [65, 45, 35],
          [45, 60, 25],
        ] as const
      ).map(
        (blockMm) =>
          [`${name}, ${blockMm.join(' x ')} mm`, { ...choices, voxels: voxelsOf(blockMm) }] as const,
      ),
    ),
  )('gives to the last bit what TypeScript gives: %s', (_, choices) => {
    const one = withKinetics(stoneCase(choices));
    const asked = options(programEndS, { frameEveryS: 1800 });
    const plain = runHeat(one, asked, () => null);
    const fast = runHeat(one, asked);
    expect(heatKernel(1)).not.toBeNull();
    expect(fast).toEqual(plain);
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
