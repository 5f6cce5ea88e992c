/** What the Decision sheet says in one sentence. */
import type { Verdict } from '../../core/figure';
import type { PlanFound } from '../../pipeline/plan';
import { counted } from '../../steps/shared/decision';

export function outcomeSentence({ outcome, changes }: PlanFound): string {
  const help = counted(changes.length, 'change helps', 'changes help');
  const isEmpty = changes.length === 0;
  const sentences: Readonly<Record<PlanFound['outcome'], string>> = {
    cleared: 'Nothing has to change.',
    'cleared by the changes': `${counted(changes.length, 'change clears', 'changes clear')} it.`,
    'not yet known': isEmpty
      ? 'No change is needed; the missing answers are.'
      : `${help}. Then nothing says stop, but the missing answers are still needed.`,
    'cannot be cleared': isEmpty
      ? 'No change that was tried helps.'
      : `${help}, but no change that was tried clears the pour.`,
  };
  return sentences[outcome];
}

/** On the sheet of a step: the change that mends the verdict, in full, and what then holds; else what to look up or test. */
export function triedAdvice({ changes, stays }: PlanFound, { id, word, fix }: Verdict): string {
  const mends = changes.flatMap(({ what, turns }) => {
    const turned = turns.find((one) => one.id === id);
    return turned === undefined ? [] : [{ what, says: turned.says }];
  });
  const last = mends.at(-1);
  if (last !== undefined && !stays.has(id))
    return `${mends.map(({ what }) => what).join(' ')} Then: ${last.says === '' ? 'nothing to say of it.' : last.says}`;
  return word === 'stop' ? `No change that was tried mends this. ${stays.get(id) ?? ''}`.trimEnd() : fix;
}

/** What the plan does about a verdict: the change that mends it, or that none does; else what to look up or test. */
export function plannedAdvice({ changes, stays }: PlanFound, { id, word, fix }: Verdict): string {
  const by = changes.flatMap(({ turns }, at) => (turns.some((one) => one.id === id) ? [at + 1] : []));
  if (by.length > 0 && !stays.has(id)) return `Mended by change ${by.join(' and ')}.`;
  if (word !== 'stop') return fix;
  return `No change that was tried mends this. ${stays.get(id) ?? ''}`.trimEnd();
}
