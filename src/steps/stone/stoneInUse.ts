/** The stone that the mold is poured with: what was measured before what the bag says, and the card last. */
import type { FigureStatus } from '../../core/figure';
import type { SourceKey } from '../../core/sources';
import { stoneCards, type CardNumber, type StoneCard, type StoneType } from '../../core/stone/stoneCards';
import type { MoldInputs } from '../inputs/mold';

/** A number in use, and how it is known. */
export interface KnownNumber {
  readonly value: number;
  readonly status: FigureStatus;
  readonly source: SourceKey | null;
  /** e.g. "from the bag"; for a figure's working. */
  readonly how: string;
  /** Plausible ends; null for a number of the maker's own. */
  readonly band: readonly [number, number] | null;
  /** Path of the input that it was entered at; null where the ready-made value stands. */
  readonly entry: string | null;
}

export interface StoneInUse {
  readonly card: StoneCard;
  readonly waterPowderRatio: KnownNumber;
  readonly workingMin: KnownNumber;
  readonly initialSetMin: KnownNumber;
  readonly finalSetMin: KnownNumber;
  readonly demoldMin: KnownNumber;
  readonly settingExpansionPercent: KnownNumber;
  readonly strengthMPa: KnownNumber;
  readonly detailUm: KnownNumber;
}

const types: Readonly<Record<MoldInputs['stoneType'], StoneType>> = {
  '1': 1,
  '2': 2,
  '3': 3,
  '4': 4,
  '5': 5,
};

function measuredNumber(value: number, entry: string): KnownNumber {
  return { value, status: 'measured', source: null, how: 'measured', band: null, entry };
}

export function stoneInUse({ stoneType, bag, measured }: MoldInputs): StoneInUse {
  const card = stoneCards[types[stoneType]];
  const fromCard = (number: CardNumber): KnownNumber => ({
    value: number.usual,
    status: number.status,
    source: number.source,
    how: `usual for type ${card.type}`,
    band: number.low < number.high ? [number.low, number.high] : null,
    entry: null,
  });
  const bagOrCard = (field: keyof MoldInputs['bag'] & keyof StoneCard): KnownNumber => {
    const value = bag[field];
    return value === null
      ? fromCard(card[field])
      : {
          value,
          status: 'your entry',
          source: null,
          how: 'from your bag',
          band: null,
          entry: `mold.bag.${field}`,
        };
  };
  return {
    card,
    waterPowderRatio: bagOrCard('waterPowderRatio'),
    workingMin: bagOrCard('workingMin'),
    initialSetMin: bagOrCard('initialSetMin'),
    finalSetMin: bagOrCard('finalSetMin'),
    demoldMin: bagOrCard('demoldMin'),
    settingExpansionPercent:
      measured.settingExpansionPercent === null
        ? bagOrCard('settingExpansionPercent')
        : measuredNumber(measured.settingExpansionPercent, 'mold.measured.settingExpansionPercent'),
    strengthMPa: bagOrCard('strengthMPa'),
    detailUm: fromCard(card.detailUm),
  };
}
