/** The demo is a real part: closed, with the wall it claims, and with exactly the faults that were drawn in. */
import { describe, expect, test } from 'vitest';
import { findHealth } from '../../../src/core/mesh/health';
import { integrate } from '../../../src/core/mesh/integrals';
import { measurePart } from '../../../src/core/mesh/measure';
import { findSelfTouching } from '../../../src/core/mesh/selfTouching';
import { buildSurfaceIndex } from '../../../src/core/mesh/surfaceIndex';
import { facetKind } from '../../../src/core/mesh/types';
import type { IndexedMesh, Measurement } from '../../../src/core/mesh/types';
import { demoParts } from '../../../src/workbook/demo/demoParts';
import type { DemoPart } from '../../../src/workbook/demo/demoParts';

const [upper, lower] = demoParts() as readonly [DemoPart, DemoPart];
const upperMeasured = measurePart(upper.mesh, [0, 0, 1]);
const lowerMeasured = measurePart(lower.mesh, [0, 0, -1]);

type Chosen = (x: number, y: number, z: number, facet: number) => boolean;

/** Facets whose center is chosen. */
function facetsWhere(measured: Measurement, chosen: Chosen): number[] {
  const facets: number[] = [];
  for (let f = 0; f < measured.facetCount; f++) {
    const [x, y, z] = measured.centerMm.subarray(3 * f, 3 * f + 3) as unknown as [number, number, number];
    if (chosen(x, y, z, f)) facets.push(f);
  }
  return facets;
}

function areaShare(measured: Measurement, chosen: Chosen): number {
  const area = facetsWhere(measured, chosen).reduce((sum, f) => sum + (measured.areaMm2[f] as number), 0);
  return area / measured.areaMm2.reduce((sum, part) => sum + part, 0);
}

const isKind =
  (measured: Measurement, kind: number): Chosen =>
  (_x, _y, _z, f) =>
    measured.kind[f] === kind;

function showWalls(measured: Measurement, chosen: Chosen = () => true): number[] {
  const show = facetsWhere(measured, (...at) => measured.kind[at[3]] === facetKind.show && chosen(...at));
  return show.map((f) => measured.rayWallMm[f] as number).sort((a, b) => a - b);
}

function eulerCharacteristic({ positions, facets }: IndexedMesh): number {
  return positions.length / 3 - facets.length / 2 + facets.length / 3;
}

describe.each([
  { part: upper, through: 1, sizeMm: [70, 41, 12.5] },
  { part: lower, through: 0, sizeMm: [70, 41, 10] },
])('$part.name', ({ part, through, sizeMm }) => {
  test('is one closed, sound body that touches itself nowhere', () => {
    const health = findHealth(part.mesh);
    expect(health).toMatchObject({
      watertight: true,
      openEdges: 0,
      crowdedEdges: 0,
      flippedFacets: 0,
      degenerateFacets: 0,
      duplicateFacets: 0,
    });
    expect(health.bodies.length).toBe(1);
    expect(findSelfTouching(buildSurfaceIndex(part.mesh), part.mesh).length).toBe(0);
  });

  test('has as many openings as were drawn', () => {
    expect(eulerCharacteristic(part.mesh)).toBe(2 - 2 * through);
  });

  test('is of the wanted size, in 20,000 triangles or fewer', () => {
    const { boxMin, boxMax, volume, area } = integrate(part.mesh);
    const measuredMm = boxMax.map((high, axis) => high - (boxMin[axis] as number));
    expect(measuredMm[0]).toBeCloseTo(sizeMm[0] as number, 2);
    expect(measuredMm[1]).toBeCloseTo(sizeMm[1] as number, 2);
    expect(Math.abs((measuredMm[2] as number) - (sizeMm[2] as number))).toBeLessThan(0.15);
    expect(part.mesh.facets.length / 3).toBeLessThanOrEqual(20_000);
    // A thin shell: half of its area times its wall, less the rims.
    expect(volume / ((area / 2) * 0.67)).toBeGreaterThan(0.95);
    expect(volume / ((area / 2) * 0.67)).toBeLessThan(1.02);
  });
});

test('the upper half has the wanted wall outside its fault', () => {
  const walls = showWalls(upperMeasured, (_x, y) => y < 12);
  expect(walls.length).toBeGreaterThan(4000);
  expect(Math.abs((walls[walls.length >> 1] as number) - 0.67)).toBeLessThan(0.01);
  expect(walls[Math.floor(0.02 * walls.length)]).toBeGreaterThan(0.65);
  expect(walls[Math.floor(0.98 * walls.length)]).toBeLessThan(0.69);
});

test('the wall follows the raised mark', () => {
  const walls = showWalls(upperMeasured, (x, y, z) => z > 11.5 && Math.hypot(x + 18, y) < 10);
  expect(walls.length).toBeGreaterThan(300);
  expect(walls[0]).toBeGreaterThan(0.62);
  expect(walls.at(-1)).toBeLessThan(0.72);
});

test('the +y side is too thick over some 15 mm', () => {
  const inFault = showWalls(upperMeasured, (x, y, z) => y > 18 && Math.abs(x - 4) < 4.5 && z < 5.5);
  expect(inFault[0]).toBeGreaterThan(0.97);
  expect(inFault.at(-1)).toBeGreaterThan(1.01);
  expect(inFault.at(-1)).toBeLessThan(1.04);
  const besideFault = showWalls(upperMeasured, (x, y, z) => y > 18 && Math.abs(x - 4) > 10.5 && z < 5.5);
  expect(besideFault.at(-1)).toBeLessThan(0.69);
});

test('nothing of the upper half is undercut, and its sides have draft', () => {
  expect(areaShare(upperMeasured, isKind(upperMeasured, facetKind.trapped))).toBe(0);
  const leastDraft = facetsWhere(upperMeasured, isKind(upperMeasured, facetKind.show)).reduce(
    (least, f) => Math.min(least, upperMeasured.draftDeg[f] as number),
    90,
  );
  expect(leastDraft).toBeGreaterThan(3);
});

test('the window stands through the top, with a land that the show side reaches', () => {
  const land = facetsWhere(
    upperMeasured,
    (_x, _y, z, f) => z > 10 && upperMeasured.kind[f] === facetKind.rim,
  );
  expect(land.length).toBeGreaterThan(150);
  for (const f of land) expect(upperMeasured.draftDeg[f]).toBeGreaterThan(3);
});

test('the lower half is even all over and nothing in it is trapped', () => {
  const walls = showWalls(lowerMeasured);
  expect(walls[Math.floor(0.01 * walls.length)]).toBeGreaterThan(0.65);
  expect(walls[Math.floor(0.99 * walls.length)]).toBeLessThan(0.69);
  expect(areaShare(lowerMeasured, isKind(lowerMeasured, facetKind.trapped))).toBe(0);
  const leastDraft = facetsWhere(lowerMeasured, isKind(lowerMeasured, facetKind.show)).reduce(
    (least, f) => Math.min(least, lowerMeasured.draftDeg[f] as number),
    90,
  );
  expect(leastDraft).toBeGreaterThan(3);
});

test('the inputs say unit and pull', () => {
  expect(upper.inputs.part).toEqual({ unit: 'mm', pull: [0, 0, 1] });
  expect(lower.inputs.part).toEqual({ unit: 'mm', pull: [0, 0, -1] });
});
