/** Cloth laid on a face, from a point and a direction in space. */
import { closableFace, closeFace } from '../../src/core/drape/closeFace';
import { drapePly, type Drape } from '../../src/core/drape/drapePly';
import type { IndexedMesh, Vec3 } from '../../src/core/mesh/types';
import { nearestPlace } from './nearestPlace';

export interface Laid {
  readonly at: Vec3;
  readonly warp: Vec3;
  readonly stepMm?: number;
  readonly cutDeg?: number;
  readonly allowanceMm?: number;
  readonly first?: 'warp' | 'weft';
}

export function laid(
  face: IndexedMesh,
  { at, warp, stepMm = 1, cutDeg = 60, allowanceMm = 0, first = 'warp' }: Laid,
): Drape {
  const surface = closeFace(closableFace(face, { allowanceMm, beyondMm: 2.6 * stepMm }), face);
  const start = nearestPlace(surface, at);
  const axes = surface.axes.subarray(6 * start.facet, 6 * start.facet + 6);
  const on = (from: number) => warp[0] * axes[from]! + warp[1] * axes[from + 1]! + warp[2] * axes[from + 2]!;
  return drapePly(
    surface,
    { stepMm, start, warpRad: Math.atan2(on(3), on(0)), cutRad: (cutDeg * Math.PI) / 180, first },
    null,
  );
}

export const deg = (rad: number): number => (rad * 180) / Math.PI;

const span = (values: readonly number[]) => Math.max(...values) - Math.min(...values);

/** Least and most of the first outline, along warp and weft. */
export function sizeOf({ outlines }: Drape): readonly [number, number] {
  const [outline] = outlines;
  return [span(outline!.map(({ x }) => x)), span(outline!.map(({ y }) => y))];
}

/** Area that the cells cover on the surface. */
export const coveredMm2 = ({ net, cells, keptShare }: Drape): number =>
  cells.reduce((sum, { shearRad }, at) => sum + keptShare[at]! * net.stepMm ** 2 * Math.cos(shearRad), 0);
