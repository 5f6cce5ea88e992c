/** The box and the pours as the maker chose them, in the words of the pour geometry. */
import type { PourChoices } from '../../core/stone/pours/pourChoices';
import type { ProjectInputs } from '../inputs/project';

export function pourChoicesOf({ part, mold }: Pick<ProjectInputs, 'part' | 'mold'>): PourChoices {
  return {
    pull: part.pull,
    shape: mold.boxShape,
    coverMm: {
      xLowMm: mold.coverXLowMm,
      xHighMm: mold.coverXHighMm,
      yLowMm: mold.coverYLowMm,
      yHighMm: mold.coverYHighMm,
      overShowMm: mold.coverOverShowMm,
      underRimMm: mold.coverUnderRimMm,
    },
    landWidthMm: mold.landWidthMm,
    cornerRadiusMm: mold.cornerRadiusMm,
    wallDraftDeg: mold.wallDraftDeg,
    keys: { count: mold.keyCount, diameterMm: mold.keyDiameterMm, heightMm: mold.keyHeightMm },
    prySlots: {
      count: mold.prySlotCount,
      widthMm: mold.prySlotWidthMm,
      depthMm: mold.prySlotDepthMm,
      heightMm: mold.prySlotHeightMm,
    },
  };
}
