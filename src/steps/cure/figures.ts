/** Figures of the predicted oven run: the run in which the stone's own vapor holds its water back, with the band of all three. */
import type { CurePrediction, PredictedRun } from '../../core/cure/predictCure';
import { isExtrapolated, supplierCure } from '../../core/cure/dose';
import { voidPressureAlong } from '../../core/cure/moistureVoids';
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../context';
import { figure, unknownFigure, type FigureSpec } from '../figures';
import type { ProjectInputs } from '../inputs';
import { celsius, hoursMinutes, perRun } from './say';
import { cureState } from './state';

const heat = { status: 'computed', source: 'moldConduction' } as const;
const specs = {
  coldestPeak: {
    id: 'cure.coldest.peakC',
    label: 'Coldest place of the laminate peaks at',
    unit: '°C',
    decimals: 0,
    ...heat,
  },
  hottestPeak: {
    id: 'cure.hottest.peakC',
    label: 'Hottest place of the laminate peaks at',
    unit: '°C',
    decimals: 0,
    ...heat,
  },
  lag: {
    id: 'cure.coldest.lagS',
    label: 'Laminate behind the dial, hottest dwell that it reached',
    unit: 's',
    decimals: 0,
    ...heat,
  },
  timeAtDwell: {
    id: 'cure.coldest.timeAtDwellS',
    label: 'Laminate within 5 K of the last dwell for',
    unit: 's',
    decimals: 0,
    ...heat,
  },
  spread: {
    id: 'cure.spreadK',
    label: 'Largest difference across the part',
    unit: 'K',
    decimals: 1,
    ...heat,
  },
  dose: {
    id: 'cure.coldest.dose',
    label: 'Dose at the coldest place (1 is the supplier’s minimum)',
    unit: '',
    decimals: 2,
    source: 'supplierDose',
  },
  degree: {
    id: 'cure.coldest.degreeOfCure',
    label: 'Degree of cure at the coldest place',
    unit: '',
    decimals: 2,
    status: 'your entry',
  },
  tg: {
    id: 'cure.coldest.tgC',
    label: 'Tg at the coldest place',
    unit: '°C',
    decimals: 0,
    status: 'your entry',
    source: 'diBenedetto',
  },
  dwell: {
    id: 'cure.neededDwellS',
    label: 'Last dwell that really cures the coldest place',
    unit: 's',
    decimals: 0,
    source: 'supplierDose',
  },
  stonePeak: { id: 'cure.stonePeakC', label: 'Hottest stone', unit: '°C', decimals: 0, ...heat },
  turned: {
    id: 'cure.stoneTurnedMm',
    label: 'Stone turned back to plaster, as a skin over the outside',
    unit: 'mm',
    decimals: 1,
    status: 'from memory',
    source: 'strydom1995',
  },
  water: {
    id: 'cure.waterLeftG',
    label: 'Free water left in the stone at the end',
    unit: 'g',
    decimals: 1,
    ...heat,
  },
  voids: {
    id: 'cure.resinPressureNeededKPa',
    label: 'Resin pressure that keeps moisture from opening voids',
    unit: 'kPa',
    decimals: 0,
    status: 'from memory',
    source: 'kardos1986',
  },
  demold: {
    id: 'cure.demoldAfterS',
    label: 'Laminate under the demold temperature, after the oven is off',
    unit: 's',
    decimals: 0,
    ...heat,
  },
} as const satisfies Record<string, FigureSpec>;

export function cureFigures(context: StepContext): readonly Figure[] {
  const state = cureState(context);
  if (!state.known) return Object.values(specs).map((spec) => unknownFigure(spec, state.reason));
  const { prediction } = state;
  const { inputs } = context;
  return [
    banded(
      specs.coldestPeak,
      prediction,
      ({ coldest }) => coldest.peakC,
      ({ coldest }) => celsius(coldest.peakC),
    ),
    banded(
      specs.hottestPeak,
      prediction,
      ({ hottest }) => hottest.peakC,
      ({ hottest }) => celsius(hottest.peakC),
    ),
    banded(specs.lag, prediction, (run) => lastReached(run)?.lagS ?? null, lagWords),
    banded(
      specs.timeAtDwell,
      prediction,
      ({ coldest }) => coldest.dwells.at(-1)?.timeAtS ?? null,
      ({ coldest }) => hoursMinutes(coldest.dwells.at(-1)?.timeAtS ?? 0),
    ),
    banded(
      specs.spread,
      prediction,
      ({ spreadK }) => spreadK,
      ({ spreadK, spreadAtS }) => `${formatNumber(spreadK, 1)} K at ${hoursMinutes(spreadAtS)}`,
    ),
    doseFigure(inputs, prediction),
    inputs.cure.kineticsForm === 'none'
      ? unknownFigure(specs.degree, 'No kinetics of this resin are given; a dose is never a degree of cure.')
      : banded(
          specs.degree,
          prediction,
          ({ coldest }) => coldest.degreeOfCure,
          ({ coldest }) => formatNumber(coldest.degreeOfCure ?? 0, 2),
        ),
    state.middle.tgC === null
      ? unknownFigure(specs.tg, 'Needs kinetics and the three Tg constants of this resin.')
      : banded(
          specs.tg,
          prediction,
          ({ tgC }) => tgC,
          ({ tgC }) => (tgC === null ? 'not known' : celsius(tgC)),
        ),
    dwellFigure(inputs, prediction),
    banded(
      specs.stonePeak,
      prediction,
      ({ stonePeakC }) => stonePeakC,
      ({ stonePeakC }) => celsius(stonePeakC),
    ),
    banded(
      specs.turned,
      prediction,
      ({ stoneTurnedMm }) => stoneTurnedMm,
      ({ stoneTurnedMm, crystalWaterLostPercent }) =>
        `${formatNumber(stoneTurnedMm, 1)} mm, ${formatNumber(crystalWaterLostPercent, 0)} % of the stone`,
    ),
    banded(
      specs.water,
      prediction,
      ({ freeWaterLeftG }) => freeWaterLeftG,
      ({ freeWaterLeftG, water }) =>
        `${formatNumber(freeWaterLeftG, 1)} g of ${formatNumber(water[0]?.heldG ?? 0, 1)} g`,
    ),
    voidFigure(inputs, prediction),
    banded(
      specs.demold,
      prediction,
      ({ demoldAfterS }) => demoldAfterS,
      ({ demoldAfterS }) =>
        demoldAfterS === null
          ? 'not within the hours looked at'
          : `${hoursMinutes(demoldAfterS)} until the laminate is under ${celsius(inputs.cure.demoldC)}, door open`,
    ),
  ];
}

