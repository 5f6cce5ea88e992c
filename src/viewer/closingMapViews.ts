/** The maps of the closed mold: gap, class, fiber, bed pressure, and the change of wall that the stack wants. */
import type { ClassLimits, ClosingClass } from '../core/closing/classes';
import type { ClosingMaps } from '../core/closing/closingMaps';
import { formatNumber } from '../core/units/formatNumber';
import { cividis, orangePurple, purpleOrange, rgbOf, type ClassScale, type RampScale } from './colorScales';
import type { ClassLabel, MapView } from './mapColors';
import { signed } from './signed';

export const closingTabs = ['gap', 'class', 'fiber', 'pressure', 'change'] as const;
export type ClosingTab = (typeof closingTabs)[number];

export const closingTabTitles: Readonly<Record<ClosingTab, string>> = {
  gap: 'Gap',
  class: 'Class',
  fiber: 'Fiber',
  pressure: 'Pressure',
  change: 'Change',
};

export function isClosingTab(tab: string): tab is ClosingTab {
  return closingTabs.some((one) => one === tab);
}

/** What the balance says of every drawn facet, and the numbers that the legends need. */
export interface ClosingMapData {
  readonly maps: ClosingMaps;
  readonly limits: ClassLimits;
  /** What the plies fill. */
  readonly curedMm: number;
  readonly wantedMm: number;
  /** Fiber volume fraction past which the stack is choked. */
  readonly limitFraction: number;
  readonly wantedFraction: number;
  /** Clamp force over the plan. */
  readonly clampPressureKpa: number;
}

const outside = 'not pressed on: no show face';

/** What a maker calls them. */
export const closingClassWords: Readonly<Record<ClosingClass, string>> = {
  choked: 'too tight',
  packed: 'pressed',
  light: 'barely pressed',
  loose: 'loose',
};

/** In the order of `closingClass`. */
export const closingClassLabels: readonly ClassLabel[] = [
  {
    label: closingClassWords.choked,
    meaning: 'too much fiber: dry, and holds the mold open',
    hatch: 'cross',
  },
  { label: closingClassWords.packed, meaning: 'filled, hardly any air', hatch: 'none' },
  { label: closingClassWords.light, meaning: 'some air: hardly any pressure', hatch: 'dots' },
  { label: closingClassWords.loose, meaning: 'more air than you accept', hatch: 'slant' },
];

/** The same colors as the bar of shares on the sheet. */
const classColors: ClassScale = {
  kind: 'classes',
  colors: ['8073ac', 'f3e9d4', 'fdc988', 'e0821c'].map(rgbOf),
};

const tick = (at: number) => ({ at, label: formatNumber(at, 2) });

function gapView({ maps, limits, curedMm }: ClosingMapData): MapView {
  const span = Math.max(0.1, 1.5 * (curedMm - limits.chokedUnderMm));
  const scale: RampScale = { kind: 'ramp', ramp: purpleOrange, low: curedMm - span, high: curedMm + span };
  return {
    values: maps.gapMm,
    scale,
    legend: {
      kind: 'ramp',
      title: 'Gap, mm; white: what the plies fill',
      scale,
      ticks: [tick(scale.low), tick(curedMm), tick(scale.high)],
      limit: null,
      noValue: outside,
    },
  };
}

function classView({ maps }: ClosingMapData): MapView {
  return {
    values: maps.closingClass,
    scale: classColors,
    legend: {
      kind: 'classes',
      title: 'Laminate in the closed mold',
      scale: classColors,
      classes: closingClassLabels,
      noValue: outside,
    },
  };
}

const leastFraction = 0.3;

function fiberView({ maps, limitFraction, wantedFraction }: ClosingMapData): MapView {
  const scale: RampScale = { kind: 'ramp', ramp: cividis, low: leastFraction, high: limitFraction };
  const isShown = wantedFraction > scale.low && wantedFraction < scale.high;
  return {
    values: maps.fiberFraction,
    scale,
    legend: {
      kind: 'ramp',
      title: 'Fiber volume fraction',
      scale,
      ticks: [
        { at: scale.low, label: formatNumber(scale.low, 2) },
        { at: scale.high, label: `${formatNumber(scale.high, 2)}+` },
      ],
      limit: isShown ? { at: wantedFraction, label: `wanted ${formatNumber(wantedFraction, 2)}` } : null,
      noValue: outside,
    },
  };
}

/** The least of 1, 2, 5, 10, 20 ... that is not under a value. */
function roundUp(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  return [1, 2, 5, 10].map((step) => step * power).find((round) => round >= value * (1 - 1e-9)) ?? value;
}

function pressureView({ maps, clampPressureKpa }: ClosingMapData): MapView {
  const high = clampPressureKpa > 0 ? roundUp(2 * clampPressureKpa) : 100;
  const scale: RampScale = { kind: 'ramp', ramp: cividis, low: 0, high };
  return {
    values: maps.pressureKpa,
    scale,
    legend: {
      kind: 'ramp',
      title: 'Fiber-bed pressure, kPa',
      scale,
      ticks: [
        { at: 0, label: '0' },
        { at: high, label: `${formatNumber(high, 0)}+` },
      ],
      limit:
        clampPressureKpa > 0
          ? { at: clampPressureKpa, label: `clamps ${formatNumber(clampPressureKpa, 0)}` }
          : null,
      noValue: outside,
    },
  };
}

function changeView({ maps, wantedMm }: ClosingMapData): MapView {
  const span = Math.max(0.2, Math.round((wantedMm / 3) * 10) / 10);
  const scale: RampScale = { kind: 'ramp', ramp: orangePurple, low: -span, high: span };
  return {
    values: maps.wallChangeMm,
    scale,
    legend: {
      kind: 'ramp',
      title: 'Wall change that the stack wants, mm; + is thicker',
      scale,
      ticks: [
        { at: -span, label: signed(-span, 1) },
        { at: 0, label: '0' },
        { at: span, label: signed(span, 1) },
      ],
      limit: null,
      noValue: outside,
    },
  };
}

const makeView: Readonly<Record<ClosingTab, (data: ClosingMapData) => MapView>> = {
  gap: gapView,
  class: classView,
  fiber: fiberView,
  pressure: pressureView,
  change: changeView,
};

export function closingMapView(tab: ClosingTab, data: ClosingMapData): MapView {
  return makeView[tab](data);
}
