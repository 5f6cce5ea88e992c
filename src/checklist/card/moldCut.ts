/**
 * A cut through the closed mold, to scale, from plain numbers: box, cover, wall and part. The shape of the part is simplified
 * to its length, depth and draft; every dimension on it is to scale.
 */
import { formatNumber } from '../../core/units/formatNumber';
import { box, dimension, scaleFor, type Drawing, type Mark, type Point } from './drawing';

export interface MoldCutNumbers {
  /** Inside of the box along the cut. */
  readonly boxMm: number;
  /** Stone from the parting to the back. */
  readonly negativeMm: number;
  readonly positiveMm: number;
  /** Of the part along the cut, and along the pull. */
  readonly partMm: number;
  readonly depthMm: number;
  /** Gap between the two stone faces. */
  readonly gapMm: number;
  readonly draftDeg: number;
}

const frame: Point = [76, 40];
/** Thinner than this nobody sees; drawn so thick at least. */
const leastDrawnMm = 0.7;
const mm = (length: number) => formatNumber(length, 1);

/** From rim to rim over the top, the part's outline pushed in by so much, drawn mm; y grows downward. */
function dome(middle: number, rimY: number, half: number, depth: number, lean: number): readonly Point[] {
  return [
    [middle - half, rimY],
    [middle - half + lean, rimY - depth],
    [middle + half - lean, rimY - depth],
    [middle + half, rimY],
  ];
}

export function moldCut(numbers: MoldCutNumbers): Drawing {
  const { boxMm, negativeMm, positiveMm, partMm, depthMm, gapMm, draftDeg } = numbers;
  const scale = scaleFor([boxMm, negativeMm + positiveMm], frame);
  const drawn = (length: number) => length / scale;
  const [width, above, below] = [drawn(boxMm), drawn(negativeMm), drawn(positiveMm)];
  const left = 1;
  const top = 1;
  const middle = left + width / 2;
  const parting = top + above;
  const half = drawn(partMm) / 2;
  const depth = drawn(depthMm);
  const lean = Math.min(half / 2, depth * Math.tan((Math.max(0, draftDeg) * Math.PI) / 180));
  const wall = Math.min(half / 3, depth / 2, Math.max(drawn(gapMm), leastDrawnMm));
  const outside = dome(middle, parting, half, depth, lean);
  const inside = dome(middle, parting, half - wall, depth - wall, lean);
  const cover = negativeMm - depthMm;
  const marks: readonly Mark[] = [
    { kind: 'face', points: box(left, top, width, above), fill: 'negative' },
    { kind: 'face', points: box(left, parting, width, below), fill: 'positive' },
    { kind: 'face', points: outside, fill: 'laminate' },
    { kind: 'face', points: inside, fill: 'positive' },
    {
      kind: 'line',
      stroke: 'outline',
      points: [
        [left, parting],
        [left + width, parting],
      ],
    },
    { kind: 'text', at: [left + 1, top + 3.2], text: 'negative', anchor: 'start' },
    { kind: 'text', at: [left + 1, parting + below - 1.2], text: 'positive', anchor: 'start' },
    ...dimension([middle, top], [middle, parting - depth], mm(cover)),
    ...dimension(
      [middle + half - lean - wall - 9, parting - depth + wall],
      [middle + half - lean - wall - 9, parting],
      mm(depthMm),
    ),
    ...dimension([left, parting + below + 2.4], [left + width, parting + below + 2.4], mm(boxMm)),
    ...dimension([left + width + 2, top], [left + width + 2, parting], mm(negativeMm)),
    ...dimension([left + width + 2, parting], [left + width + 2, parting + below], mm(positiveMm)),
    { kind: 'text', at: [middle, parting - 1.2], text: `gap ${formatNumber(gapMm, 2)}`, anchor: 'middle' },
  ];
  return {
    title: 'Cut through the closed mold',
    told: `Box ${mm(boxMm)} mm long, negative ${mm(negativeMm)} mm and positive ${mm(positiveMm)} mm high, ${mm(cover)} mm of stone over the show face, part ${mm(depthMm)} mm deep, gap ${formatNumber(gapMm, 2)} mm.`,
    widthMm: left + width + 12,
    heightMm: parting + below + 7,
    scale,
    marks,
  };
}