/** The middle run's value with the span of all three. */
function banded(
  spec: FigureSpec,
  { runs, voxelMm, stage }: CurePrediction,
  value: (run: PredictedRun) => number | null,
  words: (run: PredictedRun) => string,
): Figure {
  const middle = runs.find(({ treatment }) => treatment === 'vapor-held');
  const values = runs.map(value);
  const known = values.filter((one): one is number => one !== null);
  const how = `Bricks of ${formatNumber(voxelMm, 1)} mm${stage === 'coarse' ? ', a first coarse answer' : ''}.`;
  const one = figure(spec, middle === undefined ? null : value(middle), ...perRun(runs, words), how);
  const [low, high] = [Math.min(...known), Math.max(...known)];
  return one.value === null || known.length < values.length || high - low < 10 ** -spec.decimals / 2
    ? one
    : { ...one, band: [low, high] };
}

/** The last dwell that the place reached. */
const lastReached = ({ coldest }: PredictedRun) => coldest.dwells.findLast(({ lagS }) => lagS !== null);

const lagWords = ({ coldest }: PredictedRun): string =>
  coldest.dwells
    .map(({ targetC, lagS }) =>
      lagS === null
        ? `${celsius(targetC)} never reached`
        : `${celsius(targetC)} ${hoursMinutes(lagS)} after the dial`,
    )
    .join(', ');

function doseFigure({ cure }: ProjectInputs, prediction: CurePrediction): Figure {
  if (cure.supplierCures.length === 0)
    return unknownFigure(specs.dose, "Enter two or more cures of the supplier's data sheet.");
  const supplier = supplierCure(cure.supplierCures);
  const shown = banded(
    specs.dose,
    prediction,
    ({ coldest }) => coldest.dose?.total ?? null,
    ({ coldest }) =>
      `${formatNumber(coldest.dose?.total ?? 0, 2)}${coldest.dose?.metAtS == null ? '' : `, minimum met at ${hoursMinutes(coldest.dose.metAtS)}`}`,
  );
  const points = supplier.points.map(
    ({ hours, temperatureC }) => `${formatNumber(hours, 2)} h at ${celsius(temperatureC)}`,
  );
  const energies = supplier.energiesJPerMol.map((energy) => `${formatNumber(energy / 1000, 1)} kJ/mol`);
  const outside = prediction.runs.some(({ coldest }) => isExtrapolated(supplier, coldest.peakC));
  return {
    ...shown,
    working: [
      `Supplier: ${points.join(', ')}${energies.length === 0 ? '' : `; apparent energy ${energies.join(', ')}`}. ∫ dt / t(T) along the laminate.`,
      ...shown.working,
      ...(supplier.points.length === 1
        ? ['With one cure nothing is counted below it. Enter a second one.']
        : []),
      ...(outside
        ? ['Some of these peaks lie outside the supplier’s own temperatures: the dose is extrapolated there.']
        : []),
    ],
  };
}

function dwellFigure({ cure }: ProjectInputs, prediction: CurePrediction): Figure {
  if (cure.supplierCures.length === 0)
    return unknownFigure(
      specs.dwell,
      "Enter the supplier's cures: without them no dwell can be called enough.",
    );
  if (prediction.stage === 'coarse') return unknownFigure(specs.dwell, 'Comes with the refined answer.');
  const lastC = cure.stages.at(-1)?.targetC ?? 0;
  return banded(
    specs.dwell,
    prediction,
    ({ neededDwellS }) => neededDwellS,
    ({ neededDwellS }) =>
      neededDwellS === null
        ? 'none within 36 h'
        : `${hoursMinutes(neededDwellS)} at ${celsius(lastC)} on the dial`,
  );
}

/** Damp stone steams against the laminate, so it counts as full humidity. */
const dampFromPercent = 10;
export const humidityInMold = ({ cure, closing }: ProjectInputs): number =>
  cure.freeWaterLeftPercent >= dampFromPercent ? 100 : closing.humidityPercent;

export function voidPressureOf(inputs: ProjectInputs, run: PredictedRun) {
  return voidPressureAlong(run.hottest.curve, humidityInMold(inputs));
}

function voidFigure(inputs: ProjectInputs, prediction: CurePrediction): Figure {
  const shown = banded(
    specs.voids,
    prediction,
    (run) => voidPressureOf(inputs, run).neededKPa,
    (run) => {
      const { absoluteKPa, temperatureC } = voidPressureOf(inputs, run);
      return `4962 exp(−4892 / T) × ${formatNumber(humidityInMold(inputs), 0)} % at ${celsius(temperatureC)} = ${formatNumber(absoluteKPa, 0)} kPa absolute, less 101 kPa of air`;
    },
  );
  return {
    ...shown,
    working: [
      ...shown.working,
      'Humidity is that of the roll’s store; 100 % for stone that still steams is an analogy. Once the resin has gelled, no void opens.',
    ],
  };
}
