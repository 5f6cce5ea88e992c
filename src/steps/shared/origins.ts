/** Where an entry comes from, when it was taken from a card of the shop's shelf. */
import type { Figure, FigureStatus, StepReport } from '../../core/figure';

/** The least certain first. */
export const valueOrigins = ['typical', 'supplier', 'measured'] as const;
export type ValueOrigin = (typeof valueOrigins)[number];

/** By the path of the input; an entry that was changed since it was taken from its card is not in it. */
export type Origins = ReadonlyMap<string, ValueOrigin>;

const statusOf: Readonly<Record<ValueOrigin, FigureStatus>> = {
  typical: 'common practice',
  supplier: 'supplier’s sheet',
  measured: 'measured',
};

/** Figures that show an entry of a card have the status of where the card has it from. */
export function withOrigins(report: StepReport, origins: Origins): StepReport {
  return { ...report, figures: report.figures.map((figure) => figureWithOrigin(figure, origins)) };
}

/** Nobody after this asks which entries a figure shows. */
function figureWithOrigin({ entries = [], ...figure }: Figure, origins: Origins): Figure {
  const known = entries.map((path) => origins.get(path));
  if (known.length === 0 || known.includes(undefined)) return figure;
  const weakest = valueOrigins.find((origin) => known.includes(origin));
  return weakest === undefined ? figure : { ...figure, status: statusOf[weakest] };
}

/** Where an entry of the maker's own is likely to come from, until the maker says it. */
export function originOfEntry(isReadyMade: boolean, isMeasuredAtTheBench: boolean): ValueOrigin {
  if (isReadyMade) return 'typical';
  return isMeasuredAtTheBench ? 'measured' : 'supplier';
}
