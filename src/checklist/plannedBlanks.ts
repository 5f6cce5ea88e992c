import type { StepReport } from '../core/figure';
import type { BenchBlank } from '../steps/bench/blank';
import { benchBlanks } from '../steps/bench/blanks';
import { withoutReadings } from '../steps/bench/written';
import { stepReports } from '../steps/registry';
import type { StepContext } from '../steps/shared/context';

/** The blanks with what was expected before anything was read, so that planned and built stand side by side. */
export function plannedBlanks(
  context: StepContext,
  reports: ReadonlyMap<string, StepReport>,
): readonly BenchBlank[] {
  const inputs = withoutReadings(context.inputs);
  if (inputs === context.inputs) return benchBlanks(context, reports);
  const planned = { ...context, inputs };
  return benchBlanks(planned, stepReports(planned));
}
