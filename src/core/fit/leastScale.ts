/**
 * The least scale of the shell at which all contents fit, and the least shift that makes them fit as it is. Contents keep their size and
 * their places to each other; they may be shifted, and turned about one axis, together. The wall keeps its thickness at any scale.
 *
 * Each step linearizes: a point p of a body, its nearest place q of the core face and the unit way n from q to p give the condition
 * n . (p + shift + angle axis x p - s q) - (1 - s) wall >= clearance, and the linear program over shift, turn and s says where to go within a
 * region of trust. Flat walls are met exactly; the rest closes in.
 */
import type { Vector3 } from '../numeric/matrix3';
import { timesMatrix } from '../numeric/matrix3';
import { leastCost } from '../numeric/leastCost';
import { cross, dot, lengthOf, minus, plus, times } from '../numeric/vectors';
import {
  farthest,
  middleOf,
  movedBody,
  noTurn,
  surfacePoints,
  turnBy,
  type Move,
  type PlacedBody,
} from './bodies';
import { nearestTo, nearestToBody, type TriangleTree } from './triangleTree';

export interface FitWish {
  /** Between any body and the core face. */
  readonly clearanceMm: number;
  /** Of the laminate: what a scale of the shell leaves alone. */
  readonly wallMm: number;
  /** The shell is scaled about here. */
  readonly aboutMm: Vector3;
  /** Unit; contents are turned about this way only, so that boards stay level. */
  readonly axis: Vector3;
  /** The open side, which contents may not leave by; left out where the other half closes it. */
  readonly mouth?: Mouth | null;
}

export interface Mouth {
  readonly originMm: Vector3;
  /** Unit, out of the half. */
  readonly normal: Vector3;
  /** So far the contents may reach over it. */
  readonly overMm: number;
}

export interface FitFound {
  readonly scale: number;
  /** Where all contents go for that. */
  readonly move: Move;
  readonly shiftMm: Vector3;
  readonly turnDeg: number;
  /** Reached clearance, exact. */
  readonly clearanceMm: number;
}

interface Pose {
  readonly scale: number;
  readonly move: Move;
}

interface Condition {
  /** Shift, turn about the axis (per mm of the size), scale. */
  readonly row: readonly number[];
  readonly least: number;
}

const mostRounds = 30;
/** Beyond these it is another enclosure. */
const [leastScale, largestScale] = [0.2, 4];
/** A miss this small is met. */
const metMm = 1e-4;
/** A scale is worth another round while it falls by more. */
const worthScale = 1e-5;
/** Search is content with this; the clearance that is told is exact. */
const searchMm = 1e-3;
/** Cost of a millimeter of shift beside a scale, so that nothing is moved for nothing. */
const costOfShift = 1e-6;
const costOfMiss = 10;

/** Clearance less what is wished, at a pose: by the body where nothing meets, else by the points of its surface. */
function slackAt(
  { core, bodies, points, wish }: Search,
  { scale, move }: Pose,
  toleranceMm = searchMm,
): number {
  let least = Number.POSITIVE_INFINITY;
  bodies.forEach((body, at) => {
    const lying = inScaled(movedBody(body, move), scale, wish.aboutMm);
    const nearest = nearestToBody(core, lying, toleranceMm)!;
    const mm = nearest.way === null ? -deepest(core, points[at]!, { scale, move }, wish) : nearest.distanceMm;
    least = Math.min(
      least,
      scale * mm - (1 - scale) * wish.wallMm - wish.clearanceMm,
      mouthSlack(body, { scale, move }, wish),
    );
  });
  return least;
}

interface Search {
  readonly core: TriangleTree;
  readonly bodies: readonly PlacedBody[];
  /** Of each body's surface, as it was placed. */
  readonly points: readonly (readonly Vector3[])[];
  readonly wish: FitWish;
}

function mouthSlack(body: PlacedBody, { scale, move }: Pose, { mouth, aboutMm }: FitWish): number {
  if (mouth == null) return Number.POSITIVE_INFINITY;
  const end = minus(farthest(movedBody(body, move), mouth.normal), aboutMm);
  return metMm + mouth.overMm - dot(mouth.normal, minus(end, times(minus(mouth.originMm, aboutMm), scale)));
}

/** The body in a shell that stays as drawn: everything is smaller by the scale instead. */
function inScaled(body: PlacedBody, scale: number, about: Vector3): PlacedBody {
  return {
    ...body,
    halfMm: times(body.halfMm, 1 / scale),
    placeMm: plus(about, times(minus(body.placeMm, about), 1 / scale)),
  };
}

function deepest(
  core: TriangleTree,
  points: readonly Vector3[],
  { scale, move }: Pose,
  { aboutMm }: FitWish,
): number {
  let most = 0;
  for (const point of points) {
    const near = nearestTo(core, drawnPlace(point, { scale, move }, aboutMm))!;
    if (!near.isOutside) most = Math.max(most, near.distanceMm);
  }
  return most;
}

