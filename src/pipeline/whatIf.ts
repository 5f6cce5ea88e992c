/** A question asked again with other inputs, beside the one that is open: what the change does not touch is not worked out again. */
import { patched, type InputPatch } from '../steps/shared/patch';
import type { AskName, Asks } from './asks';
import { evaluate, type Answers } from './evaluate';
import type { Question } from './question';
import type { OnProgress, StageName, Told } from './told';

/** What a what-if needs of the memory of stages (`stageMemory.ts`). */
export interface ForkingMemory {
  fork(): ForkingMemory;
  tell<Name extends StageName>(name: Name, question: Question, progress: OnProgress): Promise<Told[Name]>;
  ask<Name extends AskName>(
    name: Name,
    question: Question | null,
    given: Asks[Name]['given'],
    progress: OnProgress,
  ): Promise<Asks[Name]['reply']>;
}

/** A question with its answers, and the memory that holds the full results behind them. */
export interface Evaluated {
  readonly question: Question;
  readonly answers: Answers;
  readonly memory: ForkingMemory;
}

/**
 * What would hold with a patch of inputs. The base keeps all that it holds.
 * @param skips stages that are not wanted, and that no wanted one needs
 * @returns null where the patch is nothing that the maker could enter
 */
export async function whatIf(
  { question, answers, memory }: Evaluated,
  patch: InputPatch,
  skips: ReadonlySet<StageName>,
  progress: OnProgress,
): Promise<Evaluated | null> {
  const inputs = patched(question.inputs, patch);
  if (inputs === null) return null;
  const changed = { ...question, inputs };
  const fork = memory.fork();
  return {
    question: changed,
    answers: await evaluate(changed, (name, asked) => fork.tell(name, asked, progress), skips, answers),
    memory: fork,
  };
}
