/**
 * One outline laid on another in two steps. A robust similarity finds scale and what lies off (scraped, filed); rigid least squares over
 * the rest then lays it on at its own size. One rigid robust fit alone locks one side to zero where sizes differ.
 */
import { closestPlace, coarser, placesAlong, type ClosestPlace, type Outline } from './outline';

/** Where the laid outline goes: turned by `turnRad` about its origin, scaled, then shifted. */
export interface Laying {
  readonly turnRad: number;
  readonly scale: number;
  readonly xMm: number;
  readonly yMm: number;
}

export interface FittedOutlines {
  /** Of the laid outline to meet the other: below 1 where the laid one is larger. */
  readonly scale: number;
  /** Farthest that a place lies off after the similarity; 0 where all lie within `offMm`. */
  readonly scrapedMm: number;
  /** Share of the outline that lies off. */
  readonly scrapedShare: number;
  /** Rigid: its scale is 1. */
  readonly laid: Laying;
  /** Another turn lies as well: which end is which cannot be told from the outline. */
  readonly isAmbiguous: boolean;
}

/** Places farther off than this are scraped, not sized. */
const offMm = 0.1;
/** Turns that lie within this of the best are as good. */
const asGoodMm = 0.02;
const [coarseCount, fineCount] = [180, 720];

/** @param otherEnd takes the half turn in place of the best turn */
export function fitOutlines(own: Outline, other: Outline, otherEnd: boolean): FittedOutlines {
  const [roughOwn, roughOther] = [coarser(own, 0.02), coarser(other, 0.02)];
  const rough = placesAlong(roughOther, coarseCount);
  const tried = startsFor(placesAlong(roughOwn, coarseCount), rough)
    .map((start) => similarity(roughOwn, rough, start, 6))
    .toSorted((a, b) => a.spreadMm - b.spreadMm)
    .slice(0, 6)
    .map(({ laid }) => similarity(roughOwn, rough, laid, 20))
    .toSorted((a, b) => a.spreadMm - b.spreadMm);
  const good = tried.filter(({ spreadMm }) => spreadMm < tried[0]!.spreadMm + asGoodMm);
  // Drawn where it goes, or turned least: the likelier of two that are as good.
  const best = good.reduce((least, one) => (turnOf(one) < turnOf(least) - 1e-3 ? one : least));
  const half = tried.find((one) => apart(one.laid.turnRad, best.laid.turnRad) > (5 * Math.PI) / 6);
  const start = otherEnd && half !== undefined ? half : best;
  const places = placesAlong(other, fineCount);
  const sized = similarity(own, places, start.laid, 15);
  const isOff = sized.offsMm.map((off) => (Math.abs(off) > offMm ? 1 : 0));
  const count = isOff.reduce((sum, one) => sum + one, 0);
  return {
    scale: sized.laid.scale,
    scrapedMm: sized.offsMm.reduce(
      (most, off, at) => (isOff[at] === 1 ? Math.max(most, Math.abs(off)) : most),
      0,
    ),
    scrapedShare: count / Math.max(1, isOff.length),
    laid: rigid(own, places, { ...sized.laid, scale: 1 }, isOff),
    isAmbiguous: good.some((one) => apart(one.laid.turnRad, best.laid.turnRad) > Math.PI / 9),
  };
}

const apart = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));
const turnOf = ({ laid }: { readonly laid: Laying }): number => apart(laid.turnRad, 0);

interface Moments {
  readonly x: number;
  readonly y: number;
  readonly axisRad: number;
  /** Of the narrow way to the long way, 1 for a circle or a square. */
  readonly roundness: number;
}

function momentsOf(places: Float64Array): Moments {
  const count = places.length / 2;
  let [x, y, xx, xy, yy] = [0, 0, 0, 0, 0];
  for (let at = 0; at < places.length; at += 2)
    [x, y] = [x + places[at]! / count, y + places[at + 1]! / count];
  for (let at = 0; at < places.length; at += 2) {
    const [dx, dy] = [places[at]! - x, places[at + 1]! - y];
    [xx, xy, yy] = [xx + dx * dx, xy + dx * dy, yy + dy * dy];
  }
  const spread = Math.hypot((xx - yy) / 2, xy);
  const mean = (xx + yy) / 2;
  return { x, y, axisRad: Math.atan2(2 * xy, xx - yy) / 2, roundness: (mean - spread) / (mean + spread) };
}

/** Middle on middle, the long ways along each other, in both senses; all round where there is no long way. */
function startsFor(own: Float64Array, other: Float64Array): readonly Laying[] {
  const [a, b] = [momentsOf(own), momentsOf(other)];
  const between = a.axisRad - b.axisRad;
  const isRound = Math.min(a.roundness, b.roundness) > 0.85;
  const turns = isRound
    ? Array.from({ length: 24 }, (_, k) => (k * Math.PI) / 12)
    : [between, between + Math.PI];
  return turns.map((turnRad) => {
    const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
    return { turnRad, scale: 1, xMm: a.x - (cos * b.x - sin * b.y), yMm: a.y - (sin * b.x + cos * b.y) };
  });
}

