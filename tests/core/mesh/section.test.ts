import { describe, expect, it } from 'vitest';
import { measurePart } from '../../../src/core/mesh/measure';
import { cutSection } from '../../../src/core/mesh/section';
import type { IndexedMesh, Section, SectionPlane } from '../../../src/core/mesh/types';
import { caseHalf } from '../../support/cellPart';
import { box, hollowBox, joinMeshes, tray } from '../../support/meshes';

const cut = (mesh: IndexedMesh, axis: SectionPlane['axis'], atMm: number) =>
  cutSection(mesh, measurePart(mesh, [0, 0, 1]), { axis, atMm });

/** Area inside the lines, positive when the material is on their left. */
function areaInside({ lines }: Section): number {
  let twice = 0;
  for (const { pointsMm } of lines) {
    for (let at = 0; at < pointsMm.length; at += 2) {
      const next = (at + 2) % pointsMm.length;
      twice += pointsMm[at]! * pointsMm[next + 1]! - pointsMm[next]! * pointsMm[at + 1]!;
    }
  }
  return twice / 2;
}

const half = caseHalf();
const measuredHalf = measurePart(half, [0, 0, 1]);

describe('section cuts', () => {
  it('chain a box to one closed line around its material', () => {
    for (const [axis, atMm, area] of [
      ['x', 3, 20 * 30],
      ['y', 3, 30 * 10],
      ['z', 3, 10 * 20],
    ] as const) {
      const section = cut(box([0, 0, 0], [10, 20, 30]), axis, atMm);
      expect(section.lines).toHaveLength(1);
      expect(section.lines[0]?.closed).toBe(true);
      expect(areaInside(section)).toBeCloseTo(area, 9);
    }
  });

  it('give coordinates (y, z), (z, x) and (x, y)', () => {
    const spans = (['x', 'y', 'z'] as const).map((axis) => {
      const { lines } = cut(box([0, 0, 0], [10, 20, 30]), axis, 5);
      const points = [...lines[0]!.pointsMm];
      return [
        Math.max(...points.filter((_, at) => at % 2 === 0)),
        Math.max(...points.filter((_, at) => at % 2 === 1)),
      ];
    });
    expect(spans).toEqual([
      [20, 30],
      [30, 10],
      [10, 20],
    ]);
  });

  it('run with the material on the left around a void as well', () => {
    const section = cut(hollowBox([20, 20, 20], 2), 'z', 10);
    expect(section.lines).toHaveLength(2);
    expect(areaInside(section)).toBeCloseTo(400 - 256, 9);
  });

  it('close when the plane lies in corners and edges of the mesh', () => {
    for (const [axis, atMm] of [
      ['x', 30],
      ['y', 20],
      ['z', 11],
      ['z', 0.5],
      ['z', 12],
    ] as const) {
      const section = cutSection(half, measuredHalf, { axis, atMm });
      expect(section.lines.length).toBeGreaterThan(0);
      expect(section.lines.every(({ closed }) => closed)).toBe(true);
      expect(areaInside(section)).toBeGreaterThan(0);
    }
  });

  it('measure the wall in the plane, spread along the show face', () => {
    const { walls } = cutSection(half, measuredHalf, { axis: 'z', atMm: 6.2 });
    expect(walls).toHaveLength(8);
    for (const { fromMm, toMm, wallMm } of walls) {
      expect(wallMm).toBeCloseTo(1, 6);
      expect(Math.hypot(toMm[0] - fromMm[0], toMm[1] - fromMm[1])).toBeCloseTo(wallMm, 9);
    }
    const sides = new Set(walls.map(({ fromMm }) => `${fromMm[0] < 30} ${fromMm[1] < 20}`));
    expect(sides.size).toBeGreaterThanOrEqual(3);
  });

  it('leave lines open where the surface is open', () => {
    const whole = box([0, 0, 0], [10, 10, 10]);
    const open = { ...whole, facets: whole.facets.slice(0, -6) };
    const section = cut(open, 'z', 5);
    expect(section.lines).toHaveLength(1);
    expect(section.lines[0]?.closed).toBe(false);
  });

  it('join lines where more than two facets meet in an edge', () => {
    // Two boxes that share an upright edge, their corners welded.
    const apart = joinMeshes(box([0, 0, 0], [5, 5, 5]), box([5, 5, 0], [10, 10, 5]));
    const numbers = new Map<string, number>();
    const facets = apart.facets.map((vertex) => {
      const key = apart.positions.slice(3 * vertex, 3 * vertex + 3).join(' ');
      const known = numbers.get(key) ?? vertex;
      numbers.set(key, known);
      return known;
    });
    const section = cut({ positions: apart.positions, facets }, 'z', 2.5);
    expect(section.lines.every(({ closed }) => closed)).toBe(true);
    expect(areaInside(section)).toBeCloseTo(50, 9);
  });

  it('are empty beside the part', () => {
    const section = cut(tray([60, 40, 12], 1), 'z', 13);
    expect(section).toEqual({ plane: { axis: 'z', atMm: 13 }, lines: [], walls: [] });
  });
});
