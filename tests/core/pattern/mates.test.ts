/** What two patterns have to do with each other: halves of one enclosure, and a pattern made of a made pattern. */
import { describe, expect, it } from 'vitest';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import { makePattern, type PatternChoices } from '../../../src/core/pattern/makePattern';
import { facesOf, nearestOf } from '../../support/exactShell';
import { box } from '../../support/meshes';

const usual: PatternChoices = {
  pull: [0, 0, 1],
  wallMm: 0.8,
  draftDeg: 3,
  neutralPlane: 'rim',
  insideRadiusMm: 1,
  edges: 'eased',
  keepHolesOverMm: null,
  gridMm: 0.4,
};
const made = (part: IndexedMesh, choices: Partial<PatternChoices> = {}) =>
  makePattern(part, { ...usual, ...choices }, () => undefined).mesh;

/** Corner points of the outer border of the land: where show face and rim plane meet. */
function outlineOf({ positions, facets }: IndexedMesh): readonly (readonly [number, number])[] {
  const seen = new Map<number, [number, number]>();
  const z = (vertex: number) => positions[3 * vertex + 2]!;
  for (let f = 0; f < facets.length; f += 3) {
    const corners = [facets[f]!, facets[f + 1]!, facets[f + 2]!];
    const low = corners.filter((vertex) => Math.abs(z(vertex)) < 1e-4);
    if (low.length !== 2) continue;
    const [a, b, c] = corners.map((vertex) => [positions[3 * vertex]!, positions[3 * vertex + 1]!] as const);
    const plan = (b![0] - a![0]) * (c![1] - a![1]) - (c![0] - a![0]) * (b![1] - a![1]);
    // Facets of the show face look up along the pull.
    const isShow = Math.abs(plan) > 1e-9 && plan > 0;
    if (isShow)
      for (const vertex of low) seen.set(vertex, [positions[3 * vertex]!, positions[3 * vertex + 1]!]);
  }
  return [...seen.values()];
}

/** From a point to the nearest edge of a closed line through points sorted around their middle. */
function offLine(line: readonly (readonly [number, number])[], [x, y]: readonly [number, number]): number {
  let least = Infinity;
  for (let at = 0; at < line.length; at++) {
    const [ax, ay] = line[at]!;
    const [bx, by] = line[(at + 1) % line.length]!;
    const square = (bx - ax) ** 2 + (by - ay) ** 2;
    const share = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square));
    least = Math.min(least, Math.hypot(ax + share * (bx - ax) - x, ay + share * (by - ay) - y));
  }
  return least;
}

const around = (points: readonly (readonly [number, number])[]) =>
  points.toSorted((a, b) => Math.atan2(a[1], a[0]) - Math.atan2(b[1], b[0]));

describe('two patterns', () => {
  it('of 12 and 20 mm, made from one solid of 80 x 50 x 32 that was split, meet within 0.02 mm all around', () => {
    const [low, high] = [12, 20].map((height) =>
      around(outlineOf(made(box([-40, -25, 0], [40, 25, height])))),
    );
    expect(low!.length).toBeGreaterThan(12);
    expect(high!.length).toBeGreaterThan(12);
    const off = [
      ...low!.map((point) => offLine(high!, point)),
      ...high!.map((point) => offLine(low!, point)),
    ];
    expect(Math.max(...off)).toBeLessThan(0.02);
  }, 120_000);

  it('one made of the other, are the same within the error of the grid', () => {
    const once = made(box([-14, -10, 0], [14, 10, 8]));
    const twice = made(once);
    const up: Vec3 = [0, 0, 1];
    const { show } = facesOf(once, up);
    const off = facesOf(twice, up).show.map(({ center, areaMm2 }) => {
      const near = nearestOf(show, center);
      return { areaMm2, mm: Math.hypot(near[0] - center[0], near[1] - center[1], near[2] - center[2]) };
    });
    const whole = off.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
    const mean = off.reduce((sum, { areaMm2, mm }) => sum + areaMm2 * mm, 0) / whole;
    // A grid cuts across the edges of the core, so the rounded edges over them lose up to half a step; faces stay.
    expect(mean).toBeLessThan(0.02);
    expect(Math.max(...off.map(({ mm }) => mm))).toBeLessThan(usual.gridMm / 2);
  }, 120_000);
});
