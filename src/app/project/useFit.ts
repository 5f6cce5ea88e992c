import { useEffect, useMemo, useState } from 'react';
import type { FitFindings } from '../../core/fit/findings';
import { failureOf } from '../../jobs/failureOf';
import { wasDropped } from '../../jobs/client';
import { meshChoices } from '../../pipeline/question';
import { askedOf } from '../../pipeline/evaluate';
import type { MateOffer } from '../../sheets/fit/FitSheet';
import type { Measuring } from '../../sheets/measuring/useMeasured';
import { asksForFit, fitChoicesOf } from '../../steps/fit/choicesOf';
import type { FitTrouble } from '../../steps/shared/context';
import { useSameText } from '../../ui/useSameText';
import type { Project } from '../../workbook';
import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';
import { mateChoices, mateOf } from './mateOf';

export interface FitFound {
  readonly fit: FitFindings | null;
  readonly fitTrouble: FitTrouble;
  /** Something is entered, and its answer is not in. */
  readonly isAwaited: boolean;
  readonly mates: MateOffer;
}

interface Answer {
  readonly key: string;
  readonly fit: FitFindings | null;
  /** Why there is no answer. */
  readonly why: string | null;
}

const meshGone =
  'The model of the other half cannot be read in this browser. Import it again in the project of that half.';

/** Rims, contents and posts of the open project, asked for once something is entered and the part is measured. */
export function useFit(project: Project, { desk, question, answers }: Measuring): FitFound {
  const { id, enclosure, inputs } = project;
  const workbook = useWorkbook();
  const projects = useWorkbookState((state) => state.projects);
  const { listed, why } = mateOf(inputs.fit.mate, { id, enclosure }, projects);
  const [mateId, changedAt] = why === null ? [listed?.id ?? null, listed?.changedAt] : [null, undefined];
  const mate = useMemo(
    // An edit of this project makes a new list; the mate is read again only when it has changed itself.
    () => (mateId === null || changedAt === undefined ? null : workbook.readProject(mateId)),
    [mateId, changedAt, workbook],
  );
  const isAsked = asksForFit(inputs);
  const asked = useSameText(
    useMemo(() => {
      if (!isAsked || question === null) return null;
      const choices = fitChoicesOf(inputs, mate?.inputs ?? null);
      const pattern = mate?.pattern ?? null;
      const part =
        mate === null || pattern === null
          ? null
          : meshChoices({ inputs: mate.inputs, declaredUnit: pattern.declaredUnit });
      const key = JSON.stringify([askedOf('part', question, {}), choices, part, pattern?.meshKey ?? null]);
      return { choices, part, key };
    }, [isAsked, question, inputs, mate]),
  );
  const [answer, setAnswer] = useState<Answer | null>(null);
  const isReady = answers.measurement !== undefined;
  const key = asked?.key ?? null;
  const known = key !== null && answer?.key === key ? answer : null;
  const isKnown = known !== null;
  useEffect(() => {
    if (asked === null || question === null || !isReady || isKnown) return undefined;
    let isWanted = true;
    const put = (fit: FitFindings | null, whyNot: string | null) => {
      if (isWanted) setAnswer({ key: asked.key, fit, why: whyNot });
    };
    const packed = mateId === null || asked.part === null ? null : workbook.packedMeshOf(mateId);
    const other = packed === null || asked.part === null ? null : { packed, part: asked.part };
    const ask = (): void => {
      void desk.client
        .ask('contents', question, { choices: asked.choices, mate: other })
        .then((fit) => put(fit, null))
        .catch((error: unknown) => {
          if (!wasDropped(error)) put(null, failureOf(error).message);
          // An import drops what was asked of the mesh before; where nothing comes of it, the question stands.
          else if (isWanted) ask();
        });
    };
    if (asked.part !== null && packed === null) void Promise.resolve().then(() => put(null, meshGone));
    else ask();
    return () => {
      isWanted = false;
    };
  }, [asked, question, isReady, isKnown, mateId, workbook, desk]);
  const fitTrouble = useSameText({ asked: known?.why ?? null, mate: why });
  const mates = useMemo(
    () => mateChoices(inputs.fit.mate, { id, enclosure }, projects),
    [inputs.fit.mate, id, enclosure, projects],
  );
  return { fit: known?.fit ?? null, fitTrouble, isAwaited: asked !== null && !isKnown, mates };
}
