/**
 * What a step tells the maker: figures, verdicts and cautions. The page, the printed checklist and the
 * headless report all read these same records, so they cannot disagree.
 */
import type { SourceKey } from './sources';

/** How far a number can be trusted, in the words of the page. */
export type FigureStatus =
  | 'published'
  | 'computed'
  | 'measured'
  | 'supplier’s sheet'
  | 'common practice'
  | 'from memory'
  | 'your entry';

/** One worked-out number (or a short text when the answer is not a number). */
export interface Figure {
  /** Stable id, e.g. `plies.laidThicknessMm`; the last part ends in the unit. Never renamed once released. */
  readonly id: string;
  readonly label: string;
  /** In `unit`. `null` when it cannot be known yet; `working` then says why. Never NaN or infinite. */
  readonly value: number | string | readonly number[] | null;
  /** Unit as shown, '' when dimensionless. */
  readonly unit: string;
  /** Decimals to show on the page and on paper. */
  readonly decimals: number;
  /** The relation with the numbers put in, one line per entry. */
  readonly working: readonly string[];
  readonly status: FigureStatus;
  readonly source: SourceKey | null;
  /** Paths of the inputs that it shows as they were entered; left out where more was worked out. */
  readonly entries?: readonly string[];
  /** Lowest and highest plausible value in `unit`, for estimates. */
  readonly band?: readonly [number, number];
}

export type VerdictWord = 'go' | 'look again' | 'stop' | 'not yet known';

/** A judgement on one question of a step, with its reason and what would change it. */
export interface Verdict {
  readonly id: string;
  readonly word: VerdictWord;
  /** One or two plain sentences with the numbers. */
  readonly reason: string;
  /**
   * What to look up, test or take care of at the bench. Never a change of the job: what would mend a verdict is told by the planner
   * (`pipeline/remedies.ts`), which has tried it.
   */
  readonly fix: string;
  /** What it is about is still being worked out: "not yet known" then outweighs "look again", which may become "stop". */
  readonly isAwaited?: true;
}

/** A safety caution that stands at the step and on the checklist. */
export interface Caution {
  readonly id: string;
  readonly text: string;
}

/** Everything a step has worked out. */
export interface StepReport {
  readonly figures: readonly Figure[];
  readonly verdicts: readonly Verdict[];
  readonly cautions: readonly Caution[];
}

const severity: Record<VerdictWord, number> = { go: 0, 'not yet known': 1, 'look again': 2, stop: 4 };
const awaitedSeverity = 3;

/** The word that stands for a whole step: the worst of its verdicts ('not yet known' when it has none). */
export function worstWord(verdicts: readonly Verdict[]): VerdictWord {
  if (verdicts.length === 0) return 'not yet known';
  let worst: VerdictWord = 'go';
  let worstSeverity = severity.go;
  for (const { word, isAwaited } of verdicts) {
    const own = isAwaited ? awaitedSeverity : severity[word];
    if (own <= worstSeverity) continue;
    worst = word;
    worstSeverity = own;
  }
  return worst;
}
