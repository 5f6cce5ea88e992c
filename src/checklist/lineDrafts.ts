/** What the sections of the checklist are put together from. */
import type { Caution, Figure, StepReport, Verdict } from '../core/figure';
import { formatFigure } from '../core/units/formatFigure';
import type { ChecklistLine, ChecklistSection } from './model';

export type LineDraft = Omit<ChecklistLine, 'record'>;
export type SectionDraft = Omit<ChecklistSection, 'lines'> & { readonly lines: readonly LineDraft[] };
/** By figure id. */
export type Figures = ReadonlyMap<string, Figure>;
/** By step id. */
export type Reports = ReadonlyMap<string, StepReport>;

export const line = (id: string, text: string, figures: readonly string[] = []): LineDraft => ({
  id,
  text,
  figures,
});

/** A line with room for a value that is measured at the bench. */
export const measuring = (
  id: string,
  text: string,
  label: string,
  unit: string,
  figures: readonly string[] = [],
): LineDraft => ({
  id,
  text,
  figures,
  measure: { label, unit },
});

/** The figure's value with its unit, or words for a gap that the maker fills. */
export function value(figures: Figures, id: string): string {
  const one = figures.get(id);
  return one === undefined ? 'not known' : formatFigure(one);
}

export const known = (figures: Figures, id: string) => (figures.get(id)?.value ?? null) !== null;

/** Verdicts of the steps that are not "go". */
export function warningsOf(reports: Reports, ...stepIds: readonly string[]): SectionDraft['warnings'] {
  return stepIds
    .flatMap((id) => reports.get(id)?.verdicts ?? [])
    .filter(({ word }) => word !== 'go')
    .map(({ word, reason, fix }: Verdict) => ({ word, reason, fix }));
}

/** Cautions by id, in the order asked for. */
export function cautionsOf(reports: Reports, ...ids: readonly string[]): readonly Caution[] {
  const all = [...reports.values()].flatMap(({ cautions }) => cautions);
  return ids.flatMap((id) => all.filter((caution) => caution.id === id));
}
