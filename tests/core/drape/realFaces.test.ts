/** Cloth on the show faces of made patterns, at 0, 45 and 90 degrees. */
import { describe, expect, it } from 'vitest';
import { cutPlies, type CuttingChoices } from '../../../src/core/drape/cutPlies';
import { isSimple } from '../../../src/core/drape/smoothOutline';
import { shearLimits } from '../../../src/core/drape/weaveLimits';
import { findHealth } from '../../../src/core/mesh/health';
import { measurePart } from '../../../src/core/mesh/measure';
import { partFromSaved } from '../../../src/core/mesh/partFromSaved';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import { makePattern } from '../../../src/core/pattern/makePattern';
import { readPatternFile } from '../../../src/pipeline/patternFile';
import { tray } from '../../support/meshes';
import { hasSharedMeshes, sharedMesh } from '../../support/sharedMeshes';

const twill = shearLimits('woven', { warningDeg: null, lockingDeg: null });

/** Three of eight, small ones: seven were laid so from the proposed start while this was written, 97.9 to 99.9 % covered. */
const real: readonly (readonly [name: string, pull: Vec3])[] = [
  ['handheld_top_ascii.stl', [0, 0, 1]],
  ['mini_player_top_snap.stl', [0, 0, 1]],
  ['calculator_front_nonmanifold.stl', [0, 0, -1]],
];
const isShared = hasSharedMeshes('public');

async function partOf(name: string): Promise<IndexedMesh> {
  const bytes = sharedMesh(`public/${name}`).slice();
  const { facts, canonical } = await readPatternFile(bytes, name, () => undefined);
  return partFromSaved(canonical.mesh, findHealth(canonical.mesh), {
    unit: null,
    declaredUnit: facts.declaredUnit,
    body: 0,
    scale: 1,
    winding: 'repair',
  }).partMesh;
}

describe(isShared ? `${real.length} public enclosures` : 'a tray of our own', () => {
  const cases = isShared ? real : ([['tray', [0, 0, -1]]] as const);
  it.each(cases)(
    '%s is covered, no piece lies on itself, nothing shears past locking',
    async (name, pull) => {
      const part = isShared ? await partOf(name) : tray([40, 30, 10], 2, 3);
      const { mesh } = makePattern(
        part,
        {
          pull,
          wallMm: 0.8,
          draftDeg: 3,
          insideRadiusMm: 1,
          gridMm: 0.4,
          neutralPlane: 'rim',
          edges: 'eased',
          keepHolesOverMm: null,
        },
        () => undefined,
      );
      const choices: CuttingChoices = {
        pull,
        stepMm: 1,
        start: { alongMm: 0, acrossMm: 0 },
        allowanceMm: 0,
        overlapMm: 0,
        seamMm: null,
        plies: [0, 45, 90].map((fiberDeg, at) => ({
          ply: at + 1,
          fabric: 'twill',
          fiberDeg,
          secondHalfDeg: null,
          faceDown: false,
          face: at < 2 ? ('show' as const) : ('core' as const),
          depthMm: [0.1, 0.3, 0.1][at]!,
          limits: twill,
        })),
      };
      const { plies, pieces } = cutPlies(mesh, measurePart(mesh, pull), choices, () => undefined);
      for (const { face, coveredMm2, wantedMm2, largestShearDeg } of plies) {
        // The core face is tighter in its corners, so more of it lies along the darts.
        expect(coveredMm2 / wantedMm2).toBeGreaterThan(face === 'show' ? 0.97 : 0.95);
        expect(coveredMm2 / wantedMm2).toBeLessThan(1.005);
        expect(largestShearDeg).toBeLessThanOrEqual(54.001);
      }
      for (const { outlineMm } of pieces) expect(isSimple(outlineMm)).toBe(true);
    },
    240_000,
  );
});
