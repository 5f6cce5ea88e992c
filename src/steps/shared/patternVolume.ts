/** The one volume of the pattern that every step, sheet and paper tells. */
import type { MoldGeometry } from '../../core/stone/moldGeometry';
import { formatNumber } from '../../core/units/formatNumber';
import type { MeasuredPart, StepContext } from './context';

export interface PatternVolume {
  readonly mm3: number;
  /** What holes, or columns that disagree, leave open; null where nothing is open. */
  readonly bandMm3: readonly [number, number] | null;
  /** How it was had, sentences for the figures that show it. */
  readonly working: readonly string[];
}

/** Of the drawn facets, or null while nothing is known or where the holes could hold most of it. */
function asDrawn({ summary, health }: MeasuredPart): PatternVolume | null {
  if (summary.volumeMm3 === null) return null;
  return {
    mm3: summary.volumeMm3,
    bandMm3: summary.volumeBandMm3,
    working: [
      `Σ a·(b × c) / 6 over ${formatNumber(summary.facetCount, 0)} facets.`,
      ...(summary.volumeBandMm3 === null
        ? []
        : ['Holes are closed flat; the band is what they could hold, domed out or in.']),
      ...(health.bodies.length > 1
        ? ['Where bodies overlap the overlap counts twice, until the mold is worked out and joins them.']
        : []),
    ],
  };
}

function inTheMold(
  { patternMm3, errorMm3, method }: MoldGeometry,
  drawn: PatternVolume | null,
): PatternVolume {
  const isDrawn = drawn !== null && Math.abs(patternMm3 - drawn.mm3) <= sameShare * Math.abs(drawn.mm3);
  const { pattern } = errorMm3;
  return {
    mm3: patternMm3,
    bandMm3: pattern > 0 ? [Math.max(0, patternMm3 - pattern), patternMm3 + pattern] : null,
    working: isDrawn
      ? drawn.working.filter((line) => !line.startsWith('Where bodies overlap'))
      : [
          method === 'solid booleans'
            ? 'The bodies joined into one solid, so what overlaps counts once.'
            : 'Summed along columns of the pull, since the surface does not tell it: what overlaps counts once.',
          ...(pattern > 0 ? ['The band is by how much columns and surface disagree.'] : []),
          ...(drawn === null ? [] : [`Facets alone: ${formatNumber(drawn.mm3, 0)} mm³.`]),
        ],
  };
}

/** Solids are worked out in single precision. */
const sameShare = 1e-6;

/**
 * What the pattern's surface encloses, bodies that overlap counted once: as the mold has it, which joins them; before that
 * as the facets have it. null without a pattern, and where neither can tell.
 */
export function patternVolume({ measured, mold }: StepContext): PatternVolume | null {
  if (measured === null) return null;
  const drawn = asDrawn(measured);
  return mold === null ? drawn : inTheMold(mold, drawn);
}
