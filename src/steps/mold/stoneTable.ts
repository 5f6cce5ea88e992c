/** The five gypsum types and the maker's own material side by side, as the sheet shows them. */
import { settingHeatJPerG } from '../../core/stone/gypsum';
import { adiabaticRiseK } from '../../core/stone/settingHeat';
import { gypsumBearsC, stoneCards, type StoneCard } from '../../core/stone/stoneCards';
import { leastWaterPowderRatio } from '../../core/stone/stoneMix';
import { formatNumber } from '../../core/units/formatNumber';
import type { ProjectInputs } from '../inputs/project';
import { celsius } from './say';
import { stoneInUse } from '../stone/stoneInUse';

export interface StoneRow {
  readonly name: string;
  readonly heat: string;
  readonly strength: string;
  readonly expansion: string;
  readonly settingHeat: string;
  readonly price: string;
  readonly repair: string;
  /** The maker's own, with what the bag says. */
  readonly own: boolean;
}

const range = (low: number, high: number, decimals: number) =>
  low === high
    ? formatNumber(low, decimals)
    : `${formatNumber(low, decimals)} to ${formatNumber(high, decimals)}`;

/** Heat per gram of powder, and the rise that it makes where none can leave. */
function settingHeatText({ powder }: StoneCard, waterPowderRatio: number): string {
  const heat = `${formatNumber(settingHeatJPerG(powder), 0)} J/g`;
  // With less water than the powder binds it does not set through: the rise is not known.
  return waterPowderRatio < leastWaterPowderRatio
    ? heat
    : `${heat}, up to ${formatNumber(adiabaticRiseK(waterPowderRatio, powder), 0)} K`;
}

function typeRow(card: StoneCard): StoneRow {
  const { settingExpansionPercent: grows, strengthMPa } = card;
  return {
    name: card.name,
    heat: `${celsius(gypsumBearsC.lasting)} for good, ${celsius(gypsumBearsC.once)} once`,
    strength: `${strengthMPa.low < strengthMPa.high ? range(strengthMPa.low, strengthMPa.high, 0) : `at least ${formatNumber(strengthMPa.low, 0)}`} MPa`,
    expansion: `${range(grows.low, grows.high, 2)} %`,
    settingHeat: settingHeatText(card, card.waterPowderRatio.usual),
    price: card.price,
    repair: card.repair,
    own: false,
  };
}

/** Types 1 to 5, then what the maker pours: the chosen type with everything that bag and measurement say of it. */
export function stoneRows({ mold, cure }: Pick<ProjectInputs, 'mold' | 'cure'>): readonly StoneRow[] {
  const { card, strengthMPa, settingExpansionPercent, waterPowderRatio } = stoneInUse(mold);
  const { pricePerKg } = mold.bag;
  return [
    ...Object.values(stoneCards).map(typeRow),
    {
      name: `Yours, on type ${card.type}`,
      heat: `${celsius(cure.stoneLimitC)}, by your limit`,
      strength: `${formatNumber(strengthMPa.value, 0)} MPa, ${strengthMPa.how}`,
      expansion: `${formatNumber(settingExpansionPercent.value, 2)} %, ${settingExpansionPercent.how}`,
      settingHeat: settingHeatText(card, waterPowderRatio.value),
      price: pricePerKg === null ? card.price : `${formatNumber(pricePerKg, 2)} per kg`,
      repair: card.repair,
      own: true,
    },
  ];
}
