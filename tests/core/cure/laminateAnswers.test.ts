import { expect, test } from 'vitest';
import { upTo } from '../../../src/core/cure/curve';
import { runHeat } from '../../../src/core/cure/heatRun';
import { laminateAnswers } from '../../../src/core/cure/laminateAnswers';
import { options, stoneCase } from '../../support/cureCases';

const timesS = [0, 1175, 1235, 4655, 5015];
const valuesC = [100, 115, 120, 120, 119];

test('time at the dwell runs to the end of the heating, not to the last temperature kept before it', () => {
  const one = stoneCase({ voxelMm: 10, heldShare: 0 });
  const run = runHeat(one, options(60));
  const { voxels } = run.laminate;
  const temperatureC = valuesC.map((valueC) => new Float32Array(voxels.length).fill(valueC));
  const kept = { ...run, laminate: { ...run.laminate, timesS, temperatureC } };
  const { coldest } = laminateAnswers(one, kept, [{ targetC: 120, fromS: 600, untilS: 5000 }]);
  expect(coldest.dwells[0]!.timeAtS / 60).toBeCloseTo(63.75, 6);
});

test('a curve cut short ends where it is cut', () => {
  expect(upTo({ timesS, valuesC }, 4835)).toEqual({
    timesS: [0, 1175, 1235, 4655, 4835],
    valuesC: [100, 115, 120, 120, 119.5],
  });
  expect(upTo({ timesS, valuesC }, 9000)).toEqual({ timesS, valuesC });
});
