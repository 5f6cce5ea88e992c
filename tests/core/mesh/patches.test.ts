import { describe, expect, it } from 'vitest';
import { measurePart } from '../../../src/core/mesh/measure';
import { findPatches } from '../../../src/core/mesh/patches';
import type { PatchBand } from '../../../src/core/mesh/types';
import { caseHalf } from '../../support/cellPart';
import { tray } from '../../support/meshes';

const band: PatchBand = {
  measure: 'ray',
  lowMm: 0.9,
  highMm: 1.2,
  leastDraftDeg: 2,
  leastCornerRadiusMm: 1,
  leastOuterEdgeRadiusMm: null,
};

describe('patches of a case half', () => {
  const mesh = caseHalf();
  const measurement = measurePart(mesh, [0, 0, 1]);
  const patches = findPatches(mesh, measurement, band);
  const of = (finding: string) => patches.filter((patch) => patch.finding === finding);

  it('tell the region of 2 mm wall with its size and place', () => {
    const thick = of('thick').find((patch) => Math.abs(patch.worst - 2) < 1e-4);
    expect(thick?.areaMm2).toBeCloseTo(11 * 12, 3);
    expect(thick?.place).toBe('show face, +x side');
    expect(thick?.worstAtMm[2]).toBeCloseTo(12, 5);
    expect(thick?.facetCount).toBe(11 * 12 * 2);
  });
  it('tell the raised mark apart from it', () => {
    const mark = of('thick').find((patch) => Math.abs(patch.worst - 1.5) < 1e-4);
    expect(mark?.areaMm2).toBeCloseTo(36, 3);
    expect(mark?.place).toBe('show face, +y side');
  });
  it('find no thin wall', () => expect(of('thin')).toEqual([]));
  it('tell the undercut above the lip', () => {
    // Wall above the lip 20 x 10, the lip's upper side 20 x 1 and the ceiling over it 20 x 1.
    const [locks] = of('locks');
    expect(locks?.areaMm2).toBeCloseTo(240, 3);
    expect(locks?.place).toBe('undercut, −x side');
  });
  it('tell upright walls that drag', () => {
    const drags = of('drags');
    expect(drags[0]?.worst).toBeCloseTo(0, 5);
    // What reaches over most of the part is named by where it is worst.
    for (const face of ['core face', 'show face'])
      expect(
        drags.some(({ place }) => place.startsWith(`${face}, `) && place.endsWith(' and most of the rest')),
      ).toBe(true);
  });
  it('tell sharp inside corners, and none when no least radius is asked for', () => {
    expect(of('tight corner')[0]?.worst).toBe(0);
    const unasked = findPatches(mesh, measurement, { ...band, leastCornerRadiusMm: null });
    expect(unasked.some((patch) => patch.finding === 'tight corner')).toBe(false);
  });
  it('join the facets along a corner to one patch', () => {
    expect(of('tight corner').length).toBeLessThan(20);
    expect(of('tight corner')[0]?.facetCount).toBeGreaterThan(100);
  });
  it('tell the boss and the rib after what is judged, and no outside corner as one', () => {
    expect(
      of('boss or rib')
        .map((patch) => patch.worst)
        .filter((wall) => wall > 40),
    ).toEqual([]);
    expect(of('boss or rib').length).toBeGreaterThanOrEqual(2);
    const findings = patches.map((patch) => patch.finding);
    expect(findings.indexOf('boss or rib')).toBeGreaterThan(findings.lastIndexOf('thick'));
  });
  it('number at most 50 and hold no NaN', () => {
    expect(patches.length).toBeLessThanOrEqual(50);
    for (const patch of patches) {
      for (const value of [patch.areaMm2, patch.worst, patch.draftDeg, ...patch.worstAtMm]) {
        expect(Number.isFinite(value)).toBe(true);
      }
    }
  });
  it('follow the band', () => {
    const wide = findPatches(mesh, measurement, { ...band, highMm: 2.5, leastDraftDeg: -1 });
    expect(wide.some((patch) => patch.finding === 'thick' || patch.finding === 'drags')).toBe(false);
    const thin = findPatches(mesh, measurement, { ...band, lowMm: 1.1, highMm: 3, measure: 'ball' });
    expect(thin.some((patch) => patch.finding === 'thin')).toBe(true);
  });
});

describe('patches of a drafted tray', () => {
  it('are none when everything is wanted as it is', () => {
    const mesh = tray([60, 40, 12], 1, 3);
    const found = findPatches(mesh, measurePart(mesh, [0, 0, -1]), { ...band, leastCornerRadiusMm: null });
    expect(found).toEqual([]);
  });
});
