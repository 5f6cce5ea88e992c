import { describe, expect, test } from 'vitest';
import { boxMoldVoxels, halfCode, voxelCount } from '../../../src/core/cure/moldVoxels';
import { columnFill, voxelsFromColumns, type MoldColumns } from '../../../src/core/cure/voxelsFromColumns';

/** Columns of a flat laminate in the middle of a block, as the real geometry would give them. */
function flatColumns(
  across: number,
  along: number,
  pitchMm: number,
  heightMm: number,
  laminateMm: number,
): MoldColumns {
  const count = across * along;
  const start = Uint32Array.from({ length: count + 1 }, (_, c) => 3 * c);
  const low = (heightMm - laminateMm) / 2;
  const each = (values: readonly number[]) => Array.from({ length: count }, () => values).flat();
  return {
    columns: [across, along],
    pitchMm: [pitchMm, pitchMm],
    originMm: [0, 0, 0],
    heightMm,
    start,
    fromMm: Float32Array.from(each([0, low, low + laminateMm])),
    untilMm: Float32Array.from(each([low, low + laminateMm, heightMm])),
    fill: Uint8Array.from(each([columnFill.positiveStone, columnFill.laminate, columnFill.negativeStone])),
  };
}

const volumeOf = (shares: Float32Array, voxelMm3: number) =>
  shares.reduce((sum, share) => sum + share, 0) * voxelMm3;

describe('voxels from columns', () => {
  test.each([1, 2, 3, 5])('keep the volume of the laminate at %i mm', (voxelMm) => {
    const voxels = voxelsFromColumns(flatColumns(60, 40, 1, 30, 0.7), voxelMm);
    const [x, y, z] = voxels.sizeMm;
    expect(voxels.nx * x).toBeCloseTo(60, 9);
    expect(voxels.nz * z).toBeCloseTo(30, 9);
    expect(volumeOf(voxels.laminateShare, x * y * z)).toBeCloseTo(60 * 40 * 0.7, 0);
    expect(voxels.half.every((code) => code !== halfCode.outside)).toBe(true);
  });

  test('agree with the plain block', () => {
    const columns = voxelsFromColumns(flatColumns(60, 40, 1, 30, 0.7), 2);
    const block = boxMoldVoxels({ blockMm: [60, 40, 30], laminateMm: [60, 40, 0.7], voxelMm: 2 });
    expect(voxelCount(columns)).toBe(voxelCount(block));
    columns.laminateShare.forEach((share, at) => expect(share).toBeCloseTo(block.laminateShare[at]!, 4));
    const top = voxelCount(columns) - 1;
    expect([columns.half[0], columns.half[top]]).toEqual([halfCode.positive, halfCode.negative]);
  });

  test('leave what no interval covers outside', () => {
    const flat = flatColumns(10, 10, 1, 10, 1);
    // The first half of the columns is empty.
    const start = flat.start.map((_, c) => (c <= 50 ? 0 : 3 * (c - 50)));
    const voxels = voxelsFromColumns({ ...flat, start }, 1);
    expect(voxels.half.filter((code) => code === halfCode.outside)).toHaveLength(500);
  });

  test.each([
    [
      'cure.columns',
      () => voxelsFromColumns({ ...flatColumns(4, 4, 1, 10, 1), start: new Uint32Array(17) }, 1),
    ],
    ['cure.voxels', () => voxelsFromColumns(flatColumns(4, 4, 1, 10, 1), 0.3)],
    ['cure.voxels', () => boxMoldVoxels({ blockMm: [900, 600, 400], laminateMm: [1, 1, 1], voxelMm: 1 })],
    ['cure.voxels', () => boxMoldVoxels({ blockMm: [90, 60, 40], laminateMm: [91, 1, 1], voxelMm: 5 })],
    ['cure.voxels', () => boxMoldVoxels({ blockMm: [90, 0, 40], laminateMm: [1, 0, 1], voxelMm: 5 })],
  ])('refuse with %s', (code, make) => {
    expect(make).toThrow(expect.objectContaining({ code }));
  });
});
