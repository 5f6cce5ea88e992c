/** What the Decision sheet says in one sentence. */
import type { PlanFound } from '../../pipeline/plan';
import type { Decision, DecisionWord } from '../../steps/shared/decision';

export const stamps: Readonly<Record<DecisionWord, string>> = {
  stop: 'Do not pour yet',
  'not yet known': 'Not yet known',
  go: 'Cleared to pour',
};

const counted = (count: number, one: string, many: string) => (count === 1 ? `1 ${one}` : `${count} ${many}`);

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

export function outcomeSentence({ outcome, changes }: PlanFound): string {
  const help = `${counted(changes.length, 'change helps', 'changes help')}`;
  const isEmpty = changes.length === 0;
  switch (outcome) {
    case 'cleared':
      return 'Nothing has to change.';
    case 'cleared by the changes':
      return `${counted(changes.length, 'change clears', 'changes clear')} it.`;
    case 'not yet known':
      return isEmpty
        ? 'No change is needed; the missing answers are.'
        : `${help}. Then nothing says stop, but the missing answers are still needed.`;
    case 'cannot be cleared':
      return isEmpty
        ? 'No change that was tried helps.'
        : `${help}, but no change that was tried clears the pour.`;
  }
}
