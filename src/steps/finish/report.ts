/** Finish step: which coats, how much stays over the fiber, and when is the whole job done? */
import type { Caution, Figure, StepReport, Verdict } from '../../core/figure';
import { coatAmount, type CoatAmount, type FinishCoat } from '../../core/finish/coats';
import { marginUm, sandingLadder } from '../../core/finish/sanding';
import { Problem } from '../../core/problem';
import { formatNumber } from '../../core/units/formatNumber';
import type { FinishCoatInput } from '../inputs/finish';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import { notEntered } from '../shared/decision';
import type { ReportBefore, StepContext } from '../shared/context';
import { dayAndTime, jobOf, type Job } from './job';

const specs = {
  area: { id: 'finish.areaCm2', label: 'Area to coat', unit: 'cm²', decimals: 1 },
  coat: { id: 'finish.coatMl', label: 'Coats to mix, losses included', unit: 'mL', decimals: 1 },
  film: { id: 'finish.filmUm', label: 'Film of all coats, dry', unit: 'µm', decimals: 0 },
  sanded: { id: 'finish.sandedUm', label: 'Sanded off', unit: 'µm', decimals: 0, status: 'common practice' },
  margin: {
    id: 'finish.marginUm',
    label: 'Left over the fiber',
    unit: 'µm',
    decimals: 0,
    status: 'common practice',
  },
  weight: { id: 'finish.weightG', label: 'Coated part', unit: 'g', decimals: 1 },
  days: { id: 'finish.days', label: 'Days from print to the last paper', unit: 'd', decimals: 1 },
  ends: { id: 'finish.ends', label: 'Done', unit: '', decimals: 0 },
} as const satisfies Record<string, FigureSpec>;

const coatOf = (one: FinishCoatInput): FinishCoat => ({
  name: one.name,
  count: one.count,
  filmUm: one.filmUm,
  solidsShare: one.solidsPercent / 100,
  lossShare: one.lossPercent / 100,
  densityGCm3: one.densityGCm3,
  recoatFromH: one.recoatFromH,
  recoatToH: one.recoatToH,
  dryH: one.dryH,
});

export function finishReport(context: StepContext, before: readonly ReportBefore[]): StepReport {
  const planned = jobOrWhy(context, before);
  const verdicts = [...coatVerdicts(context), ...calendarVerdicts(context, planned)];
  return {
    figures: [...coatFigures(context, before), ...calendarFigures(planned)],
    verdicts: verdicts.length > 0 ? verdicts : [nothingEntered],
    cautions: cautionsFor(context),
  };
}

const nothingEntered: Verdict = {
  id: notEntered.finish,
  word: 'not yet known',
  reason: 'No coats are entered.',
  fix: 'Enter the coats from their data sheets to see volume, film and days. The pour need not wait for it.',
};

type Planned = { readonly job: Job; readonly why: null } | { readonly job: null; readonly why: string };

function jobOrWhy({ inputs }: StepContext, before: readonly ReportBefore[]): Planned {
  try {
    return { job: jobOf(inputs, before), why: null };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { job: null, why: error.message };
  }
}

function coatFigures(
  { inputs: { finish }, measured }: StepContext,
  before: readonly ReportBefore[],
): readonly Figure[] {
  const kinds = measured?.summary.kindAreaMm2;
  const areaCm2 = kinds === undefined ? null : (kinds.show + kinds.rim) / 100;
  const area =
    areaCm2 === null
      ? unknownFigure(specs.area, 'The part is not measured yet.')
      : figure(specs.area, areaCm2, 'Show face and rim of the part.');
  const list = [specs.coat, specs.film, specs.sanded, specs.margin, specs.weight];
  if (finish.coats.length === 0 || areaCm2 === null)
    return [
      area,
      ...list.map((spec) =>
        unknownFigure(spec, areaCm2 === null ? 'The part is not measured yet.' : 'No coats are entered.'),
      ),
    ];
  const amounts = finish.coats.map((one) => ({ one, amount: coatAmount(coatOf(one), areaCm2) }));
  const sum = (of: (amount: CoatAmount) => number) =>
    amounts.reduce((all, { amount }) => all + of(amount), 0);
  const film = sum(({ filmUm }) => filmUm);
  const dryG = sum((amount) => amount.dryG);
  const bare = before
    .flatMap(({ report }) => report.figures)
    .find(({ id }) => id === 'plies.partMassG')?.value;
  return [
    area,
    figure(
      specs.coat,
      sum(({ mixedMl }) => mixedMl),
      ...amounts.map(
        ({ one, amount }) =>
          `${one.name}: ${one.count} × ${formatNumber(areaCm2, 0)} cm² × ${formatNumber(amount.wetUm, 0)} µm wet / (1 − ${formatNumber(one.lossPercent, 0)} %) = ${formatNumber(amount.mixedMl, 1)} mL; it spreads ${formatNumber(amount.spreadM2PerL, 1)} m²/L without loss.`,
      ),
    ),
    figure(
      specs.film,
      film,
      ...amounts.map(({ one }) => `${one.name}: ${one.count} × ${formatNumber(one.filmUm, 0)} µm.`),
    ),
    ...sandingFigures(finish, film),
    typeof bare === 'number'
      ? figure(
          specs.weight,
          bare + dryG,
          `${formatNumber(bare, 1)} g bare and ${formatNumber(dryG, 1)} g of dry coats, before sanding.`,
        )
      : unknownFigure(specs.weight, 'The mass of the bare part is not known yet.'),
  ];
}

