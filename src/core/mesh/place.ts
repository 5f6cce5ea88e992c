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

/**
 * A short place in words from the part's own axes, e.g. "show face, middle", "rim, −y side" or
 * "core face, +y −x corner". The axis nearest to the pull is left out: the kind of face tells it.
 */
export function placeName(frame: PartFrame, pointMm: Vec3, kind: FacetKind): string {
  const { boxMinMm, boxMaxMm, pull } = frame;
  const pullAxis = ([0, 1, 2] as const).reduce((best, axis) =>
    Math.abs(pull[axis]) > Math.abs(pull[best]) ? axis : best,
  );
  const offsets = ([0, 1, 2] as const)
    .filter((axis) => axis !== pullAxis)
    .map((axis) => {
      const half = (boxMaxMm[axis] - boxMinMm[axis]) / 2;
      const offset = half > 0 ? (pointMm[axis] - boxMinMm[axis]) / half - 1 : 0;
      return { name: `${offset < 0 ? '−' : '+'}${'xyz'[axis]}`, away: Math.abs(offset) };
    })
    .sort((one, other) => other.away - one.away);
  const far = offsets[0];
  const near = offsets[1];
  if (far === undefined || near === undefined || far.away < middleShare) return `${kindWords[kind]}, middle`;
  if (near.away >= cornerShare) return `${kindWords[kind]}, ${far.name} ${near.name} corner`;
  return `${kindWords[kind]}, ${far.name} side`;
}
