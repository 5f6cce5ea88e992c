import { describe, expect, it } from 'vitest';
import { findHealth } from '../../../src/core/mesh/health';
import { measurePart } from '../../../src/core/mesh/measure';
import { summarize } from '../../../src/core/part/summary';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import { caseHalf } from '../../support/cellPart';
import { box, domeShell, icosphere, mapVertices, tray } from '../../support/meshes';

const isSolid = (mesh: IndexedMesh, pull: Vec3) =>
  summarize(mesh, findHealth(mesh), measurePart(mesh, pull)).solid;

const blunt = (value: number, half: number) => half * Math.sign(value) * Math.abs(value) ** 0.35;

/** 70 x 40 x 12 with all edges rounded over: a ball drawn out into a pillow. */
const roundedBlock = mapVertices(icosphere(1, 4), ([x, y, z]) => {
  return [blunt(x, 35), blunt(y, 20), blunt(z, 6)];
});

describe('a pattern drawn solid', () => {
  it('is a block, sharp or rounded, whichever way it is pulled', () => {
    for (const pull of [
      [0, 0, 1],
      [0, 0, -1],
      [0, 1, 0],
    ] as const) {
      expect(isSolid(box([0, 0, 0], [70, 40, 12]), pull)).toBe(true);
      expect(isSolid(roundedBlock, pull)).toBe(true);
    }
  });
  it('is half a ball', () => {
    const half = mapVertices(icosphere(20, 3), ([x, y, z]) => [x, y, Math.max(0, z)]);
    expect(isSolid(half, [0, 0, 1])).toBe(true);
  });
  it('is no shell, pulled the right or the wrong way', () => {
    for (const pull of [
      [0, 0, 1],
      [0, 0, -1],
      [1, 0, 0],
    ] as const) {
      expect(isSolid(tray([70, 40, 12], 1, 2), pull)).toBe(false);
      expect(isSolid(caseHalf(), pull)).toBe(false);
      expect(isSolid(domeShell(16, 32), pull)).toBe(false);
    }
  });
  it('is no plate or panel', () => {
    expect(isSolid(box([0, 0, 0], [100, 60, 1]), [0, 0, 1])).toBe(false);
    expect(isSolid(box([0, 0, 0], [100, 60, 3]), [0, 0, 1])).toBe(false);
  });
  it('is no thick shell', () => expect(isSolid(tray([70, 40, 15], 4.5), [0, 0, -1])).toBe(false));
  it('is no torn surface', () => {
    const whole = box([0, 0, 0], [70, 40, 12]);
    expect(isSolid({ ...whole, facets: whole.facets.slice(0, 6) }, [0, 0, 1])).toBe(false);
    expect(isSolid({ ...whole, facets: whole.facets.slice(6) }, [0, 0, 1])).toBe(false);
  });
  it('is still a block with a crack', () => {
    const cracked = { ...roundedBlock, facets: roundedBlock.facets.slice(3) };
    expect(isSolid(cracked, [0, 0, 1])).toBe(true);
  });
});
