/**
 * What is read at the bench and written back, in the order of the paper: each blank has a number, what is expected, and the
 * input that it is. A reading that a step asks for is that step's input; only what no step asks for is one of `bench`.
 */
import type { Figure, StepReport } from '../../core/figure';
import { figuresById } from '../kit/figuresById';
import type { StepContext } from '../shared/context';
import type { BenchBlank, Known } from './blank';
import { layupBlanks } from './layupBlanks';
import { finishBlanks, ovenBlanks } from './ovenBlanks';
import { pourBlanks } from './pourBlanks';
import { printBlanks } from './printBlanks';

export function benchBlanks(
  context: StepContext,
  reports: ReadonlyMap<string, StepReport>,
): readonly BenchBlank[] {
  const figures = figuresById(reports);
  const known: Known = {
    context,
    number: (id) => numberOf(figures.get(id)),
    band: (id) => figures.get(id)?.band ?? null,
  };
  const drafts = [
    ...printBlanks(known),
    ...pourBlanks(known),
    ...layupBlanks(known),
    ...ovenBlanks(known),
    ...finishBlanks(known),
  ];
  return drafts
    .map(({ isAsked = true, ...draft }, at) => ({
      isAsked,
      blank: { isOnCard: false, ...draft, number: `m${at + 1}` },
    }))
    .flatMap(({ isAsked, blank }) => (isAsked ? [blank] : []));
}

const numberOf = (one: Figure | undefined) => (typeof one?.value === 'number' ? one.value : null);
