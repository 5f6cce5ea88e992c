import type { Figure } from '../core/figure';
import { formatFigure } from '../core/units/formatFigure';
import { Disclosure } from '../ui/Disclosure';
import { FigureRow } from '../ui/FigureRow';

/** Figures that stand behind one line. */
export interface FigureGroup {
  readonly title: string;
  readonly ids: readonly string[];
  /** Figures whose values stand on the closed line. */
  readonly shown: readonly string[];
}

export interface FigureGroupsProps {
  readonly figures: readonly Figure[];
  readonly groups: readonly FigureGroup[];
}

/** Every figure that is in no group stands open above them. */
export function FigureGroups({ figures, groups }: FigureGroupsProps) {
  const grouped = new Set(groups.flatMap(({ ids }) => ids));
  const named = (ids: readonly string[]) => figures.filter(({ id }) => ids.includes(id));
  return (
    <>
      {figures
        .filter(({ id }) => !grouped.has(id))
        .map((figure) => (
          <FigureRow key={figure.id} figure={figure} />
        ))}
      {groups.map(({ title, ids, shown }) => (
        <Disclosure
          key={title}
          title={title}
          remark={named(shown)
            .map((figure) => formatFigure(figure))
            .join(' · ')}
        >
          {named(ids).map((figure) => (
            <FigureRow key={figure.id} figure={figure} />
          ))}
        </Disclosure>
      ))}
    </>
  );
}