/** Where a moved point lies in the shell as drawn. */
function drawnPlace(point: Vector3, { scale, move }: Pose, about: Vector3): Vector3 {
  return plus(about, times(minus(movedPoint(move, point), about), 1 / scale));
}

function movedPoint({ turn, aboutMm, shiftMm }: Move, point: Vector3): Vector3 {
  const from = minus(point, aboutMm);
  return plus(plus([dot(turn[0], from), dot(turn[1], from), dot(turn[2], from)], aboutMm), shiftMm);
}

/**
 * @param mayScale false: the shell stays as it is, and only a shift is looked for
 * @returns null where nothing was found
 */
export function findFit(
  core: TriangleTree,
  bodies: readonly PlacedBody[],
  wish: FitWish,
  mayScale: boolean,
): FitFound | null {
  const sizeMm = Math.max(...bodies.map(({ halfMm }) => lengthOf(halfMm)));
  const middle = middleOf(bodies);
  const points = bodies.map((body) => surfacePoints(body, Math.max(3, sizeMm / 6)));
  const search: Search = { core, bodies, points, wish };
  let pose: Pose = { scale: 1, move: { turn: noTurn, aboutMm: middle, shiftMm: [0, 0, 0] } };
  let trustMm = Math.max(2, 0.15 * sizeMm);
  let slack = slackAt(search, pose);
  if (!mayScale && slack >= -metMm) return foundAt(search, pose);
  if (mayScale) [pose, slack] = grown(search, pose);
  for (let round = 0; round < mostRounds && trustMm > 1e-4; round++) {
    const conditions = conditionsAt(search, pose, sizeMm, trustMm);
    const step = stepFor(conditions, trustMm, sizeMm, mayScale);
    if (step === null) return null;
    const next = stepped(pose, step, wish.axis, sizeMm);
    const [tried, triedSlack] = mayScale ? grown(search, next) : [next, slackAt(search, next)];
    const isBetter = mayScale ? tried.scale < pose.scale - 1e-6 : triedSlack > slack + 1e-7;
    if (isBetter) {
      const gained = mayScale ? pose.scale - tried.scale : 1;
      [pose, slack] = [tried, triedSlack];
      if (!mayScale && slack >= -metMm) break;
      if (gained < worthScale) break;
    } else trustMm /= 3;
  }
  return slack >= -10 * metMm ? foundAt(search, pose) : null;
}

function foundAt(search: Search, pose: Pose): FitFound {
  const { scale, move } = pose;
  const trace = move.turn[0][0] + move.turn[1][1] + move.turn[2][2];
  const turnDeg = (Math.acos(Math.min(1, Math.max(-1, (trace - 1) / 2))) * 180) / Math.PI;
  return {
    scale,
    move,
    shiftMm: move.shiftMm,
    turnDeg,
    clearanceMm: slackAt(search, pose, 0) + search.wish.clearanceMm,
  };
}

/** The least scale for the place as it is: stepped out to both sides of it, then by the secant with halved ends (Illinois). */
function grown(search: Search, { scale, move }: Pose): readonly [Pose, number] {
  const slack = (at: number) => slackAt(search, { scale: at, move });
  let [low, high] = [scale, scale];
  let [lowSlack, highSlack] = [slack(scale), 0];
  highSlack = lowSlack;
  for (let step = 0.01; highSlack < 0 && high < largestScale; step *= 2) {
    [low, lowSlack] = [high, highSlack];
    high += step;
    highSlack = slack(high);
  }
  for (let step = 0.01; lowSlack >= 0 && low > leastScale; step *= 2) {
    [high, highSlack] = [low, lowSlack];
    low = Math.max(leastScale, low - step);
    lowSlack = slack(low);
  }
  let [lowWeight, highWeight] = [lowSlack, highSlack];
  for (let round = 0; round < 40 && high - low > 1e-6 && highSlack > 1e-5; round++) {
    const secant = (low * highWeight - high * lowWeight) / (highWeight - lowWeight);
    const at = Math.min(high - 1e-7, Math.max(low + 1e-7, secant));
    const found = slack(at);
    if (found >= 0) {
      [high, highSlack, highWeight] = [at, found, found];
      lowWeight /= 2;
    } else {
      [low, lowWeight] = [at, found];
      highWeight /= 2;
    }
  }
  return [{ scale: high, move }, highSlack];
}

