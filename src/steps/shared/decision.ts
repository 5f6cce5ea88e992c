/** Whether the stone may be poured: one word from the verdicts of all steps. */
import type { StepReport, Verdict, VerdictWord } from '../../core/figure';

/** `stop` holds up the pour, and so does what is not known; look-agains do not. */
export type DecisionWord = Exclude<VerdictWord, 'look again'>;

/** A verdict, and all steps that say the same. */
export interface Finding {
  readonly verdict: Verdict;
  readonly stepIds: readonly string[];
}

export interface Decision {
  readonly word: DecisionWord;
  readonly stops: readonly Finding[];
  readonly unknown: readonly Finding[];
  /** To be known only once there is stone; they do not decide about the pour. */
  readonly later: readonly Finding[];
  readonly lookAgain: readonly Finding[];
}

/** It repeats what the other steps say. */
const sumsUp = 'checklist';
/** It is told by weighing the poured halves. */
const knownAfterThePour: ReadonlySet<string> = new Set(['cure.damp']);

/** Said by a step that is asked nothing: it neither holds up the pour nor waits for an answer. */
export const notEntered = { cutting: 'cutting.asked', fit: 'fit.entered', finish: 'finish.entered' } as const;
const ofNoConcern: ReadonlySet<string> = new Set(Object.values(notEntered));
export const isOfConcern = ({ id }: Verdict): boolean => !ofNoConcern.has(id);
/** Whether the pour has to wait for it. */
export const holdsUpThePour = (one: Verdict): boolean =>
  isOfConcern(one) && (one.word === 'stop' || isMissing(one));

const isLater = ({ id }: Verdict) => knownAfterThePour.has(id);

const isMissing = (one: Verdict) => one.word === 'not yet known' && !isLater(one);

/** The word for a list of verdicts; without any, nothing is known. */
export function decisionWord(verdicts: readonly Verdict[]): DecisionWord {
  if (verdicts.some(({ word }) => word === 'stop')) return 'stop';
  return verdicts.length === 0 || verdicts.some(holdsUpThePour) ? 'not yet known' : 'go';
}

/** @param reports of all steps, in the order of the work */
export function decide(reports: ReadonlyMap<string, StepReport>): Decision {
  const all = [...reports]
    .filter(([stepId]) => stepId !== sumsUp)
    .flatMap(([stepId, { verdicts }]) =>
      verdicts.filter(isOfConcern).map((verdict) => ({ verdict, stepIds: [stepId] })),
    );
  const ofWord = (wanted: VerdictWord) => sayOnce(all.filter(({ verdict }) => verdict.word === wanted));
  const unknown = ofWord('not yet known');
  return {
    word: decisionWord(all.map(({ verdict }) => verdict)),
    stops: ofWord('stop'),
    unknown: unknown.filter(({ verdict }) => !isLater(verdict)),
    later: unknown.filter(({ verdict }) => isLater(verdict)),
    lookAgain: ofWord('look again'),
  };
}

/** What several steps say in the same words stands once, in the longest wording, under all of them. */
function sayOnce(findings: readonly Finding[]): readonly Finding[] {
  const kept: Finding[] = [];
  for (const finding of findings) {
    const { reason } = finding.verdict;
    const at = kept.findIndex(
      ({ verdict }) => verdict.reason.startsWith(reason) || reason.startsWith(verdict.reason),
    );
    const before = kept[at];
    if (before === undefined) {
      kept.push(finding);
      continue;
    }
    const verdict = before.verdict.reason.length >= reason.length ? before.verdict : finding.verdict;
    kept[at] = { verdict, stepIds: [...new Set([...before.stepIds, ...finding.stepIds])] };
  }
  return kept;
}

/** What stands on the first page, on screen and on paper. */
export const stamps: Readonly<Record<DecisionWord, string>> = {
  stop: 'Do not pour yet',
  'not yet known': 'Not yet known',
  go: 'Cleared to pour',
};

export const counted = (count: number, one: string, many: string) =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

/** One sentence that goes with the stamp. */
export function headline({ word, stops, unknown, lookAgain }: Decision): string {
  if (word === 'stop') return `${counted(stops.length, 'check says', 'checks say')} stop.`;
  if (unknown.some(({ verdict }) => verdict.isAwaited)) return 'It is still being worked out.';
  if (word === 'not yet known')
    return unknown.length === 0
      ? 'Import the pattern file on the Part sheet first.'
      : `Nothing says stop; ${counted(unknown.length, 'answer is', 'answers are')} missing.`;
  return lookAgain.length === 0
    ? 'All checks say go.'
    : `Nothing says stop. ${counted(lookAgain.length, 'check', 'checks')} to look at again; the pour need not wait.`;
}
