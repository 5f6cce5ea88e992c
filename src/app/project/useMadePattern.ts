import { useMemo, useState } from 'react';
import type { PatternChoices } from '../../core/pattern/makePattern';
import { Problem } from '../../core/problem';
import { askedOf } from '../../pipeline/evaluate';
import type { Measuring } from '../../sheets/measuring/useMeasured';
import type { MadeHere, PatternControl, UsedPattern } from '../../sheets/pattern/patternControl';
import type { ProjectInputs } from '../../steps/inputs/project';
import { patternChoicesOf } from '../../steps/pattern/choicesOf';
import type { Project } from '../../workbook';
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

/** The pattern that was made in this session, and what can be done with it. */
export function useMadePattern(
  { inputs, pattern }: Project,
  measuring: Measuring,
  actions: ProjectActions,
): PatternControl {
  const known = useMemo(() => choicesOf(inputs), [inputs]);
  const { choices } = known;
  const [last, setLast] = useState<{ readonly key: string; readonly made: MadeHere } | null>(null);
  const [taken, setTaken] = useState<(UsedPattern & { readonly meshKey: string }) | null>(null);
  const [isMaking, setIsMaking] = useState(false);
  // The desk's own note goes with the next stage that it begins.
  const [refused, setRefused] = useState<{ readonly key: string; readonly why: string } | null>(null);
  const key = keyOf(measuring, choices);
  const made = last !== null && last.key === key ? last.made : null;
  const used = taken !== null && taken.meshKey === pattern?.meshKey ? taken : null;

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
    const meshKey = await actions.takeMadePattern(made.stl, pattern.fileName);
    if (meshKey !== null) setTaken({ meshKey, madeOf: pattern.fileName, made });
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
  };
}
