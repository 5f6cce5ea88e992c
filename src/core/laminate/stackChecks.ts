/** What the order and the angles of a stack give away before any load: standard terms of lamination theory. */
import type { Laminate, PlacedLayer } from './lamination';

export interface StackChecks {
  /** Each layer has its like at the same distance on the other side of the mid-plane, so B = 0. */
  readonly symmetric: boolean;
  /** A pull along x or y makes no shear: A16 = A26 = 0. */
  readonly balanced: boolean;
  /** The same in-plane stiffness in every direction. */
  readonly quasiIsotropic: boolean;
}

/** Differences below this share of the largest entry are rounding of angles and sums. */
const roundingShare = 1e-9;

/** Layers are compared by what they do, so 0 and 90 of one balanced fabric are alike. */
export function stackChecks(laminate: Laminate): StackChecks {
  const { aNPerMm: a, layers } = laminate;
  const slack = roundingShare * Math.max(a[0][0], a[1][1]);
  const balanced = Math.abs(a[0][2]) <= slack && Math.abs(a[1][2]) <= slack;
  return {
    symmetric: layers.every((layer, i) => alike(layer, layers[layers.length - 1 - i]!)),
    balanced,
    quasiIsotropic:
      balanced &&
      Math.abs(a[0][0] - a[1][1]) <= slack &&
      Math.abs(a[2][2] - (a[0][0] - a[0][1]) / 2) <= slack,
  };
}

function alike(one: PlacedLayer, other: PlacedLayer): boolean {
  return (
    near([one.thicknessMm], [other.thicknessMm]) &&
    near(one.stiffnessMpa.flat(), other.stiffnessMpa.flat()) &&
    near(one.expansionPerK, other.expansionPerK)
  );
}

function near(some: readonly number[], others: readonly number[]): boolean {
  const slack = roundingShare * Math.max(...some.map(Math.abs), ...others.map(Math.abs));
  return some.every((value, i) => Math.abs(value - others[i]!) <= slack);
}
