/** One blank of the paper, before it has its number. */
import type { StepContext } from '../shared/context';

export type BenchPhase = 'print' | 'pour' | 'layup' | 'oven' | 'finish';

export interface BenchBlank {
  /** Stable. */
  readonly id: string;
  /** As printed: "m1". */
  readonly number: string;
  readonly phase: BenchPhase;
  readonly label: string;
  readonly unit: string;
  readonly decimals: number;
  /** Of the input that it is. */
  readonly path: string;
  readonly expected: number | null;
  /** What is no surprise; null where nothing is expected. */
  readonly band: readonly [number, number] | null;
  /** Figures that follow from it. */
  readonly figures: readonly string[];
  /** Verdicts that rest on it. */
  readonly verdicts: readonly string[];
  /** Among the readings that decide: it stands on the bench card. */
  readonly isOnCard: boolean;
}

export type BlankDraft = Omit<BenchBlank, 'number' | 'isOnCard'> & {
  readonly isOnCard?: true;
  /** Left out where there is nothing to read; it keeps its number, so that paper printed before stays right. */
  readonly isAsked?: boolean;
};
/** What the blanks are made from. */
export interface Known {
  readonly context: StepContext;
  /** Value of a figure; null where it is not known, or no number. */
  readonly number: (id: string) => number | null;
  readonly band: (id: string) => readonly [number, number] | null;
}

export const around = (value: number | null, share: number): readonly [number, number] | null =>
  value === null ? null : [value * (1 - share), value * (1 + share)];

export const within = (value: number | null, off: number): readonly [number, number] | null =>
  value === null ? null : [value - off, value + off];

/** Names of an axis in the paths of inputs. */
export const upperCase = { x: 'X', y: 'Y', z: 'Z' } as const;
