import { describe, expect, it } from 'vitest';
import { findHealth } from '../../../src/core/mesh/health';
import { integrate } from '../../../src/core/mesh/integrals';
import { partMesh } from '../../../src/core/mesh/partMesh';
import { guessUnit } from '../../../src/core/mesh/unitGuess';
import { box, icosphere, insideOut, joinMeshes } from '../../support/meshes';

const mesh = joinMeshes(box([0, 0, 0], [1, 2, 3]), insideOut(icosphere(1, 1)));
const health = findHealth(mesh);
const asDrawn = { body: 0, unit: 'mm', scale: 1, winding: 'repair' } as const;

describe('the part in mm', () => {
  it('takes one body, scales it to mm and drops the vertices of the others', () => {
    const part = partMesh(mesh, health, { ...asDrawn, body: 2, unit: 'in', scale: 1.01 });
    expect(part.positions.length / 3).toBe(8);
    expect(integrate(part).volume).toBeCloseTo(6 * (25.4 * 1.01) ** 3, 6);
  });

  it('repairs the winding or leaves it as the file has it', () => {
    const repaired = integrate(partMesh(mesh, health, { ...asDrawn, body: 1 })).volume;
    expect(repaired).toBeGreaterThan(0);
    expect(integrate(partMesh(mesh, health, { ...asDrawn, body: 1, winding: 'asFile' })).volume).toBe(
      -repaired,
    );
  });

  it('takes all bodies together without touching the mesh', () => {
    const before = mesh.positions.slice();
    expect(partMesh(mesh, health, { ...asDrawn, unit: 'cm' }).positions[3]).toBe(10);
    expect(mesh.positions).toEqual(before);
  });

  it.each([3, -1, 0.5])('refuses body %d of two', (body) => {
    expect(() => partMesh(mesh, health, { ...asDrawn, body })).toThrow(/the file holds 2\. Choose another/);
  });

  it.each([0, -1, Number.NaN, Infinity])('refuses the scale %d', (scale) => {
    expect(() => partMesh(mesh, health, { ...asDrawn, scale })).toThrow(/above zero/);
  });
});

describe('unit guess', () => {
  it.each([
    [[60, 40, 20], 'mm', true],
    [[48.75, 37.23, 6.8], 'mm', true],
    [[2.362, 1.575, 0.787], 'in', false],
    [[7.25, 4.5, 3.75], 'in', false],
    [[0.06, 0.04, 0.02], 'm', false],
    [[0, 0, 1e-6], 'm', false],
    [[18, 12, 5], 'mm', false],
    [[60000, 40, 20], 'mm', false],
  ] as const)('%j is %s, sure: %s', (boxSize, unit, sure) => {
    const guess = guessUnit(boxSize, null);
    expect(guess).toMatchObject({ unit, sure });
    expect(guess.reason.includes('Please confirm')).toBe(!sure);
  });

  it('shows the sizes that it is taken from', () => {
    expect(guessUnit([2.3622, 1.5748, 0.7874], null).reason).toBe(
      'As millimeters the part is 2.36 x 1.57 x 0.787 mm, too small for an enclosure; as inches it is 60 x 40 x 20 mm. Please confirm the unit.',
    );
  });

  it('believes a file that declares its unit', () => {
    expect(guessUnit([0.06, 0.04, 0.02], 'm')).toMatchObject({ unit: 'm', sure: true });
  });
});
