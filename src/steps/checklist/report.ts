/** Checklist step: what do I do, in which order, with which numbers? Its verdict sums up the steps before it. */
import { worstWord, type Caution, type StepReport, type Verdict, type VerdictWord } from '../../core/figure';
import type { ReportBefore, StepContext } from '../shared/context';
import { isOfConcern } from '../shared/decision';
import { count, figure } from '../kit/figures';

const cautions: readonly Caution[] = [
  {
    id: 'checklist.laterStages',
    text: 'This sheet ends when the mold is opened. What follows has dangers of its own (carbon dust when trimming and sanding, solvents and fumes when coating): lithium cells out before heat, clamps or glue, and the way to them never glued shut. Carbon conducts: insulate boards, isolate aluminum and steel, test the range; a changed transmitter may need new approval. Data sheets, local rules and licensed trades come first.',
  },
];

const reasons: Record<VerdictWord, string> = {
  go: 'All steps say go.',
  'look again': 'look again before work starts',
  stop: 'stop',
  'not yet known': 'not all is known yet',
};

/** @param before the reports of the steps before it, in order */
export function checklistReport(_context: StepContext, before: readonly ReportBefore[]): StepReport {
  const words = before
    .map(({ title, report }) => ({ title, verdicts: report.verdicts.filter(isOfConcern) }))
    .filter(({ verdicts }) => verdicts.length > 0)
    .map(({ title, verdicts }) => ({ title, verdicts, word: worstWord(verdicts) }));
  const all = words.flatMap(({ verdicts }) => verdicts);
  const stops = all.filter(({ word }) => word === 'stop').length;
  const lookAgain = all.filter(({ word }) => word === 'look again').length;
  return {
    figures: [
      figure(
        { id: 'checklist.stops', label: 'Verdicts that say stop', unit: '', decimals: 0 },
        stops,
        `Of ${count(all.length, 'verdict')} over ${words.length} steps.`,
      ),
      figure(
        { id: 'checklist.lookAgain', label: 'Verdicts that say look again', unit: '', decimals: 0 },
        lookAgain,
        `Of ${count(all.length, 'verdict')} over ${words.length} steps.`,
      ),
    ],
    verdicts: [readyVerdict(words, worstWord(all))],
    cautions,
  };
}

function readyVerdict(
  words: readonly { readonly title: string; readonly word: VerdictWord }[],
  worst: VerdictWord,
): Verdict {
  const named = words.filter(({ word }) => word === worst).map(({ title }) => title);
  return {
    id: 'checklist.ready',
    word: worst,
    reason: worst === 'go' ? reasons.go : `${named.join(', ')}: ${reasons[worst]}.`,
    fix: worst === 'go' ? '' : 'Open the step; its verdict says what would change it.',
  };
}
