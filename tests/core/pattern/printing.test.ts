/** What a made pattern needs on its way to the printer. */
import { describe, expect, it } from 'vitest';
import { findHealth } from '../../../src/core/mesh/health';
import { readMeshFile } from '../../../src/core/mesh/read/readMeshFile';
import { weld } from '../../../src/core/mesh/weld';
import { write3mf } from '../../../src/core/mesh/write3mf';
import { beadsFor } from '../../../src/core/pattern/beads';
import { onPrintBed } from '../../../src/core/pattern/onPrintBed';
import { box } from '../../support/meshes';

describe('a pattern to print', () => {
  it('stands on its rim at the print scale, and says so in millimeters when read back from 3MF', () => {
    const placed = onPrintBed(box([5, -3, 2], [25, 9, 10]), [0, 0, -1], 1.01);
    const { mesh } = weld(readMeshFile(write3mf(placed), 'pattern.3mf'));
    const health = findHealth(mesh);
    expect(health.watertight).toBe(true);
    const [{ boxMin, boxMax }] = health.bodies as [(typeof health.bodies)[0]];
    boxMin.forEach((low) => expect(low).toBeCloseTo(0, 6));
    const sides = [...boxMax].sort((a, b) => a - b);
    [8.08, 12.12, 20.2].forEach((side, at) => expect(sides[at]).toBeCloseTo(side, 3));
    expect(boxMax[2]).toBeCloseTo(8.08, 3);
  });

  it('is laid in as many beads as make its wall exactly', () => {
    expect(beadsFor(0.8, 0.4)).toEqual({ count: 2, widthMm: 0.4, isUsual: true });
    expect(beadsFor(0.45, 0.4)).toEqual({ count: 1, widthMm: 0.45, isUsual: true });
    // Between one of 0.67 and two of 0.335 mm, two are nearer to what a nozzle of 0.4 mm lays.
    expect(beadsFor(0.67, 0.4)).toMatchObject({ count: 2, isUsual: true });
    expect(beadsFor(0.3, 0.6)).toMatchObject({ count: 1, isUsual: false });
    for (let wallMm = 0.4; wallMm < 3; wallMm += 0.01) {
      const { count, widthMm } = beadsFor(wallMm, 0.4);
      expect(count * widthMm).toBeCloseTo(wallMm, 9);
    }
  });
});
