import { beforeAll, describe, expect, it } from 'vitest';
import { measurePart } from '../../../src/core/mesh/measure';
import { facetKind, type IndexedMesh, type Measurement, type Vec3 } from '../../../src/core/mesh/types';
import { air, caseHalf, cellPart, facetNear, solid } from '../../support/cellPart';
import { mapVertices } from '../../support/meshes';

const up: Vec3 = [0, 0, 1];
const down: Vec3 = [0, 0, -1];
const names = Object.keys(facetKind);

function kindAt(mesh: IndexedMesh, measurement: Measurement, pointMm: Vec3, normal: Vec3): string {
  return names[measurement.kind[facetNear(mesh, pointMm, normal)]!]!;
}

describe.each([
  ['upright', (mesh: IndexedMesh) => mesh],
  // 2 degrees of draft: every level drawn in toward the top.
  [
    'drafted',
    (mesh: IndexedMesh) =>
      mapVertices(mesh, ([x, y, z]) => {
        const lean = z * Math.tan((2 * Math.PI) / 180);
        return [x + lean * (1 - x / 30), y + lean * (1 - y / 20), z];
      }),
  ],
])('what each facet of an %s case half is', (_, shape) => {
  let mesh: IndexedMesh;
  let measurement: Measurement;
  beforeAll(() => {
    mesh = shape(caseHalf());
    measurement = measurePart(mesh, up);
  });
  const expectKind = (kind: string, pointMm: Vec3, normal: Vec3) =>
    expect(kindAt(mesh, measurement, pointMm, normal)).toBe(kind);

  it('plain walls are show and core', () => {
    expectKind('show', [30, 15, 12], up);
    expectKind('core', [30, 15, 11], down);
    expectKind('show', [30, 0, 6], [0, -1, 0]);
    expectKind('core', [30, 1, 6], [0, 1, 0]);
    expectKind('show', [60, 30, 6], [1, 0, 0]);
    expectKind('core', [59, 30, 6], [-1, 0, 0]);
  });
  it('a region of wrong wall stays show', () => expectKind('show', [51, 14, 12], up));
  it('a raised mark stays show', () => expectKind('show', [31, 31, 12.5], up));
  it('a boss is a detail: its end, its sides, and the show face over it', () => {
    expectKind('detail', [22, 22, 3], down);
    expectKind('detail', [24, 22, 7], [1, 0, 0]);
    expectKind('detail', [22, 22, 12], up);
  });
  it('a rib is a detail: its edge, its sides, and the show face over it', () => {
    expectKind('detail', [38.5, 20, 5], down);
    expectKind('detail', [38, 20, 8], [-1, 0, 0]);
    expectKind('detail', [38.5, 20, 12], up);
  });
  it('the outside corners of walls are show face with no wall of their own', () => {
    for (const [pointMm, normal] of [
      [[30, 0.5, 12], up],
      [
        [30, 0, 11.5],
        [0, -1, 0],
      ],
      [
        [0, 0.5, 6],
        [-1, 0, 0],
      ],
    ] as const) {
      expectKind('show', pointMm, normal);
      const facet = facetNear(mesh, pointMm, normal);
      const goesOn = measurement.cornerOf[facet]!;
      expect(measurement.rayWallMm[facet]).toBeGreaterThan(5);
      expect(measurement.kind[goesOn]).toBe(facetKind.show);
      expect(Math.abs(measurement.rayWallMm[goesOn]! - 1)).toBeLessThan(0.05);
    }
    expect(measurement.cornerOf[facetNear(mesh, [22, 22, 12], up)]).toBe(-1);
  });
  it('the open rim and the window edge are rim', () => {
    expectKind('rim', [30, 0.5, 0], down);
    expectKind('rim', [59.5, 20, 0], down);
    expectKind('rim', [8, 11, 11.5], [1, 0, 0]);
    expectKind('rim', [11, 14, 11.5], [0, -1, 0]);
  });
  it('the wall above an inner lip is trapped, the wall in front of it is show', () => {
    expectKind('trapped', [1, 20, 6], [1, 0, 0]);
    expectKind('trapped', [1.5, 20, 1], up);
    expectKind('show', [0, 20, 6], [-1, 0, 0]);
  });
  it('the usual wall is 1 mm and the wrong region 2 mm', () => {
    expect(measurement.rayWallMm[facetNear(mesh, [30, 15, 12], up)]).toBeCloseTo(1, 5);
    expect(measurement.rayWallMm[facetNear(mesh, [51, 14, 12], up)]).toBeCloseTo(2, 5);
  });
});

describe('lone cases', () => {
  it('a bore through a boss is land, and the boss around it a detail', () => {
    const mesh = cellPart(
      [40, 30, 12],
      [0.5, 0.5, 1],
      [
        solid([0, 40], [0, 30], [0, 12]),
        air([1, 39], [1, 29], [0, 11]),
        solid([16, 24], [11, 19], [2, 11]),
        air([18.5, 21.5], [13.5, 16.5], [0, 12]),
      ],
    );
    const measurement = measurePart(mesh, up);
    expect(kindAt(mesh, measurement, [18.5, 15, 6], [1, 0, 0])).toBe('rim');
    expect(kindAt(mesh, measurement, [16, 15, 6], [-1, 0, 0])).toBe('detail');
    expect(kindAt(mesh, measurement, [17, 15, 12], up)).toBe('detail');
    expect(kindAt(mesh, measurement, [8, 8, 12], up)).toBe('show');
  });

  it('a frame without a top keeps its walls', () => {
    const mesh = cellPart(
      [40, 30, 10],
      [1, 1, 1],
      [solid([0, 40], [0, 30], [0, 10]), air([2, 38], [2, 28], [0, 10])],
    );
    const measurement = measurePart(mesh, up);
    expect(kindAt(mesh, measurement, [20, 0, 5], [0, -1, 0])).toBe('show');
    expect(kindAt(mesh, measurement, [20, 2, 5], [0, 1, 0])).toBe('core');
  });

  it('an open surface is unmeasured where nothing stands behind it', () => {
    const mesh: IndexedMesh = {
      positions: Float64Array.from([0, 0, 0, 10, 0, 0, 10, 10, 0, 0, 10, 0]),
      facets: Uint32Array.from([0, 1, 2, 0, 2, 3]),
    };
    const measurement = measurePart(mesh, up);
    expect([...measurement.kind]).toEqual([facetKind.unmeasured, facetKind.unmeasured]);
    expect(measurement.closed).toBe(false);
  });
});
