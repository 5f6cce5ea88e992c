/**
 * Ready-made cards of the five gypsum types of ISO 6873, until the maker's own bag is known. W/P ranges of types 2 to 5
 * are published (dental-materials textbook); every other number is from memory and no requirement of the standard.
 */
import type { FigureStatus } from '../figure';
import type { SourceKey } from '../sources';
import type { PowderForm } from './gypsum';

/** A number of a card: usual value, plausible ends, and how far it can be trusted. */
export interface CardNumber {
  readonly low: number;
  readonly usual: number;
  readonly high: number;
  readonly status: FigureStatus;
  readonly source: SourceKey | null;
}

export type StoneType = 1 | 2 | 3 | 4 | 5;

export interface StoneCard {
  readonly type: StoneType;
  readonly name: string;
  /** What it means for a mold. */
  readonly use: string;
  readonly powder: PowderForm;
  readonly waterPowderRatio: CardNumber;
  readonly workingMin: CardNumber;
  readonly initialSetMin: CardNumber;
  readonly finalSetMin: CardNumber;
  readonly demoldMin: CardNumber;
  /** Linear, two hours after mixing. */
  readonly settingExpansionPercent: CardNumber;
  /** Least compressive strength one hour after mixing (a range for type 1, whose usual value is its middle). */
  readonly strengthMPa: CardNumber;
  /** Finest line that is reproduced. */
  readonly detailUm: CardNumber;
}

const fromMemory = (low: number, usual: number, high: number): CardNumber => ({
  low,
  usual,
  high,
  status: 'from memory',
  source: 'gypsumTypesFromMemory',
});
const textbook = (low: number, usual: number, high: number): CardNumber => ({
  low,
  usual,
  high,
  status: 'published',
  source: 'gypsumTextbook',
});

/** Times are much the same for all types; the bag tells. */
const times = {
  workingMin: fromMemory(3, 4, 5),
  initialSetMin: fromMemory(8, 12, 16),
  finalSetMin: fromMemory(20, 30, 45),
  demoldMin: fromMemory(45, 60, 60),
};

export const stoneCards: Readonly<Record<StoneType, StoneCard>> = {
  1: {
    ...times,
    type: 1,
    name: 'Type 1, impression plaster',
    use: 'Too weak for a mold; listed for completeness.',
    powder: 'beta',
    waterPowderRatio: fromMemory(0.5, 0.55, 0.75),
    settingExpansionPercent: fromMemory(0, 0.1, 0.15),
    strengthMPa: fromMemory(4, 6, 8),
    detailUm: fromMemory(75, 75, 75),
  },
  2: {
    ...times,
    type: 2,
    name: 'Type 2, model plaster',
    use: 'Soft and wet; for a frame or a trial pour.',
    powder: 'beta',
    waterPowderRatio: textbook(0.4, 0.475, 0.5),
    settingExpansionPercent: fromMemory(0, 0.2, 0.3),
    strengthMPa: fromMemory(9, 9, 9),
    detailUm: fromMemory(75, 75, 75),
  },
  3: {
    ...times,
    type: 3,
    name: 'Type 3, dental stone',
    use: 'The usual stone for a few parts.',
    powder: 'alpha',
    waterPowderRatio: textbook(0.25, 0.3, 0.3),
    settingExpansionPercent: fromMemory(0, 0.12, 0.2),
    strengthMPa: fromMemory(20, 20, 20),
    detailUm: fromMemory(50, 50, 50),
  },
  4: {
    ...times,
    type: 4,
    name: 'Type 4, die stone, low expansion',
    use: 'Hard, dense, and truest to size.',
    powder: 'alpha',
    waterPowderRatio: textbook(0.19, 0.23, 0.24),
    settingExpansionPercent: fromMemory(0, 0.1, 0.18),
    strengthMPa: fromMemory(35, 35, 35),
    detailUm: fromMemory(50, 50, 50),
  },
  5: {
    ...times,
    type: 5,
    name: 'Type 5, die stone, high expansion',
    use: 'Hard and dense; the part comes out larger.',
    powder: 'alpha',
    waterPowderRatio: textbook(0.19, 0.21, 0.24),
    settingExpansionPercent: fromMemory(0.16, 0.22, 0.3),
    strengthMPa: fromMemory(35, 35, 35),
    detailUm: fromMemory(50, 50, 50),
  },
};
