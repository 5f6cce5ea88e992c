/**
 * The cure of many places over one short step of the oven run. The same law as `advanceCure`, with its constants looked up
 * and one plain step of third order where its error allows; millions of these make a run.
 */
import { advanceCure } from './degreeOfCure';
import { changeOf, constantsAt, rateWith, type CureKinetics } from './kinetics';

const coldestC = -45;
const hottestC = 400;
/** Entries per kelvin; straight between them a rate constant of 100 kJ/mol is within 0.002 %. */
const tablePerK = 8;
/**
 * How far the solutions of order two and three may differ over all parts of a step, dimensionless. That is the error of the
 * lower order; what is kept is the higher one.
 */
const mostOff = 1e-5;
/** Of `bent`, over all parts. */
const mostBent = 2e-6;
const mostParts = 8;
/** The first step is short: over a long one its two orders may agree by chance as well. */
const closeOde = { absolute: 1e-7, mostSteps: 2000, firstShare: 1 / 32 };

/**
 * What the curvature of the law itself leaves of the step, dimensionless: size · rate · (size · slope)³ / 24, the slope taken
 * from the steeper half of the step. Where the rate rises and falls again within a step the two orders may agree by chance.
 */
function bent(sizeS: number, firstPerS: number, halfPerS: number, lastPerS: number): number {
  const rate = Math.max(Math.abs(firstPerS), Math.abs(halfPerS), Math.abs(lastPerS));
  const change = Math.max(Math.abs(halfPerS - firstPerS), Math.abs(lastPerS - halfPerS));
  return rate === 0 ? 0 : (sizeS * change * change * change) / (3 * rate * rate);
}

export interface CureSteps {
  /** Degree of cure after `spanS` in which the temperature runs evenly. */
  readonly advance: (degree: number, fromC: number, untilC: number, spanS: number) => number;
}

export function cureSteps(kinetics: CureKinetics): CureSteps {
  const { law } = kinetics;
  const change = changeOf(law);
  const width = constantsAt(law, coldestC).length;
  const rows = (hottestC - coldestC) * tablePerK + 2;
  const table = new Float64Array(rows * width);
  for (let row = 0; row < rows; row++) table.set(constantsAt(law, coldestC + row / tablePerK), row * width);
  const [early, middle, late] = [0, 1, 2].map(() => new Float64Array(width)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const lookUp = (temperatureC: number, into: Float64Array) => {
    const place = (temperatureC - coldestC) * tablePerK;
    const row = Math.floor(place);
    const share = place - row;
    for (let at = 0; at < width; at++) {
      const low = table[row * width + at]!;
      into[at] = low + share * (table[(row + 1) * width + at]! - low);
    }
  };
  /** In `parts` steps of Kutta's third-order rule; NaN where one of them is not close enough. */
  const inParts = (degree: number, fromC: number, untilC: number, spanS: number, parts: number) => {
    const size = spanS / parts;
    const second = degree >= change;
    let now = degree;
    lookUp(fromC, early);
    for (let part = 0; part < parts; part++) {
      const perPartK = (untilC - fromC) / parts;
      lookUp(fromC + perPartK * (part + 0.5), middle);
      lookUp(fromC + perPartK * (part + 1), late);
      const first = rateWith(law, early, now, second);
      const half = rateWith(law, middle, now + 0.5 * size * first, second);
      const last = rateWith(law, late, now + size * (2 * half - first), second);
      const off = (size / 6) * Math.abs(first - 2 * half + last);
      now += (size / 6) * (first + 4 * half + last);
      const isClose = off * parts <= mostOff && bent(size, first, half, last) * parts <= mostBent;
      if (!isClose) return Number.NaN;
      if (!second && now >= change) return Number.NaN;
      early.set(late);
    }
    return now;
  };
  return {
    advance(degree, fromC, untilC, spanS) {
      const inTable = Math.min(fromC, untilC) >= coldestC && Math.max(fromC, untilC) <= hottestC;
      for (let parts = inTable ? 1 : Infinity; parts <= mostParts; parts *= 2) {
        const after = inParts(degree, fromC, untilC, spanS, parts);
        if (!Number.isNaN(after)) return after;
      }
      return advanceCure(kinetics, degree, fromC, untilC, spanS, closeOde);
    },
  };
}
