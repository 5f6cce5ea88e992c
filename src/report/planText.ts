/** The plan as it is printed under the checklist. */
import type { PlanFound } from '../pipeline/plan';
import { steps } from '../steps/registry';

const outcomes: Readonly<Record<PlanFound['outcome'], string>> = {
  cleared: 'CLEARED TO POUR as it is.',
  'cleared by the changes': 'CLEARED TO POUR with these changes.',
  'not yet known': 'NOT YET KNOWN: no stop is left, but this is not known.',
  'cannot be cleared': 'DO NOT POUR YET: this stops it, and no change of inputs that was tried mends it.',
};

const titleOf = (step: string) => steps.find(({ id }) => id === step)?.title ?? step;

export function planText({ outcome, changes, now, after, anew, left }: PlanFound): string {
  const turned = Object.entries(after).filter(([step, word]) => now[step] !== word);
  return [
    'PLAN',
    outcomes[outcome],
    ...changes.flatMap(({ what, why }, at) => [`${at + 1}. ${what}`, `   because: ${why}`]),
    ...turned.map(([step, word]) => `${titleOf(step)}: ${now[step]}, then ${word}.`),
    ...(anew === null ? [] : [`Then: ${anew.what}`]),
    ...left.map((one) => `- ${one}`),
  ].join('\n');
}
