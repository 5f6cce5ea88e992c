/** The rolls that the stack and its patches take, and whether their out-time covers the layup. */
import type { Figure, Verdict } from '../../core/figure';
import { outTime, type OutTime } from '../../core/laminate/outTime';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import type { Material } from '../inputs/material';
import type { PliesInputs } from '../inputs/plies';

/** Less than this share of the allowance left after the layup is too near to plan on (common practice). */
const thinMarginShare = 0.1;

const spec: FigureSpec = {
  id: 'plies.outTimeLeftH',
  label: 'Out-time left after the layup, least of the rolls',
  unit: 'h',
  decimals: 1,
  status: 'your entry',
};

export interface Roll {
  readonly card: Material;
  /** null when the card does not say what is allowed. */
  readonly time: OutTime | null;
}

export function rollsInUse({ materials, stack, patches, plannedLayupH }: PliesInputs): readonly Roll[] {
  const named = new Set([...stack, ...patches].map(({ materialId }) => materialId));
  return materials
    .filter(({ id }) => named.has(id))
    .map((card) => ({
      card,
      time:
        card.allowedOutTimeH === null ? null : outTime(card.allowedOutTimeH, card.hoursOutH, plannedLayupH),
    }));
}

interface KnownRoll {
  readonly card: Material;
  readonly time: OutTime;
}

function leastRoll(rolls: readonly Roll[]): KnownRoll | null {
  return rolls.reduce<KnownRoll | null>(
    (least, { card, time }) =>
      time !== null && (least === null || time.afterLayupH < least.time.afterLayupH) ? { card, time } : least,
    null,
  );
}

const hours = (value: number) => `${formatNumber(value, 1)} h`;

export function rollFigure({ inputs: { plies } }: StepContext): Figure {
  if (plies.stack.length === 0) return unknownFigure(spec, 'The stack has no plies, so no roll is in use.');
  const least = leastRoll(rollsInUse(plies));
  if (least === null)
    return unknownFigure(
      spec,
      'No card in use says what out-time its data sheet allows; enter it on the card.',
    );
  const { card, time } = least;
  const position = plies.materials.indexOf(card);
  const entries = ['hoursOutH', 'allowedOutTimeH'].map((field) => `plies.materials.${position}.${field}`);
  return figure(
    { ...spec, entries },
    time.afterLayupH,
    `${card.name}: ${hours(card.allowedOutTimeH ?? 0)} allowed − ${hours(card.hoursOutH)} out − ${hours(plies.plannedLayupH)} of layup = ${hours(time.afterLayupH)}`,
    'The allowance holds at the room temperature of the data sheet; a warmer shop uses it up faster.',
  );
}

/** Nothing is said while no card in use has an allowance. */
export function outTimeVerdict({ inputs: { plies } }: StepContext): readonly Verdict[] {
  const rolls = rollsInUse(plies);
  const least = leastRoll(rolls);
  if (least === null) return [];
  const { card, time } = least;
  const id = 'plies.outTime';
  const unsaid = rolls.filter((roll) => roll.time === null).map((roll) => roll.card.name);
  const others = unsaid.length === 0 ? '' : ` Not known for ${unsaid.join(', ')}.`;
  const layup = hours(plies.plannedLayupH);
  if (time.remainingH < 0)
    return [
      {
        id,
        word: 'stop',
        reason: `${card.name} is over its out-time by ${hours(-time.remainingH)} before the layup starts.${others}`,
        fix: 'Take another roll; an overdrawn one is for trials only, and its tack, flow and cure are no longer those of the data sheet.',
      },
    ];
  if (!time.enough)
    return [
      {
        id,
        word: 'stop',
        reason: `${card.name} has ${hours(time.remainingH)} of out-time left, and the layup takes ${layup}.${others}`,
        fix: `Take another roll, or cut the layup to ${hours(time.remainingH)} (cut and kit the plies, freeze the rest at once).`,
      },
    ];
  const margin = `${card.name} has ${hours(time.remainingH)} of out-time left; after a layup of ${layup} that is ${hours(time.afterLayupH)}.${others}`;
  if (time.afterLayupH < thinMarginShare * (card.allowedOutTimeH ?? 0))
    return [
      {
        id,
        word: 'look again',
        reason: margin,
        fix: 'Less than a tenth of the allowance stays: try tack and drape on an offcut, and plan no second try with this roll.',
      },
    ];
  return unsaid.length > 0
    ? [
        {
          id,
          word: 'look again',
          reason: margin,
          fix: 'Enter what the data sheet allows on the other cards too.',
        },
      ]
    : [{ id, word: 'go', reason: margin, fix: '' }];
}
