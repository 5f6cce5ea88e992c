/** The steps in the order of the work. Adding a step is adding its folder, its sheet and one line here. */
import type { StepReport } from '../core/figure';
import type { StepContext } from './context';

export interface Step {
  /** Stable; prefix of its figure ids. */
  readonly id: string;
  readonly title: string;
  /** The bench question that the sheet answers. */
  readonly question: string;
  readonly report: (context: StepContext) => StepReport;
}
