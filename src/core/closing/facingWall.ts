/**
 * The wall that closing uses: the ball that fits between the facet and the plane of the facet that its ray meets,
 * ray × 2 cos φ / (1 + cos φ), φ the angle between the two. A ray alone is 21 % long on a 45° wedge and longer still
 * into corners; the ball inside the whole part shrinks to nothing beside an outside edge, where the gap in the mold
 * is whole. This one does neither (geometry, two tangent planes).
 */
import type { Measurement } from '../mesh/types';

type Measured = Pick<Measurement, 'normal' | 'rayWallMm' | 'rayFacet'>;

/** In mm; NaN where the ray meets nothing or a facet that does not look back. */
export function facingWallMm({ normal, rayWallMm, rayFacet }: Measured, facet: number): number {
  const hit = rayFacet[facet]!;
  if (hit < 0) return NaN;
  const n = 3 * facet;
  const m = 3 * hit;
  const facing = -(
    normal[n]! * normal[m]! +
    normal[n + 1]! * normal[m + 1]! +
    normal[n + 2]! * normal[m + 2]!
  );
  if (!(facing > 0)) return NaN;
  return (rayWallMm[facet]! * 2 * facing) / (1 + facing);
}
