/** The closed mold cut along the pull, as plain lengths to draw to scale. */
import type { SectionPlane, Section, Vec3 } from '../../core/mesh/types';
import type { MoldBox } from '../../core/stone/moldGeometry';
import type { MoldInputs } from '../../steps/inputs/mold';

type Point = readonly [acrossMm: number, upMm: number];

export interface MoldCut {
  /** Cut lines of the pattern, closed, the show face upward; mm. */
  readonly outlines: readonly (readonly Point[])[];
  readonly box: {
    readonly left: number;
    readonly right: number;
    readonly low: number;
    readonly high: number;
  };
  /** Where the two halves meet beside the part. */
  readonly partingMm: number;
}

const axisNames = ['x', 'y', 'z'] as const;
/** A pull this near to an axis lies along it. */
const alongAxis = Math.cos((1 * Math.PI) / 180);
/** The box belongs to this cut when its width is that of the part with its cover, within this. */
const sameWidthMm = 1;

/** The axis that the pull lies along, and which way; null for a pull askew. */
function axisOf(pull: Vec3): { readonly axis: 0 | 1 | 2; readonly sense: 1 | -1 } | null {
  const length = Math.hypot(...pull);
  const axis = ([0, 1, 2] as const).find((one) => Math.abs(pull[one]) > alongAxis * length);
  return axis === undefined ? null : { axis, sense: pull[axis] > 0 ? 1 : -1 };
}

/** A plane through the middle of the part in which the pull points up or down; null for a pull askew. */
export function cutPlane(pull: Vec3, boxMinMm: Vec3, boxMaxMm: Vec3): SectionPlane | null {
  const along = axisOf(pull);
  if (along === null) return null;
  // The lines of a cut across x lie in (y, z), across y in (z, x), across z in (x, y): the pull is the second of them.
  const across = ((along.axis + 1) % 3) as 0 | 1 | 2;
  // Off the very middle, where a mesh often has a row of corners.
  const atMm = boxMinMm[across] + 0.503 * (boxMaxMm[across] - boxMinMm[across]);
  return { axis: axisNames[across], atMm };
}

function pointsOf(pointsMm: Float64Array, sense: 1 | -1): readonly Point[] {
  return Array.from({ length: pointsMm.length / 2 }, (_, at) => [
    pointsMm[2 * at]!,
    sense * pointsMm[2 * at + 1]!,
  ]);
}

/** @returns null where the box stands turned to the cut, so that its width in the cut is not its own */
export function moldCutOf(
  section: Section,
  pull: Vec3,
  boxMinMm: Vec3,
  boxMaxMm: Vec3,
  box: MoldBox,
  mold: MoldInputs,
): MoldCut | null {
  const along = axisOf(pull);
  if (along === null) return null;
  const { axis, sense } = along;
  const flat = ((axis + 2) % 3) as 0 | 1 | 2;
  const [low, high] = [boxMinMm[flat], boxMaxMm[flat]];
  const covers = [
    [mold.coverXLowMm, mold.coverXHighMm],
    [mold.coverYLowMm, mold.coverYHighMm],
  ] as const;
  const cover = covers.find(
    ([before, after], at) => Math.abs(box.innerMm[at]! - (high - low + before + after)) < sameWidthMm,
  );
  if (cover === undefined) return null;
  const partingMm = sense > 0 ? boxMinMm[axis] : -boxMaxMm[axis];
  return {
    outlines: section.lines.filter(({ closed }) => closed).map(({ pointsMm }) => pointsOf(pointsMm, sense)),
    box: {
      left: low - cover[0],
      right: high + cover[1],
      low: partingMm - box.positiveHeightMm,
      high: partingMm + box.negativeHeightMm,
    },
    partingMm,
  };
}
