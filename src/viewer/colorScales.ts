/**
 * The colors of the maps. Published tables only:
 *
 * - Diverging purple to orange: ColorBrewer "PuOr", 11 classes (Harrower and Brewer 2003, ColorBrewer.org: an online
 *   tool for selecting colour schemes for maps, The Cartographic Journal 40(1), 27-37), turned so that purple is low.
 * - Sequential: cividis (Nunez, Anderton and Renslow 2018, Optimizing colormaps with consideration for color vision
 *   deficiency to enable accurate interpretation of scientific data, PLoS ONE 13(7) e0199239), every 17th of its 256
 *   rows; straight lines between them stay within 10/255 of the full table.
 *
 * Class colors differ in lightness too, so that they stay apart in a gray print and with color blindness.
 */

/** 0 to 255 each, sRGB. */
export type Rgb = readonly [red: number, green: number, blue: number];

export interface Ramp {
  readonly colors: readonly Rgb[];
}

const rampOf = (hexDigits: string): Ramp => ({
  colors: (hexDigits.match(/.{6}/g) ?? []).map(rgbOf),
});

export function rgbOf(hex: string): Rgb {
  const value = Number.parseInt(hex.replace('#', ''), 16);
  return [value >> 16, (value >> 8) & 255, value & 255];
}

export function cssOf([red, green, blue]: Rgb): string {
  return `rgb(${Math.round(red)} ${Math.round(green)} ${Math.round(blue)})`;
}

/** Purple (low), near white (middle), orange (high). */
export const purpleOrange = rampOf('2d004b5427888073acb2abd2d8daebf7f7f7fee0b6fdb863e08214b358067f3b08');

/** The same from the other end, where more of a value mends what orange shows elsewhere. */
export const orangePurple: Ramp = { colors: purpleOrange.colors.toReversed() };

/** Dark blue (low) to yellow (high). */
export const cividis = rampOf(
  '00224e002e6c1e3a6f35456c47516c575d6d666970757575848279948e77a59c74b7a96ec8b866dbc75aeed649fee838',
);

/** Color at `share` (0 to 1) of a ramp, straight lines in sRGB between its colors. */
export function rampColor({ colors }: Ramp, share: number): Rgb {
  const last = colors.length - 1;
  const place = Math.min(1, Math.max(0, share)) * last;
  const step = Math.min(last - 1, Math.floor(place));
  const part = place - step;
  const from = colors[step]!;
  const to = colors[step + 1]!;
  return [0, 1, 2].map((i) => from[i]! + (to[i]! - from[i]!) * part) as unknown as Rgb;
}

/** Color where a map has no value: neither end of a ramp, a cool gray. */
export const noValueColor: Rgb = rgbOf('9aa3a8');

/** Values `low` to `high` along a ramp; values outside take the end color, which the legend says. */
export interface RampScale {
  readonly kind: 'ramp';
  readonly ramp: Ramp;
  readonly low: number;
  readonly high: number;
}

/** Whole numbers 0, 1, 2 ... as classes. */
export interface ClassScale {
  readonly kind: 'classes';
  readonly colors: readonly Rgb[];
}

export type ColorScale = RampScale | ClassScale;

const rampSteps = 1024;

/** Red, green, blue, alpha as one 32-bit word in the byte order that the graphics card reads. */
function packed([red, green, blue]: Rgb): number {
  const bytes = new Uint8Array([Math.round(red), Math.round(green), Math.round(blue), 255]);
  return new Uint32Array(bytes.buffer)[0]!;
}

/** One RGBA word per value, sRGB. NaN takes `noValueColor`. About 10 ms for a million values. */
export function colorFacets(values: ArrayLike<number>, scale: ColorScale): Uint32Array<ArrayBuffer> {
  const count = values.length;
  const words = new Uint32Array(count);
  const none = packed(noValueColor);
  if (scale.kind === 'classes') {
    const table = Uint32Array.from(scale.colors, packed);
    for (let i = 0; i < count; i++) words[i] = table[values[i]!] ?? none;
    return words;
  }
  const table = Uint32Array.from({ length: rampSteps }, (_, i) =>
    packed(rampColor(scale.ramp, i / (rampSteps - 1))),
  );
  const stepsPerUnit = (rampSteps - 1) / (scale.high - scale.low);
  for (let i = 0; i < count; i++) {
    const step = (values[i]! - scale.low) * stepsPerUnit;
    if (step >= 0) words[i] = table[step > rampSteps - 1 ? rampSteps - 1 : (step + 0.5) | 0]!;
    else words[i] = step < 0 ? table[0]! : none;
  }
  return words;
}
