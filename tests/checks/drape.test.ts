/**
 * Cloth on shapes with closed forms. Pin-jointed net on a sphere: Mack and Taylor, The fitting of woven cloth to surfaces, J. Text.
 * Inst. 47 (1956) T477: with arc lengths u, v from the start along both threads and s = u v / R², the shear g obeys s g" + g' = cos g,
 * g(0) = 0, g'(0) = 1; on the bias the polar angle p grows by dp/dt = 2 cos((90° - g(t²)) / 2) with u = v = t R. Integrated here
 * anew, apart from the mesh. What can be unrolled does not shear: circumference and height of a cylinder, 2 pi sin(half angle) of
 * a cone. Behind the corner of a box the shear is its angular defect, by Gauss and Bonnet.
 */
import { describe, expect, it } from 'vitest';
import { gridFace, openBox, sphereCap } from '../support/drapeShapes';
import { coveredMm2, deg, laid, sizeOf } from '../support/laid';

/** Shear on the bias of a sphere, by its polar angle, degrees. */
function exactBias(polarDeg: number): number {
  // g and g' by s from a start on the series s - s³/18, with the polar angle by t = sqrt(s).
  const step = 1e-4;
  let [t, polar] = [1e-3, 0];
  let [g, rate] = [t * t, 1];
  const goal = (polarDeg * Math.PI) / 180;
  polar = 2 * Math.cos(Math.PI / 4) * t;
  while (polar < goal) {
    const ways = 2 * t * step + step * step;
    const s = t * t;
    const middle = g + (rate * ways) / 2;
    const middleRate = rate + ((Math.cos(g) - rate) / s) * (ways / 2);
    g += middleRate * ways;
    rate += ((Math.cos(middle) - middleRate) / (s + ways / 2)) * ways;
    polar += 2 * Math.cos((Math.PI / 2 - g) / 2) * step;
    t += step;
  }
  return deg(g);
}

describe('a half sphere', () => {
  const half = sphereCap(30, 90, 200);

  it('is integrated to the values that two other integrators gave', () => {
    // Reference values of the trade: computed twice, and on a net of half-degree cells.
    for (const [polar, shear] of [
      [30, 7.52],
      [60, 26.946],
      [90, 52.425],
    ] as const)
      expect(exactBias(polar)).toBeCloseTo(shear, 1);
  });

  it.each([
    [30, 7.52],
    [45, 16.113],
    [60, 26.946],
    [75, 39.27],
    [90, 52.425],
  ])('shears on the bias at %d° of arc by %d°, within 0.05° at 1 mm', (polar, shear) => {
    const { net, cells } = laid(half, { at: [0, 0, 30], warp: [1, 0, 0] });
    const on = cells
      .filter(({ nodes: [corner] }) => net.i[corner] === net.j[corner] && net.i[corner]! >= 0)
      .map(({ nodes, shearRad }) => {
        const [x, y, z] = [0, 1, 2].map((k) =>
          nodes.reduce((sum, node) => sum + net.pointMm[3 * node + k]!, 0),
        );
        return [deg(Math.atan2(Math.hypot(x!, y!), z!)), deg(shearRad)] as const;
      });
    const after = on.findIndex(([at]) => at > polar);
    const [a, b] = [on[after - 1]!, on[after]!];
    expect(a[1] + ((polar - a[0]) / (b[0] - a[0])) * (b[1] - a[1])).toBeGreaterThan(shear - 0.05);
    expect(a[1] + ((polar - a[0]) / (b[0] - a[0])) * (b[1] - a[1])).toBeLessThan(shear + 0.05);
  });

  it('has cells of its own area, within 0.1 %', () => {
    const own = 2 * Math.PI * 30 ** 2;
    expect(Math.abs(coveredMm2(laid(half, { at: [0, 0, 30], warp: [1, 0, 0] })) / own - 1)).toBeLessThan(
      0.001,
    );
  });

  it('is half a circumference long along a thread, within 0.3 %', () => {
    const [along, across] = sizeOf(laid(half, { at: [0, 0, 30], warp: [1, 0, 0] }));
    expect(Math.abs(along / (30 * Math.PI) - 1)).toBeLessThan(0.003);
    expect(Math.abs(across / (30 * Math.PI) - 1)).toBeLessThan(0.003);
  });
});

const angle = (u: number) => (u - 0.5) * 1.2 * Math.PI;

