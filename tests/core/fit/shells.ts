/** Half shells over a plan seen from their middle: rim on z = 0, roof above, pulled along +z. */
import type { IndexedMesh } from '../../../src/core/mesh/types';

type Point = readonly [number, number];

export interface ShellPlan {
  /** Outer outline, counter-clockwise, seen from the middle all round. */
  readonly outer: readonly Point[];
  /** Inner outline, point by point. */
  readonly inner: readonly Point[];
  readonly heightMm: number;
  readonly roofMm: number;
  /** Height of the land at a point of the outline; 0 where it is left out. */
  readonly landAt?: (k: number) => number;
}

export function planShell({ outer, inner, heightMm, roofMm, landAt = () => 0 }: ShellPlan): IndexedMesh {
  const count = outer.length;
  const rings = [
    outer.map(([x, y]) => [x, y, heightMm]),
    outer.map(([x, y], k) => [x, y, landAt(k)]),
    inner.map(([x, y], k) => [x, y, landAt(k)]),
    inner.map(([x, y]) => [x, y, heightMm - roofMm]),
  ];
  const positions = [...rings.flat(2), 0, 0, heightMm, 0, 0, heightMm - roofMm];
  const facets: number[] = [];
  for (let ring = 0; ring < 3; ring++)
    for (let k = 0; k < count; k++) {
      const next = (k + 1) % count;
      const [a, b, c, d] = [
        ring * count + k,
        ring * count + next,
        (ring + 1) * count + k,
        (ring + 1) * count + next,
      ];
      facets.push(a, c, b, b, c, d);
    }
  const top = 4 * count;
  for (let k = 0; k < count; k++) {
    const next = (k + 1) % count;
    facets.push(top, k, next, top + 1, 3 * count + next, 3 * count + k);
  }
  return { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
}

/** A rectangle with its sides in steps, so that its outline has places to be scraped at. */
export function rectanglePlan(lengthMm: number, widthMm: number, stepsPerSide: number): Point[] {
  const corners: Point[] = [
    [lengthMm / 2, widthMm / 2],
    [-lengthMm / 2, widthMm / 2],
    [-lengthMm / 2, -widthMm / 2],
    [lengthMm / 2, -widthMm / 2],
  ];
  return corners.flatMap((from, side) => {
    const to = corners[(side + 1) % 4]!;
    return Array.from({ length: stepsPerSide }, (_, k): Point => {
      const share = k / stepsPerSide;
      return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
    });
  });
}

/** Box open below, sharp inside and outside. */
export const boxShell = (lengthMm: number, widthMm: number, heightMm: number, wallMm: number): IndexedMesh =>
  planShell({
    outer: rectanglePlan(lengthMm, widthMm, 1),
    inner: rectanglePlan(lengthMm - 2 * wallMm, widthMm - 2 * wallMm, 1),
    heightMm,
    roofMm: wallMm,
  });

/** An egg-shaped plan: no turn of it lies on itself. */
export const eggPlan = (lengthMm: number, widthMm: number, count: number): Point[] =>
  Array.from({ length: count }, (_, k) => {
    const turn = (2 * Math.PI * k) / count;
    const wide = 1 + 0.18 * Math.cos(turn);
    return [(lengthMm / 2) * Math.cos(turn), (widthMm / 2) * wide * Math.sin(turn)];
  });

export const scaledPlan = (plan: readonly Point[], factor: number): Point[] =>
  plan.map(([x, y]) => [factor * x, factor * y]);

/** In from the outline by so much towards the middle of the plan. */
export const inward = (plan: readonly Point[], mm: number): Point[] =>
  plan.map(([x, y]) => {
    const length = Math.hypot(x, y);
    return [x - (mm * x) / length, y - (mm * y) / length];
  });
