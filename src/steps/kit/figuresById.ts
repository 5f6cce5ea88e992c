import type { Figure, StepReport } from '../../core/figure';

/** All figures of some reports, by their ids. */
export function figuresById(reports: ReadonlyMap<string, StepReport>): ReadonlyMap<string, Figure> {
  return new Map([...reports.values()].flatMap(({ figures }) => figures.map((one) => [one.id, one])));
}
