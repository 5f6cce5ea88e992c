/** A sheet as DXF of release 12, which every plotter reads: polylines in mm, one layer for each kind of line. */
import type { DrawnLine, DrawnSheet, DrawnText, Layer } from './drawing';

/** Name, and index of its color. */
const layers: Readonly<Record<Layer, readonly [string, number]>> = {
  cut: ['CUT', 7],
  afterCure: ['CUT_AFTER_CURE', 1],
  mark: ['MARK', 5],
  text: ['TEXT', 3],
  sheet: ['SHEET', 8],
};

const num = (value: number) => value.toFixed(4);

/** Group codes and values, one a line. */
type Pairs = readonly (readonly [code: number, value: string])[];

export function writeDxf(sheet: DrawnSheet): string {
  const pairs: Pairs = [
    ...header(sheet),
    ...tables(),
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...sheet.lines.flatMap(polyline),
    ...sheet.texts.flatMap(textEntity),
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ];
  return `${pairs.map(([code, value]) => `${code}\n${value}`).join('\n')}\n`;
}

const header = ({ widthMm, heightMm }: DrawnSheet): Pairs => [
  [0, 'SECTION'],
  [2, 'HEADER'],
  [9, '$ACADVER'],
  [1, 'AC1009'],
  // Millimeters.
  [9, '$INSUNITS'],
  [70, '4'],
  [9, '$EXTMIN'],
  [10, num(0)],
  [20, num(0)],
  [9, '$EXTMAX'],
  [10, num(widthMm)],
  [20, num(heightMm)],
  [0, 'ENDSEC'],
];

function tables(): Pairs {
  const names = Object.values(layers);
  return [
    [0, 'SECTION'],
    [2, 'TABLES'],
    [0, 'TABLE'],
    [2, 'LTYPE'],
    [70, '2'],
    ...lineType('CONTINUOUS', 'Solid', []),
    ...lineType('DASHED', 'Dashed', [3, -2]),
    [0, 'ENDTAB'],
    [0, 'TABLE'],
    [2, 'LAYER'],
    [70, String(names.length)],
    ...names.flatMap(([name, color]): Pairs => [
      [0, 'LAYER'],
      [2, name],
      [70, '0'],
      [62, String(color)],
      [6, 'CONTINUOUS'],
    ]),
    [0, 'ENDTAB'],
    [0, 'ENDSEC'],
  ];
}

const lineType = (name: string, meaning: string, dashesMm: readonly number[]): Pairs => [
  [0, 'LTYPE'],
  [2, name],
  [70, '0'],
  [3, meaning],
  [72, '65'],
  [73, String(dashesMm.length)],
  [40, num(dashesMm.reduce((sum, dash) => sum + Math.abs(dash), 0))],
  ...dashesMm.map((dash): [number, string] => [49, num(dash)]),
];

function polyline({ layer, points, closed, dashed }: DrawnLine): Pairs {
  const [name] = layers[layer];
  return [
    [0, 'POLYLINE'],
    [8, name],
    [6, dashed ? 'DASHED' : 'CONTINUOUS'],
    [66, '1'],
    [10, num(0)],
    [20, num(0)],
    [30, num(0)],
    [70, closed ? '1' : '0'],
    ...points.flatMap(([x, y]): Pairs => [
      [0, 'VERTEX'],
      [8, name],
      [10, num(x)],
      [20, num(y)],
      [30, num(0)],
    ]),
    [0, 'SEQEND'],
    [8, name],
  ];
}

function textEntity({ text, atMm: [x, y], sizeMm, turnDeg, anchor }: DrawnText): Pairs {
  const at: Pairs = [
    [10, num(x)],
    [20, num(y)],
    [30, num(0)],
  ];
  const middle: Pairs = [
    [72, '1'],
    [11, num(x)],
    [21, num(y)],
    [31, num(0)],
  ];
  return [
    [0, 'TEXT'],
    [8, layers.text[0]],
    ...at,
    // Its height is that of the capitals.
    [40, num(0.72 * sizeMm)],
    [1, plainText(text)],
    [50, num(turnDeg)],
    ...(anchor === 'middle' ? middle : []),
  ];
}

/** Letters beyond ASCII as the format writes them; a line end would break the file. */
const plainText = (text: string) =>
  text
    .replaceAll('%%', '% %')
    .replaceAll('°', '%%d')
    .replace(/\p{Cc}/gu, ' ')
    .replace(/[^ -~]/gu, (letter) =>
      Array.from({ length: letter.length }, (_, i) => letter.charCodeAt(i))
        .map((unit) => `\\U+${unit.toString(16).toUpperCase().padStart(4, '0')}`)
        .join(''),
    );
