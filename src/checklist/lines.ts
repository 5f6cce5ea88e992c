/** What actions are put together from. */
import type { Figure, StepReport } from '../core/figure';
import { formatFigure } from '../core/units/formatFigure';
import { formatNumber } from '../core/units/formatNumber';
import type { StepContext } from '../steps/shared/context';
import type { MoldWork } from '../steps/stone/work';
import type { FactTable, PhasePage, PrintedBlank } from './model';

/** By figure id. */
export type Figures = ReadonlyMap<string, Figure>;
/** By step id. */
export type Reports = ReadonlyMap<string, StepReport>;

/** What every phase is made from. */
export interface Material {
  readonly context: StepContext;
  readonly reports: Reports;
  readonly figures: Figures;
  readonly work: MoldWork;
  readonly blanks: readonly PrintedBlank[];
  /** A check says stop: nothing is printed as if it were to be mixed or run. */
  readonly isHeld: boolean;
}

/** An action before it is known whether it was done. */
export interface Step {
  readonly id: string;
  readonly text: string;
  readonly figures: readonly string[];
  readonly blanks: readonly PrintedBlank[];
}

export interface PhaseDraft extends Pick<PhasePage, 'id' | 'title' | 'stops'> {
  readonly table: FactTable | null;
  readonly actions: readonly Step[];
}

export const line = (
  id: string,
  text: string,
  figures: readonly string[] = [],
  blanks: readonly PrintedBlank[] = [],
): Step => ({ id, text, figures, blanks });

/** The blanks of these ids, those that begin with one that ends in a dot included. */
export function blanksOf({ blanks }: Material, ...ids: readonly string[]): readonly PrintedBlank[] {
  return ids.flatMap((id) =>
    blanks.filter((one) => (id.endsWith('.') ? one.id.startsWith(id) : one.id === id)),
  );
}

/** A line that is only there for its blanks. */
export function reading(
  material: Material,
  id: string,
  text: string,
  blankIds: readonly string[],
  figures: readonly string[] = [],
): readonly Step[] {
  const blanks = blanksOf(material, ...blankIds);
  return blanks.length === 0 ? [] : [line(id, text, figures, blanks)];
}

/** The figure's value with its unit, or words for a gap that the maker fills. */
export function value({ figures }: Pick<Material, 'figures'>, id: string): string {
  const one = figures.get(id);
  return one === undefined ? 'not known' : formatFigure(one);
}

export const isKnown = ({ figures }: Pick<Material, 'figures'>, id: string) =>
  (figures.get(id)?.value ?? null) !== null;

/** Why verdicts of these ids, or whose ids start so, say stop. */
export function stopsOf({ reports }: Material, ...ids: readonly string[]): readonly string[] {
  return [...reports]
    .filter(([stepId]) => stepId !== 'checklist')
    .flatMap(([, { verdicts }]) => verdicts)
    .filter(({ id, word }) => word === 'stop' && ids.some((start) => id.startsWith(start)))
    .map(({ reason }) => reason);
}

/** In place of a recipe that must not be followed. */
export const heldBack = 'held back: a check says stop';

export const millimeters = (length: number, decimals = 1) => `${formatNumber(length, decimals)} mm`;
export const minutes = (time: number) => `${formatNumber(time, Number.isInteger(time) ? 0 : 1)} min`;
export const degrees = (angle: number) => `${formatNumber(angle, 0)}°`;
