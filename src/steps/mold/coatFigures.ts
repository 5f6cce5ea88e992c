/** Figures of sealer and release. */
import type { Figure } from '../../core/figure';
import { coatPlan, type CoatChoices } from '../../core/stone/coatPlan';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../context';
import { figure, type FigureSpec } from '../figures';
import { moldNumberSpecs } from './inputs';
import { entryStatus, figureFrom } from './say';
import type { MoldWork } from './work';

export function coatFigures(context: StepContext, work: MoldWork): readonly Figure[] {
  const { mold } = context.inputs;
  return [
    ...coats('sealer', 'Sealer', {
      coats: mold.sealerCoats,
      coverageM2PerL: mold.sealerM2PerL,
      lossPercent: mold.coatLossPercent,
      waitMin: mold.sealerWaitMin,
    }),
    ...coats('release', 'Release', {
      coats: mold.releaseCoats,
      coverageM2PerL: mold.releaseM2PerL,
      lossPercent: mold.coatLossPercent,
      waitMin: mold.releaseWaitMin,
    }),
  ];

  function coats(id: 'sealer' | 'release', label: string, choices: CoatChoices): readonly Figure[] {
    const amount: FigureSpec = {
      id: `mold.${id}Ml`,
      label: `${label}, both halves`,
      unit: 'mL',
      decimals: 1,
      status: entryStatus(choices.coverageM2PerL, moldNumberSpecs[`${id}M2PerL`], 'common practice'),
    };
    const wait: FigureSpec = {
      id: `mold.${id}WaitMin`,
      label: `${label}, waiting in all`,
      unit: 'min',
      decimals: 0,
      status: entryStatus(choices.waitMin, moldNumberSpecs[`${id}WaitMin`], 'common practice'),
    };
    return [
      figureFrom(amount, work.geometry, ({ negativeFaceMm2, positiveFaceMm2 }) => {
        const areaMm2 = negativeFaceMm2 + positiveFaceMm2;
        const plan = coatPlan(areaMm2, choices);
        return figure(
          amount,
          plan.totalMl,
          `${formatNumber(areaMm2 / 100, 1)} cm² / ${formatNumber(choices.coverageM2PerL, 1)} m² per liter, ${formatNumber(choices.lossPercent, 0)} % lost: ${formatNumber(plan.perCoatMl, 1)} mL a coat, ${choices.coats} coats.`,
          `The first coat on thirsty stone takes more; the supplier’s sheet rules.`,
        );
      }),
      figure(
        wait,
        choices.coats * choices.waitMin,
        `${choices.coats} coats × ${formatNumber(choices.waitMin, 0)} min, as the supplier gives it.`,
      ),
    ];
  }
}
