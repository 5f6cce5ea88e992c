/**
 * The bench card and its phase pages as plain data, in the order of the bench work. The page, the saved file and the
 * terminal draw the same model.
 */
import type { StepReport } from '../core/figure';
import { writtenInto } from '../steps/bench/written';
import { figuresById } from '../steps/kit/figuresById';
import type { StepContext } from '../steps/shared/context';
import { stepReports } from '../steps/registry';
import { decide } from '../steps/shared/decision';
import { moldWork } from '../steps/stone/work';
import { benchCard } from './card/benchCard';
import { incompleteReasons } from './incomplete';
import { plannedBlanks } from './plannedBlanks';
import type { Material, PhaseDraft } from './lines';
import type { ChecklistFacts, ChecklistModel, ChecklistRecord, LineRecord, PhasePage } from './model';
import { finishPhase } from './phases/finishPhase';
import { layupPhase } from './phases/layupPhase';
import { ovenPhase } from './phases/ovenPhase';
import { pourPhase } from './phases/pourPhase';
import { printPhase } from './phases/printPhase';
import { phaseCautions } from './safety';

export type * from './model';

/** Lines of the record that belong to a whole page. */
export const signId = (phaseId: string) => `sign.${phaseId}`;
export const noteId = (phaseId: string) => `note.${phaseId}`;

const untouched: LineRecord = { done: false, measured: '', initials: '' };

export function checklistModel(
  facts: ChecklistFacts,
  context: StepContext,
  record: ChecklistRecord = {},
  reports: ReadonlyMap<string, StepReport> = stepReports(context),
): ChecklistModel {
  const isHeld = decide(reports).word === 'stop';
  const blanks = plannedBlanks(context, reports).map((blank) => ({
    ...blank,
    written: writtenInto(context.inputs, blank),
  }));
  const material: Material = {
    context,
    reports,
    figures: figuresById(reports),
    work: moldWork(context),
    // What would be read of a part that must not be made is nothing to work toward.
    blanks: isHeld ? blanks.map((blank) => ({ ...blank, expected: null, band: null })) : blanks,
    isHeld,
  };
  const phases = sayStopsOnce(
    [printPhase, pourPhase, layupPhase, ovenPhase, finishPhase].map((phase) => phase(material)),
  ).map((phase) => withRecord(phase, record));
  return {
    title: `${facts.project}: ${facts.part}`,
    incomplete: incompleteReasons(context),
    card: benchCard(facts, material),
    phases,
    earlier: earlierOf(record, phases),
    blanks,
  };
}

/** What several phases would say stands at the first of them, its first sentences: the Decision page has the rest. */
function sayStopsOnce(phases: readonly PhaseDraft[]): readonly PhaseDraft[] {
  const said = new Set<string>();
  return phases.map((phase) => ({
    ...phase,
    stops: phase.stops.flatMap((stop) => {
      const short = firstSentences(stop);
      if (said.has(short)) return [];
      said.add(short);
      return [short];
    }),
  }));
}

const sentencesSaid = 2;

/** A period that ends a sentence has a space after it; one inside a number has none. */
const firstSentences = (reason: string) =>
  reason
    .split(/(?<=\.) /u)
    .slice(0, sentencesSaid)
    .join(' ');

function earlierOf(record: ChecklistRecord, phases: readonly PhasePage[]): ChecklistModel['earlier'] {
  const lines = phases.flatMap(({ id, actions }) => [
    signId(id),
    noteId(id),
    ...actions.map((one) => one.id),
  ]);
  const present = new Set(lines);
  return Object.entries(record).flatMap(([id, { measured, initials }]) => {
    const told = [measured, initials].filter((one) => one !== '').join(', ');
    return present.has(id) || told === '' ? [] : [{ id, told }];
  });
}

function withRecord({ actions, ...phase }: PhaseDraft, record: ChecklistRecord): PhasePage {
  return {
    ...phase,
    caution: phaseCautions[phase.id],
    actions: actions.map((action) => ({ ...action, done: (record[action.id] ?? untouched).done })),
    signedBy: (record[signId(phase.id)] ?? untouched).initials,
    note: (record[noteId(phase.id)] ?? untouched).measured,
  };
}
