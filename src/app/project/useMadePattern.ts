import { useMemo, useState } from 'react';
import type { PatternChoices } from '../../core/pattern/makePattern';
import { Problem } from '../../core/problem';
import { formatNumber } from '../../core/units/formatNumber';
import { askedOf } from '../../pipeline/evaluate';
import type { Measuring } from '../../sheets/measuring/useMeasured';
import type { MadeHere, PatternControl, UsedPattern } from '../../sheets/pattern/patternControl';
import type { ProjectInputs } from '../../steps/inputs/project';
import { patternChoicesOf } from '../../steps/pattern/choicesOf';
import type { Project, Workbook } from '../../workbook';
import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';
import type { ProjectActions } from './useProjectActions';

type Choices = Pick<PatternControl, 'choices' | 'why'>;

function choicesOf(inputs: ProjectInputs): Choices {
  try {
    return { choices: patternChoicesOf(inputs), why: '' };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { choices: null, why: error.message };
  }
}

/** The same part and the same choices: the same pattern. */
function keyOf({ question }: Measuring, choices: PatternChoices | null): string | null {
  return question === null || choices === null
    ? null
    : JSON.stringify([askedOf('part', question, {}), choices]);
}

const kB = (units = 0) => `${formatNumber(units / 1000, 0)} kB`;

/** What the made pattern and its import take, where storage has no room for both. */
function whyFull(workbook: Workbook, { id, pattern, madeOf }: Project): string {
  if (pattern === null || madeOf === null) return '';
  const { limitUnits, totalUnits } = workbook.usage();
  const [made, imported] = [workbook.packedMeshOf(id)?.length, workbook.packedImportOf(id)?.length];
  return `Storage has no room for both models: ${pattern.fileName} takes ${kB(made)} and ${madeOf.import.fileName} ${kB(imported)}, and ${kB(Math.max(0, limitUnits - totalUnits))} are free. This tab holds both, and what was saved earlier is untouched: save the project file, then make room under All projects.`;
}

/** The pattern that was made in this session, what can be done with it, and the one in use. */
export function useMadePattern(
  project: Project,
  measuring: Measuring,
  actions: ProjectActions,
): PatternControl {
  const { inputs, pattern, madeOf } = project;
  const workbook = useWorkbook();
  const isFull = useWorkbookState(({ saveState }) => saveState === 'full');
  const known = useMemo(() => choicesOf(inputs), [inputs]);
  const { choices } = known;
  const [last, setLast] = useState<{ readonly key: string; readonly made: MadeHere } | null>(null);
  const [isMaking, setIsMaking] = useState(false);
  // The desk's own note goes with the next stage that it begins.
  const [refused, setRefused] = useState<{ readonly key: string; readonly why: string } | null>(null);
  const key = keyOf(measuring, choices);
  const made = last !== null && last.key === key ? last.made : null;
  const used = useMemo((): UsedPattern | null => {
    if (madeOf === null) return null;
    const { choices: asked, summary } = madeOf;
    const whyUnsaved = isFull ? whyFull(workbook, project) : '';
    return { madeOf: madeOf.import.fileName, choices: asked, summary, whyUnsaved };
  }, [madeOf, isFull, workbook, project]);

  const make = async () => {
    if (choices === null || key === null) return;
    setIsMaking(true);
    setRefused(null);
    try {
      const reply = await actions.makePattern(choices);
      if (reply === null) setRefused({ key, why: measuring.desk.store.getState().problem ?? '' });
      else setLast({ key, made: { choices, ...reply } });
    } finally {
      setIsMaking(false);
    }
  };
  const use = async () => {
    if (made === null || pattern === null) return;
    await actions.takeMadePattern(made, pattern.fileName);
  };
  return {
    choices,
    why: refused !== null && refused.key === key ? refused.why : known.why,
    made,
    isOutdated: last !== null && made === null && used === null,
    used,
    isBusy: isMaking || measuring.importing,
    make: () => void make(),
    save: () => made !== null && actions.savePattern(made.stl),
    saveToPrint: (format) => void (made !== null && actions.saveToPrint(made, format)),
    saveTemplate: (one) => actions.saveTemplate(one),
    use: () => void use(),
    goBack: () => actions.goBackToImport(),
  };
}