describe('what can be unrolled', () => {
  const cylinder = gridFace(240, 60, (u, v) => [
    20 * Math.sin(angle(u)),
    60 * v - 30,
    20 * Math.cos(angle(u)),
  ]);

  it('a patch of a cylinder is 75.398 × 60 mm, within 0.02 mm', () => {
    const drape = laid(cylinder, { at: [0, 0, 20], warp: [1, 0, 0] });
    const [along, across] = sizeOf(drape);
    expect(Math.abs(along - 20 * 1.2 * Math.PI)).toBeLessThan(0.02);
    expect(Math.abs(across - 60)).toBeLessThan(0.02);
    expect(Math.abs(coveredMm2(drape) / (60 * 20 * 1.2 * Math.PI) - 1)).toBeLessThan(0.001);
  });

  it('a cylinder does not shear, whichever way its threads run', () => {
    for (const turn of [0, 0.3, 0.5236, 0.7854]) {
      const { cells } = laid(cylinder, { at: [0, 0, 20], warp: [Math.cos(turn), Math.sin(turn), 0] });
      expect(Math.max(...cells.map(({ shearRad }) => Math.abs(deg(shearRad))))).toBeLessThan(0.01);
    }
  });

  it('a cone of 30° half angle lays flat as a sector of 180° of its whole turn', () => {
    // Three quarters of the turn, from 20 to 60 mm of its side.
    const half = Math.PI / 6;
    const part = 1.5 * Math.PI;
    const cone = gridFace(300, 60, (u, v) => {
      const side = 60 - 40 * v;
      const turn = (u - 0.5) * part;
      return [
        side * Math.sin(half) * Math.sin(turn),
        side * Math.sin(half) * -Math.cos(turn),
        -side * Math.cos(half),
      ];
    });
    const drape = laid(cone, { at: [0, -20, -34.64], warp: [1, 0, 0] });
    expect(Math.max(...drape.cells.map(({ shearRad }) => Math.abs(deg(shearRad))))).toBeLessThan(0.05);
    // A sector of that angle between both radii.
    const sector = (part * Math.sin(half) * (60 ** 2 - 20 ** 2)) / 2;
    expect(Math.abs(coveredMm2(drape) / sector - 1)).toBeLessThan(0.001);
  });

  it('a plate with a hole comes out as drawn, the hole where it is', () => {
    const plate = gridFace(
      140,
      100,
      (u, v) => [70 * u - 35, 50 * v - 25, 0],
      (u, v) => Math.abs(70 * u - 45) > 8 || Math.abs(50 * v - 25) > 6,
    );
    const drape = laid(plate, { at: [-12, 0, 0], warp: [1, 0, 0] });
    const [along, across] = sizeOf(drape);
    expect(Math.abs(along - 70)).toBeLessThan(0.02);
    expect(Math.abs(across - 50)).toBeLessThan(0.02);
    expect(Math.max(...drape.cells.map(({ shearRad }) => Math.abs(shearRad)))).toBeLessThan(1e-6);
    expect(Math.abs(drape.surface.holesAreaMm2 - 16 * 12)).toBeLessThan(0.01);
  });
});

describe('the corner of a box', () => {
  it.each([30, 45, 60])('with %d° of draft shears by its angular defect, within 0.5°', (draftDeg) => {
    const { net, cells } = laid(openBox([60, 40, 15], draftDeg, 1), {
      at: [0.3, 0.2, 0],
      warp: [1, 0, 0],
      cutDeg: 80,
    });
    // Each wall's upper corner opens by atan(sin draft) over the square.
    const defectDeg = 90 - 2 * deg(Math.atan(Math.sin((draftDeg * Math.PI) / 180)));
    const behind = cells.filter(({ nodes: [corner] }) => {
      const [i, j] = [net.i[corner]!, net.j[corner]!];
      return i >= 32 && i <= 36 && j >= 22 && j <= 26;
    });
    expect(behind.length).toBeGreaterThan(3);
    for (const { shearRad } of behind)
      expect(Math.abs(Math.abs(deg(shearRad)) - defectDeg)).toBeLessThan(0.5);
  });

  it('needs a dart at 3°: what is left open is less than 2 % of the box', () => {
    for (const warp of [
      [1, 0, 0],
      [1, 1, 0],
      [1, 0.5, 0],
    ] as const) {
      const drape = laid(openBox([60, 40, 15], 3, 1), { at: [0.3, 0.2, 0], warp, cutDeg: 54 });
      expect(Math.max(...drape.cells.map(({ shearRad }) => Math.abs(deg(shearRad))))).toBeLessThanOrEqual(54);
      const share = coveredMm2(drape) / drape.surface.faceAreaMm2;
      expect(share).toBeGreaterThan(0.98);
      expect(share).toBeLessThan(1.001);
    }
  });
});
