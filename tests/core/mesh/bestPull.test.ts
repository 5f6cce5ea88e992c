import { describe, expect, it } from 'vitest';
import { bestPull } from '../../../src/core/mesh/bestPull';
import { heldWater } from '../../../src/core/mesh/heldWater';
import type { Vec3 } from '../../../src/core/mesh/types';
import { caseHalf } from '../../support/cellPart';
import { box, domeShell, mapVertices, tray } from '../../support/meshes';

const expectPull = (found: Vec3, wanted: Vec3) =>
  wanted.forEach((along, axis) => expect(found[axis]).toBeCloseTo(along, 4));

describe('the best pull', () => {
  it('of a drafted tray open at the top points down, away from the hollow', () => {
    const found = bestPull(tray([60, 40, 12], 1, 3));
    expectPull(found.pull, [0, 0, -1]);
    expect(found.trappedShare).toBe(0);
    expect(found.medianDraftDeg).toBeGreaterThan(80);
  });

  it('of a half-sphere shell points along its axis to the outside', () => {
    const found = bestPull(domeShell(16, 48));
    expectPull(found.pull, [0, 0, 1]);
    expect(found.trappedShare).toBe(0);
  });

  it('follows the part when it is turned', () => {
    const angle = 0.5;
    const turned = mapVertices(tray([60, 40, 12], 1, 3), ([x, y, z]) => [
      x,
      y * Math.cos(angle) - z * Math.sin(angle),
      y * Math.sin(angle) + z * Math.cos(angle),
    ]);
    expectPull(bestPull(turned).pull, [0, Math.sin(angle), -Math.cos(angle)]);
  });

  it('of a case half is the one that it was drawn for, with its lip still trapped', () => {
    const found = bestPull(caseHalf());
    expectPull(found.pull, [0, 0, 1]);
    expect(found.trappedShare).toBeGreaterThan(0.01);
    expect(found.trappedShare).toBeLessThan(0.05);
  });

  it('of a block is +z, and the same each time', () => {
    const block = box([0, 0, 0], [70, 40, 12]);
    expectPull(bestPull(block).pull, [0, 0, 1]);
    expect(bestPull(block)).toEqual(bestPull(block));
  });

  it('reports its progress up to the end', () => {
    const shares: number[] = [];
    bestPull(box([0, 0, 0], [7, 4, 2]), undefined, (share) => shares.push(share));
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });
});

describe('water held by a height picture', () => {
  const none = -Infinity;
  const row = (...inner: number[]) => [none, ...inner, none];
  const empty = [none, none, none, none, none];

  it('fills a basin to its rim', () => {
    const picture = Float32Array.from([
      ...empty,
      ...row(3, 3, 3),
      ...row(3, 1, 3),
      ...row(3, 3, 3),
      ...empty,
    ]);
    expect(heldWater(picture, 5)).toBeCloseTo(2, 1);
  });
  it('runs off through a notch', () => {
    const picture = Float32Array.from([
      ...empty,
      ...row(3, 1, 3),
      ...row(3, 1, 3),
      ...row(3, 3, 3),
      ...empty,
    ]);
    expect(heldWater(picture, 5)).toBe(0);
  });
  it('does not count a window', () => {
    const picture = Float32Array.from([
      ...empty,
      ...row(3, 3, 3),
      ...row(3, none, 3),
      ...row(3, 3, 3),
      ...empty,
    ]);
    expect(heldWater(picture, 5)).toBe(0);
  });
  it('is nothing on flat ground', () => expect(heldWater(new Float32Array(9).fill(2), 3)).toBe(0));
});