export function laidAt({ turnRad, scale, xMm, yMm }: Laying, places: Float64Array): Float64Array {
  const [cos, sin] = [scale * Math.cos(turnRad), scale * Math.sin(turnRad)];
  const laid = new Float64Array(places.length);
  for (let at = 0; at < places.length; at += 2) {
    const [x, y] = [places[at]!, places[at + 1]!];
    laid[at] = cos * x - sin * y + xMm;
    laid[at + 1] = sin * x + cos * y + yMm;
  }
  return laid;
}

interface Similar {
  readonly laid: Laying;
  readonly offsMm: Float64Array;
  /** Root mean square of the offs, none counted for more than a millimeter. */
  readonly spreadMm: number;
}

/** Tukey's weights, their width drawn in from what lies off now to `offMm`. */
function similarity(own: Outline, places: Float64Array, start: Laying, rounds: number): Similar {
  let laid = start;
  let there = placesAt(own, places, laid);
  let offsMm = offsIn(there);
  let width = Number.POSITIVE_INFINITY;
  const step = (weights: Float64Array) => {
    laid = stepped(there, places, laid, weights, 4);
    there = placesAt(own, places, laid);
    offsMm = offsIn(there);
  };
  for (let round = 0; round < rounds; round++) {
    const sorted = Float64Array.from(offsMm, Math.abs).sort();
    const usual = sorted[Math.floor(sorted.length / 2)]!;
    width = Math.max(2 * offMm, Math.min(0.7 * width, 4 * usual + offMm));
    const weights = offsMm.map((off) => (Math.abs(off) >= width ? 0 : (1 - (off / width) ** 2) ** 2));
    step(weights);
  }
  // At last without the pull of what lies off.
  for (let round = 0; round < 6; round++) step(offsMm.map((off) => (Math.abs(off) > offMm ? 0 : 1)));
  const square = offsMm.reduce((sum, off) => sum + Math.min(1, off * off), 0) / Math.max(1, offsMm.length);
  return { laid, offsMm, spreadMm: Math.sqrt(square) };
}

function rigid(own: Outline, places: Float64Array, start: Laying, isOff: Float64Array): Laying {
  const weights = isOff.map((off) => 1 - off);
  let laid = start;
  for (let round = 0; round < 12; round++)
    laid = stepped(placesAt(own, places, laid), places, laid, weights, 3);
  return laid;
}

function placesAt(own: Outline, places: Float64Array, laid: Laying): readonly ClosestPlace[] {
  const at = laidAt(laid, places);
  return Array.from({ length: places.length / 2 }, (_, k) => closestPlace(own, at[2 * k]!, at[2 * k + 1]!));
}

const offsIn = (there: readonly ClosestPlace[]): Float64Array =>
  Float64Array.from(there, ({ isEnd, signedMm }) => (isEnd ? 0 : signedMm));

/** One step of weighted least squares towards the closest places, along their normals; 3 unknowns are rigid, 4 with scale. */
function stepped(
  there: readonly ClosestPlace[],
  places: Float64Array,
  laid: Laying,
  weights: Float64Array,
  unknowns: 3 | 4,
): Laying {
  const at = laidAt(laid, places);
  const count = at.length / 2;
  let [cx, cy] = [0, 0];
  for (let k = 0; k < count; k++) [cx, cy] = [cx + at[2 * k]! / count, cy + at[2 * k + 1]! / count];
  const matrix = Array.from({ length: unknowns }, () => new Float64Array(unknowns + 1));
  for (let k = 0; k < count; k++) {
    const weight = weights[k]!;
    if (weight === 0) continue;
    const [x, y] = [at[2 * k]!, at[2 * k + 1]!];
    const { signedMm, outX, outY, isEnd } = there[k]!;
    if (isEnd) continue;
    const row = [outX, outY, outY * (x - cx) - outX * (y - cy), outX * (x - cx) + outY * (y - cy)];
    for (let i = 0; i < unknowns; i++) {
      const line = matrix[i]!;
      for (let j = 0; j < unknowns; j++) line[j] = line[j]! + weight * row[i]! * row[j]!;
      line[unknowns] = line[unknowns]! - weight * row[i]! * signedMm;
    }
  }
  const [dx = 0, dy = 0, turn = 0, grow = 0] = solved(matrix);
  const factor = 1 + grow;
  const [cos, sin] = [factor * Math.cos(turn), factor * Math.sin(turn)];
  return {
    turnRad: laid.turnRad + turn,
    scale: laid.scale * factor,
    xMm: cx + dx + cos * (laid.xMm - cx) - sin * (laid.yMm - cy),
    yMm: cy + dy + sin * (laid.xMm - cx) + cos * (laid.yMm - cy),
  };
}

/** Gauss with a ridge: a turn that a circle does not tell stays as it is. */
function solved(matrix: readonly Float64Array[]): readonly number[] {
  const size = matrix.length;
  for (let k = 0; k < size; k++) matrix[k]![k] = matrix[k]![k]! * (1 + 1e-9) + 1e-9;
  for (let k = 0; k < size; k++)
    for (let row = 0; row < size; row++) {
      if (row === k) continue;
      const share = matrix[row]![k]! / matrix[k]![k]!;
      for (let at = k; at <= size; at++) matrix[row]![at] = matrix[row]![at]! - share * matrix[k]![at]!;
    }
  return matrix.map((line, k) => line[size]! / line[k]!);
}
