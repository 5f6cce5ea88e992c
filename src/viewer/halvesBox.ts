import type { Vec3 } from '../core/mesh/types';
import type { MoldReply } from '../pipeline/told';
import type { PartBox } from './orbitView';

export type MoldHalves = NonNullable<MoldReply['halves']>;

/** How far each half may be pulled off: the height of the closed mold along the pull, in whole mm. */
export function mostApartMm({ negative, positive }: MoldHalves, pull: Vec3): number {
  const low = (axis: 0 | 1 | 2) => Math.min(negative.boxMinMm[axis], positive.boxMinMm[axis]);
  const high = (axis: 0 | 1 | 2) => Math.max(negative.boxMaxMm[axis], positive.boxMaxMm[axis]);
  const share = (axis: 0 | 1 | 2) => (Math.abs(pull[axis]) / Math.hypot(...pull)) * (high(axis) - low(axis));
  return Math.ceil(share(0) + share(1) + share(2));
}

/** The box that holds the mold however far it is pulled apart, so that the view need not be fitted again. */
export function halvesBox(halves: MoldHalves, pull: Vec3): PartBox {
  const length = Math.hypot(...pull);
  const apart = mostApartMm(halves, pull);
  const along = (axis: 0 | 1 | 2) => (apart * pull[axis]) / length;
  const { negative, positive } = halves;
  const low = (axis: 0 | 1 | 2) =>
    Math.min(negative.boxMinMm[axis] + along(axis), positive.boxMinMm[axis] - along(axis));
  const high = (axis: 0 | 1 | 2) =>
    Math.max(negative.boxMaxMm[axis] + along(axis), positive.boxMaxMm[axis] - along(axis));
  return { boxMinMm: [low(0), low(1), low(2)], boxMaxMm: [high(0), high(1), high(2)] };
}
