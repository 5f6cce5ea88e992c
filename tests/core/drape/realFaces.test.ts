/** Cloth on the show faces of made patterns, at 0, 45 and 90 degrees. */
import { describe, expect, it } from 'vitest';
import { closableFace, closeFace } from '../../../src/core/drape/closeFace';
import { cutPlies } from '../../../src/core/drape/cutPlies';
import { drapePly } from '../../../src/core/drape/drapePly';
import { twinsOf, writePoint } from '../../../src/core/drape/drapeSurface';
import { faceOf } from '../../../src/core/drape/faceOf';
import { stepI, stepJ, type Net } from '../../../src/core/drape/net';
import { partDatum, startPlace, warpAngleAt } from '../../../src/core/drape/partDatum';
import { isSimple } from '../../../src/core/drape/smoothOutline';
import { noWalk, walk } from '../../../src/core/drape/walk';
import { measurePart } from '../../../src/core/mesh/measure';
import { madeFace, madeFaces, stackOn } from '../../support/madeFaces';

describe('faces of made patterns', () => {
  it.each(madeFaces)(
    '%s is covered, no piece lies on itself, nothing shears past locking, threads keep their length',
    async (name, pull) => {
      const mesh = await madeFace(name, pull);
      const measurement = measurePart(mesh, pull);
      const { plies, pieces } = cutPlies(mesh, measurement, stackOn(pull, [0, 45, 90]), () => undefined);
      for (const { face, coveredMm2, wantedMm2, largestShearDeg } of plies) {
        // The core face is tighter in its corners, so more of it lies along the darts.
        expect(coveredMm2 / wantedMm2).toBeGreaterThan(face === 'show' ? 0.97 : 0.95);
        expect(coveredMm2 / wantedMm2).toBeLessThan(1.005);
        expect(largestShearDeg).toBeLessThanOrEqual(54.001);
      }
      for (const { outlineMm } of pieces) expect(isSimple(outlineMm)).toBe(true);
      const datum = partDatum(mesh, pull);
      const face = faceOf(mesh, twinsOf(mesh), measurement, 'show');
      const surface = closeFace(closableFace(face, { allowanceMm: 0, beyondMm: 2.6 }), face);
      const start = startPlace(surface, datum, { alongMm: 0, acrossMm: 0 });
      for (const fiberDeg of [0, 45, 90]) {
        const warpRad = warpAngleAt(surface, datum, start, fiberDeg);
        const cutRad = (54 * Math.PI) / 180;
        const { net } = drapePly(surface, { stepMm: 1, start, warpRad, cutRad, first: 'warp' }, null);
        const errors = threadErrors(net);
        expect(errors.length).toBeGreaterThan(40);
        expect(Math.max(...errors)).toBeLessThan(0.003);
      }
    },
    240_000,
  );
});

/**
 * How far off each thread of 10 steps and more is in length, as a share: its links are walked on the surface again, and where a walk
 * misses the next node by a little, its length up to there is what the thread is long.
 */
function threadErrors(net: Net): number[] {
  const errors: number[] = [];
  const end = noWalk();
  const at = new Float64Array(3);
  for (const way of [0, 1] as const)
    for (let first = 0; first < net.count; first++) {
      if (!net.hasLink(first, way) || net.hasLink(first, way === 0 ? 2 : 3)) continue;
      let [node, lengthMm, steps] = [first, 0, 0];
      while (net.hasLink(node, way)) {
        const next = net.at(net.i[node]! + stepI[way], net.j[node]! + stepJ[way]);
        walk(net.surface, net.placeOf(node), net.out[4 * node + way]!, net.stepMm, end);
        writePoint(net.surface, end, at, 0);
        let [on, off] = [0, 0];
        for (let k = 0; k < 3; k++) {
          const { axes } = net.surface;
          const ahead = end.dirX * axes[6 * end.facet + k]! + end.dirY * axes[6 * end.facet + 3 + k]!;
          const missedMm = net.pointMm[3 * next + k]! - at[k]!;
          on += ahead * missedMm;
          off += missedMm * missedMm;
        }
        lengthMm += Math.hypot(net.stepMm + on, Math.sqrt(Math.max(0, off - on * on)));
        steps++;
        node = next;
      }
      if (steps >= 10) errors.push(Math.abs(lengthMm / (steps * net.stepMm) - 1));
    }
  return errors;
}
