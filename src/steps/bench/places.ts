/** The places of the part that the paper sends the maker to, lettered, on the plan seen along the pull. */
import type { Vec3 } from '../../core/mesh/types';
import type { ClosingFrame } from '../../core/closing/closingTypes';
import type { StepContext } from '../shared/context';

export interface NotedPlace {
  /** "A"; as on the printed map. */
  readonly letter: string;
  readonly finding: 'thick' | 'thin' | 'locks' | 'drags' | 'tight corner' | 'tight edge' | 'boss or rib';
  /** In words, e.g. "show face, middle". */
  readonly place: string;
  /** The value there: mm of wall, degrees, or mm of radius. */
  readonly worst: number;
  readonly areaMm2: number;
  /** From the middle of the part, along the two axes across the pull. */
  readonly planMm: readonly [number, number];
  /** A caliper tells something there. */
  readonly isWall: boolean;
}

/** More than this nobody walks to at the bench; the sheets on screen have them all. */
const mostPlaces = 6;

/** A wall that is wrong all over is a question of stack or print, told by the verdict, not of single places. */
export function placesThatMatter({ measured }: StepContext): readonly NotedPlace[] {
  const patches = measured?.patches ?? null;
  if (measured === null || patches === null) return [];
  const { frame } = measured.summary.closing;
  return patches.slice(0, mostPlaces).map(({ finding, place, worst, worstAtMm, areaMm2 }, at) => ({
    letter: String.fromCodePoint(65 + at),
    finding,
    place: place.replace(/^undercut, /u, ''),
    worst,
    areaMm2,
    planMm: onPlan(frame, worstAtMm),
    isWall: finding === 'thick' || finding === 'thin',
  }));
}

/** From the middle of the part, along u and v of the frame. */
function onPlan({ u, v, originMm }: ClosingFrame, point: Vec3): readonly [number, number] {
  const off = [point[0] - originMm[0], point[1] - originMm[1], point[2] - originMm[2]] as const;
  const along = (axis: Vec3) => axis[0] * off[0] + axis[1] * off[1] + axis[2] * off[2];
  return [along(u), along(v)];
}
