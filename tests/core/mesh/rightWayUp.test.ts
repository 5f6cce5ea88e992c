/** The side that a part is hollow from, however its file lies. */
import { describe, expect, it } from 'vitest';
import { rightWayUp } from '../../../src/core/mesh/rightWayUp';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import { caseHalf } from '../../support/cellPart';
import { box, domeShell, mapVertices, tray } from '../../support/meshes';
import { cupShell, halfEllipsoidShell, steppedTray } from '../../support/shells';

/** Turned about x, then about z. */
const turn =
  (aboutX: number, aboutZ: number) =>
  ([x, y, z]: Vec3): Vec3 => {
    const [cx, sx, cz, sz] = [Math.cos(aboutX), Math.sin(aboutX), Math.cos(aboutZ), Math.sin(aboutZ)];
    const [v, w] = [y * cx - z * sx, y * sx + z * cx];
    return [x * cz - v * sz, x * sz + v * cz, w];
  };
const turns = [
  [0, 0],
  [Math.PI, 0],
  [Math.PI / 2, 0],
  [-Math.PI / 2, Math.PI / 2],
  [0.4, 0],
  [2.1, 1.1],
  [-1.3, 2.7],
] as const;

const shells: readonly (readonly [string, IndexedMesh, Vec3])[] = [
  ['a drafted tray, open above', tray([60, 40, 12], 1, 3), [0, 0, -1]],
  ['a shallow lid', tray([90, 60, 6], 1.5, 2), [0, 0, -1]],
  ['a half sphere', domeShell(16, 48), [0, 0, 1]],
  ['half an ellipsoid', halfEllipsoidShell([40, 25, 15], 1.5, 12, 48), [0, 0, 1]],
  ['a cup', cupShell(25, 18, 40, 1.2, 48), [0, 0, 1]],
  ['a stepped tray with upright walls', steppedTray(80, 50, 20, 6, 1.5), [0, 0, 1]],
  ['a case half with windows and a lip', caseHalf(), [0, 0, 1]],
];

describe('the right way up', () => {
  it.each(shells)('of %s is told by its hollow, in every turn', (_, mesh, pull) => {
    for (const [aboutX, aboutZ] of turns) {
      const turned = turn(aboutX, aboutZ);
      const found = rightWayUp(mapVertices(mesh, turned));
      const wanted = turned(pull);
      expect(found.toldBy, `turned by ${aboutX}, ${aboutZ}`).toBe('hollow');
      const cosine = found.pull.reduce((sum, one, axis) => sum + one * wanted[axis]!, 0);
      expect(cosine, `turned by ${aboutX}, ${aboutZ}`).toBeGreaterThan(Math.cos((0.5 * Math.PI) / 180));
    }
  });

  it('of a solid is told by the flat side that it stands on', () => {
    // Its top is smaller than its foot.
    const solid = mapVertices(box([-30, -20, 0], [30, 20, 12]), ([x, y, z]) => [
      x * (1 - z / 48),
      y * (1 - z / 48),
      z,
    ]);
    for (const [aboutX, aboutZ] of turns) {
      const turned = turn(aboutX, aboutZ);
      const found = rightWayUp(mapVertices(solid, turned));
      expect(found.toldBy).toBe('flat side');
      turned([0, 0, 1]).forEach((one, axis) => expect(found.pull[axis]).toBeCloseTo(one, 3));
    }
  });

  it('of a block, and of a box that is closed all round, is asked', () => {
    expect(rightWayUp(box([0, 0, 0], [70, 40, 12])).toldBy).toBeNull();
    const outside = box([0, 0, 0], [60, 40, 20]);
    const inside = box([2, 2, 2], [58, 38, 18]);
    const positions = Float64Array.from([...outside.positions, ...inside.positions]);
    const shift = outside.positions.length / 3;
    const inward = Array.from(
      inside.facets,
      (_, at) => inside.facets[at - (at % 3) + [0, 2, 1][at % 3]!]! + shift,
    );
    const closed = { positions, facets: Uint32Array.from([...outside.facets, ...inward]) };
    expect(rightWayUp(closed).toldBy).toBeNull();
  });
});
