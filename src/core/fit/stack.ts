/** One row of fits in line: how far their sum may be off. */

export interface StackItem {
  readonly name: string;
  /** Off by so much either way; 0 or more. */
  readonly plusMinusMm: number;
}

export interface ToleranceStack {
  /** All off the same way. */
  readonly worstMm: number;
  /** Root sum square: items that do not know of each other are seldom off together. */
  readonly rssMm: number;
}

/** Worst case and root sum square of a one-dimensional stack of tolerances (textbook statistics; derived, no source). */
export const toleranceStack = (items: readonly StackItem[]): ToleranceStack => ({
  worstMm: items.reduce((sum, { plusMinusMm }) => sum + plusMinusMm, 0),
  rssMm: Math.hypot(...items.map(({ plusMinusMm }) => plusMinusMm)),
});
