/** Rims found, and two of them held against each other. */
import { describe, expect, it } from 'vitest';
import * as fc from 'fast-check';
import { compareRims } from '../../../src/core/fit/compareRims';
import { findRim } from '../../../src/core/fit/rim';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import { box, mapVertices } from '../../support/meshes';
import { propertySeed } from '../../support/propertySeed';
import { codeOf } from '../../support/codeOf';
import { boxShell, eggPlan, inward, planShell, rectanglePlan, scaledPlan } from './shells';

const up: Vec3 = [0, 0, 1];
const side = (mesh: IndexedMesh) => ({ mesh, found: findRim(mesh, null) });
/** The other half of one with its rim on z = 0: mirrored below it, wound right again. */
const below = (mesh: IndexedMesh): IndexedMesh => ({
  positions: mesh.positions.map((one, at) => (at % 3 === 2 ? -one : one)),
  facets: mesh.facets.map((_, corner, all) => all[corner - (corner % 3) + 2 - (corner % 3)]!),
});
const egg = (factor = 1, change: (k: number) => number = () => 0) => {
  const plan = scaledPlan(eggPlan(120, 70, 240), factor);
  const scraped = plan.map(([x, y], k) => inward([[x, y]], change(k))[0]!);
  return planShell({ outer: scraped, inner: inward(plan, 2), heightMm: 18, roofMm: 2 });
};

describe('the rim', () => {
  it('is the flat ring round the open side: outline 300 mm, land 2 mm', () => {
    const { rim } = findRim(boxShell(100, 50, 20, 2), up);
    expect(rim.lengthMm).toBeCloseTo(300, 9);
    expect(rim.areaMm2).toBeCloseTo(100 * 50 - 96 * 46, 9);
    expect(rim.frame.normal[2]).toBeCloseTo(-1, 12);
    expect(rim.isInterrupted).toBe(false);
  });

  it('is found with an opening cut through it', () => {
    // Two steps of one long side stand 5 mm higher: the land is in pieces.
    const plan = rectanglePlan(100, 50, 10);
    const mesh = planShell({
      outer: plan,
      inner: plan.map(([x, y]) => [0.96 * x, 0.92 * y] as const),
      heightMm: 20,
      roofMm: 2,
      landAt: (k) => (k >= 4 && k <= 6 ? 5 : 0),
    });
    const { rim } = findRim(mesh, up);
    expect(rim.isInterrupted).toBe(true);
    expect(rim.lengthMm).toBeGreaterThan(250);
  });

  it('is not there on a solid: a sentence', () => {
    expect(codeOf(() => findRim(box([0, 0, 0], [40, 30, 20]), null))).toBe('fit.noRing');
  });
});

describe('two rims', () => {
  it('of one plan meet everywhere', () => {
    const match = compareRims(side(egg()), side(below(egg())), false);
    expect(match.stepMaxMm).toBeLessThan(1e-3);
    expect(match.gapMaxMm).toBeLessThan(1e-9);
    expect(match.mateScale).toBeCloseTo(1, 5);
    expect(match.isAmbiguous).toBe(false);
  });

  it('show a scale of 0.998 and a scrape of 0.40 mm within 0.01', () => {
    const scraped = egg(0.998, (k) => (k >= 40 && k <= 60 ? 0.4 : 0));
    const match = compareRims(side(egg()), side(below(scraped)), false);
    expect(1 / match.mateScale).toBeCloseTo(0.998, 4);
    expect(Math.abs(match.scrapedMm - 0.4)).toBeLessThan(0.01);
    // Laid on at its own size, half of the 0.24 mm that are missing over the length stand at either end too.
    expect(match.stepMaxMm).toBeGreaterThan(0.4);
    expect(match.stepMaxMm).toBeLessThan(0.6);
    const [worst] = match.stations.toSorted((a, b) => b.stepMm! - a.stepMm!);
    expect(worst!.placeMm[0]).toBeLessThan(40);
    expect(worst!.placeMm[1]).toBeGreaterThan(20);
  });

  it(`are laid on however the mate was drawn (seed ${propertySeed})`, () => {
    const mate = below(egg(0.998, (k) => (k >= 40 && k <= 60 ? 0.4 : 0)));
    fc.assert(
      fc.property(
        fc.tuple(
          fc.double({ min: -3, max: 3, noNaN: true }),
          fc.double({ min: -1.5, max: 1.5, noNaN: true }),
          fc.double({ min: -3, max: 3, noNaN: true }),
        ),
        ([a, b, c]) => {
          const turned = mapVertices(mate, ([x, y, z]) => {
            const [x1, y1] = [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)];
            const [x2, z2] = [x1 * Math.cos(b) + z * Math.sin(b), z * Math.cos(b) - x1 * Math.sin(b)];
            return [
              x2 * Math.cos(c) - y1 * Math.sin(c) + 7,
              x2 * Math.sin(c) + y1 * Math.cos(c) - 3,
              z2 + 40,
            ] as const;
          });
          const match = compareRims(side(egg()), side(turned), false);
          expect(1 / match.mateScale).toBeCloseTo(0.998, 3);
          expect(Math.abs(match.scrapedMm - 0.4)).toBeLessThan(0.01);
          // The placing takes the mate's first point back to where it was before it was turned.
          const first = Array.from(turned.positions.slice(0, 3)) as unknown as Vec3;
          const back = match.mateAt.turn.map(
            (row, axis) =>
              row[0] * first[0] + row[1] * first[1] + row[2] * first[2] + match.mateAt.shiftMm[axis]!,
          );
          expect(
            Math.hypot(
              back[0]! - mate.positions[0]!,
              back[1]! - mate.positions[1]!,
              back[2]! - mate.positions[2]!,
            ),
          ).toBeLessThan(0.15);
        },
      ),
      { seed: propertySeed, numRuns: 12 },
    );
  });

  it('filed lower over part of the land show a gap there', () => {
    const plan = eggPlan(120, 70, 240);
    const filed = planShell({
      outer: plan,
      inner: inward(plan, 2),
      heightMm: 18,
      roofMm: 2,
      landAt: (k) => (k >= 100 && k <= 120 ? 0.3 : 0),
    });
    const match = compareRims(side(egg()), side(below(filed)), false);
    expect(match.gapMaxMm).toBeCloseTo(0.3, 6);
  });

  it('of a symmetric plan: half a turn lies as well, which is said', () => {
    const match = compareRims(side(boxShell(100, 50, 20, 2)), side(below(boxShell(100, 50, 12, 2))), false);
    expect(match.isAmbiguous).toBe(true);
    expect(match.stepMaxMm).toBeLessThan(0.02);
  });

  it('of other parts are no mates', () => {
    const [one, other] = [side(boxShell(100, 50, 20, 2)), side(boxShell(60, 40, 12, 2))];
    expect(codeOf(() => compareRims(one, other, false))).toBe('fit.noMate');
    expect(codeOf(() => compareRims(one, side(boxShell(75, 75, 12, 2)), false))).toBe('fit.noMate');
  });
});
