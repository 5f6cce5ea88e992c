/** One closed solid as two halves: volumes, rims that meet, and what cannot be split. */
import { beforeAll, describe, expect, it } from 'vitest';
import { compareRims } from '../../../src/core/fit/compareRims';
import { joined } from '../../../src/core/fit/cavity';
import { findRim } from '../../../src/core/fit/rim';
import { splitSolid } from '../../../src/core/fit/splitSolid';
import { findHealth } from '../../../src/core/mesh/health';
import { integrate } from '../../../src/core/mesh/integrals';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import { prepareSolids } from '../../../src/core/stone/pours/solids';
import { codeOf } from '../../support/codeOf';
import { box } from '../../support/meshes';

beforeAll(() => prepareSolids());

const insideOut = ({ positions, facets }: IndexedMesh): IndexedMesh => ({
  positions,
  facets: facets.map((_, corner, all) => all[corner - (corner % 3) + 2 - (corner % 3)]!),
});
/** 60 x 40 x 20 outside, 2 mm of wall all round. */
const hollow = joined(box([0, 0, 0], [60, 40, 20]), insideOut(box([2, 2, 2], [58, 38, 18])));
const [outsideMm3, insideMm3] = [60 * 40 * 20, 56 * 36 * 16];

describe('a closed box', () => {
  it.each([
    [[0, 0, 1], 12],
    [[0, 0, -1], 8],
  ] as const)('along %j at %d mm is parted at z = 12, both volumes by hand', (pull, heightMm) => {
    const { along, against, alongMm3, againstMm3 } = splitSolid(hollow, [...pull], heightMm);
    const above = 60 * 40 * 8 - 56 * 36 * 6;
    const below = outsideMm3 - insideMm3 - above;
    expect(pull[2] > 0 ? [alongMm3, againstMm3] : [againstMm3, alongMm3]).toEqual([
      expect.closeTo(above, 1),
      expect.closeTo(below, 1),
    ]);
    for (const half of [along, against]) expect(findHealth(half).watertight).toBe(true);
    expect(integrate(along).volume + integrate(against).volume).toBeCloseTo(outsideMm3 - insideMm3, 1);
  });

  it('parted across any pull: the rims meet without step or gap, and the volumes sum', () => {
    const pull: Vec3 = [0.3, -0.2, 0.9];
    const { along, against, alongMm3, againstMm3 } = splitSolid(hollow, pull, 20);
    expect(alongMm3 + againstMm3).toBeCloseTo(outsideMm3 - insideMm3, 0);
    const back: Vec3 = [-0.3, 0.2, -0.9];
    const rims = compareRims(
      { mesh: along, found: findRim(along, pull) },
      { mesh: against, found: findRim(against, back) },
      false,
    );
    expect(rims.stepMaxMm).toBeLessThan(1e-3);
    expect(rims.gapMaxMm).toBeLessThan(1e-3);
    expect(rims.mateScale).toBeCloseTo(1, 4);
  });
});

describe('what cannot be split', () => {
  it('is no closed solid, or missed by the plane: a sentence each', () => {
    const open = { ...hollow, facets: hollow.facets.slice(3) };
    expect(codeOf(() => splitSolid(open, [0, 0, 1], 12))).toBe('split.notSolid');
    expect(codeOf(() => splitSolid(insideOut(box([0, 0, 0], [9, 9, 9])), [0, 0, 1], 4))).toBe(
      'split.notSolid',
    );
    for (const heightMm of [0, 20, 40, Number.NaN])
      expect(codeOf(() => splitSolid(hollow, [0, 0, 1], heightMm))).toBe('split.misses');
    expect(() => splitSolid(hollow, [0, 0, 1], 40)).toThrow('is 20.0 mm high along the pull');
  });
});
