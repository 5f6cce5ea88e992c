/** Where a section's plane coordinates lie in the part: (y, z), (z, x) or (x, y) for a cut across x, y or z. */
import type { SectionPlane, Vec3 } from '../core/mesh/types';

export const axisNumber = { x: 0, y: 1, z: 2 } as const;

/** Names of the two axes in the plane, across then up. */
export const planeAxes = { x: ['y', 'z'], y: ['z', 'x'], z: ['x', 'y'] } as const;

export const axisVector: Readonly<Record<SectionPlane['axis'], Vec3>> = {
  x: [1, 0, 0],
  y: [0, 1, 0],
  z: [0, 0, 1],
};

/** Point of the part in mm for a point of the plane. */
export function planePoint({ axis, atMm }: SectionPlane, first: number, second: number): Vec3 {
  if (axis === 'x') return [atMm, first, second];
  if (axis === 'y') return [second, atMm, first];
  return [first, second, atMm];
}
