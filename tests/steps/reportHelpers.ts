/** Finding things in a step report, failing the test when they are not there. */
import type { Figure, StepReport, Verdict } from '../../src/core/figure';

export function figureOf(report: StepReport, id: string): Figure {
  const figure = report.figures.find((one) => one.id === id);
  if (figure === undefined)
    throw new Error(`no figure ${id} in ${report.figures.map((one) => one.id).join(', ')}`);
  return figure;
}

export function verdictOf(report: StepReport, id: string): Verdict {
  const verdict = report.verdicts.find((one) => one.id === id);
  if (verdict === undefined)
    throw new Error(`no verdict ${id} in ${report.verdicts.map((one) => one.id).join(', ')}`);
  return verdict;
}

/** Every number of a report, for "never NaN, never infinite". */
export function numbersOf(report: StepReport): readonly number[] {
  return report.figures.flatMap(({ value, band }) => [
    ...(typeof value === 'number' ? [value] : Array.isArray(value) ? (value as readonly number[]) : []),
    ...(band ?? []),
  ]);
}
