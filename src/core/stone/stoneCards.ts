/**
 * Ready-made cards of the five gypsum types of ISO 6873, until the maker's own bag is known. What the standard asks of
 * each type (expansion, strength, setting of type 1), W/P ranges of types 2 to 5 and the times of plaster are published;
 * where in its limits a type usually lies, and the other times and details, are from memory.
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
  /** Linear, two hours after mixing: the standard's limits, and what is usual within them. */
  readonly settingExpansionPercent: CardNumber;
  /** What the standard allows, and what is known of later growth; for a figure's working. */
  readonly expansionTold: string;
  /** Least compressive strength one hour after mixing (a range for type 1, whose usual value is its middle). */
  readonly strengthMPa: CardNumber;
  /** Finest line that is reproduced: the line of the standard's test block that is asked for, and the next finer one on it (20, 50, 75 µm). */
  readonly detailUm: CardNumber;
  /** Class of price per kilogram among the five; common practice. */
  readonly price: string;
  /** What a bubble or a broken edge is mended with; common practice. */
  readonly repair: string;
}

/**
 * What heat set gypsum bears, °C: rates of its dehydration were measured from the first on (published, Ball and Norwood 1969,
 * abstract), over the second it turns to plaster right through (common practice). The same for all types.
 */
export const gypsumBearsC = { lasting: 80, once: 130 } as const;

const cardNumber =
  (status: FigureStatus, source: SourceKey) =>
  (low: number, usual: number, high: number): CardNumber => ({ low, usual, high, status, source });
const fromMemory = cardNumber('from memory', 'gypsumTypesFromMemory');
const textbook = cardNumber('published', 'gypsumTextbook');
const standard = cardNumber('published', 'iso6873');
const plasterMeasured = cardNumber('published', 'plasterTimes2020');
/** The ends are the standard's, the usual value between them is from memory. */
const withinStandard = cardNumber('from memory', 'iso6873');

const allowed = (low: string, high: string, more = '') =>
  `ISO 6873 allows ${low} to ${high} % two hours after mixing${more}.`;
const grows =
  ' Stones of types 4 and 5 go on growing for about four days, to 0.14 to 0.35 % at 120 h, and shrink a little when kept warm and dry after that (published, abstracts).';

/** Times of the stones are much the same; the bag tells. */
const stoneTimes = {
  workingMin: fromMemory(3, 4, 5),
  initialSetMin: fromMemory(8, 12, 16),
  finalSetMin: fromMemory(20, 30, 45),
  demoldMin: fromMemory(45, 60, 60),
};

export const stoneCards: Readonly<Record<StoneType, StoneCard>> = {
  1: {
    type: 1,
    name: 'Type 1, impression plaster',
    use: 'Too weak for a mold; listed for completeness.',
    powder: 'beta',
    waterPowderRatio: fromMemory(0.5, 0.55, 0.75),
    workingMin: fromMemory(1, 1.5, 2),
    initialSetMin: standard(2.5, 4, 5),
    finalSetMin: fromMemory(5, 8, 15),
    demoldMin: fromMemory(10, 15, 30),
    settingExpansionPercent: withinStandard(0, 0.1, 0.15),
    expansionTold: allowed('0.00', '0.15'),
    strengthMPa: standard(4, 6, 8),
    detailUm: fromMemory(50, 75, 75),
    price: 'middle',
    repair: 'not worth it: pour anew',
  },
  2: {
    ...stoneTimes,
    type: 2,
    name: 'Type 2, model plaster',
    use: 'Soft and wet; for a frame or a trial pour.',
    powder: 'beta',
    waterPowderRatio: textbook(0.4, 0.475, 0.5),
    initialSetMin: plasterMeasured(10, 16, 25),
    finalSetMin: plasterMeasured(16, 24, 34),
    settingExpansionPercent: withinStandard(0.06, 0.2, 0.3),
    expansionTold: `${allowed('0.06', '0.30', ' for models, and 0.00 to 0.05 % for mounting')} Plaster that is wetted again goes on growing, to 0.57 % (published, abstract).`,
    strengthMPa: standard(9, 9, 9),
    detailUm: fromMemory(50, 75, 75),
    price: 'lowest',
    repair: 'the same plaster, thin, on a wetted spot',
  },
  3: {
    ...stoneTimes,
    type: 3,
    name: 'Type 3, dental stone',
    use: 'The usual stone for a few parts.',
    powder: 'alpha',
    waterPowderRatio: textbook(0.25, 0.3, 0.3),
    settingExpansionPercent: withinStandard(0, 0.12, 0.2),
    expansionTold: allowed('0.00', '0.20'),
    strengthMPa: standard(20, 20, 20),
    detailUm: fromMemory(20, 50, 50),
    price: 'low',
    repair: 'the same stone, creamy, on a wetted and roughened spot',
  },
  4: {
    ...stoneTimes,
    type: 4,
    name: 'Type 4, die stone, low expansion',
    use: 'Hard, dense, and truest to size.',
    powder: 'alpha',
    waterPowderRatio: textbook(0.19, 0.23, 0.24),
    settingExpansionPercent: withinStandard(0, 0.1, 0.15),
    expansionTold: `${allowed('0.00', '0.15', ' and 0.00 to 0.18 % after a day')}${grows}`,
    strengthMPa: standard(35, 35, 35),
    detailUm: fromMemory(20, 50, 50),
    price: 'high, two to four times type 3',
    repair:
      'the same stone, creamy, on a wetted and roughened spot; a chipped edge with epoxy that bears the oven',
  },
  5: {
    ...stoneTimes,
    type: 5,
    name: 'Type 5, die stone, high expansion',
    use: 'Hard and dense; the part comes out larger.',
    powder: 'alpha',
    waterPowderRatio: textbook(0.19, 0.21, 0.24),
    settingExpansionPercent: withinStandard(0.16, 0.22, 0.35),
    expansionTold: `${allowed('0.16', '0.30')}${grows} So the card goes up to 0.35 %.`,
    strengthMPa: standard(35, 35, 35),
    detailUm: fromMemory(20, 50, 50),
    price: 'high, about as type 4',
    repair:
      'the same stone, creamy, on a wetted and roughened spot; a chipped edge with epoxy that bears the oven',
  },
};
