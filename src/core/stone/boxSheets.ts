/** What to cut for the mold box, from its inner size. */
import type { MoldBox } from './moldGeometry';

export interface BoxSheet {
  readonly name: string;
  readonly count: number;
  readonly lengthMm: number;
  readonly heightMm: number;
}

/**
 * Walls as high as both pours and `freeboardMm` more; two walls lie between the ends of the other two. A round cup takes
 * one strip, bent along its middle, with `overlapMm` to glue; rounded corners are filled in (clay or a printed fillet), so
 * the sheets stay those of the rectangle. The base carries the walls.
 */
export function boxSheets(
  box: MoldBox,
  sheetMm: number,
  freeboardMm: number,
  overlapMm: number,
): readonly BoxSheet[] {
  const [length, width, pours] = box.innerMm;
  const height = pours + freeboardMm;
  if (box.shape === 'cup')
    return [
      {
        name: 'strip, bent round',
        count: 1,
        lengthMm: Math.PI * (length + sheetMm) + overlapMm,
        heightMm: height,
      },
      {
        name: 'base',
        count: 1,
        lengthMm: length + 2 * sheetMm + 20,
        heightMm: length + 2 * sheetMm + 20,
      },
    ];
  return [
    { name: 'wall between the ends', count: 2, lengthMm: length, heightMm: height },
    { name: 'end wall', count: 2, lengthMm: width + 2 * sheetMm, heightMm: height },
    { name: 'base', count: 1, lengthMm: length + 2 * sheetMm + 20, heightMm: width + 2 * sheetMm + 20 },
  ];
}
