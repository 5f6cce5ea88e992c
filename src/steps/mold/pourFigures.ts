/** Figures of the pour: what lifts the pattern, and how warm the stone gets. */
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, withBand, withScatter, type FigureSpec } from '../kit/figures';
import { moldTable } from '../inputs/mold';
import { celsius, entryStatus, figureFrom, grams, ml, mm } from './say';
import { hottestHalf } from './hottestHalf';
import type { MoldWork } from '../stone/work';

export function pourFigures(context: StepContext, work: MoldWork): readonly Figure[] {
  return [...floatFigures(context, work), ...heatFigures(context, work)];
}

/** What lifts the pattern. */
const specs = {
  mass: { id: 'mold.patternG', label: 'Pattern', unit: 'g', decimals: 1 },
  uplift: {
    id: 'mold.floatUpForceN',
    label: 'Float-up force on the pattern',
    unit: 'N',
    decimals: 2,
    source: 'archimedes',
  },
  weight: {
    id: 'mold.counterweightG',
    label: 'Counterweight',
    unit: 'g',
    decimals: 0,
    source: 'archimedes',
  },
  leak: {
    id: 'mold.leakCounterweightG',
    label: 'Counterweight should the seal let go',
    unit: 'g',
    decimals: 0,
    source: 'archimedes',
  },
  seal: { id: 'mold.sealPressureKPa', label: 'Slurry pressure at the board', unit: 'kPa', decimals: 2 },
} as const satisfies Readonly<Record<string, FigureSpec>>;

/** A figure that may be off by so much either way; nothing that is zero is. */
const within = (one: Figure, off: number): Figure =>
  off > 0 && typeof one.value === 'number' && one.value !== 0
    ? withBand(one, one.value - off, one.value + off)
    : one;

/** What the envelope may be off by, as slurry in g, and the pattern's own volume, as a share. */
function volumeErrors(geometry: MoldWork['geometry'], mix: MoldWork['mix']) {
  if (!geometry.known) return { offG: 0, patternScatter: 0 };
  const { errorMm3, patternMm3 } = geometry.value;
  return {
    offG: mix.known ? (mix.value.slurryDensityGMl * errorMm3.others) / 1000 : 0,
    patternScatter: errorMm3.pattern / Math.max(patternMm3, 1e-9),
  };
}

function floatFigures(
  { inputs }: StepContext,
  { float, pattern, geometry, mix }: MoldWork,
): readonly Figure[] {
  const { pourMethod, counterweightMargin, patternDensityGCm3 } = inputs.mold;
  const densityStatus = entryStatus(patternDensityGCm3, moldTable.patternDensityGCm3, 'published');
  const status = entryStatus(counterweightMargin, moldTable.counterweightMargin, 'common practice');
  const weight: FigureSpec = { ...specs.weight, status };
  const leak: FigureSpec = { ...specs.leak, status };
  const displaced =
    geometry.known && mix.known && pattern.known
      ? `(${formatNumber(mix.value.slurryDensityGMl, 3)} g/mL × ${ml(geometry.value.envelopeMm3 / 1000)} − ${grams(pattern.value.grams)}) × 9.80665 / 1000`
      : '';
  const { offG, patternScatter } = volumeErrors(geometry, mix);
  return [
    figureFrom(specs.mass, pattern, ({ grams: value, weighed }) =>
      withScatter(
        figure(
          { ...specs.mass, status: weighed ? 'measured' : densityStatus },
          value,
          weighed
            ? 'On the scale.'
            : `${geometry.known ? ml(geometry.value.patternMm3 / 1000) : ''} of printed material × ${formatNumber(patternDensityGCm3, 2)} g/cm³, printed dense; weigh it.`,
        ),
        weighed ? 0 : patternScatter,
      ),
    ),
    figureFrom(specs.uplift, float, ({ netUpliftN: value }) =>
      within(
        figure(
          specs.uplift,
          value,
          pourMethod === 'board, sealed'
            ? 'Sealed: no pressure gets under the pattern, and the stone over it presses it down (a minus sign is down).'
            : displaced,
          pourMethod === 'pressed in'
            ? 'Pressed in until the rim is flush; the cavity stays empty. Minus means that it sinks.'
            : pourMethod === 'board, leaking'
              ? 'At its worst: pressure under the whole pattern while its cavity stays empty.'
              : 'It relies on the seal all round; see the counterweight should it let go.',
        ),
        (offG * 9.80665) / 1000,
      ),
    ),
    figureFrom(weight, float, ({ counterweightG, holdDownG }) =>
      within(
        figure(
          weight,
          counterweightG,
          holdDownG > 0
            ? `${grams(holdDownG)} of uplift × ${formatNumber(counterweightMargin, 1)}`
            : 'Nothing lifts the pattern.',
        ),
        offG * counterweightMargin,
      ),
    ),
    figureFrom(leak, float, ({ ifLeakingG, ifLeakingN }) =>
      within(
        figure(
          leak,
          ifLeakingG,
          pourMethod === 'board, sealed'
            ? `${formatNumber(ifLeakingN, 2)} N when slurry gets under it; × ${formatNumber(counterweightMargin, 1)}`
            : 'As above: this pour relies on no seal.',
        ),
        offG * counterweightMargin,
      ),
    ),
    figureFrom(specs.seal, float, ({ sealPressureKPa }) =>
      sealPressureKPa === null
        ? unknownFigure(specs.seal, 'Not used: pressed in from above there is no board to seal.')
        : figure(
            specs.seal,
            sealPressureKPa,
            `Slurry ${geometry.known ? mm(geometry.value.box.negativeHeightMm, 0) : ''} high over the seal.`,
          ),
    ),
  ];
}

