/** The steps in the order of the work. Adding a step is adding its folder, its sheet and one line here. */
import type { StepReport } from '../core/figure';
import { withAwaited, type Stage } from './kit/awaited';
import { checklistReport } from './checklist/report';
import { closingRemedies } from './closing/remedies';
import { closingReport } from './closing/report';
import type { ReportBefore, StepContext } from './shared/context';
import { cureRemedies } from './cure/remedies';
import { cureReport } from './cure/report';
import { cuttingReport } from './cutting/report';
import { finishReport } from './finish/report';
import { fitReport } from './fit/report';
import { moldRemedies } from './mold/remedies';
import { moldReport } from './mold/report';
import { partRemedies } from './part/remedies';
import { partReport } from './part/report';
import { patternReport } from './pattern/report';
import { pliesRemedies } from './plies/remedies';
import { pliesReport } from './plies/report';
import { withOrigins } from './shared/origins';
import type { ProposeRemedies } from './shared/remedy';
import { heldVerdict, whyHeld, withheld } from './shared/held';
import { wallsReport } from './walls/report';

export interface Step {
  /** Stable; prefix of its figure ids. */
  readonly id: string;
  readonly title: string;
  /** The bench question that the sheet answers. */
  readonly question: string;
  /** What its verdicts wait for. */
  readonly needs: readonly Stage[];
  /** `before`: the reports of the steps before it, in order. */
  readonly report: (context: StepContext, before: readonly ReportBefore[]) => StepReport;
  /** What to try where a verdict is not "go". */
  readonly remedies?: ProposeRemedies;
}

export const steps: readonly Step[] = [
  {
    id: 'part',
    title: 'Part',
    question: 'Is this model sound, the right size, the right way up?',
    needs: ['import', 'measurement'],
    report: partReport,
    remedies: partRemedies,
  },
  {
    id: 'pattern',
    title: 'Pattern',
    question: 'What do I print?',
    needs: ['import'],
    report: patternReport,
  },
  {
    id: 'walls',
    title: 'Walls & draft',
    question: 'Is the wall even, and will stone let go of it?',
    needs: ['import', 'measurement', 'places'],
    report: wallsReport,
  },
  {
    id: 'plies',
    title: 'Ply schedule',
    question: 'Which plies, how many, which way?',
    needs: ['import', 'measurement'],
    report: pliesReport,
    remedies: pliesRemedies,
  },
  {
    id: 'cutting',
    title: 'Ply cutting',
    question: 'What do I cut, and does the cloth lie in the corners?',
    needs: ['import'],
    report: cuttingReport,
  },
  {
    id: 'closing',
    title: 'Mold closing',
    question: 'When I clamp it, does the load go into the laminate everywhere?',
    needs: ['import', 'measurement', 'repaired walls'],
    report: closingReport,
    remedies: closingRemedies,
  },
  {
    id: 'mold',
    title: 'Stone mold',
    question: 'How large a box, how much stone, and when is it dry?',
    needs: ['import', 'measurement', 'halves', 'other half'],
    report: moldReport,
    remedies: moldRemedies,
  },
  {
    id: 'cure',
    title: 'Clamp & cure',
    question: 'Will the laminate in the middle of the stone really cure?',
    needs: ['import', 'measurement', 'halves', 'oven run'],
    report: cureReport,
    remedies: cureRemedies,
  },
  {
    id: 'fit',
    title: 'Fit',
    question: 'Do the halves meet, does everything fit, does radio get out?',
    needs: ['import', 'fit'],
    report: fitReport,
  },
  {
    id: 'finish',
    title: 'Finish',
    question: 'Which coats, and when is it done?',
    needs: ['import'],
    report: finishReport,
  },
  {
    id: 'checklist',
    title: 'Checklist',
    question: 'What do I do, in which order, with which numbers?',
    needs: [],
    report: checklistReport,
  },
];

/** Part says what is the matter with the model, the checklist sums up; the others have nothing to say of it. */
const saysWhyHeld: ReadonlySet<string> = new Set(['part', 'checklist']);

/** The reports of all steps, by step id, in the order of the work; each is worked out once. */
export function stepReports(context: StepContext): ReadonlyMap<string, StepReport> {
  const reports = new Map<string, StepReport>();
  const before: ReportBefore[] = [];
  const held = whyHeld(context);
  const after = held === null ? context : withheld(context, held);
  for (const { id, title, needs, report } of steps) {
    const told = (from: StepContext) => withOrigins(report(from, before), context.origins ?? new Map());
    const own =
      held === null || saysWhyHeld.has(id)
        ? withAwaited(told(context), id, needs, context.awaited ?? [])
        : { ...told(after), verdicts: [heldVerdict(id, held)], cautions: [] };
    reports.set(id, own);
    before.push({ title, report: own });
  }
  return reports;
}
