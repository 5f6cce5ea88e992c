import type { Measurement } from '../mesh/types';
import { wallCorrections, type Repair } from '../stone/repairs';
import type { FacetSamples } from './closingTypes';

/** Filler that stands out as far as the whole wall leaves this: stone on stone, which the balance counts as crushed. */
const leastWallMm = 0.001;

/** The samples with the walls as the repaired stone leaves them; entries without a wall stay as they are. */
export function repairedSamples(
  samples: FacetSamples,
  { facetCount, centerMm, normal }: Pick<Measurement, 'facetCount' | 'centerMm' | 'normal'>,
  repairs: readonly Repair[],
): FacetSamples {
  const { areaMm2, wallMm } = samples;
  const known = Float32Array.from(wallMm, (wall, facet) => (areaMm2[facet]! > 0 && wall > 0 ? wall : NaN));
  const corrections = wallCorrections({ facetCount, centerMm, normal, wallMm: known }, repairs);
  const repaired = Float32Array.from(wallMm, (wall, facet) =>
    Number.isNaN(known[facet]) ? wall : Math.max(leastWallMm, wall + corrections[facet]!),
  );
  return { ...samples, wallMm: repaired };
}
