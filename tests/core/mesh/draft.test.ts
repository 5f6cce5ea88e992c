import { describe, expect, it } from 'vitest';
import { draftDegrees, draftShares } from '../../../src/core/mesh/draft';
import { facetGeometry } from '../../../src/core/mesh/facetGeometry';
import { box, tray } from '../../support/meshes';

describe('draft', () => {
  it('is 90 on top, 0 on the sides and -90 below a box', () => {
    const { normal } = facetGeometry(box([0, 0, 0], [10, 20, 30]));
    const draft = draftDegrees(normal, [0, 0, 1]);
    expect([...draft].sort((a, b) => a - b)).toEqual([-90, -90, 0, 0, 0, 0, 0, 0, 0, 0, 90, 90]);
  });

  it('reads the lean of a drafted side, with its sign', () => {
    const { normal } = facetGeometry(tray([60, 40, 12], 1, 3));
    const draft = draftDegrees(normal, [0, 0, -1]);
    const leaning = [...draft].filter((degrees) => Math.abs(degrees) < 80);
    expect(leaning).toHaveLength(16);
    for (const degrees of leaning) expect(Math.abs(degrees)).toBeCloseTo(3, 4);
    expect(leaning.filter((degrees) => degrees > 0)).toHaveLength(8);
  });

  it('shares the area by draft', () => {
    // Box of 10 x 20 x 30: top and bottom 200 each, sides 1800.
    const { normal, areaMm2 } = facetGeometry(box([0, 0, 0], [10, 20, 30]));
    const shares = draftShares(draftDegrees(normal, [0, 0, 1]), areaMm2);
    expect(shares.under1DegShare).toBeCloseTo(1800 / 2200, 9);
    expect(shares.under3DegShare).toBeCloseTo(1800 / 2200, 9);
    expect(shares.awayShare).toBeCloseTo(200 / 2200, 9);
  });

  it('is nothing for a surface without facets', () => {
    expect(draftShares(new Float32Array(0), new Float32Array(0)).awayShare).toBe(0);
  });
});
