/** What the made show face adds and takes off, held against shapes whose change can be worked out by hand. */
import { describe, expect, it } from 'vitest';
import { makePattern, type MadePattern, type PatternChoices } from '../../../src/core/pattern/makePattern';
import type { IndexedMesh } from '../../../src/core/mesh/types';
import { box, tray } from '../../support/meshes';

const choices: PatternChoices = {
  pull: [0, 0, 1],
  wallMm: 0.8,
  draftDeg: 3,
  neutralPlane: 'rim',
  insideRadiusMm: 1,
  edges: 'eased',
  keepHolesOverMm: null,
  gridMm: 0.4,
};
const make = (part: IndexedMesh, change: Partial<PatternChoices> = {}) =>
  makePattern(part, { ...choices, ...change }, () => undefined);

/** Changes with the centers of their facets. */
function changesOf({ mesh: { positions, facets }, changeMm }: MadePattern) {
  return Array.from(changeMm, (mm, f) => {
    const center = [0, 1, 2].map(
      (axis) => [0, 1, 2].reduce((sum, at) => sum + positions[3 * facets[3 * f + at]! + axis]!, 0) / 3,
    ) as [number, number, number];
    return { mm, center };
  }).filter(({ mm }) => !Number.isNaN(mm));
}

describe('the map of a block that was drawn without draft', () => {
  const made = make(box([0, 0, 0], [30, 22, 12]));
  const onSide = changesOf(made).filter(
    ({ center: [x, y, z] }) => x < 2 && y > 5 && y < 17 && z > 1 && z < 9,
  );

  it('takes off a side what its draft takes, and nothing at the rim', () => {
    expect(onSide.length).toBeGreaterThan(5);
    for (const {
      mm,
      center: [x],
    } of onSide)
      expect(mm).toBeCloseTo(-x, 2);
    const least = Math.min(...onSide.map(({ mm }) => mm));
    expect(least).toBeLessThan(-0.3);
    expect(least).toBeGreaterThan(-0.8);
  });

  it('says nothing of core face and rim', () => {
    expect(made.changeMm).toHaveLength(made.mesh.facets.length / 3);
    expect(made.changeMm.some(Number.isNaN)).toBe(true);
    expect(made.addedMaxMm).toBeLessThan(0.1);
  });
});

it('adds on the sides of a block whose outline stays at the top', () => {
  const low = changesOf(make(box([0, 0, 0], [30, 22, 12]), { neutralPlane: 'top' })).filter(
    ({ center: [x, y, z] }) => x < 0 && y > 5 && y < 17 && z < 3,
  );
  expect(low.length).toBeGreaterThan(2);
  for (const {
    mm,
    center: [x],
  } of low)
    expect(mm).toBeCloseTo(-x, 2);
  expect(Math.max(...low.map(({ mm }) => mm))).toBeGreaterThan(0.4);
});

it('is not led astray by the core face of an import that is a shell', () => {
  const changes = changesOf(make(tray([40, 30, 10], 2), { pull: [0, 0, -1] }));
  const deepest = Math.min(...changes.map(({ mm }) => mm));
  expect(deepest).toBeLessThan(-0.1);
  expect(deepest).toBeGreaterThan(-3);
});

it.each([11.9, 12.1, 12.3])('says that the middle of a top %f mm high stays where it is', (heightMm) => {
  const middle = changesOf(make(box([0, 0, 0], [30, 22, heightMm]))).filter(
    ({ center: [x, y, z] }) => z > heightMm - 0.3 && x > 6 && x < 24 && y > 6 && y < 16,
  );
  expect(middle.length).toBeGreaterThan(0);
  for (const { mm } of middle) expect(Math.abs(mm)).toBeLessThan(0.03);
});
