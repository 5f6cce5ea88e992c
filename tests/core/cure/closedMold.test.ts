/** The mold that is heated is the mold that is poured: its stone against the halves as they are cast. */
import { beforeAll, describe, expect, test } from 'vitest';
import { closedMoldVoxels } from '../../../src/core/cure/closedMold';
import { faceSides, openFaces } from '../../../src/core/cure/conductionGrid';
import { halfCode, type MoldVoxels } from '../../../src/core/cure/moldVoxels';
import { integrate } from '../../../src/core/mesh/integrals';
import type { MoldGeometry } from '../../../src/core/stone/moldGeometry';
import { boxSolid } from '../../../src/core/stone/pours/boxSolid';
import { castHalves } from '../../../src/core/stone/pours/castHalves';
import { usualPours, type PourChoices } from '../../../src/core/stone/pours/pourChoices';
import { keyVolumeMm3 } from '../../../src/core/stone/pours/registration';
import { prepareSolids } from '../../../src/core/stone/pours/solids';
import { air, cellPart, solid } from '../../support/cellPart';

/** 60 x 40 x 12 mm, wall 1 mm, open below. */
const lid = cellPart(
  [60, 40, 12],
  [0.5, 0.5, 0.5],
  [solid([0, 60], [0, 40], [0, 12]), air([1, 59], [1, 39], [0, 11])],
);
const usual: PourChoices = { ...usualPours, pull: [0, 0, 1] };
const boldKeys = { count: 4, diameterMm: 8, heightMm: 4 };
const boldSlots = { count: 4, widthMm: 20, depthMm: 6, heightMm: 6 };

const volumes = ({ half, laminateShare, filledShare, sizeMm }: MoldVoxels) => {
  const sums = { negativeMm3: 0, positiveMm3: 0, laminateMm3: 0 };
  const voxelMm3 = sizeMm[0] * sizeMm[1] * sizeMm[2];
  half.forEach((code, at) => {
    if (code === halfCode.outside) return;
    const filledMm3 = voxelMm3 * filledShare[at]!;
    sums.laminateMm3 += filledMm3 * laminateShare[at]!;
    sums[code === halfCode.negative ? 'negativeMm3' : 'positiveMm3'] += filledMm3 * (1 - laminateShare[at]!);
  });
  return sums;
};

beforeAll(() => prepareSolids());

const molds = [
  ['a rectangle', usual],
  ['leaning walls', { ...usual, wallDraftDeg: 8 }],
  ['rounded corners that lean', { ...usual, shape: 'rounded rectangle', wallDraftDeg: 5 }],
  ['a cup', { ...usual, shape: 'cup', wallDraftDeg: 3 }],
  ['bold keys and slots', { ...usual, keys: boldKeys, prySlots: boldSlots }],
] as const satisfies readonly (readonly [string, PourChoices])[];

describe.each(molds)('%s', (_, choices) => {
  let geometry: MoldGeometry;
  beforeAll(() => {
    geometry = castHalves(lid, choices).geometry;
  }, 60_000);

  test.each([
    [4, 0.006, 0.06],
    [2, 0.003, 0.006],
    [1, 0.003, 0.006],
  ])(
    'at %f mm: stone within %f of the cast one, each half within %f, laminate within 0.06',
    (voxelMm, stoneShare, halfShare) => {
      const { negativeMm3, positiveMm3, laminateMm3 } = volumes(closedMoldVoxels(lid, choices, voxelMm));
      const stone = (negativeMm3 + positiveMm3) / (geometry.negativeMm3 + geometry.positiveMm3);
      expect(Math.abs(stone - 1)).toBeLessThan(stoneShare);
      expect(Math.abs(negativeMm3 / geometry.negativeMm3 - 1)).toBeLessThan(halfShare);
      expect(Math.abs(positiveMm3 / geometry.positiveMm3 - 1)).toBeLessThan(halfShare);
      // Walls of 1 mm along the pull are met by a handful of columns.
      expect(Math.abs(laminateMm3 / geometry.patternMm3 - 1)).toBeLessThan(0.06);
    },
    60_000,
  );
});

test('keys move stone from one half to the other, slots take stone off both', () => {
  const none = { keys: { ...boldKeys, count: 0 }, prySlots: { ...boldSlots, count: 0 } };
  const plain = volumes(closedMoldVoxels(lid, { ...usual, ...none }, 1));
  const keyed = volumes(closedMoldVoxels(lid, { ...usual, ...none, keys: boldKeys }, 1));
  const keys = 4 * keyVolumeMm3({ ...usual, keys: boldKeys });
  expect(keyed.positiveMm3 + keyed.negativeMm3).toBeCloseTo(plain.positiveMm3 + plain.negativeMm3, 0);
  expect((keyed.positiveMm3 - plain.positiveMm3) / keys).toBeCloseTo(1, 0.7);
  const slotted = volumes(closedMoldVoxels(lid, { ...usual, ...none, prySlots: boldSlots }, 1));
  const [above, below] = [
    plain.negativeMm3 - slotted.negativeMm3,
    plain.positiveMm3 - slotted.positiveMm3,
  ].map((mm3) => mm3 / (boldSlots.count * boldSlots.widthMm * boldSlots.depthMm * boldSlots.heightMm));
  expect(above).toBeCloseTo(0.5, 1);
  expect(below).toBeCloseTo(0.5, 1);
});

describe.each([0, 8, 20])('walls that lean by %f°', (wallDraftDeg) => {
  const choices: PourChoices = { ...usual, wallDraftDeg, prySlots: { ...usual.prySlots, count: 0 } };
  const box = boxSolid({ low: [0, 0, 0], high: [60, 40, 12] }, 0, 0, choices);
  const faces = openFaces(closedMoldVoxels(lid, choices, 2));
  const areaMm2 = (wanted: (face: number) => boolean) =>
    faces.areaM2.reduce((sum, m2, face) => (wanted(face) ? sum + 1e6 * m2 : sum), 0);

  test('the outside has its real area within 4 %', () => {
    expect(Math.abs(areaMm2(() => true) / integrate(box.mesh).area - 1)).toBeLessThan(0.04);
  });

  test('only the end of the block stands on the tray', () => {
    const outMm = (box.partingMm - box.floorMm) * Math.tan((wallDraftDeg * Math.PI) / 180);
    const floorMm2 = (box.box.innerMm[0] + 2 * outMm) * (box.box.innerMm[1] + 2 * outMm);
    const onTray = areaMm2((face) => faceSides[faces.side[face]!] === 'low z');
    expect(onTray / floorMm2).toBeCloseTo(1, 1.2);
  });
});
