/**
 * The one door for counts that grow with what the maker enters: voxels, columns, samples, bowls, list entries. It is asked
 * before anything is laid out in memory, so that a slip of the unit ends in a sentence and never in a page that hangs.
 */
import { Problem } from './problem';

/** What is refused rather than tried; the memory of a browser tab and the patience of a person set them. */
export const mostCounts = {
  /** Triangles of a model, read or saved. */
  triangles: 4_000_000,
  /** Voxels of the heated mold; more would take minutes. */
  voxels: 4_000_000,
  /** Points of the grid that a pattern is made on: some 20 bytes each. */
  patternNodes: 20_000_000,
  /** Temperatures that one run keeps of its laminate, places times kept times: 256 MB. */
  keptTemperatures: 64_000_000,
  /** Columns along the pull. */
  columns: 1_050_625,
  /** Places where columns meet the surface: eight walls over each column of the widest grid. */
  crossings: 16_000_000,
  /** Of one column. */
  crossingsOfColumn: 1000,
  /** Times at which the oven's air is worked out: three weeks, one every 20 s. */
  airSamples: 100_000,
  /** Classes that the show face is split into for the balance of the mold. */
  closingBins: 8192,
  /** Bars of a drawn histogram. */
  histogramBins: 1000,
  /** Bowls of stone for one half; a person mixes a few. */
  batches: 500,
  /** Columns of a thermocouple log. */
  logColumns: 256,
  /** Flat pieces of cloth that are laid out together. */
  nestPieces: 500,
  /** Entries of any list among the inputs: plies, stages, clamps, weighings, repairs ... */
  listEntries: 500,
} as const satisfies Record<string, number>;

export type Counted = keyof typeof mostCounts;

/** Whether so many can be worked with; false for NaN and for infinitely many. */
export const isFew = (counted: Counted, count: number): boolean => count >= 0 && count <= mostCounts[counted];

/**
 * @param sentence what is too many and what to do about it, in the maker's words
 * @throws Problem with `code` when there are more than can be worked with
 */
export function keepWithin(counted: Counted, count: number, code: string, sentence: string): void {
  if (!isFew(counted, count)) throw new Problem(code, sentence);
}
