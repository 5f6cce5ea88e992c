/** The cloth with its pieces in place: each remnant that is cut into, then the roll. */
import { carried, lineOf, type Drawing } from './drawing';
import type { FabricNest, Placement } from './nest';
import { boundsOf, posed, type Bounds2 } from './outline';
import { pieceDrawing } from './pieceDrawing';
import type { Outline } from './piece';

export interface ClothSheet {
  readonly title: string;
  readonly outlineMm: Outline;
  readonly bounds: Bounds2;
  readonly placements: readonly Placement[];
}

export function clothSheets({ roll, placements, rollLengthMm }: FabricNest): ClothSheet[] {
  const onRoll = placements.filter(({ remnant }) => remnant === null);
  const remnants = roll.remnantsMm.flatMap((outlineMm, remnant) => {
    const own = placements.filter((placement) => placement.remnant === remnant);
    const title = `${roll.fabric}, remnant ${remnant + 1}`;
    return own.length === 0 ? [] : [{ title, outlineMm, bounds: boundsOf(outlineMm), placements: own }];
  });
  const width = roll.widthMm ?? 0;
  const cloth: Outline = [
    [0, 0],
    [rollLengthMm, 0],
    [rollLengthMm, width],
    [0, width],
  ];
  return [
    ...remnants,
    ...(onRoll.length === 0
      ? []
      : [{ title: `${roll.fabric}, roll`, outlineMm: cloth, bounds: boundsOf(cloth), placements: onRoll }]),
  ];
}

export const clothOutline = ({ outlineMm }: ClothSheet): Drawing => ({
  lines: [lineOf('sheet', outlineMm, { closed: true })],
  texts: [],
});

/** Each piece at true size where it is cut. */
export const placedDrawing = (placement: Placement): Drawing =>
  carried(pieceDrawing(placement.piece), placement.turnDeg, (point) => posed(point, placement));
