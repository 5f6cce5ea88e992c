/**
 * What was filled and scraped on the stone, as a correction of the wall between the halves: the mold as it is, not as it
 * was cast. Scraped stone leaves more room, so the part gets thicker there; filler that stands proud leaves less.
 */
import type { Vec3 } from '../mesh/types';

export interface Repair {
  readonly id: string;
  readonly half: 'negative' | 'positive';
  /** Filled: the filler stands proud by `depthMm` (0 for flush). Scraped: stone is gone by `depthMm`. */
  readonly kind: 'filled' | 'scraped';
  /** In the part's own axes. */
  readonly atMm: Vec3;
  readonly radiusMm: number;
  readonly depthMm: number;
}

/** Signed change of the wall at the repair, mm; positive is thicker. */
export function repairStepMm({ kind, depthMm }: Repair): number {
  return kind === 'scraped' ? depthMm : -depthMm;
}

/** What is needed of each facet; arrays as in `Measurement`. */
export interface RepairedSurface {
  readonly facetCount: number;
  readonly centerMm: Float32Array;
  readonly normal: Float32Array;
  /** Wall at the facet; NaN where it has none. */
  readonly wallMm: Float32Array;
}

/**
 * Sum of the corrections at each facet, mm. A repair reaches the facets whose centers lie within its radius measured
 * along the surface's own plane, on its own skin and on the skin behind it (so that a repair of either half changes the
 * wall seen from the show face). Facets without a wall are left at 0.
 */
export function wallCorrections(surface: RepairedSurface, repairs: readonly Repair[]): Float32Array {
  const corrections = new Float32Array(surface.facetCount);
  const { centerMm, normal, wallMm } = surface;
  for (const repair of repairs) {
    const stepMm = repairStepMm(repair);
    if (stepMm === 0) continue;
    const [x, y, z] = repair.atMm;
    for (let facet = 0; facet < surface.facetCount; facet++) {
      const wall = wallMm[facet]!;
      if (Number.isNaN(wall)) continue;
      const at = 3 * facet;
      const [dx, dy, dz] = [x - centerMm[at]!, y - centerMm[at + 1]!, z - centerMm[at + 2]!];
      const along = dx * normal[at]! + dy * normal[at + 1]! + dz * normal[at + 2]!;
      const across = Math.sqrt(Math.max(0, dx * dx + dy * dy + dz * dz - along * along));
      // Behind the facet by up to its wall, with room for a curved face within the radius.
      const room = repair.radiusMm / 2;
      if (across <= repair.radiusMm && along <= room && along >= -wall - room)
        corrections[facet] = corrections[facet]! + stepMm;
    }
  }
  return corrections;
}
