import { useEffect, useMemo, useState } from 'react';
import type { FitFindings } from '../../core/fit/findings';
import { meshChoices } from '../../pipeline/question';
import { askedOf } from '../../pipeline/evaluate';
import type { Measuring } from '../../sheets/measuring/useMeasured';
import { asksForFit, fitChoicesOf } from '../../steps/fit/choicesOf';
import type { Project } from '../../workbook';
import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';

export interface FitFound {
  readonly fit: FitFindings | null;
  /** Names of the other projects of the enclosure that have a model. */
  readonly mates: readonly string[];
}

/** Rims, contents and posts of the open project, asked for once something is entered and the part is measured. */
export function useFit({ id, enclosure, inputs }: Project, { desk, question, answers }: Measuring): FitFound {
  const workbook = useWorkbook();
  const projects = useWorkbookState((state) => state.projects);
  const others = useMemo(
    () => projects.filter((one) => one.enclosure === enclosure && one.id !== id && one.meshKey !== null),
    [projects, enclosure, id],
  );
  const listed = others.find(({ name }) => name === inputs.fit.mate);
  const [mateId, changedAt] = [listed?.id ?? null, listed?.changedAt];
  const mate = useMemo(
    () => (mateId === null || changedAt === undefined ? null : workbook.readProject(mateId)),
    [mateId, changedAt, workbook],
  );
  const isAsked = asksForFit(inputs);
  const asked = useMemo(() => {
    if (!isAsked || question === null) return null;
    const choices = fitChoicesOf(inputs, mate?.inputs ?? null);
    const part =
      mate?.pattern == null
        ? null
        : meshChoices({ inputs: mate.inputs, declaredUnit: mate.pattern.declaredUnit });
    const key = JSON.stringify([
      askedOf('part', question, {}),
      choices,
      part,
      mate?.pattern?.meshKey ?? null,
    ]);
    return { choices, part, key };
  }, [isAsked, question, inputs, mate]);
  const [found, setFound] = useState<{ readonly key: string; readonly fit: FitFindings | null } | null>(null);
  const isReady = answers.measurement !== undefined;
  const key = asked?.key ?? null;
  const isKnown = key !== null && found?.key === key;
  useEffect(() => {
    if (asked === null || question === null || !isReady || isKnown) return undefined;
    let isWanted = true;
    const packed = mateId === null || asked.part === null ? null : workbook.packedMeshOf(mateId);
    const other = packed === null || asked.part === null ? null : { packed, part: asked.part };
    void desk.client
      .ask('contents', question, { choices: asked.choices, mate: other })
      // The sheet goes on saying that it is not worked out.
      .catch(() => null)
      .then((fit) => {
        if (isWanted) setFound({ key: asked.key, fit });
      });
    return () => {
      isWanted = false;
    };
  }, [asked, question, isReady, isKnown, mateId, workbook, desk]);
  return { fit: isKnown ? (found?.fit ?? null) : null, mates: others.map(({ name }) => name) };
}
