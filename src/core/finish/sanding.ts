/** Sanding: grains of the P scale, the ladder of papers, and what it takes off. */
import { Problem } from '../problem';

/**
 * Mean grain of the FEPA P grades, micrometers. P80 to P120: a published grit table; P150 to P220: a second one, whole micrometers;
 * P240 to P600: a public particle-size library (sizes of ISO 6344-3, copied); finer: decimals from memory, which published
 * tables in whole micrometers agree with.
 */
export const grainUm = {
  P80: 201,
  P100: 162,
  P120: 125,
  P150: 100,
  P180: 82,
  P220: 68,
  P240: 58.5,
  P280: 52.2,
  P320: 46.2,
  P360: 40.5,
  P400: 35,
  P500: 30.2,
  P600: 25.8,
  P800: 21.8,
  P1000: 18.3,
  P1200: 15.3,
  P1500: 12.6,
  P2000: 10.3,
  P2500: 8.4,
} as const satisfies Record<string, number>;

export type Grit = keyof typeof grainUm;
export const grits = Object.keys(grainUm) as readonly Grit[];

/** The next paper's grain is at most this much finer (common practice, 1.5 to 2). */
const mostFiner = 1.7;
/** The first paper levels: so many of its own grains are taken off (common practice). */
const levelingGrains = 2;

export interface SandingStep {
  readonly grit: Grit;
  readonly grainUm: number;
  readonly takesOffUm: number;
  /** From P400 on wet. */
  readonly isWet: boolean;
}

/**
 * From coarse to fine, as few papers as the rule allows. The first takes off two of its grains; each after it what the scratches of the
 * one before need, one of that one's grains. Together three to five grains of the first paper (common practice).
 * @throws Problem `finish.grits` when the last paper is coarser than the first
 */
export function sandingLadder(first: Grit, last: Grit): readonly SandingStep[] {
  const [from, to] = [grits.indexOf(first), grits.indexOf(last)];
  if (to < from)
    throw new Problem(
      'finish.grits',
      `The last paper, ${last}, is coarser than the first, ${first}. Enter them from coarse to fine.`,
    );
  const papers: Grit[] = [first];
  for (let at = from; at < to;) {
    let next = at + 1;
    while (next < to && grainUm[grits[at]!] / grainUm[grits[next + 1]!] <= mostFiner) next++;
    papers.push(grits[next]!);
    at = next;
  }
  return papers.map((grit, at) => ({
    grit,
    grainUm: grainUm[grit],
    takesOffUm: at === 0 ? levelingGrains * grainUm[grit] : grainUm[papers[at - 1]!],
    isWet: grainUm[grit] <= grainUm.P400,
  }));
}

/** What is left over the fiber after sanding: film less print-through of the weave less what the papers take off. */
export const marginUm = (filmUm: number, printThroughUm: number, steps: readonly SandingStep[]): number =>
  filmUm - printThroughUm - steps.reduce((sum, { takesOffUm }) => sum + takesOffUm, 0);
