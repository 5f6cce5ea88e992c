/** The planner on what a memory of stages holds: page and command ask for the same plan. */
import { Problem } from '../core/problem';
import { evaluate } from './evaluate';
import type { PlanFound, PlanGiven } from './plan';
import type { Question } from './question';
import { planFor } from './remedies';
import type { OnProgress, StageName } from './told';
import type { ForkingMemory } from './whatIf';

/** The page shows it while it waits for the fine one. */
export const forThePage: ReadonlySet<StageName> = new Set(['oven run']);

const doing = 'looking for a plan';

/** @throws Problem `job.noMesh`, and whatever the stages throw */
export async function planWith(
  { pattern, taken }: PlanGiven,
  question: Question | null,
  memory: ForkingMemory,
  progress: OnProgress,
): Promise<PlanFound> {
  if (question === null) throw new Problem('job.noMesh', 'Import the pattern file of this project first.');
  const answers = await evaluate(question, (name, asked) => memory.tell(name, asked, progress), forThePage);
  // What each what-if casts and heats has shares of its own, which would make the bar jump.
  let reached = 0;
  const onProgress: OnProgress = (told, share) => {
    if (told === 'trying changes') reached = share;
    progress(doing, reached);
  };
  const plan = await planFor(
    { question, answers, memory },
    { pattern, taken, skips: forThePage, onProgress },
  );
  const { evaluated: _, ...found } = plan;
  return found;
}
