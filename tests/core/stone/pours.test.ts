import { beforeAll, describe, expect, it } from 'vitest';
import { findHealth } from '../../../src/core/mesh/health';
import { integrate } from '../../../src/core/mesh/integrals';
import { readMeshFile } from '../../../src/core/mesh/read/readMeshFile';
import { weld } from '../../../src/core/mesh/weld';
import { writeStlBinary } from '../../../src/core/mesh/writeStl';
import { castHalves } from '../../../src/core/stone/pours/castHalves';
import { usualPours, type PourChoices } from '../../../src/core/stone/pours/pourChoices';
import { prepareSolids } from '../../../src/core/stone/pours/solids';
import type { IndexedMesh } from '../../../src/core/mesh/types';
import { Problem } from '../../../src/core/problem';
import { air, caseHalf, cellPart, solid } from '../../support/cellPart';
import { box, domeShell, insideOut, joinMeshes, mapVertices, tray } from '../../support/meshes';
import { windMeterLower, windMeterUpper } from '../../../src/workbook/demo/windMeter';

const upward: PourChoices = { ...usualPours, pull: [0, 0, 1] };
const downward: PourChoices = { ...usualPours, pull: [0, 0, -1] };
const noKeys = { ...usualPours.keys, count: 0 };
const noSlots = { ...usualPours.prySlots, count: 0 };
const plain = (choices: PourChoices): PourChoices => ({ ...choices, keys: noKeys, prySlots: noSlots });

/** 40 x 30 x 10 mm, wall 1 mm, open below. */
const lid = (...more: Parameters<typeof cellPart>[2]) =>
  cellPart(
    [40, 30, 10],
    [0.5, 0.5, 0.5],
    [solid([0, 40], [0, 30], [0, 10]), air([1, 39], [1, 29], [0, 9]), ...more],
  );

function expectSolid(mesh: IndexedMesh, volumeMm3: number) {
  const health = findHealth(mesh);
  expect(health.watertight).toBe(true);
  expect(health.bodies.filter(({ volume }) => volume !== null && volume > 0)).toHaveLength(1);
  expect(integrate(mesh).volume / volumeMm3).toBeCloseTo(1, 5);
}

function cast(mesh: IndexedMesh, choices: PourChoices) {
  const mold = castHalves(mesh, choices);
  const { geometry, halves } = mold;
  expect(Math.abs(geometry.volumeCheck - 1)).toBeLessThan(1e-4);
  if (halves !== null) {
    expectSolid(halves.negative, geometry.negativeMm3);
    expectSolid(halves.positive, geometry.positiveMm3);
  }
  return mold;
}

/** Area of a 60 x 50 mm rectangle rounded by 10 mm, moved outward. */
const level = (outMm: number) => (60 + 2 * outMm) * (50 + 2 * outMm) - (4 - Math.PI) * (10 + outMm) ** 2;

/** Volume of a pour in that box whose walls lean out by 3 degrees (Simpson's rule, exact for it). */
const pourMm3 = (heightMm: number) => {
  const outMm = heightMm * Math.tan((3 * Math.PI) / 180);
  return (heightMm / 6) * (level(0) + 4 * level(outMm / 2) + level(outMm));
};

beforeAll(() => prepareSolids());

