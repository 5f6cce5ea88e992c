/** Checklist step: what do I do, in which order, with which numbers? Its verdict sums up the steps before it. */
import { worstWord, type Caution, type StepReport, type Verdict, type VerdictWord } from '../../core/figure';
import { closingReport } from '../closing/report';
import type { StepContext } from '../context';
import { cureReport } from '../cure/report';
import { count, figure } from '../figures';
import { moldReport } from '../mold/report';
import { partReport } from '../part/report';
import { pliesReport } from '../plies/report';
import { wallsReport } from '../walls/report';

const cautions: readonly Caution[] = [
  {
    id: 'checklist.laterStages',
    text: 'This sheet ends when the mold is opened. What follows has dangers of its own (carbon dust when trimming and sanding, solvents and fumes when coating): work from the suppliers’ safety data sheets and local rules.',
  },
];

const stepsBefore = [
  { name: 'Part', report: partReport },
  { name: 'Walls & draft', report: wallsReport },
  { name: 'Ply schedule', report: pliesReport },
  { name: 'Mold closing', report: closingReport },
  { name: 'Stone mold', report: moldReport },
  { name: 'Clamp & cure', report: cureReport },
] as const;

const reasons: Record<VerdictWord, string> = {
  go: 'All steps say go.',
  'look again': 'look again before work starts',
  stop: 'stop',
  'not yet known': 'not all is known yet',
};

export function checklistReport(context: StepContext): StepReport {
  const words = stepsBefore.map(({ name, report }) => {
    const { verdicts } = report(context);
    return { name, verdicts, word: worstWord(verdicts) };
  });
  const all = words.flatMap(({ verdicts }) => verdicts);
  const stops = all.filter(({ word }) => word === 'stop').length;
  const lookAgain = all.filter(({ word }) => word === 'look again').length;
  return {
    figures: [
      figure(
        { id: 'checklist.stops', label: 'Verdicts that say stop', unit: '', decimals: 0 },
        stops,
        `Of ${count(all.length, 'verdict')} over ${stepsBefore.length} steps.`,
      ),
      figure(
        { id: 'checklist.lookAgain', label: 'Verdicts that say look again', unit: '', decimals: 0 },
        lookAgain,
        `Of ${count(all.length, 'verdict')} over ${stepsBefore.length} steps.`,
      ),
    ],
    verdicts: [readyVerdict(words, worstWord(all))],
    cautions,
  };
}

function readyVerdict(
  words: readonly { readonly name: string; readonly word: VerdictWord }[],
  worst: VerdictWord,
): Verdict {
  const named = words.filter(({ word }) => word === worst).map(({ name }) => name);
  return {
    id: 'checklist.ready',
    word: worst,
    reason: worst === 'go' ? reasons.go : `${named.join(', ')}: ${reasons[worst]}.`,
    fix: worst === 'go' ? '' : 'Open the step; its verdict says what would change it.',
  };
}
