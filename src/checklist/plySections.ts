/** The checklist lines about the rolls of prepreg, and what is left for later. */
import { formatNumber } from '../core/units/formatNumber';
import type { StepContext } from '../steps/shared/context';
import type { Material } from '../steps/inputs/material';
import { rollsInUse, type Roll } from '../steps/plies/rolls';
import { cautionsOf, line, measuring, type Reports, type SectionDraft } from './lineDrafts';

export function prepregSection({ inputs }: StepContext, reports: Reports): SectionDraft {
  const rolls = rollsInUse(inputs.plies);
  return {
    id: 'prepreg',
    title: 'Take out the prepreg',
    warnings: [],
    cautions: cautionsOf(reports, 'plies.resinSkin'),
    lines: [
      ...rolls.map((roll) => line(`prepreg.${roll.card.id}.roll`, rollText(roll), ['plies.outTimeLeftH'])),
      line(
        'prepreg.thaw',
        'Thawed in the closed bag until no water forms on it; time out of the freezer written down.',
      ),
      ...rolls.map(({ card }) =>
        measuring(
          `prepreg.${card.id}.out`,
          `${card.name}: hours out of the freezer added up at the end of the layup, and written on the roll.`,
          'out in all',
          'h',
        ),
      ),
      ...rolls.map(({ card }) =>
        measuring(
          `prepreg.${card.id}.laid`,
          `${card.name}: three plies laid on each other, caliper reading divided by three${saidThickness(card)}.`,
          'one ply as laid',
          'mm',
          ['plies.laidPlyMm'],
        ),
      ),
    ],
  };
}

/** What the caliper is expected to read: measured before, or as the card says. */
function saidThickness({ caliperTotalMm, caliperPlies, laidThicknessMm }: Material): string {
  if (caliperTotalMm !== null)
    return `; measured before: ${formatNumber(caliperTotalMm / caliperPlies, 3)} mm`;
  return laidThicknessMm === null ? '' : `; the card says ${formatNumber(laidThicknessMm, 3)} mm`;
}

const hours = (value: number) => `${formatNumber(value, 1)} h`;

function rollText({ card, time }: Roll): string {
  const date = card.freezerDate.trim() === '' ? '' : `, freezer date ${card.freezerDate.trim()}`;
  if (time === null)
    return `${card.name}${date}: label read, within shelf life and out-time of the supplier.`;
  return `${card.name}${date}: label read and within shelf life; ${hours(card.hoursOutH)} out of ${hours(card.allowedOutTimeH ?? 0)} allowed, ${hours(time.afterLayupH)} left after the planned layup.`;
}

export function laterSection(reports: Reports): SectionDraft {
  return {
    id: 'later',
    title: 'Before the work goes on',
    warnings: [],
    cautions: cautionsOf(reports, 'plies.coat', 'checklist.laterStages'),
    lines: [line('later.read', 'Safety data sheets of resin, stone and release agent read and at hand.')],
  };
}
