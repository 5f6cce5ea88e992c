/** Whether darts of neighboring plies lie on each other: the laminate has no thread across the part there. */
import type { Drape } from './drapePly';

/** Nearer than this they count as one: the width of a blade’s wander and of a gap at each. Our own judgement. */
export const togetherMm = 3;

/** 3 numbers per point on the part, along the edges of darts and slits. */
export function dartPoints({ outlines, net }: Drape): Float32Array {
  const points: number[] = [];
  for (const outline of outlines)
    for (const { onDart, node } of outline)
      if (onDart && node >= 0) for (let k = 0; k < 3; k++) points.push(net.pointMm[3 * node + k]!);
  return Float32Array.from(points);
}

export interface DartsTogether {
  /** Of the upper ply's darts; 0 where there are none. */
  readonly share: number;
  /** null where one of both has no darts. */
  readonly leastMm: number | null;
}

export function dartsTogether(under: Float32Array, upper: Float32Array): DartsTogether {
  if (under.length === 0 || upper.length === 0) return { share: 0, leastMm: null };
  let [near, leastMm] = [0, Infinity];
  for (let at = 0; at < upper.length; at += 3) {
    let square = Infinity;
    for (let other = 0; other < under.length; other += 3) {
      const x = upper[at]! - under[other]!;
      const y = upper[at + 1]! - under[other + 1]!;
      const z = upper[at + 2]! - under[other + 2]!;
      square = Math.min(square, x * x + y * y + z * z);
    }
    if (square < togetherMm ** 2) near++;
    leastMm = Math.min(leastMm, Math.sqrt(square));
  }
  return { share: (3 * near) / upper.length, leastMm };
}
