import { lengthUnitNames, mmPerUnit } from '../units/length';
import type { Vec3 } from './types';
import type { LengthUnit } from '../units/length';

/** The unit that the numbers of a file most likely stand for. */
export interface UnitGuess {
  readonly unit: LengthUnit;
  /** False when the box is not plausible as mm and the maker should confirm. */
  readonly sure: boolean;
  /** One or two sentences for the maker, with the sizes that the guess is taken from. */
  readonly reason: string;
}

/**
 * Longest side, as the file's number, that an enclosure part has. Hand-held cases run from about a matchbox to a
 * tool case (our own common-sense range, no source); the maker confirms whatever falls outside.
 */
const plausible = { leastMm: 25, mostMm: 1000, leastIn: 1, mostIn: 12 } as const;

/** Guesses the unit of a file from its box (file units); a unit that the file declares is taken as it stands. */
export function guessUnit(boxSize: Vec3, declared: LengthUnit | null): UnitGuess {
  if (declared !== null) {
    return {
      unit: declared,
      sure: true,
      reason: `The file says that it is drawn in ${lengthUnitNames[declared]}.`,
    };
  }
  const longest = Math.max(...boxSize);
  const asMm = `As millimeters the part is ${sizeText(boxSize, 'mm')}`;
  if (longest >= plausible.leastMm && longest <= plausible.mostMm) {
    return { unit: 'mm', sure: true, reason: `${asMm}, a likely size for an enclosure.` };
  }
  if (longest > plausible.mostMm) {
    return {
      unit: 'mm',
      sure: false,
      reason: `${asMm}, very large for an enclosure. Please confirm the unit.`,
    };
  }
  if (longest > plausible.mostIn) {
    return {
      unit: 'mm',
      sure: false,
      reason: `${asMm}, small for an enclosure; as centimeters it is ${sizeText(boxSize, 'cm')}. Please confirm the unit.`,
    };
  }
  const unit = longest >= plausible.leastIn ? 'in' : 'm';
  return {
    unit,
    sure: false,
    reason: `${asMm}, too small for an enclosure; as ${lengthUnitNames[unit]} it is ${sizeText(boxSize, unit)}. Please confirm the unit.`,
  };
}

/** "60 x 40 x 20 mm" for a box given in `unit`. */
function sizeText(boxSize: Vec3, unit: LengthUnit): string {
  const sides = boxSize.map((side) => String(Number((side * mmPerUnit[unit]).toPrecision(3))));
  return `${sides.join(' x ')} mm`;
}
