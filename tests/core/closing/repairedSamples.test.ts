/** The walls of closing after repairs of the stone. */
import { describe, expect, test } from 'vitest';
import { repairedSamples } from '../../../src/core/closing/repairedSamples';
import type { Repair } from '../../../src/core/stone/repairs';
import { plate } from '../../support/closingHands';

const cells = 40;
const face = plate(80, 80, cells, () => 0.8);
const count = cells ** 2;
const surface = {
  facetCount: count,
  centerMm: face.centerMm,
  normal: Float32Array.from({ length: 3 * count }, (_, at) => (at % 3 === 2 ? 1 : 0)),
};
const repair = (change: Partial<Repair>): Repair => ({
  id: 'one',
  half: 'negative',
  kind: 'scraped',
  atMm: [10, 0, 0],
  radiusMm: 8,
  depthMm: 0.2,
  ...change,
});
const wallAt = (repairs: readonly Repair[], x: number, y: number) => {
  const { wallMm } = repairedSamples(face.samples, surface, repairs);
  const facet = Array.from({ length: count }, (_, at) => at).find(
    (at) => Math.abs(face.centerMm[3 * at]! - x) <= 1 && Math.abs(face.centerMm[3 * at + 1]! - y) <= 1,
  );
  return wallMm[facet ?? -1];
};

describe('repaired walls', () => {
  test('scraped stone makes the part thicker there and nowhere else', () => {
    expect(wallAt([repair({})], 10, 0)).toBeCloseTo(1, 6);
    expect(wallAt([repair({})], 30, 30)).toBeCloseTo(0.8, 6);
  });

  test('filler that stands proud makes it thinner, a flush one changes nothing', () => {
    expect(wallAt([repair({ kind: 'filled' })], 10, 0)).toBeCloseTo(0.6, 6);
    expect(wallAt([repair({ kind: 'filled', depthMm: 0 })], 10, 0)).toBeCloseTo(0.8, 6);
  });

  test('a repair of the positive, behind the wall, counts the same', () => {
    expect(wallAt([repair({ half: 'positive', atMm: [10, 0, -0.8] })], 10, 0)).toBeCloseTo(1, 6);
  });

  test('filler as thick as the wall leaves no room, and no wall below zero', () => {
    const wall = wallAt([repair({ kind: 'filled', depthMm: 5 })], 10, 0) ?? NaN;
    expect(wall).toBeGreaterThan(0);
    expect(wall).toBeLessThan(0.01);
  });

  test('the changed area is that of the circle', () => {
    const { wallMm, areaMm2 } = repairedSamples(face.samples, surface, [repair({})]);
    const changed = Array.from(wallMm).reduce((sum, wall, at) => sum + (wall > 0.9 ? areaMm2[at]! : 0), 0);
    expect(changed / (Math.PI * 64)).toBeCloseTo(1, 1);
  });

  test('what has no wall stays without one', () => {
    const bare = { ...face.samples, wallMm: new Float32Array(count), wallsKnown: false };
    expect(repairedSamples(bare, surface, [repair({})]).wallMm.every((wall) => wall === 0)).toBe(true);
  });
});
