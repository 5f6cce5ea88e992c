import { describe, expect, test } from 'vitest';
import { curveOf, valueAt } from '../../../src/core/cure/curve';
import { runHeat } from '../../../src/core/cure/heatRun';
import { findPlace, placeInPullFrame, voxelMiddleMm } from '../../../src/core/cure/laminatePlace';
import { extremePlaces } from '../../../src/core/cure/laminateRecord';
import { loggedAir } from '../../../src/core/cure/loggedAir';
import { options, programEndS, stoneCase } from '../../support/cureCases';
import { box } from '../../support/meshes';

describe('a place in the laminate', () => {
  const { voxels } = stoneCase({ laminateMm: [70, 40, 8] });
  const { laminate } = runHeat(stoneCase({ voxels }), options(programEndS));
  const middle = (found: number) => voxelMiddleMm(voxels, laminate.voxels[found]!);

  test('coldest and hottest are those of the run', () => {
    expect(findPlace(voxels, laminate, { kind: 'coldest' }).place).toBe(extremePlaces(laminate).coldest);
    expect(findPlace(voxels, laminate, { kind: 'hottest' }).place).toBe(extremePlaces(laminate).hottest);
  });

  test('the middle of the show face lies on top and in the middle of the plan', () => {
    const [x, y, z] = middle(findPlace(voxels, laminate, { kind: 'show middle' }).place);
    expect(Math.abs(x - 45)).toBeLessThanOrEqual(voxels.sizeMm[0] / 2 + 1e-9);
    expect(Math.abs(y - 30)).toBeLessThanOrEqual(voxels.sizeMm[1] / 2 + 1e-9);
    const highest = Math.max(...Array.from(laminate.voxels, (_, place) => middle(place)[2]));
    expect(z).toBe(highest);
  });

  test('a point takes the brick that it lies in, or the nearest one and how far that is', () => {
    const inside = findPlace(voxels, laminate, { kind: 'point', atMm: [30, 25, 21] });
    expect(inside.offMm).toBe(0);
    middle(inside.place).forEach((mm, axis) =>
      expect(Math.abs(mm - [30, 25, 21][axis]!)).toBeLessThanOrEqual(voxels.sizeMm[axis]! / 2 + 1e-9),
    );
    expect(findPlace(voxels, laminate, { kind: 'point', atMm: [45, 30, 34] }).offMm).toBeCloseTo(10, 0);
  });

  test('a point of the part turns with the pull, named places do not', () => {
    const place = placeInPullFrame(box([0, 0, 0], [10, 10, 10]), [1, 0, 0], {
      kind: 'point',
      atMm: [7, 0, 0],
    });
    // The frame starts in the middle of the part's box.
    expect(place.kind === 'point' && place.atMm[2]).toBeCloseTo(2, 9);
    expect(placeInPullFrame(box([0, 0, 0], [10, 10, 10]), [1, 0, 0], { kind: 'coldest' })).toEqual({
      kind: 'coldest',
    });
  });
});

test('logged air rules where there is a log, predicted air before and after it', () => {
  const predicted = curveOf([
    [0, 20],
    [1000, 120],
    [2000, 120],
  ]);
  const logged = curveOf([
    [500, 64],
    [1500, 104],
  ]);
  const air = loggedAir(logged, predicted, 4);
  expect(valueAt(air, 0)).toBe(20);
  expect(valueAt(air, 500)).toBe(60);
  expect(valueAt(air, 1000)).toBe(80);
  expect(valueAt(air, 2000)).toBe(120);
  const early = loggedAir({ timesS: [-500, 1500], valuesC: [24, 104] }, predicted, 0);
  expect([early.timesS[0], valueAt(early, 0)]).toEqual([0, 44]);
});
