/** What is drawn on a sheet, in mm with y up from its lower left corner: the one model behind paper and plotter files. */
import type { Point2 } from './piece';

/** What a line is for: the plotter's operator picks by it, paper draws by it. */
export type Layer = 'cut' | 'afterCure' | 'mark' | 'text' | 'sheet';

export interface DrawnLine {
  readonly layer: Exclude<Layer, 'text'>;
  readonly points: readonly Point2[];
  readonly closed: boolean;
  /** Dashed: seen, not cut. */
  readonly dashed: boolean;
  readonly widthMm: number;
}

export interface DrawnText {
  readonly text: string;
  readonly atMm: Point2;
  /** Height of capitals is about 0.72 of it. */
  readonly sizeMm: number;
  readonly turnDeg: number;
  readonly anchor: 'start' | 'middle';
}

export interface Drawing {
  readonly lines: readonly DrawnLine[];
  readonly texts: readonly DrawnText[];
}

export interface DrawnSheet extends Drawing {
  readonly widthMm: number;
  readonly heightMm: number;
}

export const lineOf = (
  layer: DrawnLine['layer'],
  points: readonly Point2[],
  more: Partial<DrawnLine> = {},
): DrawnLine => ({ layer, points, closed: false, dashed: false, widthMm: 0.18, ...more });

export const textOf = (
  text: string,
  atMm: Point2,
  sizeMm: number,
  more: Partial<DrawnText> = {},
): DrawnText => ({
  text,
  atMm,
  sizeMm,
  turnDeg: 0,
  anchor: 'start',
  ...more,
});

export const together = (drawings: readonly Drawing[]): Drawing => ({
  lines: drawings.flatMap(({ lines }) => lines),
  texts: drawings.flatMap(({ texts }) => texts),
});

/** Every point through one similarity: turned and scaled about the origin, then moved. */
export function carried(
  { lines, texts }: Drawing,
  turnDeg: number,
  move: (point: Point2) => Point2,
  scale = 1,
): Drawing {
  return {
    lines: lines.map((line) => ({ ...line, points: line.points.map(move) })),
    texts: texts.map((text) => ({
      ...text,
      atMm: move(text.atMm),
      turnDeg: text.turnDeg + turnDeg,
      sizeMm: text.sizeMm * scale,
    })),
  };
}

export function circleOf(layer: DrawnLine['layer'], [x, y]: Point2, radiusMm: number): DrawnLine {
  const points = Array.from({ length: 24 }, (_, i): Point2 => {
    const at = (2 * Math.PI * i) / 24;
    return [x + radiusMm * Math.cos(at), y + radiusMm * Math.sin(at)];
  });
  return lineOf(layer, points, { closed: true });
}