function heatFigures({ inputs }: StepContext, work: MoldWork): readonly Figure[] {
  const { measured, patternSoftensC, roomC } = inputs.mold;
  const peak: FigureSpec = {
    id: 'mold.settingPeakC',
    label: 'Warmest while setting',
    unit: '°C',
    decimals: 0,
    status: 'from memory',
    source: 'settingHeatConstants',
  };
  const rise: FigureSpec = {
    id: 'mold.adiabaticRiseK',
    label: 'Rise if no heat could leave',
    unit: 'K',
    decimals: 0,
    status: 'from memory',
    source: 'settingHeatConstants',
  };
  const hottest = hottestHalf(work);
  const peakFigure =
    measured.peakC !== null
      ? figure(
          { id: peak.id, label: peak.label, unit: peak.unit, decimals: 0, status: 'measured' },
          measured.peakC,
          'Thermometer in a trial cup.',
        )
      : figureFrom(peak, hottest, ({ half, heat }) =>
          withBand(
            figure(
              peak,
              heat.peakC,
              `Middle of the ${half}, from ${celsius(roomC)}: heat freed evenly until the final set, leaving through back and sides.`,
              'From a good draft, slow setting and late heat up to still air, a fast set and all of the heat. A thermometer in a trial cup as thick as the thickest stone narrows it.',
            ),
            heat.lowC,
            heat.highC,
          ),
        );
  return [
    peakFigure,
    figureFrom(rise, hottest, ({ heat }) =>
      withBand(
        figure(
          rise,
          heat.adiabaticRiseK,
          'Heat of hydration over the heat capacity of set stone and its free water: an upper bound. Published databases differ by 5 % on that heat.',
        ),
        0.95 * heat.adiabaticRiseK,
        1.05 * heat.adiabaticRiseK,
      ),
    ),
    figure(
      {
        id: 'mold.patternSoftensC',
        label: 'Pattern softens at',
        unit: '°C',
        decimals: 0,
        status: entryStatus(patternSoftensC, moldTable.patternSoftensC, 'published'),
        entries: ['mold.patternSoftensC'],
        source: 'printPlastics',
      },
      patternSoftensC,
      'From the data sheet of the printed material; PLA softens at 52 to 58 °C, so plan with 50 as its limit; ABS at 76 to 95 °C, ASA at about 100.',
    ),
  ];
}
