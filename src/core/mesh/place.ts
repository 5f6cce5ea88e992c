import type { FacetKind, Vec3 } from './types';

/** What a place is told from: the part's box and its pull. */
export interface PartFrame {
  readonly boxMinMm: Vec3;
  readonly boxMaxMm: Vec3;
  readonly pull: Vec3;
}

const kindWords: Record<FacetKind, string> = {
  show: 'show face',
  core: 'core face',
  rim: 'rim',
  detail: 'boss or rib',
  trapped: 'undercut',
  unmeasured: 'open surface',
};

/** Within this share of the half size about the center a place is in the middle. */
const middleShare = 0.4;
/** Beyond this share along two axes a place is at a corner. */
const cornerShare = 0.6;

/** How far a point lies from the middle of the box along an axis: -1 to 1 across the box. */
function offsetShare({ boxMinMm, boxMaxMm }: PartFrame, pointMm: Vec3, axis: 0 | 1 | 2): number {
  const half = (boxMaxMm[axis] - boxMinMm[axis]) / 2;
  return half > 0 ? (pointMm[axis] - boxMinMm[axis]) / half - 1 : 0;
}

/** The two axes that lie most across the pull: the third tells no more than the kind of face does. */
function axesAcross({ pull }: PartFrame): readonly (0 | 1 | 2)[] {
  const [x, y, z] = [Math.abs(pull[0]), Math.abs(pull[1]), Math.abs(pull[2])];
  if (z >= x && z >= y) return [0, 1];
  return y >= x ? [2, 0] : [1, 2];
}

/**
 * A short place in words from the part's own axes, e.g. "show face, middle", "rim, −y side" or
 * "core face, +y −x corner" (the axis it lies further out along comes first).
 */
export function placeName(frame: PartFrame, pointMm: Vec3, kind: FacetKind): string {
  const [far, near] = axesAcross(frame)
    .map((axis) => {
      const offset = offsetShare(frame, pointMm, axis);
      return { name: `${offset < 0 ? '−' : '+'}${'xyz'[axis]}`, away: Math.abs(offset) };
    })
    .sort((one, other) => other.away - one.away);
  if (far === undefined || near === undefined || far.away < middleShare) return `${kindWords[kind]}, middle`;
  if (near.away >= cornerShare) return `${kindWords[kind]}, ${far.name} ${near.name} corner`;
  return `${kindWords[kind]}, ${far.name} side`;
}

/** Whether something with this box reaches toward both ends of the part along both axes across the pull. */
export function isAllOver(frame: PartFrame, lowMm: Vec3, highMm: Vec3): boolean {
  return axesAcross(frame).every(
    (axis) =>
      offsetShare(frame, lowMm, axis) <= -cornerShare && offsetShare(frame, highMm, axis) >= cornerShare,
  );
}

/** The place of something that reaches over most of the part. */
export function allOver(kind: FacetKind): string {
  return `${kindWords[kind]}, all over`;
}
