/** Figures of stone, mix and batches. */
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, withBand, withScatter, type FigureSpec } from '../kit/figures';
import { figureFrom, grams, knownFigure, leastCertain, ml } from './say';
import { halves, type Half, type MoldWork } from '../stone/work';

export function mixFigures(context: StepContext, work: MoldWork): readonly Figure[] {
  return [
    ...stoneFigures(work),
    ...densityFigures(context, work),
    ...halves.flatMap((half) => halfFigures(context, work, half)),
    batchesFigure(work),
    totalPowder(work),
    priceFigure(context, work),
  ];
}

function stoneFigures({ stone }: MoldWork): readonly Figure[] {
  return [
    knownFigure(
      { id: 'mold.waterPowderRatio', label: 'Water per powder (W/P)', unit: 'g/g', decimals: 3 },
      stone.waterPowderRatio,
      'No knob for expansion: half as much water again hardly changes it and takes a quarter to a half of the strength (Prosthesis 2 (2020) 266-276, abstract). Keep to the bag.',
    ),
    knownFigure(
      { id: 'mold.workingMin', label: 'Working time', unit: 'min', decimals: 1 },
      stone.workingMin,
      'From water meeting powder until the slurry no longer flows.',
    ),
    knownFigure(
      { id: 'mold.initialSetMin', label: 'Initial set', unit: 'min', decimals: 0 },
      stone.initialSetMin,
      'The surface loses its gloss; a next layer no longer joins.',
    ),
    knownFigure({ id: 'mold.finalSetMin', label: 'Final set', unit: 'min', decimals: 0 }, stone.finalSetMin),
    knownFigure(
      { id: 'mold.demoldMin', label: 'Open the box after', unit: 'min', decimals: 0 },
      stone.demoldMin,
    ),
    knownFigure(
      { id: 'mold.settingExpansionPercent', label: 'Setting expansion, linear', unit: '%', decimals: 2 },
      stone.settingExpansionPercent,
      'Two hours after mixing.',
      stone.card.expansionTold,
    ),
    knownFigure(
      { id: 'mold.strengthMPa', label: 'Strength after one hour', unit: 'MPa', decimals: 0 },
      stone.strengthMPa,
      'Wet, in compression; dry stone is about twice as strong (from memory). Thin walls break in tension at a tenth of it.',
    ),
    knownFigure(
      { id: 'mold.detailUm', label: 'Finest line that is reproduced', unit: 'µm', decimals: 0 },
      stone.detailUm,
    ),
  ];
}

function densityFigures({ inputs }: StepContext, { mix, stone }: MoldWork): readonly Figure[] {
  const weighed = inputs.mold.measured.slurryGMl !== null;
  const slurry: FigureSpec = {
    id: 'mold.slurryDensityGMl',
    label: 'Slurry',
    unit: 'g/mL',
    decimals: 3,
    ...(weighed ? { status: 'measured' as const } : { source: 'gypsumBalance' as const }),
  };
  const wet: FigureSpec = {
    id: 'mold.wetDensityGMl',
    label: 'Set stone, wet',
    unit: 'g/mL',
    decimals: 3,
    source: 'gypsumBalance',
  };
  const dry: FigureSpec = {
    id: 'mold.dryDensityGMl',
    label: 'Set stone, dry',
    unit: 'g/mL',
    decimals: 3,
    source: 'gypsumBalance',
  };
  const porosity: FigureSpec = {
    id: 'mold.porosityPercent',
    label: 'Pores of the dry stone',
    unit: '%',
    decimals: 1,
    source: 'gypsumBalance',
  };
  const ratio = formatNumber(stone.waterPowderRatio.value, 3);
  return [
    figureFrom(slurry, mix, (known) =>
      figure(
        slurry,
        known.slurryDensityGMl,
        weighed
          ? 'Cup of known volume on the scale, air included.'
          : `(1 + ${ratio}) / ${formatNumber(known.slurryMlPerG, 4)} mL per gram of powder; no air in it.`,
      ),
    ),
    figureFrom(wet, mix, (known) =>
      figure(
        wet,
        known.wetDensityGMl,
        `Slurry less ${formatNumber(3 * stone.settingExpansionPercent.value, 2)} % that it grows on setting.`,
      ),
    ),
    figureFrom(dry, mix, (known) =>
      figure(
        dry,
        known.dryDensityGMl,
        `(1 + ${formatNumber(known.boundWaterGPerG, 4)}) g per gram of powder over the set volume: free water gone, crystal water kept.`,
      ),
    ),
    figureFrom(porosity, mix, (known) =>
      figure(porosity, 100 * known.porosity, '1 − dry density over the density of the gypsum crystal, 2.32.'),
    ),
  ];
}

