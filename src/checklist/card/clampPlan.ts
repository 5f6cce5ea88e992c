/** The mold seen along the pull: clamps in the order of tightening, and the lettered places that matter. */
import { box, scaleFor, type Drawing, type Mark, type Point } from './drawing';

export interface ClampPlanNumbers {
  readonly boxMm: Point;
  /** Outline of the part, and half its size, from its middle. */
  readonly outlineMm: readonly Point[] | null;
  readonly halfSizeMm: Point;
  /** From the middle of the part. */
  readonly clampsMm: readonly Point[];
  readonly places: readonly { readonly letter: string; readonly planMm: Point }[];
  /** Coldest place of the laminate, for the thermocouple; null while it is not known. */
  readonly coldestMm: Point | null;
}

const frame: Point = [76, 40];
/** More discs than this hide each other. */
const mostClamps = 24;

const distance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1]);

/**
 * Crosswise: from the clamp farthest from the middle to the one nearest to its opposite, then to the one farthest from all
 * that are set (common practice).
 */
export function tighteningOrder(clamps: readonly Point[]): readonly Point[] {
  const left = [...clamps];
  const set: Point[] = [];
  const take = (score: (one: Point) => number) => {
    const scores = left.map(score);
    const [one] = left.splice(scores.indexOf(Math.max(...scores)), 1);
    if (one !== undefined) set.push(one);
  };
  while (left.length > 0) {
    take((one) =>
      set.length === 0 ? Math.hypot(...one) : Math.min(...set.map((other) => distance(one, other))),
    );
    const last = set.at(-1);
    if (left.length > 0 && last !== undefined) take((one) => -distance(one, [-last[0], -last[1]]));
  }
  return set;
}

const turned = ([x, y]: Point): Point => [y, -x];

/** A long box lies on its side, so that it is drawn as large as it can be. */
function lyingDown(numbers: ClampPlanNumbers): ClampPlanNumbers {
  const [length, width] = numbers.boxMm;
  if (length >= width) return numbers;
  const { outlineMm, halfSizeMm, clampsMm, places, coldestMm } = numbers;
  return {
    boxMm: [width, length],
    outlineMm: outlineMm === null ? null : outlineMm.map(turned),
    halfSizeMm: [halfSizeMm[1], halfSizeMm[0]],
    clampsMm: clampsMm.map(turned),
    places: places.map(({ letter, planMm }) => ({ letter, planMm: turned(planMm) })),
    coldestMm: coldestMm === null ? null : turned(coldestMm),
  };
}

export function clampPlan(upright: ClampPlanNumbers): Drawing {
  const numbers = lyingDown(upright);
  const { boxMm, outlineMm, halfSizeMm, clampsMm, places, coldestMm } = numbers;
  const reach = [boxMm[0], ...clampsMm.map(([x]) => 2 * Math.abs(x))];
  const reachAcross = [boxMm[1], ...clampsMm.map(([, y]) => 2 * Math.abs(y))];
  const [spanX, spanY] = [Math.max(...reach), Math.max(...reachAcross)];
  const scale = scaleFor([spanX, spanY], frame);
  const margin = 3;
  const middle: Point = [margin + spanX / scale / 2, margin + spanY / scale / 2];
  // The second axis points up on paper.
  const at = ([x, y]: Point): Point => [middle[0] + x / scale, middle[1] - y / scale];
  const outline = outlineMm ?? box(-halfSizeMm[0], -halfSizeMm[1], 2 * halfSizeMm[0], 2 * halfSizeMm[1]);
  const order = tighteningOrder(clampsMm);
  const marks: readonly Mark[] = [
    {
      kind: 'face',
      points: box(-boxMm[0] / 2, -boxMm[1] / 2, boxMm[0], boxMm[1]).map(at),
      fill: 'negative',
    },
    { kind: 'face', points: outline.map(at), fill: 'void' },
    ...order
      .slice(0, mostClamps)
      .map((one, index): Mark => ({ kind: 'disc', at: at(one), text: String(index + 1), hollow: false })),
    ...places.map(({ letter, planMm }): Mark => ({
      kind: 'disc',
      at: at(planMm),
      text: letter,
      hollow: true,
    })),
    ...(coldestMm === null
      ? []
      : [{ kind: 'disc', at: at(coldestMm), text: 'T', hollow: true } satisfies Mark]),
  ];
  return {
    title: 'Clamps and places, seen along the pull',
    told: `${clampsMm.length} clamps in the order of tightening; places ${places.map(({ letter }) => letter).join(', ') || 'none'}.`,
    widthMm: 2 * margin + spanX / scale,
    heightMm: 2 * margin + spanY / scale,
    scale,
    marks,
  };
}
