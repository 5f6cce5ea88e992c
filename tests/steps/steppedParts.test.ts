/** Parts that step: the core skin has outside corners of its own there, and they are its wall. Areas in closed form. */
import { describe, expect, test } from 'vitest';
import { findHealth } from '../../src/core/mesh/health';
import { measurePart } from '../../src/core/mesh/measure';
import { refineForMeasuring } from '../../src/core/mesh/refineForMeasuring';
import { summarize } from '../../src/core/part/summary';
import type { IndexedMesh, Vec3 } from '../../src/core/mesh/types';
import { mapVertices } from '../support/meshes';
import { turned } from '../support/savedTray';
import { shellOfRings, steppedTray } from '../support/shells';

const [lengthMm, widthMm, heightMm, stepMm] = [70, 45, 24, 6];
const around = (insetMm: number) => 2 * (lengthMm + widthMm - 4 * insetMm);
const level = (insetMm: number) => (lengthMm - 2 * insetMm) * (widthMm - 2 * insetMm);

/** Lower sides, land of the step (with the top it is as large as the lower outline), upper sides. */
const skinMm2 = (insetMm: number) =>
  around(insetMm) * (heightMm / 2 - insetMm) + level(insetMm) + around(insetMm + stepMm) * (heightMm / 2);

function areasOf(drawn: IndexedMesh, pull: Vec3) {
  const { mesh } = refineForMeasuring(drawn);
  return summarize(drawn, findHealth(drawn), measurePart(mesh, pull)).kindAreaMm2;
}

const rectangle = (insetMm: number, zMm: number) => {
  const [x, y] = [lengthMm / 2 - insetMm, widthMm / 2 - insetMm];
  return {
    corners: [
      [x, y],
      [-x, y],
      [-x, -y],
      [x, -y],
    ] as [number, number][],
    zMm,
  };
};

describe('a stepped tray', () => {
  test.each([
    [1, [0, 0, 0]],
    [1.8, [0, 0, 0]],
    [3, [0, 0, 0]],
    [3, [0.4, -0.7, 1.1]],
  ] as const)('with a wall of %f mm, turned by %j', (wallMm, turn) => {
    const move = turned(turn);
    const drawn = mapVertices(steppedTray(lengthMm, widthMm, heightMm, stepMm, wallMm), move);
    const { show, core, detail, trapped } = areasOf(drawn, move([0, 0, 1]));
    expect(Math.abs(show / skinMm2(0) - 1)).toBeLessThan(0.005);
    expect(Math.abs(core / skinMm2(wallMm) - 1)).toBeLessThan(0.005);
    expect(detail + trapped).toBeLessThan(0.001 * show);
  });

  test('the land of a lip inside the rim is no wall of the core skin', () => {
    // Walls of 4 mm that end in a lip of 1.5 mm, 5 mm high: the land behind it is 2.5 mm wide and looks at the rim.
    const rings = [
      [0, heightMm],
      [0, 0],
      [1.5, 0],
      [1.5, 5],
      [4, 5],
      [4, heightMm - 4],
    ] as const;
    const drawn = shellOfRings(
      rings.map(([insetMm, zMm]) => rectangle(insetMm, zMm)),
      heightMm,
      heightMm - 4,
    );
    const { show, core } = areasOf(drawn, [0, 0, 1]);
    const sides = around(1.5) * 5 + around(4) * (heightMm - 9);
    expect(Math.abs(show / (around(0) * heightMm + level(0)) - 1)).toBeLessThan(0.005);
    expect(Math.abs(core / (sides + level(4)) - 1)).toBeLessThan(0.005);
  });
});
