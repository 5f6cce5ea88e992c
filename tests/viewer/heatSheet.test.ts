import { describe, expect, it } from 'vitest';
import { cutFields, fieldBounds, keptFields } from '../../src/core/cure/heatFields';
import { boxMoldVoxels, voxelCount } from '../../src/core/cure/moldVoxels';
import { heatRange, heatScale, heatSheet, moldBox, sightOnSheet } from '../../src/viewer/heatSheet';

const voxels = boxMoldVoxels({ blockMm: [40, 30, 20], laminateMm: [20, 10, 4], voxelMm: 2 });
const warm = new Float32Array(voxelCount(voxels)).map((_, at) => (voxels.laminateShare[at]! > 0 ? 80 : 95));
const fields = keptFields(voxels, [{ timeS: 0, temperatureC: warm }], 1e9);
/** Pulled along the part's x: frame x, y, z are the part's y, z, x. */
const frame = {
  axes: [
    [0, 1, 0],
    [0, 0, 1],
    [1, 0, 0],
  ],
  originMm: [100, 0, 0],
  turnDeg: 0,
} as const;
const reply = { cut: cutFields(fields, 2, 10, 0), ...fieldBounds(fields), frame };

describe('the drawn cut of a heated mold', () => {
  it('stands in the part’s own axes, every cell of the mold twice three corners', () => {
    const sheet = heatSheet(reply, heatScale(20, 120));
    expect(sheet.corners.length).toBe(20 * 15 * 2 * 9);
    expect(sheet.colors.length).toBe(20 * 15 * 2);
    // Across the pull at 10 mm of the frame: the plane x = 110 of the part.
    for (let at = 0; at < sheet.corners.length; at += 3) expect(sheet.corners[at]).toBe(110);
    expect(sheet.normal).toEqual([1, 0, 0]);
    expect(moldBox(reply)).toEqual({ boxMinMm: [100, 0, 0], boxMaxMm: [120, 40, 30] });
  });

  it('outlines the laminate: once around its cells', () => {
    const { outlineMm } = heatSheet(reply, heatScale(20, 120));
    let lengthMm = 0;
    for (let at = 0; at < outlineMm.length; at += 6)
      lengthMm += Math.hypot(
        outlineMm[at + 3]! - outlineMm[at]!,
        outlineMm[at + 4]! - outlineMm[at + 1]!,
        outlineMm[at + 5]! - outlineMm[at + 2]!,
      );
    // 20 x 10 mm of laminate on bricks of 2 mm, its long edge half a brick over on each side: 20 x 10 or 20 x 12.
    expect([60, 64]).toContain(Math.round(lengthMm));
  });

  it('tells laminate and stone apart in words', () => {
    expect(heatRange(reply.cut, 'laminate')).toEqual([80, 80]);
    expect(heatRange(reply.cut, 'stone')?.[1]).toBe(95);
    expect(heatRange(cutFields(fields, 2, 1, 0), 'laminate')).toBeNull();
  });

  it('finds the clicked point, and none when the sight runs along the cut', () => {
    const sheet = heatSheet(reply, heatScale(20, 120));
    expect(sightOnSheet(sheet, [500, 7, 9], [-1, 0, 0])).toEqual([110, 7, 9]);
    expect(sightOnSheet(sheet, [500, 7, 9], [0, 1, 0])).toBeNull();
  });

  it('scales in whole tens and never to nothing', () => {
    expect(heatScale(21, 118)).toMatchObject({ low: 20, high: 120 });
    expect(heatScale(20, 20)).toMatchObject({ low: 20, high: 30 });
  });
});
