/** A wall drawn at exactly the accepted draft meets it, however the file and its turn round it; one tolerance for all. */
import { beforeAll, describe, expect, test } from 'vitest';
import { draftShares, draftToleranceDeg, dragsBelowDeg } from '../../src/core/mesh/draft';
import { preparePack } from '../../src/core/mesh/pack';
import { findPatches } from '../../src/core/mesh/patches';
import type { Vec3 } from '../../src/core/mesh/types';
import { dragsShare } from '../../src/steps/walls/figures';
import { draftClass, draftClasses } from '../../src/viewer/mapColors';
import { savedTray } from '../support/savedTray';

beforeAll(preparePack);

const turns: readonly Vec3[] = [
  [0, 0, 0],
  [0, 0, 0.5],
  [0.4, -0.7, 1.1],
];
const cases = [0.5, 2, 3].flatMap((leastDraftDeg) => turns.map((turn) => ({ leastDraftDeg, turn })));

/** What the area share, the patches and the map say drags, as shares of show and core face or counts. */
function whatDrags(draftDeg: number, leastDraftDeg: number, turn: Vec3) {
  const { measuring, measurement, summary } = savedTray(
    { size: [80, 50, 20], wallMm: 2, draftDeg },
    { turn },
  );
  const limits = {
    measure: 'ray',
    lowMm: 0,
    highMm: 1000,
    leastCornerRadiusMm: null,
    leastOuterEdgeRadiusMm: null,
  } as const;
  const classes = draftClasses(measurement, leastDraftDeg);
  const { show, core } = summary.kindAreaMm2;
  const mapMm2 = measurement.areaMm2.reduce(
    (sum, area, facet) =>
      sum + (measurement.kind[facet]! < 2 && classes[facet] === draftClass.drags ? area : 0),
    0,
  );
  const patchesMm2 = findPatches(measuring.mesh, measurement, { ...limits, leastDraftDeg })
    .filter(({ finding }) => finding === 'drags')
    .reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  return [dragsShare(summary, leastDraftDeg)!, mapMm2 / (show + core), patchesMm2 / (show + core)] as const;
}

describe('a wall at the accepted draft', () => {
  test.each(cases)('of $leastDraftDeg°, turned by $turn, drags nowhere', ({ leastDraftDeg, turn }) => {
    expect(whatDrags(leastDraftDeg, leastDraftDeg, turn)).toEqual([0, 0, 0]);
  });

  test.each(turns)(
    'drawn 0.1° under it drags all round, in share, map and patches alike (%d, %d, %d)',
    (...turn) => {
      const [share, map, patches] = whatDrags(1.9, 2, turn);
      expect(share).toBeGreaterThan(0.5);
      expect(map).toBeCloseTo(share, 5);
      expect(patches).toBeCloseTo(share, 5);
    },
  );
});

describe('the border of the tolerance', () => {
  test('is 0.05° under the accepted draft, at the precision of what is stored', () => {
    expect(draftToleranceDeg).toBe(0.05);
    const border = dragsBelowDeg(2);
    const draftDeg = Float32Array.of(border - 1e-4, border, border + 1e-4);
    const kind = new Uint8Array(3);
    expect([...draftClasses({ draftDeg, kind }, 2)]).toEqual([
      draftClass.drags,
      draftClass.releases,
      draftClass.releases,
    ]);
  });

  test('does not touch the shares that other people publish', () => {
    const { under1DegShare, under3DegShare } = draftShares(
      Float32Array.of(0.97, 0.99, 2.97, 3.01),
      Float32Array.of(1, 1, 1, 1),
    );
    expect(under1DegShare).toBe(0.5);
    expect(under3DegShare).toBe(0.75);
  });
});
