import type { PatternSummary } from '../../core/pattern/makePattern';

/** So many filled places are worth a look. */
export const mostFilledShown = 20;

/** Finer than any drawing needs. */
const rounded = (value: number): number => Math.round(1000 * value) / 1000;

/** What is saved with a made pattern in use, small: lists and drill template stay, and what no page shows goes. */
export function keptSummary(summary: PatternSummary): PatternSummary {
  const { holes, filled, template } = summary;
  return {
    ...summary,
    // The template has them.
    holes: holes.map((hole) => ({ ...hole, runsMm: [] })),
    filled: filled.slice(0, mostFilledShown),
    template: template && {
      ...template,
      outlineMm: template.outlineMm.map(rounded),
      holes: template.holes.map(({ number, runsMm }) => ({
        number,
        runsMm: runsMm.map(([x, y, length]) => [rounded(x), rounded(y), rounded(length)] as const),
      })),
    },
  };
}
