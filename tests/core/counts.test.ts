/** The door for counts: each kind of grid, sample and list is refused with a sentence before it is laid out. */
import { describe, expect, test } from 'vitest';
import { isFew, keepWithin, mostCounts } from '../../src/core/counts';
import { bodyIntervals } from '../../src/core/cure/bodyIntervals';
import { recordSpacingS } from '../../src/core/cure/laminateRecord';
import { boxMoldVoxels, blockRound } from '../../src/core/cure/moldVoxels';
import { ovenAirCurve, usualOven } from '../../src/core/cure/ovenAir';
import { usualProgram } from '../../src/core/cure/ovenProgram';
import { parseLog } from '../../src/core/cure/parseLog';
import { areaHistogram } from '../../src/core/mesh/areaHistogram';
import { readPackHeader, packText } from '../../src/core/mesh/packHeader';
import { mixingPlan } from '../../src/core/stone/pourBatch';
import { stoneMix } from '../../src/core/stone/stoneMix';
import { projectInputsSchema } from '../../src/steps/inputs/project';
import { inputsWith } from '../steps/contexts';
import { codeOf } from '../support/codeOf';

/** A stack of `layers` squares over the whole grid, as hostile a drawing as there is. */
const layers = (count: number) => ({
  positions: Float64Array.from({ length: 9 * count }, (_, at) =>
    at % 3 === 2 ? Math.floor(at / 9) : [0, 0, 0, 400, 0, 0, 0, 400, 0][at % 9]!,
  ),
  facets: Uint32Array.from({ length: 3 * count }, (_, at) => at),
});

test.each([0, 1, mostCounts.voxels])('%d voxels pass', (count) => {
  expect(isFew('voxels', count)).toBe(true);
  expect(codeOf(() => keepWithin('voxels', count, 'a', 'b'))).toBeNull();
});

test.each([mostCounts.voxels + 1, Infinity, -1, NaN])('%d voxels do not', (count) => {
  expect(isFew('voxels', count)).toBe(false);
  expect(codeOf(() => keepWithin('voxels', count, 'a', 'b'))).toBe('a');
});

describe('refused at the door', () => {
  const mix = stoneMix({
    waterPowderRatio: 0.22,
    settingExpansionPercent: 0.1,
    powderDensityGCm3: 2.757,
  });
  const bowl = {
    lossPercent: 10,
    bowlMl: 750,
    bowlFillShare: 0.6,
    workingMin: 8,
    mixingMin: 1,
    pouringMlPerMin: 500,
  };
  const grid = { side: 257, x0Mm: -0.5, y0Mm: -0.5, pitchMm: 0.75 };
  const header = {
    vertexCount: 3,
    bits: 1,
    errorFileUnits: 0,
    payloadBytes: 0,
    checksum: 0,
    grid: { stepsPerUnit: 1, origin: [0, 0, 0] as const },
  };

  test.each<[string, () => unknown, string]>([
    [
      'voxels of a mold of a kilometer',
      () => boxMoldVoxels({ blockMm: blockRound([1e6, 1e6, 1e6], 10), laminateMm: [1, 1, 1], voxelMm: 2 }),
      'cure.voxels',
    ],
    ['columns through 400 layers', () => bodyIntervals(layers(1000), grid), 'pours.crossings'],
    ['columns of a finer grid', () => bodyIntervals(layers(1), { ...grid, side: 1026 }), 'pours.columns'],
    [
      'air that cools for a year',
      () => ovenAirCurve({ ...usualProgram, coolKPerMin: 1e-4 }, usualOven, 1e5),
      'cure.tooLong',
    ],
    ['a log of 257 columns', () => parseLog(`${Array(257).fill('1').join(',')}\n`.repeat(4)), 'log.columns'],
    ['a histogram of 1001 bars', () => areaHistogram([1], [1], 0, 2, 1001), 'histogram.range'],
    ['501 bowls of stone', () => mixingPlan(501 * (450 / 1.1), mix, bowl), 'stone.tooManyBatches'],
    [
      'a saved model of 4,000,001 triangles',
      () => readPackHeader(packText({ ...header, facetCount: 4_000_001 }, new Uint8Array(0))),
      'pack.counts',
    ],
  ])('%s', (_, ask, code) => {
    const before = process.memoryUsage().arrayBuffers;
    expect(codeOf(ask)).toBe(code);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(100e6);
  });

  test('the most that pass do pass', () => {
    expect(mixingPlan(500 * (450 / 1.1), mix, bowl).batches).toBe(500);
    expect(areaHistogram([1], [1], 0, 2, 1000).bins).toHaveLength(1000);
    expect(bodyIntervals(layers(2), grid).filter((one) => one !== undefined).length).toBeGreaterThan(0);
  });

  test('a list of 501 stages, and not one of 500', () => {
    const stage = { targetC: 70, rampKPerMin: null, dwellHours: 0.01 };
    const withStages = (count: number) =>
      inputsWith({ cure: { stages: Array.from({ length: count }, () => stage) } });
    expect(projectInputsSchema.safeParse(withStages(500)).success).toBe(true);
    const refused = projectInputsSchema.safeParse(withStages(501));
    expect(refused.error?.issues[0]).toMatchObject({
      path: ['cure', 'stages'],
      message: 'must have no more than 500 entries',
    });
  });
});

test('temperatures of a long run through many places are kept further apart, and never more than fit', () => {
  expect(recordSpacingS(60, 6 * 3600, 5000)).toBe(60);
  const [untilS, places] = [15 * 86_400, 150_000];
  const everyS = recordSpacingS(60, untilS, places);
  expect((untilS / everyS) * places).toBeLessThanOrEqual(mostCounts.keptTemperatures);
});