function conditionsAt(
  { core, bodies, points, wish }: Search,
  { scale, move }: Pose,
  sizeMm: number,
  trustMm: number,
): readonly Condition[] {
  const conditions: { condition: Condition; slackMm: number }[] = [];
  const add = (p: Vector3, q: Vector3, n: Vector3, wallMm: number, wantedMm: number): void => {
    const relative = minus(q, wish.aboutMm);
    const turning = cross(minus(p, plus(move.aboutMm, move.shiftMm)), n);
    const byScale = wallMm - dot(n, relative);
    const slackMm =
      dot(n, minus(minus(p, wish.aboutMm), times(relative, scale))) - (1 - scale) * wallMm - wantedMm;
    conditions.push({
      condition: { row: [...n, dot(turning, wish.axis) / sizeMm, byScale], least: -slackMm },
      slackMm,
    });
  };
  const { wallMm, clearanceMm, mouth } = wish;
  const reach = (3 * trustMm + wish.clearanceMm + wish.wallMm) / scale;
  bodies.forEach((body, at) => {
    for (const point of points[at]!) {
      const p = movedPoint(move, point);
      const inDrawn = drawnPlace(point, { scale, move }, wish.aboutMm);
      if (mouth != null) add(p, mouth.originMm, times(mouth.normal, -1), 0, -mouth.overMm);
      const near = nearestTo(core, inDrawn, 4 * reach);
      if (near === null) continue;
      const way = minus(inDrawn, near.pointMm);
      const length = lengthOf(way);
      if (length < 1e-9 || (near.isOutside && length > reach)) continue;
      add(p, near.pointMm, times(way, (near.isOutside ? 1 : -1) / length), wallMm, clearanceMm);
    }
    const lying = inScaled(movedBody(body, move), scale, wish.aboutMm);
    const nearest = nearestToBody(core, lying, searchMm);
    if (nearest === null || nearest.way === null) return;
    const n = times(nearest.way, 1 / nearest.distanceMm);
    // Of either side the point that reaches farthest along the shortest way.
    const p = farthest(movedBody(body, move), times(n, -1));
    add(p, closestEnd(core, nearest.slot, n), n, wallMm, clearanceMm);
  });
  return conditions
    .toSorted((a, b) => a.slackMm - b.slackMm)
    .slice(0, 400)
    .map(({ condition }) => condition);
}

function closestEnd({ points, corners }: TriangleTree, slot: number, n: Vector3): Vector3 {
  let best: Vector3 = [0, 0, 0];
  let most = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < 3; k++) {
    const at = 3 * corners[3 * slot + k]!;
    const corner: Vector3 = [points[at]!, points[at + 1]!, points[at + 2]!];
    if (dot(corner, n) > most) [best, most] = [corner, dot(corner, n)];
  }
  return best;
}

/** Shift, turn and scale: each up and down, and one for what is missed. */
function stepFor(
  conditions: readonly Condition[],
  trustMm: number,
  sizeMm: number,
  mayScale: boolean,
): readonly number[] | null {
  const moves = mayScale ? 4 : 3;
  const unknowns = mayScale ? 5 : 3;
  const rowOf = ({ row }: Condition): number[] => {
    const used = mayScale ? row : row.slice(0, 3);
    return [...used.flatMap((one) => [one, -one]), 1];
  };
  const limits = Array.from({ length: 2 * unknowns }, (_, k) => {
    return Array.from({ length: 2 * unknowns + 1 }, (__, at) => (at === k ? -1 : 0));
  });
  const most = Array.from({ length: 2 * unknowns }, (_, k) => (k < 2 * moves ? -trustMm : -trustMm / sizeMm));
  // The scale may fall at a gain: it is counted from the least that is trusted, so that no cost is below zero.
  const costs: number[] = Array.from({ length: 2 * unknowns + 1 }, (_, k) =>
    k === 2 * unknowns ? costOfMiss : costOfShift,
  );
  const fall = trustMm / sizeMm;
  if (mayScale) costs[8] = 1;
  const shifted = conditions.map((one) => one.least + (mayScale ? one.row[4]! * fall : 0));
  if (mayScale) most[8] = -2 * fall;
  if (mayScale) most[9] = 0;
  const solution = leastCost(costs, [...conditions.map(rowOf), ...limits], [...shifted, ...most]);
  if (solution === null) return null;
  const step = Array.from({ length: 5 }, (_, k) =>
    k < unknowns ? solution[2 * k]! - solution[2 * k + 1]! : 0,
  );
  if (mayScale) step[4] = step[4]! - fall;
  return step;
}

function stepped({ scale, move }: Pose, step: readonly number[], axis: Vector3, sizeMm: number): Pose {
  const [x = 0, y = 0, z = 0, turn = 0, grow = 0] = step;
  return {
    scale: Math.max(leastScale, scale + grow),
    move: {
      ...move,
      turn: timesMatrix(turnBy(times(axis, turn / sizeMm)), move.turn),
      shiftMm: plus(move.shiftMm, [x, y, z]),
    },
  };
}

/** Clearance less what is wished at another scale, with the contents where a fit put them; as placed without one. */
export function slackOf(
  core: TriangleTree,
  bodies: readonly PlacedBody[],
  wish: FitWish,
  scale: number,
  fit: FitFound | null,
): number {
  const sizeMm = Math.max(...bodies.map(({ halfMm }) => lengthOf(halfMm)));
  const points = bodies.map((body) => surfacePoints(body, Math.max(3, sizeMm / 6)));
  const move = fit?.move ?? { turn: noTurn, aboutMm: middleOf(bodies), shiftMm: [0, 0, 0] };
  return slackAt({ core, bodies, points, wish }, { scale, move }, 0);
}
