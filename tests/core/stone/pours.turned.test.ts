/** A part imported turned is cast in a box as small as that of the part drawn upright. */
import * as fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { closedMoldVoxels } from '../../../src/core/cure/closedMold';
import { halfCode } from '../../../src/core/cure/moldVoxels';
import { integrate } from '../../../src/core/mesh/integrals';
import { leastRectangle } from '../../../src/core/mesh/leastRectangle';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import { castHalves, type CastMold } from '../../../src/core/stone/pours/castHalves';
import { usualPours } from '../../../src/core/stone/pours/pourChoices';
import { intoFrame, pullFrame } from '../../../src/core/stone/pours/pullFrame';
import { rimOfPart } from '../../../src/core/stone/pours/rimOfPart';
import { prepareSolids } from '../../../src/core/stone/pours/solids';
import { mapVertices } from '../../support/meshes';
import { propertySeed } from '../../support/propertySeed';
import { steppedTray } from '../../support/shells';

const upright = steppedTray(70, 45, 24, 6, 1.8);
const up: Vec3 = [0, 0, 1];

/** Turned about one of the axes. */
const about = ([x, y, z]: Vec3, deg: number, axis: 0 | 1 | 2): Vec3 => {
  const [cos, sin] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  if (axis === 0) return [x, cos * y - sin * z, sin * y + cos * z];
  if (axis === 1) return [cos * x + sin * z, y, cos * z - sin * x];
  return [cos * x - sin * y, sin * x + cos * y, z];
};

/** Turned about its pull first, then anyhow, with its pull. */
function turned(aboutPullDeg: number, aboutXDeg: number, aboutYDeg: number): [IndexedMesh, Vec3] {
  const turn = (at: Vec3) => about(about(about(at, aboutPullDeg, 2), aboutXDeg, 0), aboutYDeg, 1);
  return [mapVertices(upright, turn), turn(up)];
}

const anyTurn = fc.tuple(
  fc.double({ min: -180, max: 180, noNaN: true }),
  fc.double({ min: -180, max: 180, noNaN: true }),
  fc.double({ min: -180, max: 180, noNaN: true }),
);
const torn = ({ positions, facets }: IndexedMesh): IndexedMesh => ({ positions, facets: facets.slice(3) });
const stoneMm3 = ({ geometry: { negativeMm3, positiveMm3 } }: CastMold) => negativeMm3 + positiveMm3;

/** Stone of the heated mold, mm3. */
function stoneOfVoxels(mesh: IndexedMesh, pull: Vec3): number {
  const { half, filledShare, laminateShare, sizeMm } = closedMoldVoxels(mesh, { ...usualPours, pull }, 3);
  const voxelMm3 = sizeMm[0] * sizeMm[1] * sizeMm[2];
  return half.reduce(
    (sum, code, at) =>
      code === halfCode.outside ? sum : sum + voxelMm3 * filledShare[at]! * (1 - laminateShare[at]!),
    0,
  );
}

const within = (value: number, wanted: number, share: number) =>
  expect(Math.abs(value / wanted - 1)).toBeLessThanOrEqual(share);

beforeAll(() => prepareSolids());

describe(`a part imported turned (seed ${propertySeed})`, { timeout: 120_000 }, () => {
  it('by hand: turned by 30° about its pull it takes the box that it takes upright', () => {
    const [mesh, pull] = turned(30, 0, 0);
    const straight = castHalves(upright, { ...usualPours, pull: up });
    const askew = castHalves(mesh, { ...usualPours, pull });
    expect(straight.geometry.boxTurnDeg).toBe(0);
    expect(straight.geometry.box.innerMm).toEqual([90, 65, 44]);
    expect(askew.geometry.boxTurnDeg).toBeCloseTo(30, 6);
    askew.geometry.box.innerMm.forEach((side, axis) =>
      expect(side).toBeCloseTo(straight.geometry.box.innerMm[axis]!, 6),
    );
    within(stoneMm3(askew), stoneMm3(straight), 1e-3);
    // The halves come out in the part's own axes, round the part.
    const middle = integrate(askew.halves!.negative).centroid!;
    const [cos, sin] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    const before = integrate(straight.halves!.negative).centroid!;
    expect(middle[0]).toBeCloseTo(cos * before[0] - sin * before[1], 0);
    expect(middle[1]).toBeCloseTo(sin * before[0] + cos * before[1], 0);
  });

  it('takes the same stone by solids at any turn, within 1 %', () => {
    const wanted = stoneMm3(castHalves(upright, { ...usualPours, pull: up }));
    fc.assert(
      fc.property(anyTurn, (turns) => {
        const [mesh, pull] = turned(...turns);
        const cast = castHalves(mesh, { ...usualPours, pull });
        expect(cast.geometry.method).toBe('solid booleans');
        within(stoneMm3(cast), wanted, 0.01);
      }),
      { numRuns: 3 },
    );
  });

  it('and by columns, and in the mold that the oven heats', () => {
    const wanted = stoneMm3(castHalves(torn(upright), { ...usualPours, pull: up }));
    const heated = stoneOfVoxels(upright, up);
    within(heated, wanted, 0.01);
    fc.assert(
      fc.property(anyTurn, (turns) => {
        const [mesh, pull] = turned(...turns);
        const cast = castHalves(torn(mesh), { ...usualPours, pull });
        expect(cast.geometry.method).toBe('integration along the pull');
        within(stoneMm3(cast), wanted, 0.01);
        within(stoneOfVoxels(mesh, pull), heated, 0.01);
      }),
      { numRuns: 2 },
    );
  });

  it('keeps its rim in its own axes, so that two halves are held as they are drawn', () => {
    const [mesh, pull] = turned(30, 0, 0);
    const { turnDeg, firstMm, secondMm } = leastRectangle(rimOfPart(mesh, { ...usualPours, pull })!.flat());
    expect(turnDeg).toBeCloseTo(30, 1);
    expect(firstMm).toBeCloseTo(70, 1);
    expect(secondMm).toBeCloseTo(45, 1);
  });

  it('stands square in its frame, and its frame is right-handed', () => {
    fc.assert(
      fc.property(anyTurn, (turns) => {
        const [mesh, pull] = turned(...turns);
        const frame = pullFrame(mesh, pull);
        const inFrame = intoFrame(frame, mesh.positions);
        const span = (axis: number) => {
          const all = inFrame.filter((_, at) => at % 3 === axis);
          return Math.max(...all) - Math.min(...all);
        };
        within(span(0) * span(1), 70 * 45, 1.1e-3);
        expect(span(2)).toBeCloseTo(24, 9);
        const [a, b, c] = frame.axes;
        expect(a[0] * b[0] + a[1] * b[1] + a[2] * b[2]).toBeCloseTo(0, 12);
        expect(a[1] * b[2] - a[2] * b[1]).toBeCloseTo(c[0], 12);
      }),
    );
  });
});
