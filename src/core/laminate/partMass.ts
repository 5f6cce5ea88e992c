/** Mass of the cured part from its mid-surface area: area times areal mass, summed over the skin and its patches. */
import { compensatedSum } from '../numeric/compensatedSum';
import { Problem } from '../problem';
import type { LaminateContent } from './bleedAndVoids';

/** A stack and the area it covers: the whole skin, or a local patch (only its extra plies). */
export interface CoveredArea {
  /** Midway between the faces; the mean of show-face and core-face area where only those are known. */
  readonly areaMm2: number;
  readonly content: Pick<LaminateContent, 'fiberGsm' | 'resinGsm' | 'resinLostGsm'>;
}

export interface PartMass {
  readonly partG: number;
  readonly fiberG: number;
  readonly resinG: number;
  /** Pressed out; part and lost resin together are the prepreg laid in. */
  readonly resinLostG: number;
}

/** Trimmed part, no coat and no inserts. */
export function partMass(covered: readonly CoveredArea[]): PartMass {
  if (!covered.every(({ areaMm2 }) => areaMm2 > 0 && Number.isFinite(areaMm2)))
    throw new Problem('laminate.area', 'The area that each stack covers must be more than zero.');
  const grams = (gsmOf: (content: CoveredArea['content']) => number) =>
    compensatedSum(covered.map(({ areaMm2, content }) => areaMm2 * 1e-6 * gsmOf(content)));
  const fiberG = grams((content) => content.fiberGsm);
  const resinG = grams((content) => content.resinGsm);
  return { partG: fiberG + resinG, fiberG, resinG, resinLostG: grams((content) => content.resinLostGsm) };
}
