/** What a carbon shell does to radio: a conducting sheet, a closed shell in a slow magnetic field, and openings in it. */

const mu0 = 4e-7 * Math.PI;
const lightMPerS = 299_792_458;
/** Wave impedance of free space, ohm. */
const freeSpaceOhm = mu0 * lightMPerS;

export interface Sheet {
  readonly conductivitySPerM: number;
  readonly thicknessMm: number;
}

/** Ohm per square of a thin sheet: 1 / (conductivity x thickness). */
export const sheetOhm = ({ conductivitySPerM, thicknessMm }: Sheet): number =>
  1000 / (conductivitySPerM * thicknessMm);

/** Depth in which the field falls by e, mm: 1 / sqrt(pi f mu0 sigma); for metals and carbon well below optical frequencies. */
export const skinDepthMm = (conductivitySPerM: number, frequencyHz: number): number =>
  1000 / Math.sqrt(Math.PI * frequencyHz * mu0 * conductivitySPerM);

export const wavelengthMm = (frequencyHz: number): number => (1000 * lightMPerS) / frequencyHz;

/** Nearer than this a small source's field is its own, not yet a wave's: wavelength over 2 pi. */
export const nearFieldMm = (frequencyHz: number): number => wavelengthMm(frequencyHz) / (2 * Math.PI);

type Complex = readonly [re: number, im: number];
const add = (a: Complex, b: Complex): Complex => [a[0] + b[0], a[1] + b[1]];
const multiply = (a: Complex, b: Complex): Complex => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
const divide = (a: Complex, b: Complex): Complex => {
  const square = b[0] * b[0] + b[1] * b[1];
  return [(a[0] * b[0] + a[1] * b[1]) / square, (a[1] * b[0] - a[0] * b[1]) / square];
};
const decibels = ([re, im]: Complex): number => 20 * Math.log10(Math.hypot(re, im));

/**
 * Loss of a plane wave through an endless sheet, dB: absorption A, reflection R and the correction B for what goes to and fro inside
 * (Schelkunoff; the same as the transfer matrix of the slab). An upper bound: seams and openings decide of a real shell.
 */
export function planeWaveLossDb({ conductivitySPerM, thicknessMm }: Sheet, frequencyHz: number): number {
  const depth = skinDepthMm(conductivitySPerM, frequencyHz) / 1000;
  const depths = thicknessMm / 1000 / depth;
  const part = 1 / (conductivitySPerM * depth * freeSpaceOhm);
  const q: Complex = [part, part];
  const onePlus = add([1, 0], q);
  const ratio = divide(add([1, 0], [-q[0], -q[1]]), onePlus);
  const reflected = decibels(divide(multiply(onePlus, onePlus), multiply([4, 0], q)));
  const size = Math.exp(-2 * depths);
  const around: Complex = [size * Math.cos(2 * depths), -size * Math.sin(2 * depths)];
  const toAndFro = multiply(multiply(ratio, ratio), around);
  return 20 * Math.LOG10E * depths + reflected + decibels([1 - toAndFro[0], -toAndFro[1]]);
}

/**
 * Loss of a slow magnetic field through a closed thin shell, dB: 20 log |1 + j omega mu0 sigma a t / 3|, a its inner radius (Kaden,
 * Wirbelströme und Schirmung in der Nachrichtentechnik, from memory; the exact field of a thick shell agrees to 0.2 %).
 */
export function magneticLossDb(
  { conductivitySPerM, thicknessMm }: Sheet,
  frequencyHz: number,
  radiusMm: number,
): number {
  const turning = (2 * Math.PI * frequencyHz * mu0 * conductivitySPerM * radiusMm * thicknessMm * 1e-6) / 3;
  return decibels([1, turning]);
}

/** Loss that a slot leaves, dB: 20 log (wavelength / 2 L), none from half a wavelength on (EMC engineering handbook, from memory). */
export const slotLossDb = (slotMm: number, frequencyHz: number): number =>
  Math.max(0, 20 * Math.log10(wavelengthMm(frequencyHz) / (2 * slotMm)));

/** A window that a wave passes freely: half a wavelength across. */
export const openWindowMm = (frequencyHz: number): number => wavelengthMm(frequencyHz) / 2;
