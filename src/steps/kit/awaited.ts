/**
 * Results that are worked out beside the maker and are not in. A step that lacks one reads "not yet known": what it can say
 * by then may be milder than what it will say.
 */
import { worstWord, type StepReport, type Verdict } from '../../core/figure';

/** What is worked out beside the maker, in order. */
export type Stage =
  | 'import'
  | 'measurement'
  | 'places'
  | 'repaired walls'
  | 'halves'
  | 'other half'
  | 'oven run'
  /** The oven run again in small bricks; until then there is one in coarse cells. */
  | 'fine oven run'
  /** Rims against each other, contents in the half. */
  | 'fit';

export interface AwaitedResult {
  readonly stage: Stage;
  /** False when it was canceled or has failed: it does not come by itself. */
  readonly isUnderWay: boolean;
}

const wait = 'Wait until it is done; this follows by itself.';

const underWay: Readonly<Record<Stage, string>> = {
  import: 'A pattern file is being imported.',
  measurement: 'The pattern is still being measured.',
  places: 'The places to look at are still being looked for.',
  'repaired walls': 'The walls at the repaired stone are still being worked out.',
  halves: 'The two stone halves are still being cast.',
  'other half': 'The rim of the other half is still being looked for.',
  'oven run': 'The oven run is still being worked out.',
  'fine oven run': 'The oven run is worked out roughly; the fine one follows.',
  fit: 'Rims and contents are still being compared.',
};

const notComing: Readonly<Record<Stage, readonly [reason: string, fix: string]>> = {
  import: ['The import was canceled.', 'Import the pattern file again.'],
  measurement: ['The measurement was canceled or has failed.', 'Press “Measure again”.'],
  places: ['The places to look at could not be looked for.', 'Load the page again.'],
  'repaired walls': ['The walls at the repaired stone could not be worked out.', 'Load the page again.'],
  halves: ['Casting the two stone halves was canceled.', 'Press “Cast them” on the Stone mold sheet.'],
  'other half': ['The rim of the other half was not looked for.', 'Cast the two halves first.'],
  'oven run': ['The oven run was canceled.', 'Press “Work it out” on the Clamp & cure sheet.'],
  'fine oven run': [
    'The oven run is worked out roughly only: the fine one was canceled.',
    'Press “Work it out” on the Clamp & cure sheet.',
  ],
  fit: ['Rims and contents were not compared.', 'Press “Measure again”.'],
};

/** Why a result is not in, and what to do. */
export function whyAwaited({ stage, isUnderWay }: AwaitedResult): Pick<Verdict, 'reason' | 'fix'> {
  const [reason, fix] = isUnderWay ? [underWay[stage], wait] : notComing[stage];
  return { reason, fix };
}

/** The report with "not yet known" before its other verdicts where one of the stages that it `needs` is not in. */
export function withAwaited(
  report: StepReport,
  stepId: string,
  needs: readonly Stage[],
  awaited: readonly AwaitedResult[],
): StepReport {
  const first = awaited.find(({ stage }) => needs.includes(stage));
  if (first === undefined || worstWord(report.verdicts) === 'stop') return report;
  const verdict: Verdict = {
    id: `${stepId}.awaited`,
    word: 'not yet known',
    ...whyAwaited(first),
    isAwaited: true,
  };
  return { ...report, verdicts: [verdict, ...report.verdicts] };
}
