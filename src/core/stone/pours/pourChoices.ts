import { Problem } from '../../problem';
import type { Vec3 } from '../../mesh/types';
import type { BoxShape } from '../moldGeometry';

/** Stone left around the pattern, seen along the pull. */
export interface StoneCover {
  /** Across the pull, beyond the pattern's outline toward the low and high end of each box axis. */
  readonly xLowMm: number;
  readonly xHighMm: number;
  readonly yLowMm: number;
  readonly yHighMm: number;
  /** Over the highest place of the show face. */
  readonly overShowMm: number;
  /** Under the lowest place of the pattern. */
  readonly underRimMm: number;
}

/** What the maker chooses for the box and the two pours. Lengths mm, angles degrees. */
export interface PourChoices {
  /** Direction in which the negative leaves the show face. */
  readonly pull: Vec3;
  readonly shape: BoxShape;
  readonly coverMm: StoneCover;
  /** Least width of the flat land around the outline; the side cover is never less. */
  readonly landWidthMm: number;
  /** Of a rounded rectangle's corners. */
  readonly cornerRadiusMm: number;
  /** By which the walls lean outward, away from the parting, in both pours. */
  readonly wallDraftDeg: number;
  /** Frustum-shaped keys on the lands: dimples in the negative, studs on the positive. */
  readonly keys: { readonly count: number; readonly diameterMm: number; readonly heightMm: number };
  /** Notches at the parting in the outside of the block, half in each half. */
  readonly prySlots: {
    readonly count: number;
    readonly widthMm: number;
    readonly depthMm: number;
    readonly heightMm: number;
  };
}

/** Ten millimeters of stone all round, four keys, two pry slots: common practice, no source. */
export const usualPours: Omit<PourChoices, 'pull'> = {
  shape: 'rectangle',
  coverMm: { xLowMm: 10, xHighMm: 10, yLowMm: 10, yHighMm: 10, overShowMm: 10, underRimMm: 10 },
  landWidthMm: 10,
  cornerRadiusMm: 10,
  wallDraftDeg: 0,
  keys: { count: 4, diameterMm: 5, heightMm: 2 },
  prySlots: { count: 2, widthMm: 12, depthMm: 3, heightMm: 2 },
};

/** @throws Problem `pours.cover`, `pours.draft`, `pours.keys` or `pours.prySlots` */
export function checkPourChoices(choices: PourChoices): void {
  const covers = Object.values(choices.coverMm);
  if (![...covers, choices.landWidthMm].every((mm) => Number.isFinite(mm) && mm > 0)) {
    throw new Problem(
      'pours.cover',
      'Stone cover and land width must be above 0 mm on every side. Give at least a few millimeters.',
    );
  }
  if (!(choices.wallDraftDeg >= 0 && choices.wallDraftDeg <= 30)) {
    throw new Problem('pours.draft', 'The draft of the box walls must lie between 0 and 30 degrees.');
  }
  if (!(choices.cornerRadiusMm >= 0 && Number.isFinite(choices.cornerRadiusMm))) {
    throw new Problem('pours.corners', 'The corner radius of the box must be 0 mm or more.');
  }
  const { keys, prySlots } = choices;
  if (!isCount(keys.count) || (keys.count > 0 && !(keys.diameterMm > 0 && keys.heightMm > 0))) {
    throw new Problem(
      'pours.keys',
      'Give 0 to 12 keys, with a diameter and a height above 0 mm when there are any.',
    );
  }
  if (
    !isCount(prySlots.count) ||
    (prySlots.count > 0 && !(prySlots.widthMm > 0 && prySlots.depthMm > 0 && prySlots.heightMm > 0))
  ) {
    throw new Problem(
      'pours.prySlots',
      'Give 0 to 12 pry slots, with a width, depth and height above 0 mm when there are any.',
    );
  }
  if (prySlots.count > 0 && prySlots.depthMm >= leastSideMm(choices)) {
    throw new Problem(
      'pours.prySlots',
      'The pry slots would reach through the land to the pattern. Make them less deep than the stone cover.',
    );
  }
}

/** Narrowest land beside the pattern, mm. */
const leastSideMm = ({ coverMm, landWidthMm }: PourChoices) =>
  Math.max(landWidthMm, Math.min(coverMm.xLowMm, coverMm.xHighMm, coverMm.yLowMm, coverMm.yHighMm));

const isCount = (count: number) => Number.isInteger(count) && count >= 0 && count <= 12;
