import { useState } from 'react';
import { patchOf, type FoundPlan, type Planning } from '../../sheets/decision/planning';
import type { MeasuringDesk } from '../../sheets/measuring/measuringDesk';
import type { TakenAsGiven } from '../../pipeline/plan';
import { patched } from '../../steps/shared/patch';
import type { Project } from '../../workbook';
import { useWorkbook } from '../../workbook/useWorkbook';

/** A plan is looked for when asked, under the progress bar and its cancel, and kept while the project is open. */
export function usePlanning(
  { pattern, inputs }: Project,
  desk: MeasuringDesk,
  taken: TakenAsGiven,
): Planning {
  const workbook = useWorkbook();
  const [found, setFound] = useState<FoundPlan | null>(null);
  const [isLooking, setIsLooking] = useState(false);

  async function look(): Promise<void> {
    if (pattern === null) return;
    setIsLooking(true);
    const plan = await desk.run('looking for a plan', 'plan', { pattern, taken });
    setIsLooking(false);
    if (plan !== null) setFound({ plan, inputs });
  }

  return {
    found,
    isLooking,
    look: pattern === null ? null : () => void look(),
    apply: (changes) => {
      const next = patched(inputs, patchOf(changes));
      if (next !== null) workbook.updateInputs((draft) => void Object.assign(draft, next));
    },
  };
}
