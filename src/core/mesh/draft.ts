import type { Vec3 } from './types';

const degreesPerRadian = 180 / Math.PI;

/** A facet looks away from the pull when its draft is below this; the slack keeps float noise of upright walls out. */
const awayBelowDeg = -0.01;

/**
 * A face this little under the accepted draft meets it, degrees: files and the saved grid round corners by up to some
 * micrometers, which turns the small facets of a wall drawn at exactly the accepted draft by hundredths of a degree.
 */
export const draftToleranceDeg = 0.05;

/**
 * Faces with less draft toward their mold half than this drag, when `leastDraftDeg` is accepted. Rounded to float32,
 * as drafts are stored, so that map, patches and area shares class a facet on the border alike.
 */
export function dragsBelowDeg(leastDraftDeg: number): number {
  return Math.fround(leastDraftDeg - draftToleranceDeg);
}

/**
 * Draft of every facet in degrees: asin(n . pull), 90 for a facet that faces the pull, 0 for an upright wall,
 * negative where it looks away. `normal` holds 3 numbers per facet, `pull` is a unit vector; a facet without area
 * (zero normal) gets 0.
 */
export function draftDegrees(normal: Float32Array, pull: Vec3): Float32Array {
  const [px, py, pz] = pull;
  const draftDeg = new Float32Array(normal.length / 3);
  for (let facet = 0, at = 0; facet < draftDeg.length; facet++, at += 3) {
    const sine = normal[at]! * px + normal[at + 1]! * py + normal[at + 2]! * pz;
    draftDeg[facet] = Math.asin(sine > 1 ? 1 : sine < -1 ? -1 : sine) * degreesPerRadian;
  }
  return draftDeg;
}

/** Area shares, 0 to 1, of all facets by their draft along the pull. */
export interface DraftShares {
  /** -0.01 <= draft < 1 degree. */
  readonly under1DegShare: number;
  /** -0.01 <= draft < 3 degrees. */
  readonly under3DegShare: number;
  /** draft < -0.01 degrees. */
  readonly awayShare: number;
}

/** Area-weighted shares by draft; all 0 for a surface without area. */
export function draftShares(draftDeg: Float32Array, areaMm2: Float32Array): DraftShares {
  let whole = 0;
  let under1 = 0;
  let under3 = 0;
  let away = 0;
  for (let facet = 0; facet < draftDeg.length; facet++) {
    const area = areaMm2[facet]!;
    const draft = draftDeg[facet]!;
    whole += area;
    if (draft < awayBelowDeg) away += area;
    else if (draft < 3) {
      under3 += area;
      if (draft < 1) under1 += area;
    }
  }
  if (whole === 0) return { under1DegShare: 0, under3DegShare: 0, awayShare: 0 };
  return { under1DegShare: under1 / whole, under3DegShare: under3 / whole, awayShare: away / whole };
}
