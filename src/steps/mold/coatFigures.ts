/** Figures of sealer and release. */
import type { Figure } from '../../core/figure';
import { coatPlan, dryFilmUm, type CoatChoices } from '../../core/stone/coatPlan';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import { coatsInUse, type CoatInUse } from './coatInUse';
import { moldTable, type MoldInputs } from '../inputs/mold';
import { entryStatus, figureFrom } from './say';
import type { MoldWork } from '../stone/work';

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
    filmFigure(mold),
    ...coatsInUse(mold).map(limitFigure),
  ];

  function coats(id: 'sealer' | 'release', label: string, choices: CoatChoices): readonly Figure[] {
    const amount: FigureSpec = {
      id: `mold.${id}Ml`,
      label: `${label}, both halves`,
      unit: 'mL',
      decimals: 1,
      status: entryStatus(choices.coverageM2PerL, moldTable[`${id}M2PerL`], 'common practice'),
      entries: [`mold.${id}M2PerL`],
    };
    const wait: FigureSpec = {
      id: `mold.${id}WaitMin`,
      label: `${label}, waiting in all`,
      unit: 'min',
      decimals: 0,
      status: entryStatus(choices.waitMin, moldTable[`${id}WaitMin`], 'common practice'),
      entries: [`mold.${id}WaitMin`],
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

const um = (value: number) => `${formatNumber(value, 0)} µm`;

/** What both coats leave on one face when nothing soaks in: the room between the halves is less by that, twice. */
function filmFigure(mold: MoldInputs): Figure {
  const sealerUm = mold.sealerCoats * dryFilmUm(mold.sealerSolidsPercent, mold.sealerM2PerL);
  const releaseUm = mold.releaseCoats * dryFilmUm(mold.releaseSolidsPercent, mold.releaseM2PerL);
  return figure(
    {
      id: 'mold.coatFilmUm',
      label: 'Dry film on each face, at most',
      unit: 'µm',
      decimals: 0,
      status: 'common practice',
      source: 'coatSpreading',
    },
    sealerUm + releaseUm,
    `Sealer ${mold.sealerCoats} × 10 × ${formatNumber(mold.sealerSolidsPercent, 1)} % / ${formatNumber(mold.sealerM2PerL, 1)} m² per liter = ${um(sealerUm)}, release likewise ${um(releaseUm)}.`,
    'What soaks into the stone does not count; what stays takes room from the wall on both faces. Not taken into the closing.',
  );
}

function limitFigure({ what, name, bearsC, fails, status }: CoatInUse): Figure {
  const spec: FigureSpec = {
    id: `mold.${what}LimitC`,
    label: `${what === 'sealer' ? 'Sealer' : 'Release'} bears`,
    unit: '°C',
    decimals: 0,
    status,
    entries: [`mold.coatSheet.${what}LimitC`],
  };
  if (bearsC === null) return unknownFigure(spec, `Which ${what} it is was not said.`);
  const [every, some] = bearsC;
  const shown = figure(
    every === some ? spec : { ...spec, source: 'coatLimitsFromMemory' },
    every,
    `${name.charAt(0).toUpperCase()}${name.slice(1)}; over its heat it ${fails}.`,
  );
  return every === some ? shown : { ...shown, band: [every, some] };
}
