/** The pattern maker on made parts by chance and on real enclosures. */
import * as fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { findHealth } from '../../../src/core/mesh/health';
import { partFromSaved } from '../../../src/core/mesh/partFromSaved';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import { makePattern, type MadePattern, type PatternChoices } from '../../../src/core/pattern/makePattern';
import { prepareSimplify } from '../../../src/core/pattern/simplify';
import { readPatternFile } from '../../../src/pipeline/patternFile';
import { cellPart } from '../../support/cellPart';
import { exactWalls, facesOf, leastDraftDeg, shareUnder } from '../../support/exactShell';
import { mapVertices, tray } from '../../support/meshes';
import { propertySeed } from '../../support/propertySeed';
import { turned } from '../../support/savedTray';
import { hasSharedMeshes, sharedMesh } from '../../support/sharedMeshes';

const usual = {
  neutralPlane: 'rim',
  edges: 'eased',
  keepHolesOverMm: null,
} as const satisfies Partial<PatternChoices>;

beforeAll(prepareSimplify);

/** What holds of every pattern. */
function expectSound(
  { mesh }: MadePattern,
  { pull, wallMm, draftDeg }: PatternChoices,
  withinMm: number,
): void {
  const health = findHealth(mesh);
  expect(health.watertight).toBe(true);
  expect(health.bodies).toHaveLength(1);
  const faces = facesOf(mesh, pull);
  expect(leastDraftDeg(faces)).toBeGreaterThanOrEqual(Math.max(0, draftDeg - 1));
  expect(shareUnder(faces, draftDeg - 0.1)).toBeLessThan(0.001);
  const walls = exactWalls(faces, 400);
  expect(Math.abs(walls.p1 - wallMm)).toBeLessThan(withinMm);
  expect(Math.abs(walls.p99 - wallMm)).toBeLessThan(withinMm);
  // Every facet of the show face looks up, and as much of it as lies over the outline: nothing lies over anything.
  const over = (facets: typeof faces.show) =>
    facets.reduce((sum, { areaMm2, draftDeg: deg }) => sum + areaMm2 * Math.sin((deg * Math.PI) / 180), 0);
  expect(over(faces.show) - over(faces.core)).toBeCloseTo(over(faces.land), 1);
}

describe(`made parts (seed ${propertySeed})`, () => {
  it('come out closed, even, and free to leave the mold', () => {
    const part = fc.record({
      x: fc.integer({ min: 14, max: 22 }),
      y: fc.integer({ min: 12, max: 18 }),
      z: fc.integer({ min: 5, max: 8 }),
      hole: fc.constantFrom('none', 'side', 'notch', 'top'),
      turn: fc.tuple(
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
      ),
      draftDeg: fc.constantFrom(1, 2, 3, 5),
      wallMm: fc.constantFrom(0.7, 0.9, 1.2),
    });
    fc.assert(
      fc.property(part, ({ x, y, z, hole, turn, draftDeg, wallMm }) => {
        const air = {
          none: [],
          side: [
            {
              is: 'air' as const,
              box: [
                [5, 9],
                [0, 2],
                [2, 4],
              ] as const,
            },
          ],
          notch: [
            {
              is: 'air' as const,
              box: [
                [5, 9],
                [0, 2],
                [0, 3],
              ] as const,
            },
          ],
          top: [
            {
              is: 'air' as const,
              box: [
                [5, 9],
                [5, 9],
                [0, z],
              ] as const,
            },
          ],
        }[hole];
        const drawn = cellPart(
          [x, y, z],
          [1, 1, 1],
          [
            {
              is: 'solid',
              box: [
                [0, x],
                [0, y],
                [0, z],
              ],
            },
            {
              is: 'air',
              box: [
                [2, x - 2],
                [2, y - 2],
                [0, z - 2],
              ],
            },
            ...air,
          ],
        );
        const move = turned([turn[0], turn[1], 0]);
        const pull = move([0, 0, 1]);
        const choices: PatternChoices = {
          ...usual,
          pull,
          wallMm,
          draftDeg,
          insideRadiusMm: 0.8,
          gridMm: 0.4,
        };
        expectSound(
          makePattern(mapVertices(drawn, move), choices, () => undefined),
          choices,
          // So small that a good part of each is rounded edges, which a grid cuts across.
          0.04,
        );
      }),
      { numRuns: 4 },
    );
  });
});

/** Three of eight: small ones, among them one that is not manifold. */
const real: readonly (readonly [name: string, pull: Vec3])[] = [
  ['handheld_top_ascii.stl', [0, 0, 1]],
  ['mini_player_top_snap.stl', [0, 0, 1]],
  ['calculator_front_nonmanifold.stl', [0, 0, -1]],
];
const isShared = hasSharedMeshes('public');

async function partOf(name: string): Promise<IndexedMesh> {
  const { facts, canonical } = await readPatternFile(
    sharedMesh(`public/${name}`).slice(),
    name,
    () => undefined,
  );
  return partFromSaved(canonical.mesh, findHealth(canonical.mesh), {
    unit: null,
    declaredUnit: facts.declaredUnit,
    body: 0,
    scale: 1,
    winding: 'repair',
  }).partMesh;
}

describe(
  isShared
    ? `${real.length} public enclosures`
    : 'a tray of our own (the shared enclosures are not beside the project)',
  () => {
    const cases = isShared ? real : ([['tray', [0, 0, -1]]] as const);
    it.each(cases)(
      '%s: wall, draft and closed',
      async (name, pull) => {
        const part = isShared ? await partOf(name) : tray([40, 30, 10], 2, 1);
        const choices: PatternChoices = {
          ...usual,
          pull,
          wallMm: 0.8,
          draftDeg: 3,
          insideRadiusMm: 1,
          gridMm: 0.4,
        };
        expectSound(
          makePattern(part, choices, () => undefined),
          choices,
          0.02,
        );
      },
      240_000,
    );
  },
);
