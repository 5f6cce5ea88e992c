/**
 * Volumes of the two pours against closed forms (volumes of ellipsoid, cone frustum and box from geometry), at random
 * turns of the part and with the pull along any axis of the box that it is drawn in.
 */
import * as fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { castHalves } from '../../src/core/stone/pours/castHalves';
import { usualPours, type PourChoices } from '../../src/core/stone/pours/pourChoices';
import { prepareSolids } from '../../src/core/stone/pours/solids';
import type { IndexedMesh, Vec3 } from '../../src/core/mesh/types';
import { mapVertices } from '../support/meshes';
import { propertySeed } from '../support/propertySeed';
import { cupShell, halfEllipsoidShell, steppedTray } from '../support/shells';

interface ClosedForm {
  readonly name: string;
  readonly mesh: IndexedMesh;
  /** Below the show face and above the plane of the rim. */
  readonly envelopeMm3: number;
  readonly cavityMm3: number;
  /** Least rectangle round the part seen along the pull. */
  readonly leastPlanMm2: number;
}

const ellipsoidMm3 = (a: number, b: number, c: number) => (2 / 3) * Math.PI * a * b * c;
const frustumMm3 = (r: number, s: number, h: number) => (Math.PI * h * (r * r + r * s + s * s)) / 3;

const forms: readonly ClosedForm[] = [
  {
    name: 'half-ellipsoid shell',
    mesh: halfEllipsoidShell([42, 28, 20], 2, 60, 240),
    envelopeMm3: ellipsoidMm3(42, 28, 20),
    cavityMm3: ellipsoidMm3(40, 26, 18),
    leastPlanMm2: 84 * 56,
  },
  {
    name: 'cup',
    mesh: cupShell(30, 24, 40, 1.5, 360),
    envelopeMm3: frustumMm3(30, 24, 40),
    cavityMm3: frustumMm3(28.5, 22.5, 38.5),
    leastPlanMm2: 60 * 60,
  },
  {
    name: 'stepped tray',
    mesh: steppedTray(70, 45, 24, 6, 1.8),
    envelopeMm3: 12 * (70 * 45 + 58 * 33),
    cavityMm3: 66.4 * 41.4 * 10.2 + 54.4 * 29.4 * 12,
    leastPlanMm2: 70 * 45,
  },
];

/** The part turned by a unit quaternion, and its pull with it. */
function turned(mesh: IndexedMesh, [w, x, y, z]: readonly number[]): { mesh: IndexedMesh; pull: Vec3 } {
  const length = Math.hypot(w!, x!, y!, z!);
  const [a, b, c, d] = [w! / length, x! / length, y! / length, z! / length] as const;
  const turn = ([px, py, pz]: Vec3): Vec3 => [
    (1 - 2 * (c * c + d * d)) * px + 2 * (b * c - a * d) * py + 2 * (b * d + a * c) * pz,
    2 * (b * c + a * d) * px + (1 - 2 * (b * b + d * d)) * py + 2 * (c * d - a * b) * pz,
    2 * (b * d - a * c) * px + 2 * (c * d + a * b) * py + (1 - 2 * (b * b + c * c)) * pz,
  ];
  return { mesh: mapVertices(mesh, turn), pull: turn([0, 0, 1]) };
}

/** Nothing but box, pattern and stone. */
const plainPours = {
  ...usualPours,
  keys: { ...usualPours.keys, count: 0 },
  prySlots: { ...usualPours.prySlots, count: 0 },
};

/** The same surface with one facet gone: no solid any more. */
const torn = ({ positions, facets }: IndexedMesh): IndexedMesh => ({ positions, facets: facets.slice(3) });

function expectVolumes(form: ClosedForm, mesh: IndexedMesh, choices: PourChoices, share: number) {
  const { geometry } = castHalves(mesh, choices);
  const [lengthMm, widthMm] = geometry.box.innerMm;
  const planMm2 = lengthMm * widthMm;
  const negativeMm3 = planMm2 * geometry.box.negativeHeightMm - form.envelopeMm3;
  const positiveMm3 = planMm2 * geometry.box.positiveHeightMm + form.cavityMm3;
  const close = (value: number, wanted: number) =>
    expect(Math.abs(value / wanted - 1)).toBeLessThanOrEqual(share);
  close(geometry.negativeMm3, negativeMm3);
  close(geometry.positiveMm3, positiveMm3);
  close(geometry.envelopeMm3, form.envelopeMm3);
  close(geometry.cavityMm3, form.cavityMm3);
  close(geometry.volumeCheck, 1);
  // However the part is turned, its box is no larger than that of the part drawn upright: 10 mm of cover on each side.
  const [length, width] = [lengthMm - 20, widthMm - 20];
  expect(Math.abs((length * width) / form.leastPlanMm2 - 1)).toBeLessThanOrEqual(2e-3);
  return geometry;
}

const quaternion = fc
  .array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 4, maxLength: 4 })
  .filter((parts) => Math.hypot(...parts) > 0.1);
const alongAxes: readonly (readonly number[])[] = [
  [1, 0, 0, 0],
  [0, 1, 0, 0],
  [1, 1, 0, 0],
  [1, -1, 0, 0],
  [1, 0, 1, 0],
  [1, 0, -1, 0],
];

beforeAll(() => prepareSolids());

describe.each(forms)('two pours around a $name', (form) => {
  it('meet the closed form by solid booleans with the pull along every axis', { timeout: 60_000 }, () => {
    for (const turn of alongAxes) {
      const { mesh, pull } = turned(form.mesh, turn);
      const geometry = expectVolumes(form, mesh, { ...plainPours, pull }, 1e-3);
      expect(geometry.method).toBe('solid booleans');
    }
  });

  it(`meet it at random turns (seed ${propertySeed})`, { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(quaternion, (turn) => {
        const { mesh, pull } = turned(form.mesh, turn);
        expectVolumes(form, mesh, { ...plainPours, pull }, 1e-3);
      }),
      { numRuns: 4 },
    );
  });

  it(`meet it to 0.5 % by integration at random turns (seed ${propertySeed})`, { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(quaternion, (turn) => {
        const { mesh, pull } = turned(torn(form.mesh), turn);
        const geometry = expectVolumes(form, mesh, { ...plainPours, pull }, 5e-3);
        expect(geometry.method).toBe('integration along the pull');
        expect(geometry.why).toMatch(/not closed: 3 edges are open/);
      }),
      { numRuns: 3 },
    );
  });
});
