/**
 * Places outlines on sheets one after the other, each where it ends first; then tries other orders. Largest first is a good start, and
 * a few hundred exchanges shorten it by some percent. The same seed gives the same nest.
 */
import { boundsOf, signedAreaMm2 } from './outline';
import { firstPlace, rowShapeOf, withPlaced, type RowPlace, type RowShape, type RowSheet } from './nestSheet';
import type { RowSpans } from './nestRows';
import type { Outline } from './piece';

export interface SearchTask {
  readonly outlines: readonly Outline[];
  /** Filled in this order: a piece goes onto the first sheet that takes it. */
  readonly sheets: readonly { readonly rows: RowSheet; readonly endMm: number }[];
  readonly gapMm: number;
  /** Turns that are as good as each other, degrees. */
  readonly turnsDeg: readonly number[];
  /** What may be added to each of them; the first is tried first. */
  readonly tiltsDeg: readonly number[];
  readonly tries: number;
  readonly seed: number;
}

export interface Placed extends RowPlace {
  readonly outline: number;
  readonly sheet: number;
}

export interface Filled {
  readonly placed: readonly Placed[];
  /** Outlines that no sheet takes. */
  readonly left: readonly number[];
}

/** One outline's turn to be placed. */
interface Entry {
  readonly outline: number;
  readonly tilt: number;
  /** One of the turns, or null for the one that ends first. */
  readonly turn: number | null;
  /** Sought from the far side of the sheet. */
  readonly fromFar: boolean;
}

interface State extends Filled {
  readonly taken: readonly (readonly RowSpans[])[];
  /** How far the last sheet is used, mm. */
  readonly lengthMm: number;
  readonly sumOfEndsMm: number;
}

/** @returns the best of all tries: fewest left over, then shortest on the last sheet, then all pieces close to its start */
export function searchNest(task: SearchTask): Filled {
  const shapes = shapesOf(task);
  const start: State = {
    taken: task.sheets.map(({ rows }) => rows.taken),
    placed: [],
    left: [],
    lengthMm: 0,
    sumOfEndsMm: 0,
  };
  const run = (order: readonly Entry[], from: readonly State[]): Tried => {
    const states = [...from];
    for (const entry of order.slice(from.length - 1)) states.push(place(task, shapes, states.at(-1)!, entry));
    return { order, states, end: states.at(-1)! };
  };
  const firsts = firstOrders(task.outlines).map((order) => run(order, [start]));
  let best = firsts.reduce((least, one) => (isBetter(one.end, least.end) ? one : least));
  const randomInt = seeded(task.seed);
  for (let count = 0; count < task.tries; count++) {
    const order = exchanged(best.order, task, randomInt);
    const same = order.findIndex((entry, i) => entry !== best.order[i]);
    if (same === -1) continue;
    const next = run(order, best.states.slice(0, same + 1));
    // Sideways too, so that the search does not stay where it happens to be.
    if (!isBetter(best.end, next.end)) best = next;
  }
  return best.end;
}

/** An order, and how the sheets stand before and after each of its pieces. */
interface Tried {
  readonly order: readonly Entry[];
  readonly states: readonly State[];
  readonly end: State;
}

function isBetter(a: State, b: State): boolean {
  if (a.left.length !== b.left.length) return a.left.length < b.left.length;
  return a.lengthMm !== b.lengthMm ? a.lengthMm < b.lengthMm : a.sumOfEndsMm < b.sumOfEndsMm;
}

/** Largest first, by three measures of large. */
function firstOrders(outlines: readonly Outline[]): Entry[][] {
  const boxes = outlines.map((outline) => boundsOf(outline));
  const sizes = [
    outlines.map((outline) => Math.abs(signedAreaMm2(outline))),
    boxes.map(({ lowXMm, highXMm }) => highXMm - lowXMm),
    boxes.map(({ lowYMm, highYMm }) => highYMm - lowYMm),
  ];
  return sizes.map((size) =>
    outlines
      .map((_, outline): Entry => ({ outline, tilt: 0, turn: null, fromFar: false }))
      .sort((a, b) => size[b.outline]! - size[a.outline]!),
  );
}

/** Two pieces change places, one comes earlier, or one is sought from the far side, held to one turn or tilted. */
function exchanged(
  order: readonly Entry[],
  { tiltsDeg, turnsDeg }: SearchTask,
  randomInt: (below: number) => number,
): Entry[] {
  const next = [...order];
  const [i, k] = [randomInt(order.length), randomInt(order.length)];
  const kind = randomInt(tiltsDeg.length > 1 ? 7 : 6);
  const entry = next[i]!;
  if (kind === 6) next[i] = { ...entry, tilt: randomInt(tiltsDeg.length) };
  else if (kind === 5) next[i] = { ...entry, turn: entry.turn === null ? randomInt(turnsDeg.length) : null };
  else if (kind === 4) next[i] = { ...entry, fromFar: !entry.fromFar };
  else if (kind < 2) [next[i], next[k]] = [next[k]!, entry];
  else next.splice(Math.min(i, k), 0, ...next.splice(Math.max(i, k), 1));
  return next;
}

function place(
  task: SearchTask,
  shapes: ShapeOf,
  state: State,
  { outline, tilt, turn: only, fromFar }: Entry,
): State {
  for (const [sheet, { endMm }] of task.sheets.entries()) {
    let best: RowPlace | null = null;
    let bestEndMm = endMm;
    for (let turn = 0; turn < task.turnsDeg.length; turn++) {
      if (only !== null && turn !== only) continue;
      const shape = shapes(outline, sheet, turn, tilt);
      const found = firstPlace(state.taken[sheet]!, shape, bestEndMm, fromFar);
      if (found === null || (best !== null && found.alongMm + shape.lengthMm >= bestEndMm)) continue;
      best = { shape, ...found };
      bestEndMm = found.alongMm + shape.lengthMm;
    }
    if (best === null) continue;
    const isLast = sheet === task.sheets.length - 1;
    return {
      ...state,
      taken: state.taken.with(sheet, withPlaced(state.taken[sheet]!, best)),
      placed: [...state.placed, { ...best, outline, sheet }],
      lengthMm: isLast ? Math.max(state.lengthMm, bestEndMm) : state.lengthMm,
      sumOfEndsMm: state.sumOfEndsMm + bestEndMm,
    };
  }
  return { ...state, left: [...state.left, outline] };
}

type ShapeOf = (outline: number, sheet: number, turn: number, tilt: number) => RowShape;

/** Worked out when first asked for. */
function shapesOf({ outlines, sheets, gapMm, turnsDeg, tiltsDeg }: SearchTask): ShapeOf {
  const known = new Map<string, RowShape>();
  return (outline, sheet, turn, tilt) => {
    const { rowMm } = sheets[sheet]!.rows;
    const deg = turnsDeg[turn]! + tiltsDeg[tilt]!;
    const key = `${outline} ${deg} ${rowMm}`;
    const shape = known.get(key) ?? rowShapeOf(outlines[outline]!, deg, rowMm, gapMm);
    known.set(key, shape);
    return shape;
  };
}

/**
 * Whole numbers from 0 up to below what is asked, the same for the same seed (xorshift generator of 32 bits; Marsaglia, Xorshift
 * RNGs, Journal of Statistical Software 8 (14), 2003).
 */
function seeded(seed: number): (below: number) => number {
  let state = (Math.trunc(seed) | 0) ^ 0x2545f491 || 1;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}
