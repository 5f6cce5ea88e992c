/** What the pages of the shelf say. */
import type { ValueOrigin } from '../../steps/shared/origins';
import type { CardValues } from '../../workbook/shelfCards';
import type { CardKind } from '../../workbook/shelfKinds';

/** What one card of a kind is called, and the question that its form asks for the name. */
export const kindWords: Readonly<Record<CardKind, { readonly one: string; readonly name: string }>> = {
  roll: { one: 'roll', name: 'Name, as on the roll' },
  stone: { one: 'stone', name: 'Name, as on the bag' },
  oven: { one: 'oven', name: 'Which oven' },
  clamps: { one: 'clamps', name: 'Which clamps' },
  'print material': { one: 'print material', name: 'Material and printer' },
  sealer: { one: 'sealer', name: 'Name, as on the can' },
  release: { one: 'release', name: 'Name, as on the can' },
  coat: { one: 'coat', name: 'Name, as on the can' },
  'finish coat': { one: 'coat over the cured part', name: 'Name, as on the can' },
};

export const originWords: Readonly<Record<ValueOrigin, string>> = {
  supplier: 'supplier’s sheet',
  measured: 'measured',
  typical: 'typical',
};

/** "3 measured, 5 from the supplier's sheet", the surest first. */
export function originCounts(values: CardValues): string {
  const origins = Object.values(values).flatMap((value) => value?.origin ?? []);
  const counted = (['measured', 'supplier', 'typical'] as const).flatMap((origin) => {
    const count = origins.filter((one) => one === origin).length;
    return count === 0
      ? []
      : [`${count} ${origin === 'supplier' ? 'from the supplier’s sheet' : originWords[origin]}`];
  });
  return counted.length === 0 ? 'nothing told yet' : counted.join(', ');
}

export const dayOf = (at: string): string =>
  new Date(at).toLocaleDateString(undefined, { dateStyle: 'medium' });
