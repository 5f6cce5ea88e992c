/** Figures of the repairs: how many, and the largest changes of the wall either way. */
import type { Figure } from '../../core/figure';
import { repairStepMm } from '../../core/stone/repairs';
import type { StepContext } from '../shared/context';
import { count, figure } from '../kit/figures';

export function repairFigures({ inputs }: StepContext): readonly Figure[] {
  const { repairs } = inputs.mold;
  const steps = repairs.map(repairStepMm);
  const sides = ['negative', 'positive'] as const;
  const where = sides
    .map((half) => `${half} ${repairs.filter((repair) => repair.half === half).length}`)
    .join(', ');
  return [
    figure(
      { id: 'mold.repairCount', label: 'Repairs of the stone', unit: '', decimals: 0, status: 'your entry' },
      repairs.length,
      repairs.length === 0 ? 'None noted.' : `${count(repairs.length, 'place')}: ${where}.`,
    ),
    figure(
      {
        id: 'mold.repairThinnerMm',
        label: 'Wall thinner by filler, at most',
        unit: 'mm',
        decimals: 2,
        status: 'your entry',
      },
      Math.max(0, ...steps.map((step) => -step)),
      'Filler that stands proud of the cast surface; a bubble filled flush changes nothing.',
    ),
    figure(
      {
        id: 'mold.repairThickerMm',
        label: 'Wall thicker by scraping, at most',
        unit: 'mm',
        decimals: 2,
        status: 'your entry',
      },
      Math.max(0, ...steps),
      'Stone scraped away leaves more room between the halves.',
    ),
  ];
}
