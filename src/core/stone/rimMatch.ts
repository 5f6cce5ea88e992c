/** The two halves of one enclosure, held rim to rim: by how much length, width and outline differ when finished. */
import { Problem } from '../problem';

type Point = readonly [number, number];

/** The finished rim of one half, mm, in its own plane across the pull. */
export interface FinishedRim {
  /** Closed loop, its first point not repeated. */
  readonly outlineMm: readonly Point[];
}

export interface RimMatch {
  /** First half less second, mm: along the first axis of the first rim's plane, and across it. */
  readonly lengthMm: number;
  readonly widthMm: number;
  /** Largest step between the two outlines laid middle on middle, mm. */
  readonly outlineMm: number;
  /** Where that step stands, in the plane of the first rim about its middle. */
  readonly outlineAtMm: Point;
  /** How the second rim had to be turned: as drawn, or seen from behind with one axis turned round. */
  readonly turned: 'as drawn' | 'first axis turned round' | 'second axis turned round' | 'half a turn';
}

const turns = [
  { turned: 'as drawn', signs: [1, 1] },
  { turned: 'first axis turned round', signs: [-1, 1] },
  { turned: 'second axis turned round', signs: [1, -1] },
  { turned: 'half a turn', signs: [-1, -1] },
] as const;

/**
 * The second rim is tried in the four ways it can lie on the first with its axes kept; the one with the least outline
 * step counts.
 * @throws Problem `stone.noRim` for a loop of fewer than three points
 */
export function matchRims(first: FinishedRim, second: FinishedRim): RimMatch {
  const one = centered(first);
  const other = centered(second);
  const best = turns
    .map(({ turned, signs }) => {
      const laid = other.points.map(([x, y]): Point => [x * signs[0], y * signs[1]]);
      const there = largestStep(one.points, laid);
      const back = largestStep(laid, one.points);
      return { turned, ...(there.mm >= back.mm ? there : back) };
    })
    .reduce((least, candidate) => (candidate.mm < least.mm ? candidate : least));
  return {
    lengthMm: one.size[0] - other.size[0],
    widthMm: one.size[1] - other.size[1],
    outlineMm: best.mm,
    outlineAtMm: best.at,
    turned: best.turned,
  };
}

function centered({ outlineMm }: FinishedRim): { readonly points: readonly Point[]; readonly size: Point } {
  if (outlineMm.length < 3)
    throw new Problem('stone.noRim', 'A rim needs an outline of three points or more to be compared.');
  const span = (axis: 0 | 1) => {
    const values = outlineMm.map((point) => point[axis]);
    const low = Math.min(...values);
    const high = Math.max(...values);
    return { middle: (low + high) / 2, size: high - low };
  };
  const [x, y] = [span(0), span(1)];
  return {
    points: outlineMm.map(([px, py]): Point => [px - x.middle, py - y.middle]),
    size: [x.size, y.size],
  };
}

/** Largest distance of a corner of `from` to the loop `to`. */
function largestStep(
  from: readonly Point[],
  to: readonly Point[],
): { readonly mm: number; readonly at: Point } {
  let mm = -1;
  let at: Point = [0, 0];
  for (const point of from) {
    const distance = distanceToLoop(point, to);
    if (distance > mm) {
      mm = distance;
      at = point;
    }
  }
  return { mm, at };
}

function distanceToLoop([x, y]: Point, loop: readonly Point[]): number {
  let least = Number.POSITIVE_INFINITY;
  let [ax, ay] = loop[loop.length - 1]!;
  for (const [bx, by] of loop) {
    const [ex, ey] = [bx - ax, by - ay];
    const lengthSquared = ex * ex + ey * ey;
    const along =
      lengthSquared > 0 ? Math.min(1, Math.max(0, ((x - ax) * ex + (y - ay) * ey) / lengthSquared)) : 0;
    least = Math.min(least, Math.hypot(x - ax - along * ex, y - ay - along * ey));
    [ax, ay] = [bx, by];
  }
  return least;
}
