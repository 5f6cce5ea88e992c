/** The steps in the order of the work. Adding a step is adding its folder, its sheet and one line here. */
import type { StepReport } from '../core/figure';
import { checklistReport } from './checklist/report';
import { closingReport } from './closing/report';
import type { StepContext } from './context';
import { cureReport } from './cure/report';
import { moldReport } from './mold/report';
import { partReport } from './part/report';
import { pliesReport } from './plies/report';
import { wallsReport } from './walls/report';

export interface Step {
  /** Stable; prefix of its figure ids. */
  readonly id: string;
  readonly title: string;
  /** The bench question that the sheet answers. */
  readonly question: string;
  readonly report: (context: StepContext) => StepReport;
}

export const steps: readonly Step[] = [
  {
    id: 'part',
    title: 'Part',
    question: 'Is this model sound, the right size, the right way up?',
    report: partReport,
  },
  {
    id: 'walls',
    title: 'Walls & draft',
    question: 'Is the wall even, and will stone let go of it?',
    report: wallsReport,
  },
  {
    id: 'plies',
    title: 'Ply schedule',
    question: 'Which plies, how many, which way?',
    report: pliesReport,
  },
  {
    id: 'closing',
    title: 'Mold closing',
    question: 'When I clamp it, does the load go into the laminate everywhere?',
    report: closingReport,
  },
  {
    id: 'mold',
    title: 'Stone mold',
    question: 'How large a box, how much stone, and when is it dry?',
    report: moldReport,
  },
  {
    id: 'cure',
    title: 'Clamp & cure',
    question: 'Will the laminate in the middle of the stone really cure?',
    report: cureReport,
  },
  {
    id: 'checklist',
    title: 'Checklist',
    question: 'What do I do, in which order, with which numbers?',
    report: checklistReport,
  },
];
