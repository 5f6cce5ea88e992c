/** The cavity against the stack, by hand, and how far resin evens it out. */
import { describe, expect, test } from 'vitest';
import { bridgedWalls } from '../../../src/core/closing/bridgedWalls';
import { cavityOf, evenedGaps, voidShares } from '../../../src/core/closing/cavity';
import { histogramOf, plate } from '../../support/closingHands';

const shut = { standOffMm: 0, tiltURad: 0, tiltVRad: 0 };
const limits = { lookVoidShare: 0.025, badVoidShare: 0.05 };
const t0 = 0.7;

describe('the cavity', () => {
  test('of 10 000 mm² at 0.8 mm holds 7000 mm³ of laminate and 1000 mm³ of air', () => {
    const cavity = cavityOf(histogramOf(plate(125, 80, 8, () => 0.8)), shut, t0);
    expect(cavity.areaMm2).toBeCloseTo(10_000, 1);
    expect(cavity.cavityMm3).toBeCloseTo(8000, 1);
    expect(cavity.airMm3).toBeCloseTo(1000, 1);
    expect(cavity.voidShare).toBeCloseTo(0.125, 5);
    expect(cavity.pressedOutMm3).toBe(0);
  });

  test('narrower than the plies fill presses the rest out and holds no air', () => {
    const cavity = cavityOf(histogramOf(plate(125, 80, 8, () => 0.65)), shut, t0);
    expect(cavity.airMm3).toBe(0);
    expect(cavity.voidShare).toBe(0);
    expect(cavity.pressedOutMm3).toBeCloseTo(500, 1);
  });
});

describe('resin that travels', () => {
  // One half 0.6 mm, the other 0.8 mm: together just what the plies fill.
  const histogram = histogramOf(plate(125, 80, 16, (u) => (u < 0 ? 0.6 : 0.8)));

  test('nowhere leaves the wide half with one eighth of air', () => {
    const shares = voidShares(histogram, shut, t0, evenedGaps(histogram, shut, 0), limits);
    expect(shares.bad).toBeCloseTo(0.5, 6);
    expect(shares.worst?.voidShare).toBeCloseTo(0.125, 5);
  });

  test('over the part fills it', () => {
    const shares = voidShares(histogram, shut, t0, evenedGaps(histogram, shut, 500), limits);
    expect(shares).toMatchObject({ bad: 0, overLook: 0 });
  });

  test('a little fills only near the border', () => {
    const uneven = histogramOf(plate(125, 80, 16, (u) => (u < 0.13 ? 0.6 : 0.8)));
    const evened = evenedGaps(uneven, shut, 20);
    const shares = voidShares(uneven, shut, t0, evened, limits);
    expect(shares.bad).toBeGreaterThan(0.2);
    expect(shares.bad).toBeLessThan(0.5);
    expect(evened?.atMm(-60, 0, 0)).toBeCloseTo(0.6, 6);
    expect(evened?.atMm(60, 0, 0)).toBeCloseTo(0.8, 6);
  });
});

describe('a crumb of the mesh', () => {
  test('carries what the wall round it does, a place of its own stays as thin as it is', () => {
    // Facet 0 is a crumb between 1 and 2; facet 3 is thin and large.
    const areaMm2 = Float32Array.of(0.02, 1, 1, 2);
    const neighbor = Int32Array.of(1, 2, -1, 0, -1, -1, 0, -1, -1, -1, -1, -1);
    const walls = bridgedWalls({ areaMm2, neighbor }, Float32Array.of(0.01, 0.67, 0.67, 0.3));
    expect(walls[0]).toBeGreaterThan(0.66);
    expect([...walls.subarray(1)]).toEqual([...Float32Array.of(0.67, 0.67, 0.3)]);
  });
});
