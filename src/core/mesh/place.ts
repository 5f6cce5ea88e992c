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

/** A land higher over the rim than this share of the part's height is the edge of a window. */
const windowShare = 0.2;

/** A rim that lies well above the rest of the part's outline edges a window. */
function wordOf({ boxMinMm, boxMaxMm, pull }: PartFrame, pointMm: Vec3, kind: FacetKind): string {
  if (kind !== 'rim') return kindWords[kind];
  let [low, high, own] = [0, 0, 0];
  for (const axis of [0, 1, 2] as const) {
    const [one, other] = [boxMinMm[axis] * pull[axis], boxMaxMm[axis] * pull[axis]];
    low += Math.min(one, other);
    high += Math.max(one, other);
    own += pointMm[axis] * pull[axis];
  }
  return own - low > windowShare * (high - low) ? 'window edge' : kindWords.rim;
}

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
  const word = wordOf(frame, pointMm, kind);
  const [far, near] = axesAcross(frame)
    .map((axis) => {
      const offset = offsetShare(frame, pointMm, axis);
      return { name: `${offset < 0 ? '−' : '+'}${'xyz'[axis]}`, away: Math.abs(offset) };
    })
    .sort((one, other) => other.away - one.away);
  if (far === undefined || near === undefined || far.away < middleShare) return `${word}, middle`;
  if (near.away >= cornerShare) return `${word}, ${far.name} ${near.name} corner`;
  return `${word}, ${far.name} side`;
}

/** Whether something with this box reaches toward both ends of the part along both axes across the pull. */
export function isAllOver(frame: PartFrame, lowMm: Vec3, highMm: Vec3): boolean {
  return axesAcross(frame).every(
    (axis) =>
      offsetShare(frame, lowMm, axis) <= -cornerShare && offsetShare(frame, highMm, axis) >= cornerShare,
  );
}

/** The place of something that reaches over most of the part: where it is worst comes first. */
export const fromWorst = (frame: PartFrame, worstAtMm: Vec3, kind: FacetKind): string =>
  `${placeName(frame, worstAtMm, kind)} and most of the rest`;