function sandingFigures(finish: StepContext['inputs']['finish'], filmUm: number): readonly Figure[] {
  try {
    const ladder = sandingLadder(finish.firstGrit, finish.lastGrit);
    const off = ladder.reduce((all, { takesOffUm }) => all + takesOffUm, 0);
    return [
      figure(
        specs.sanded,
        off,
        ...ladder.map(
          ({ grit, grainUm, takesOffUm, isWet }) =>
            `${grit}, grain ${formatNumber(grainUm, 1)} µm: ${formatNumber(takesOffUm, 0)} µm${isWet ? ', wet' : ''}.`,
        ),
        'The first paper takes two of its grains, each after it one grain of the paper before; three to five grains of the first in all.',
      ),
      figure(
        specs.margin,
        marginUm(filmUm, finish.printThroughUm, ladder),
        `${formatNumber(filmUm, 0)} µm of film − ${formatNumber(finish.printThroughUm, 0)} µm print-through − ${formatNumber(off, 0)} µm sanded. Below 0 the paper reaches the fiber: stop before it.`,
      ),
    ];
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return [unknownFigure(specs.sanded, error.message), unknownFigure(specs.margin, error.message)];
  }
}

function calendarFigures({ job, why }: Planned): readonly Figure[] {
  if (job === null) return [unknownFigure(specs.days, why), unknownFigure(specs.ends, why)];
  const first = job.scheduled[0]!;
  const last = job.scheduled.at(-1)!;
  const working = job.scheduled.map(
    ({ name, startMin, endMin }) => `${name}: ${dayAndTime(job, startMin)} to ${dayAndTime(job, endMin)}.`,
  );
  return [
    figure(
      specs.days,
      (last.endMin - first.startMin) / 1440,
      ...working,
      'Work in your working hours, setting, drying, oven and coats round the clock.',
    ),
    figure(
      specs.ends,
      dayAndTime(job, last.endMin),
      job.isDated ? 'From the day that you start.' : 'Counted from a Monday, for no day is entered.',
    ),
  ];
}

function coatVerdicts({ inputs: { finish }, measured }: StepContext): readonly Verdict[] {
  const id = 'finish.margin';
  if (finish.coats.length === 0) return [];
  if (measured === null)
    return [
      {
        id,
        word: 'not yet known',
        reason: 'The area to coat is not measured yet.',
        fix: 'Import a model at Part, and wait until it is measured.',
      },
    ];
  let ladder;
  try {
    ladder = sandingLadder(finish.firstGrit, finish.lastGrit);
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return [{ id, word: 'stop', reason: error.message, fix: 'Correct the papers at Finish.' }];
  }
  const film = finish.coats.reduce((sum, { count, filmUm }) => sum + count * filmUm, 0);
  const margin = marginUm(film, finish.printThroughUm, ladder);
  const reason = `${formatNumber(film, 0)} µm of coats leave ${formatNumber(margin, 0)} µm over the fiber after sanding from ${finish.firstGrit} to ${finish.lastGrit}.`;
  if (margin >= 0) return [{ id, word: 'go', reason, fix: '' }];
  const last = finish.coats.at(-1)!;
  const more = Math.ceil(-margin / last.filmUm);
  return [
    {
      id,
      word: 'look again',
      reason,
      fix: `Begin with a finer paper, or lay ${more === 1 ? 'one coat' : `${more} coats`} of ${last.name} more: then ${formatNumber(margin + more * last.filmUm, 0)} µm stay.`,
    },
  ];
}

function calendarVerdicts({ inputs: { finish } }: StepContext, { job, why }: Planned): readonly Verdict[] {
  const id = 'finish.calendar';
  if (job === null)
    return [
      {
        id,
        word: 'stop',
        reason: why,
        fix: 'Correct it at Finish, under the start of the job and the working hours.',
      },
    ];
  if (finish.coats.length === 0) return [];
  const { missed } = job;
  if (missed.length === 0)
    return [
      {
        id,
        word: 'go',
        reason: `Every coat falls within its window; the job is done ${dayAndTime(job, job.scheduled.at(-1)!.endMin)}.`,
        fix: '',
      },
    ];
  return [
    {
      id,
      word: 'look again',
      reason: `${missed.map(({ name, startMin, latestMin }) => `${name} would begin ${dayAndTime(job, startMin)}, and its window closes ${dayAndTime(job, latestMin!)}`).join('; ')}.`,
      fix: 'Start on another day, work longer, or wait until it is cured and sand before the next coat, as its data sheet says.',
    },
  ];
}

const dust: Caution = {
  id: 'finish.dust',
  text: 'Dust of sanded laminate and coats irritates and can harm lungs; dust of coats that are not cured through sensitizes. Sand wet or under extraction with a dust mask, eye protection and gloves, and never into the fiber. Safety data sheets and local rules come first.',
};
const spray: Caution = {
  id: 'finish.twoPartSpray',
  text: 'Two-part sprays with isocyanates can bring asthma for life, below what can be smelled: no dust mask helps. Spray them only where supplied-air breathing protection, extraction and training are at hand, or give the part to a licensed sprayer. The safety data sheet and local rules come first.',
};
const fumes: Caution = {
  id: 'finish.fumes',
  text: 'Solvents burn and their vapors harm; uncured resin sensitizes skin: fresh air, no flame or spark, nitrile gloves, rags laid out flat to dry outside. The safety data sheet of each coat and local rules come first.',
};

function cautionsFor({ inputs: { finish } }: StepContext): readonly Caution[] {
  if (finish.coats.length === 0) return [dust];
  return [dust, fumes, ...(finish.coats.some(({ kind }) => kind === 'two-part spray') ? [spray] : [])];
}
