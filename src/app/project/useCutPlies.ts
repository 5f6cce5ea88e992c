import { useMemo, useState } from 'react';
import type { CutPlies, CuttingChoices } from '../../core/drape/cutPlies';
import { Problem } from '../../core/problem';
import type { FabricNest } from '../../core/templates/nest';
import { askedOf } from '../../pipeline/evaluate';
import type { CuttingControl, TemplateKind } from '../../sheets/cutting/cuttingControl';
import type { Measuring } from '../../sheets/measuring/useMeasured';
import { cuttingChoicesOf } from '../../steps/cutting/choicesOf';
import { nestAskedOf } from '../../steps/cutting/rolls';
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

/** The same pieces, rolls and choices: the same nest. */
const nestKeyOf = (cutKey: string, inputs: ProjectInputs, { pieces }: CutPlies) =>
  JSON.stringify([cutKey, nestAskedOf(inputs, pieces)]);

/** The same part and the same choices: the same pieces. */
function keyOf({ question }: Measuring, choices: CuttingChoices | null): string | null {
  return question === null || choices === null
    ? null
    : JSON.stringify([askedOf('part', question, {}), choices]);
}

interface LastCut {
  readonly key: string;
  readonly cut: CutPlies;
}

interface LastNest {
  readonly key: string;
  readonly nests: readonly FabricNest[];
}

interface Refused {
  readonly key: string;
  readonly why: string;
}

const changedSince =
  'Roll, gap or turns have been changed since the pieces were laid out on the roll. Work them out again.';

/** The pieces that were worked out in this session, while they belong to the present part and inputs. */
export function useCutPlies(
  { inputs }: Project,
  measuring: Measuring,
  actions: ProjectActions,
): CuttingControl {
  const { choices, why } = useMemo(() => choicesOf(inputs), [inputs]);
  const [last, setLast] = useState<LastCut | null>(null);
  const [lastNest, setLastNest] = useState<LastNest | null>(null);
  const [isWorking, setIsWorking] = useState(false);
  const [refused, setRefused] = useState<Refused | null>(null);
  const [refusedNest, setRefusedNest] = useState<Refused | null>(null);
  const [refusedPaper, setRefusedPaper] = useState<Refused | null>(null);
  const key = keyOf(measuring, choices);
  const pieces = last !== null && last.key === key ? last.cut : null;
  const nestKey = key === null || pieces === null ? null : nestKeyOf(key, inputs, pieces);
  const paperKey = `${nestKey} ${inputs.cutting.paper}`;
  const nests =
    lastNest !== null && lastNest.key === nestKey
      ? lastNest.nests
      : refusedNest !== null && refusedNest.key === nestKey
        ? refusedNest.why
        : changedSince;
  const noPaper = refusedPaper !== null && refusedPaper.key === paperKey ? refusedPaper.why : '';
  const cut = useMemo(
    () => (pieces === null ? null : { cut: pieces, nests, noPaper }),
    [pieces, nests, noPaper],
  );
  const problem = () => measuring.desk.store.getState().problem ?? '';

  const during = async (work: () => Promise<void>) => {
    setIsWorking(true);
    try {
      await work();
    } finally {
      setIsWorking(false);
    }
  };
  const workOut = async () => {
    if (choices === null || key === null) return;
    setRefused(null);
    const found = pieces ?? (await actions.cutPlies(choices));
    if (found === null) return setRefused({ key, why: problem() });
    setLast({ key, cut: found });
    const ownKey = nestKeyOf(key, inputs, found);
    const reply = await actions.nestPieces(found, nestAskedOf(inputs, found.pieces));
    if (reply !== null) setLastNest({ key: ownKey, nests: reply });
    else setRefusedNest({ key: ownKey, why: problem() || 'The pieces are not laid out on the roll yet.' });
  };
  const save = async (kind: TemplateKind) => {
    if (typeof nests === 'string') return;
    const isSaved = await actions.saveTemplates(nests, inputs.cutting.paper, kind);
    setRefusedPaper(isSaved ? null : { key: paperKey, why: problem() });
  };
  return {
    why: refused !== null && refused.key === key ? refused.why : why,
    cut,
    isOutdated: last !== null && cut === null,
    isBusy: isWorking || choices === null || measuring.importing,
    workOut: () => void during(workOut),
    save: (kind) => void during(() => save(kind)),
  };
}