describe('two pours', { timeout: 30_000 }, () => {
  it('add up to the box with the pattern between them', () => {
    const { geometry } = cast(lid(), plain(upward));
    expect(geometry.method).toBe('solid booleans');
    expect(geometry.box.innerMm).toEqual([60, 50, 30]);
    expect(geometry.envelopeMm3).toBeCloseTo(40 * 30 * 10, -1);
    expect(geometry.cavityMm3).toBeCloseTo(38 * 28 * 9, -1);
    expect(geometry.patternMm3).toBeCloseTo(40 * 30 * 10 - 38 * 28 * 9, 3);
    expect(geometry.negativeMm3 + geometry.positiveMm3 + geometry.patternMm3).toBeCloseTo(60 * 50 * 30, 1);
    // Land 60 x 50 less 40 x 30, and the show face with its sides; the cavity with its sides and the rim.
    expect(geometry.negativeFaceMm2).toBeCloseTo(1800 + 1200 + 140 * 10, -1);
    expect(geometry.positiveFaceMm2).toBeCloseTo(1800 + 38 * 28 + 132 * 9 + (1200 - 38 * 28), -1);
    expect(geometry.planAreaMm2 / 1200).toBeCloseTo(1, 2);
  });

  it('find the outer rim', () => {
    const { rimOutlineMm } = castHalves(lid(), plain(upward)).geometry;
    const sizes = [0, 1].map((axis) => {
      const values = rimOutlineMm!.map((point) => point[axis]!);
      return Math.max(...values) - Math.min(...values);
    });
    expect(sizes[0]).toBeCloseTo(40, 2);
    expect(sizes[1]).toBeCloseTo(30, 2);
  });

  it('move the volume of a key from one half to the other and leave pry slots empty', () => {
    const bare = cast(lid(), plain(upward)).geometry;
    const keyed = cast(lid(), { ...upward, prySlots: noSlots });
    expect(keyed.findings.keysPlaced).toBe(4);
    const keysMm3 = bare.negativeMm3 - keyed.geometry.negativeMm3;
    // Four frustums, 5 mm across at the foot, 2 mm high, 15 degrees of draft.
    const [foot, head] = [2.5, 2.5 - 2 * Math.tan(Math.PI / 12)];
    expect(keysMm3 / ((4 * Math.PI * 2 * (foot ** 2 + foot * head + head ** 2)) / 3)).toBeCloseTo(1, 2);
    expect(keyed.geometry.positiveMm3 - bare.positiveMm3).toBeCloseTo(keysMm3, 1);
    const slotted = cast(lid(), { ...upward, keys: noKeys }).geometry;
    expect(slotted.gapFillMm3).toBeCloseTo(2 * 12 * 3 * 2, 1);
    expect(bare.negativeMm3 - slotted.negativeMm3).toBeCloseTo(72, 0);
  });

  it('say when the land has no room for keys', () => {
    const narrow = { ...usualPours.coverMm, xLowMm: 2, xHighMm: 2, yLowMm: 2, yHighMm: 2 };
    const { findings } = castHalves(lid(), { ...upward, coverMm: narrow, landWidthMm: 2, prySlots: noSlots });
    expect(findings.keysPlaced).toBe(0);
  });

  it('lean the walls outward and round the corners', () => {
    const rounded = cast(lid(), { ...plain(upward), shape: 'rounded rectangle', wallDraftDeg: 3 }).geometry;
    expect(rounded.box.cornerRadiusMm).toBe(10);
    const whole = rounded.negativeMm3 + rounded.positiveMm3 + rounded.patternMm3;
    expect(whole / (pourMm3(20) + pourMm3(10))).toBeCloseTo(1, 3);
  });

  it('stand a round pattern in a cup', () => {
    const { geometry } = cast(domeShell(20, 120), { ...plain(upward), shape: 'cup' });
    expect(geometry.box.innerMm[0]).toBeCloseTo(120, 3);
    const whole = geometry.negativeMm3 + geometry.positiveMm3 + geometry.patternMm3;
    expect(whole / (Math.PI * 60 ** 2 * 70)).toBeCloseTo(1, 3);
  });

  it('shut a window off flat, without opening the way between the halves', () => {
    const closed = cast(lid(), plain(upward)).geometry;
    const { geometry, findings } = cast(lid(air([10, 20], [8, 18], [9, 10])), plain(upward));
    expect(geometry.patternMm3 - closed.patternMm3).toBeCloseTo(-100, 3);
    // The parting is level with the inner skin: the window belongs to the negative.
    expect(geometry.negativeMm3 - closed.negativeMm3).toBeCloseTo(100, 0);
    expect(findings.lockingMm3).toBe(0);
  });

  it('give the stone in a side hole to the positive, and say that it locks', () => {
    const { geometry, findings } = cast(lid(air([0, 1], [10, 20], [3, 6])), plain(upward));
    expect(geometry.patternMm3).toBeCloseTo(40 * 30 * 10 - 38 * 28 * 9 - 30, 3);
    expect(findings.lockingMm3 / 30).toBeCloseTo(1, 1);
    expect(findings.lockingAtMm![0]).toBeGreaterThan(-0.5);
    expect(findings.lockingAtMm![0]).toBeLessThan(1.5);
  });

  it('follow a rim that rises', () => {
    const { geometry, findings } = cast(lid(air([15, 25], [0, 1], [0, 4])), plain(upward));
    expect(findings.flatRim).toBe(false);
    // The notch is filled by the positive, whose land rises to it.
    expect(geometry.envelopeMm3).toBeGreaterThan(11_940);
    expect(geometry.envelopeMm3).toBeLessThan(12_060);
  });

  it('cast a case half with one of everything', () => {
    const { geometry, findings } = cast(caseHalf(), upward);
    expect(geometry.method).toBe('solid booleans');
    expect(findings.lockingMm3).toBeGreaterThan(100);
  });

  it('find the thinnest stone between two deep pockets', () => {
    // A web of stone 2 mm thick stands in the slot between two bosses inside the lid.
    const ribs = lid(solid([15, 18], [5, 25], [1, 9]), solid([20, 23], [5, 25], [1, 9]));
    const { geometry } = cast(ribs, plain(upward));
    expect(geometry.thinnest!.positive.mm).toBeCloseTo(2, 2);
    expect(geometry.thinnest!.positive.atMm[0]).toBeGreaterThanOrEqual(18 - 1e-6);
    expect(geometry.thinnest!.positive.atMm[0]).toBeLessThanOrEqual(20 + 1e-6);
  });

  it('tell a web of the print however thin, and where it stands', () => {
    const ribs = lid(solid([15, 18], [5, 25], [1, 9]), solid([18.5, 21], [5, 25], [1, 9]));
    // The two ribs moved together until 0.04 mm of stone are left.
    const closer = mapVertices(ribs, ([x, y, z]) => [x >= 18.5 ? x - 0.46 : x, y, z]);
    const { mm, atMm } = cast(closer, plain(upward)).geometry.thinnest!.positive;
    expect(mm).toBeCloseTo(0.04, 4);
    expect(atMm[0]).toBeGreaterThan(17.99);
    expect(atMm[0]).toBeLessThan(18.05);
    expect(atMm[1]).toBeGreaterThan(5);
    expect(atMm[1]).toBeLessThan(25);
  });

  it('find the edge of a wedge of stone, its length and its angle', () => {
    // A slot 4 mm wide whose floor runs down to one side by 10 mm: its stone ends in a wedge.
    const slotted = cellPart(
      [40, 30, 20],
      [1, 1, 1],
      [solid([0, 40], [0, 30], [0, 20]), air([10, 14], [5, 25], [15, 20])],
    );
    const wedge = mapVertices(slotted, ([x, y, z]) =>
      z === 15 && x >= 10 && x <= 14 && y >= 5 && y <= 25 ? [x, y, 15 - 2.5 * (14 - x)] : [x, y, z],
    );
    const { knifeEdges } = cast(wedge, plain(upward)).findings;
    expect(knifeEdges.positive).toBeNull();
    expect(knifeEdges.negative!.lengthMm).toBeCloseTo(20, 1);
    expect(knifeEdges.negative!.sharpestDeg).toBeCloseTo((Math.atan(4 / 10) * 180) / Math.PI, 1);
    expect(knifeEdges.negative!.atMm[0]).toBeCloseTo(10, 3);
    expect(knifeEdges.negative!.atMm[2]).toBeCloseTo(5, 3);
  });

  it.each([
    ['upper', windMeterUpper(), upward],
    ['lower', windMeterLower(), downward],
  ] as const)('leave no film or wrinkle along rim and window of the %s demo half', (_, half, choices) => {
    const { geometry, findings } = cast(half, choices);
    expect(findings.knifeEdges).toEqual({ negative: null, positive: null });
    expect(geometry.thinnest!.negative.mm).toBeGreaterThan(5);
    expect(geometry.thinnest!.positive.mm).toBeGreaterThan(5);
  });

  it('keep to the foot of an upright wall that bulges a little', () => {
    const bulging = mapVertices(lid(), ([x, y, z]) => [x === 40 && z >= 5 ? x + 0.01 : x, y, z]);
    const { findings } = cast(bulging, plain(upward));
    expect(findings.flatRim).toBe(true);
    expect(findings.knifeEdges).toEqual({ negative: null, positive: null });
  });

  it('part a bowl at its widest line when it is pulled from its open side', () => {
    const { geometry, findings } = cast(domeShell(20, 120), plain(downward));
    expect(findings.knifeEdges).toEqual({ negative: null, positive: null });
    expect(geometry.thinnest!.negative.mm).toBeGreaterThan(5);
    expect(geometry.thinnest!.positive.mm).toBeGreaterThan(5);
  });

  it('leave an enclosed void empty', () => {
    const hollow = joinMeshes(box([0, 0, 0], [30, 30, 20]), insideOut(box([10, 10, 5], [20, 20, 15])));
    const { geometry } = cast(hollow, plain(upward));
    expect(geometry.patternMm3).toBeCloseTo(17_000, 1);
    expect(geometry.gapFillMm3).toBeCloseTo(1000, 1);
  });

  it('count bodies that run through one another once', () => {
    const { geometry } = cast(joinMeshes(lid(), box([10.2, 10.2, 2], [14.8, 14.8, 9.5])), plain(upward));
    expect(geometry.why).toMatch(/2 closed bodies/);
    expect(geometry.patternMm3).toBeCloseTo(40 * 30 * 10 - 38 * 28 * 9 + 4.6 * 4.6 * 7, 2);
  });

  it('integrate where a body runs through itself or is torn, and say so', () => {
    const twice = joinMeshes(lid(), lid(), lid());
    const joined = { positions: twice.positions, facets: twice.facets.slice(3) };
    const { geometry, halves } = castHalves(joined, plain(upward));
    expect(halves).toBeNull();
    expect(geometry.method).toBe('integration along the pull');
    expect(geometry.why).toMatch(/3 edges are open/);
    const sound = castHalves(lid(), plain(upward)).geometry;
    expect(geometry.negativeMm3 / sound.negativeMm3).toBeCloseTo(1, 2);
    expect(geometry.positiveMm3 / sound.positiveMm3).toBeCloseTo(1, 2);
    expect(Math.abs(geometry.volumeCheck - 1)).toBeLessThan(2e-3);
  });

  it('take the volume that the surface encloses where edges are shared by more than two facets', () => {
    const plainLid = lid();
    const doubled = {
      positions: plainLid.positions,
      facets: Uint32Array.of(...plainLid.facets, ...plainLid.facets.slice(0, 6)),
    };
    const { geometry } = castHalves(doubled, plain(upward));
    const sound = castHalves(plainLid, plain(upward)).geometry;
    expect(geometry.method).toBe('integration along the pull');
    expect(geometry.patternMm3 / sound.patternMm3).toBeCloseTo(1, 9);
    expect(sound.errorMm3).toEqual({ pattern: 0, others: 0 });
    expect(geometry.errorMm3.pattern).toBe(0);
    expect(geometry.errorMm3.others).toBeGreaterThan(0);
    expect(geometry.errorMm3.others).toBeLessThan(0.02 * sound.patternMm3);
    const off = Math.abs(geometry.positiveMm3 - sound.positiveMm3);
    expect(off).toBeLessThanOrEqual(3 * geometry.errorMm3.others + 1e-4 * sound.positiveMm3);
  });

  it('come back from a saved STL with the same volume', () => {
    const { geometry, halves } = castHalves(tray([60, 40, 15], 2, 2), downward);
    for (const [half, volumeMm3] of [
      ['negative', geometry.negativeMm3],
      ['positive', geometry.positiveMm3],
    ] as const) {
      const { mesh } = weld(readMeshFile(writeStlBinary(halves![half]), `${half}.stl`));
      expectSolid(mesh, volumeMm3);
    }
  });

  it('tell their progress in order up to the end', () => {
    const shares: number[] = [];
    castHalves(lid(), upward, (_, share) => shares.push(share));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });

  it.each([
    ['pours.cover', { coverMm: { ...usualPours.coverMm, overShowMm: 0 } }],
    ['pours.draft', { wallDraftDeg: 45 }],
    ['pours.corners', { cornerRadiusMm: -1 }],
    ['pours.keys', { keys: { count: 2, diameterMm: 0, heightMm: 2 } }],
    ['pours.prySlots', { prySlots: { count: 1, widthMm: 10, depthMm: 12, heightMm: 2 } }],
    ['pull.zero', { pull: [0, 0, 0] as const }],
  ])('refuse %s', (code, wrong) => {
    expect(() => castHalves(lid(), { ...upward, ...wrong })).toThrow(
      expect.objectContaining({ code }) as Problem,
    );
  });
});