function halfFigures({ inputs }: StepContext, work: MoldWork, half: Half): readonly Figure[] {
  const answer = work.half[half];
  const { waterPowderRatio } = work.stone;
  const status = leastCertain(waterPowderRatio.status, 'common practice');
  const spec = (field: string, label: string, unit: string, decimals: number): FigureSpec => ({
    id: `mold.${half}.${field}`,
    label: `${half === 'negative' ? 'Negative' : 'Positive'}: ${label}`,
    unit,
    decimals,
    status,
    source: 'gypsumBalance',
  });
  const powder = spec('powderG', 'powder', 'g', 0);
  const water = spec('waterG', 'water', 'g', 0);
  const slurry = spec('slurryMl', 'slurry to mix', 'mL', 0);
  const batches = spec('batches', 'batches', '', 0);
  const join = spec('joinAgeMin', 'age of a layer when the next reaches it', 'min', 1);
  const loss = formatNumber(inputs.mold.lossPercent, 0);
  return [
    figureFrom(powder, answer, ({ plan, stone, volumeScatter }) =>
      withScatter(
        figure(
          powder,
          plan.powderG,
          `${ml(stone.volumeMl)} / ${formatNumber(stone.volumeMl / stone.powderG, 4)} mL per gram = ${grams(stone.powderG)}, and ${loss} % for the bowl.`,
          perBatch(plan.batches, plan.batchPowderG),
        ),
        volumeScatter,
      ),
    ),
    figureFrom(water, answer, ({ plan, volumeScatter }) =>
      withScatter(
        figure(
          water,
          plan.waterG,
          `${grams(plan.powderG)} × ${formatNumber(waterPowderRatio.value, 3)} (${waterPowderRatio.how})`,
          perBatch(plan.batches, plan.batchWaterG),
        ),
        volumeScatter,
      ),
    ),
    figureFrom(slurry, answer, ({ plan, stone, volumeScatter }) =>
      withScatter(
        figure(slurry, plan.slurryMl, `${ml(stone.volumeMl)} of mold and ${loss} % for the bowl.`),
        volumeScatter,
      ),
    ),
    figureFrom(batches, answer, ({ plan }) =>
      figure(
        batches,
        plan.batches,
        `${ml(plan.slurryMl)} in bowls of at most ${ml(plan.largestBatchMl)}, limited by the ${plan.limitedBy}; ${ml(plan.batchSlurryMl)} each.`,
      ),
    ),
    figureFrom(join, answer, ({ plan }) =>
      figure(
        join,
        plan.joinAgeMin,
        plan.batches === 1
          ? 'One batch: nothing to join.'
          : `Its mixing, its pour of ${formatNumber(plan.pourMin, 1)} min, and the mixing of the next: ${formatNumber(plan.joinAgeMin, 1)} min after its water met powder.`,
      ),
    ),
  ];
}

const perBatch = (batches: number, each: number) =>
  batches === 1 ? 'In one batch.' : `In ${batches} batches of ${grams(each)}.`;

function batchesFigure({ half }: MoldWork): Figure {
  const spec: FigureSpec = {
    id: 'mold.batches',
    label: 'Batches, both halves',
    unit: '',
    decimals: 0,
    status: 'common practice',
  };
  const { negative, positive } = half;
  if (!negative.known) return unknownFigure(spec, negative.why);
  if (!positive.known) return unknownFigure(spec, positive.why);
  const [first, second] = [negative.value.plan.batches, positive.value.plan.batches];
  return figure(spec, first + second, `Negative ${first}, positive ${second}.`);
}

function totalPowder({ half }: MoldWork): Figure {
  const spec: FigureSpec = {
    id: 'mold.powderKg',
    label: 'Powder, both halves',
    unit: 'kg',
    decimals: 2,
    status: 'common practice',
    source: 'gypsumBalance',
  };
  const { negative, positive } = half;
  if (!negative.known) return unknownFigure(spec, negative.why);
  if (!positive.known) return unknownFigure(spec, positive.why);
  const [first, second] = [negative.value.plan.powderG, positive.value.plan.powderG];
  const total = (first + second) / 1000;
  const offKg = (first * negative.value.volumeScatter + second * positive.value.volumeScatter) / 1000;
  const shown = figure(spec, total, `${grams(first)} + ${grams(second)}, losses included.`);
  return offKg > 0 ? withBand(shown, total - offKg, total + offKg) : shown;
}

function priceFigure({ inputs }: StepContext, work: MoldWork): Figure {
  const spec: FigureSpec = {
    id: 'mold.price',
    label: 'Price of the stone',
    unit: '',
    decimals: 2,
    status: 'your entry',
  };
  const { pricePerKg } = inputs.mold.bag;
  const powder = totalPowder(work);
  if (pricePerKg === null) return unknownFigure(spec, 'No price per kilogram was given.');
  if (typeof powder.value !== 'number') return unknownFigure(spec, powder.working.join(' '));
  return figure(
    spec,
    powder.value * pricePerKg,
    `${formatNumber(powder.value, 2)} kg × ${formatNumber(pricePerKg, 2)} per kg, in your own money.`,
  );
}
