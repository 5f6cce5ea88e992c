/** Inputs of the mold box: shape, cover, lands, keys, pry slots, sheets. Ready-made values are common practice. */
import { choice, folded, number } from '../kit/inputTable';

const cover = (side: string) =>
  number(`Stone cover, ${side}`, 'mm', 10, [1, 200, 1], {
    meaning: `Stone between the pattern and the box, ${side}, seen along the pull; 10 mm or more is common practice.`,
  });

export const boxShape = choice('Shape of the box', 'rectangle', {
  meaning: 'Outline of the mold box seen along the pull.',
  choices: { rectangle: 'rectangle', 'rounded rectangle': 'rectangle with round corners', cup: 'round cup' },
});

export const boxNumbers = {
  ...folded('Stone cover and lands', {
    coverXLowMm: cover('low end of the first box axis'),
    coverXHighMm: cover('high end of the first box axis'),
    coverYLowMm: cover('low end of the second box axis'),
    coverYHighMm: cover('high end of the second box axis'),
    coverOverShowMm: cover('over the show face'),
    coverUnderRimMm: cover('behind the rim'),
    landWidthMm: number('Least land round the rim', 'mm', 10, [1, 100, 1], {
      meaning: 'Flat stone all round the rim on which the halves meet; the side cover is never less.',
    }),
    leastStoneMm: number('Least stone I accept', 'mm', 5, [0.5, 50, 1], {
      meaning: 'Stone thinner than this anywhere counts as a place that breaks first.',
    }),
  }),
  ...folded('Walls, keys and pry slots', {
    wallDraftDeg: number('Draft of the box walls', '°', 0, [0, 30, 1], {
      meaning: 'By which each box wall leans outward from the parting, so that the block slides out.',
    }),
    cornerRadiusMm: number('Round corners of the box', 'mm', 10, [0, 200, 1], {
      meaning: 'Radius of the box corners; only used for the rectangle with round corners.',
    }),
    keyCount: number('Registration keys', '', 4, [0, 12, 0], {
      meaning: 'Dimples on the lands of the negative that the positive is cast into; three or more hold it.',
      whole: true,
    }),
    keyDiameterMm: number('Key diameter', 'mm', 5, [1, 50, 1], {
      meaning: 'At the land; a key wider than half the land leaves a thin edge.',
    }),
    keyHeightMm: number('Key height', 'mm', 2, [0.5, 50, 1], {
      meaning: 'How deep the key stands in the negative; keep it under half its diameter so that it lets go.',
    }),
    prySlotCount: number('Pry slots', '', 2, [0, 12, 0], {
      meaning: 'Notches in the outside of the block at the parting, to open it with wooden wedges.',
      whole: true,
    }),
    prySlotWidthMm: number('Pry slot width', 'mm', 12, [1, 100, 1], {
      meaning: 'Along the outside of the block.',
    }),
    prySlotDepthMm: number('Pry slot depth', 'mm', 3, [0.5, 50, 1], {
      meaning: 'Into the block; it must stay well short of the land inside.',
    }),
    prySlotHeightMm: number('Pry slot height', 'mm', 2, [0.5, 50, 1], {
      meaning: 'Along the pull, half of it in each half.',
    }),
    sheetMm: number('Thickness of the box sheets', 'mm', 5, [0.1, 30, 1], {
      meaning: 'Of the board or plastic that the box is made of, for the cut list.',
    }),
    freeboardMm: number('Box higher than the pours', 'mm', 10, [0, 100, 0], {
      meaning: 'So that stone does not spill when the box is tapped.',
    }),
  }),
};
