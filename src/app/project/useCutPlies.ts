import { useMemo, useState } from 'react';
import type { CutPlies, CuttingChoices } from '../../core/drape/cutPlies';
import { Problem } from '../../core/problem';
import { askedOf } from '../../pipeline/evaluate';
import type { CuttingControl } from '../../sheets/cutting/cuttingControl';
import type { Measuring } from '../../sheets/measuring/useMeasured';
import { cuttingChoicesOf } from '../../steps/cutting/choicesOf';
import type { ProjectInputs } from '../../steps/inputs/project';
import type { Project } from '../../workbook';
import type { ProjectActions } from './useProjectActions';

interface Choices {
  readonly choices: CuttingChoices | null;
  readonly why: string;
}

function choicesOf(inputs: ProjectInputs): Choices {
  try {
    return { choices: cuttingChoicesOf(inputs), why: '' };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { choices: null, why: error.message };
  }
}

/** The same part and the same choices: the same pieces. */
function keyOf({ question }: Measuring, choices: CuttingChoices | null): string | null {
  return question === null || choices === null
    ? null
    : JSON.stringify([askedOf('part', question, {}), choices]);
}

/** The pieces that were worked out in this session, while they belong to the present part and inputs. */
export function useCutPlies(
  { inputs }: Project,
  measuring: Measuring,
  actions: ProjectActions,
): CuttingControl {
  const { choices, why } = useMemo(() => choicesOf(inputs), [inputs]);
  const [last, setLast] = useState<{ readonly key: string; readonly cut: CutPlies } | null>(null);
  const [isWorking, setIsWorking] = useState(false);
  const [refused, setRefused] = useState<{ readonly key: string; readonly why: string } | null>(null);
  const key = keyOf(measuring, choices);
  const cut = last !== null && last.key === key ? last.cut : null;

  const workOut = async () => {
    if (choices === null || key === null) return;
    setIsWorking(true);
    setRefused(null);
    try {
      const reply = await actions.cutPlies(choices);
      if (reply === null) setRefused({ key, why: measuring.desk.store.getState().problem ?? '' });
      else setLast({ key, cut: reply });
    } finally {
      setIsWorking(false);
    }
  };
  return {
    why: refused !== null && refused.key === key ? refused.why : why,
    cut,
    isOutdated: last !== null && cut === null,
    isBusy: isWorking || choices === null || measuring.importing,
    workOut: () => void workOut(),
  };
}
