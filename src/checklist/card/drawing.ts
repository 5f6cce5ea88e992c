/** A drawing for paper as plain data, in mm at full size; page and file draw the same one. */

/** How a face is filled; ink on paper must tell them apart without color. */
export type Fill = 'negative' | 'positive' | 'laminate' | 'void' | 'disc' | 'band';
export type Stroke = 'outline' | 'dimension' | 'dial' | 'laminate' | 'guide';
export type Point = readonly [number, number];

export type Mark =
  | { readonly kind: 'face'; readonly points: readonly Point[]; readonly fill: Fill }
  | { readonly kind: 'line'; readonly points: readonly Point[]; readonly stroke: Stroke }
  | { readonly kind: 'disc'; readonly at: Point; readonly text: string; readonly hollow: boolean }
  | {
      readonly kind: 'text';
      readonly at: Point;
      readonly text: string;
      readonly anchor: 'start' | 'middle' | 'end';
    };

export interface Drawing {
  readonly title: string;
  /** What it shows, in words: for those who cannot see it. */
  readonly told: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Full size over drawn size; null for a chart, which has none. */
  readonly scale: number | null;
  readonly marks: readonly Mark[];
}

const scales = [1, 1.5, 2, 2.5, 3, 4, 5, 7.5, 10, 15, 20, 50, 100];

/** The least usual scale at which a thing fits a frame on paper. */
export function scaleFor(thing: Point, frame: Point): number {
  const least = Math.max(thing[0] / frame[0], thing[1] / frame[1]);
  return scales.find((one) => one >= least) ?? Math.ceil(least);
}

export const box = (x: number, y: number, width: number, height: number): readonly Point[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

/** A dimension line with its two ticks and its number, drawn mm. */
export function dimension(from: Point, to: Point, text: string): readonly Mark[] {
  const upright = from[0] === to[0];
  const tick = 1.2;
  const ends = [from, to].map(([x, y]): Mark => ({
    kind: 'line',
    stroke: 'dimension',
    points: upright
      ? [
          [x - tick, y],
          [x + tick, y],
        ]
      : [
          [x, y - tick],
          [x, y + tick],
        ],
  }));
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return [
    { kind: 'line', stroke: 'dimension', points: [from, to] },
    ...ends,
    upright
      ? { kind: 'text', at: [middle[0] + 1.2, middle[1] + 1], text, anchor: 'start' }
      : { kind: 'text', at: [middle[0], middle[1] + 3.6], text, anchor: 'middle' },
  ];
}
