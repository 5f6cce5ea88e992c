import { describe, expect, it } from 'vitest';
import { cutFields, fieldBounds, heatAtPoint, keptFields } from '../../../src/core/cure/heatFields';
import { boxMoldVoxels, voxelCount } from '../../../src/core/cure/moldVoxels';

const voxels = boxMoldVoxels({ blockMm: [40, 30, 20], laminateMm: [20, 10, 2], voxelMm: 2 });

/** A temperature that tells its place and its time: x + 2 y + 3 z of the brick's middle, and 0.01 K per second. */
const fieldAt = (timeS: number) => {
  const temperatureC = new Float32Array(voxelCount(voxels));
  for (let k = 0, at = 0; k < voxels.nz; k++)
    for (let j = 0; j < voxels.ny; j++)
      for (let i = 0; i < voxels.nx; i++, at++)
        temperatureC[at] =
          (i + 0.5) * voxels.sizeMm[0] +
          2 * (j + 0.5) * voxels.sizeMm[1] +
          3 * (k + 0.5) * voxels.sizeMm[2] +
          0.01 * timeS;
  return { timeS, temperatureC };
};
const frames = [0, 600, 1200, 1800, 2400].map(fieldAt);
const fields = keptFields(voxels, frames, 1e9);

describe('fields of an oven run', () => {
  it('know the ends of the mold', () => {
    expect(fieldBounds(fields)).toEqual({ lowMm: [0, 0, 0], highMm: [40, 30, 20] });
  });

  it.each([0, 1, 2] as const)('are cut across axis %i at any place and any time', (axis) => {
    const cut = cutFields(fields, axis, 9, 900);
    const [u, v] = [0, 1, 2].filter((other) => other !== axis) as [number, number];
    const weights = [1, 2, 3];
    expect(cut.counts).toEqual([[20, 15, 10][u], [20, 15, 10][v]]);
    cut.temperatureC.forEach((celsius, cell) => {
      const [i, j] = [cell % cut.counts[0], Math.floor(cell / cut.counts[0])];
      const expected = weights[axis]! * 9 + weights[u]! * (2 * i + 1) + weights[v]! * (2 * j + 1) + 9;
      expect(celsius).toBeCloseTo(expected, 2);
    });
  });

  it('show laminate where the laminate lies, and the outermost bricks past the ends', () => {
    expect(Math.max(...cutFields(fields, 2, 10, 0).laminateShare)).toBeGreaterThan(0.4);
    expect(Math.max(...cutFields(fields, 2, 2, 0).laminateShare)).toBe(0);
    expect(cutFields(fields, 0, -50, 0).temperatureC).toEqual(cutFields(fields, 0, 1, 0).temperatureC);
    expect(cutFields(fields, 0, 1, 99_999).temperatureC).toEqual(cutFields(fields, 0, 1, 2400).temperatureC);
  });

  it('tell the run of one point, what it lies in, and nothing outside the mold', () => {
    const inStone = heatAtPoint(fields, [1, 1, 19]);
    expect(inStone?.fill).toBe('negative');
    expect(inStone?.curve.timesS).toEqual([0, 600, 1200, 1800, 2400]);
    expect(inStone?.curve.valuesC[2]).toBeCloseTo(1 + 2 + 57 + 12, 2);
    expect(heatAtPoint(fields, [20, 15, 10])?.fill).toBe('laminate');
    expect(heatAtPoint(fields, [1, 1, 1])?.fill).toBe('positive');
    expect(heatAtPoint(fields, [41, 1, 1])).toBeNull();
    expect(heatAtPoint(fields, [1, 1, -0.1])).toBeNull();
  });

  it('leave out frames evenly when they would take too much, never the first or the last', () => {
    const bytesPerFrame = 2 * voxelCount(voxels);
    expect(keptFields(voxels, frames, 3 * bytesPerFrame).timesS).toEqual([0, 1200, 2400]);
    expect(keptFields(voxels, frames, 1).timesS).toEqual([0, 2400]);
  });
});
