/** What each map shows: its values per facet, its colors, and what the legend says. */
import { dragsBelowDeg } from '../core/mesh/draft';
import { facetKind } from '../core/mesh/types';
import type { MapArrays } from '../pipeline/told';
import type { Hatch } from '../ui/charts/HatchPattern';
import {
  cividis,
  purpleOrange,
  rgbOf,
  type ClassScale,
  type ColorScale,
  type RampScale,
} from './colorScales';
import { signed } from './signed';

export const mapTabs = ['wall', 'draft', 'trapped', 'corners', 'kinds', 'cut'] as const;
export type MapTab = (typeof mapTabs)[number];

export const mapTitles: Readonly<Record<MapTab, string>> = {
  wall: 'Wall',
  draft: 'Draft',
  trapped: 'Undercut',
  corners: 'Corners',
  kinds: 'Kinds',
  cut: 'Cut',
};

/** What the maps are judged by; from the ply stack and the tolerances. */
export interface MapLimits {
  readonly measure: 'ray' | 'ball';
  /** Thickness that the wall is compared with; null while no stack is known. */
  readonly stackMm: number | null;
  readonly leastDraftDeg: number;
  /** Inside corners tighter than this are marked; null for none. */
  readonly leastCornerRadiusMm: number | null;
}

export const draftClass = { releases: 0, drags: 1, locks: 2 } as const;

/** Draft toward the facet's own mold half; a rim or detail releases from whichever half it looks at. */
export function releaseDraftDeg(maps: Pick<MapArrays, 'draftDeg' | 'kind'>): Float32Array {
  const { draftDeg, kind } = maps;
  const release = new Float32Array(draftDeg.length);
  for (let facet = 0; facet < release.length; facet++) {
    const draft = draftDeg[facet]!;
    if (kind[facet] === facetKind.show) release[facet] = draft;
    else if (kind[facet] === facetKind.core) release[facet] = -draft;
    else if (kind[facet] === facetKind.trapped) release[facet] = -Math.abs(draft);
    else release[facet] = Math.abs(draft);
  }
  return release;
}

/** `draftClass` value per facet. */
export function draftClasses(maps: Pick<MapArrays, 'draftDeg' | 'kind'>, leastDraftDeg: number): Uint8Array {
  const release = releaseDraftDeg(maps);
  const dragsBelow = dragsBelowDeg(leastDraftDeg);
  const classes = new Uint8Array(release.length);
  for (let facet = 0; facet < classes.length; facet++) {
    if (maps.kind[facet] === facetKind.trapped) classes[facet] = draftClass.locks;
    else classes[facet] = release[facet]! < dragsBelow ? draftClass.drags : draftClass.releases;
  }
  return classes;
}

/** A class as the legend shows it: label and hatch tell it apart without color. */
export interface ClassLabel {
  readonly label: string;
  readonly meaning: string;
  readonly hatch: Hatch;
}

const draftClassLabels: readonly ClassLabel[] = [
  { label: 'releases', meaning: 'enough draft toward its mold half', hatch: 'none' },
  { label: 'drags', meaning: 'less draft than you accept', hatch: 'slant' },
  { label: 'undercut', meaning: 'neither half reaches it along the pull', hatch: 'cross' },
];

const draftClassColors: ClassScale = {
  kind: 'classes',
  colors: ['dfe8f2', 'e0821c', '7a1f0e'].map(rgbOf),
};

/** In the order of `facetKind`. */
export const kindLabels: readonly ClassLabel[] = [
  { label: 'show skin', meaning: 'meets the negative, a core face stands behind it', hatch: 'none' },
  { label: 'core skin', meaning: 'meets the positive', hatch: 'level' },
  { label: 'rim', meaning: 'land between show and core skin', hatch: 'slant' },
  { label: 'detail', meaning: 'boss, rib or other local shape', hatch: 'dots' },
  { label: 'undercut', meaning: 'neither half reaches it along the pull', hatch: 'cross' },
  { label: 'not measured', meaning: 'no wall was met behind it', hatch: 'steep' },
];

const kindColors: ClassScale = {
  kind: 'classes',
  colors: ['f3e9d4', 'b4c8e0', 'c9a065', '8073ac', '9c2b14', '3a3f45'].map(rgbOf),
};

export type MapLegend =
  | {
      readonly kind: 'ramp';
      readonly title: string;
      readonly scale: RampScale;
      readonly ticks: readonly { readonly at: number; readonly label: string }[];
      /** The limit on this map, marked under the bar; null for none. */
      readonly limit: { readonly at: number; readonly label: string } | null;
      /** What gray means on this map. */
      readonly noValue: string;
    }
  | {
      readonly kind: 'classes';
      readonly title: string;
      readonly scale: ClassScale;
      readonly classes: readonly ClassLabel[];
      /** What gray means; left out when every face has a class. */
      readonly noValue?: string;
    };

/** Values per facet and the colors they take. */
export interface Paint {
  readonly values: Float32Array | Uint8Array;
  readonly scale: ColorScale;
}

export interface MapView extends Paint {
  readonly legend: MapLegend;
}

/** Half of the range shown about the stack: a good third of it, rounded to a tenth of a millimeter. */
function wallSpanMm(stackMm: number): number {
  return Math.max(0.2, Math.round((stackMm / 3) * 10) / 10);
}

function wallMap(maps: MapArrays, limits: MapLimits): MapView {
  const values = limits.measure === 'ray' ? maps.rayWallMm : maps.ballWallMm;
  const { stackMm } = limits;
  if (stackMm === null) {
    const scale: RampScale = { kind: 'ramp', ramp: cividis, low: 0, high: 4 };
    const ticks = [0, 2, 4].map((at) => ({ at, label: at === 4 ? '4 and over' : String(at) }));
    return {
      values,
      scale,
      legend: { kind: 'ramp', title: 'Wall, mm', scale, ticks, limit: null, noValue: 'no wall met' },
    };
  }
  const span = wallSpanMm(stackMm);
  const scale: RampScale = {
    kind: 'ramp',
    ramp: purpleOrange,
    low: stackMm - span,
    high: stackMm + span,
  };
  const ticks = [
    { at: scale.low, label: signed(-span, 1) },
    { at: stackMm, label: '0' },
    { at: scale.high, label: signed(span, 1) },
  ];
  return {
    values,
    scale,
    legend: {
      kind: 'ramp',
      title: 'Wall less the wall wanted, mm',
      scale,
      ticks,
      limit: null,
      noValue: 'no wall met',
    },
  };
}

const draftShownToDeg = 10;

function draftMap(maps: MapArrays, limits: MapLimits): MapView {
  const scale: RampScale = { kind: 'ramp', ramp: cividis, low: 0, high: draftShownToDeg };
  const least = limits.leastDraftDeg;
  const ticks = [
    { at: 0, label: '0' },
    { at: draftShownToDeg, label: `${draftShownToDeg}+` },
  ];
  return {
    values: releaseDraftDeg(maps),
    scale,
    legend: {
      kind: 'ramp',
      title: 'Draft toward its mold half, °',
      scale,
      ticks,
      limit: least > draftShownToDeg ? null : { at: least, label: `least ${least}` },
      noValue: 'no draft',
    },
  };
}

function cornerMap(maps: MapArrays, limits: MapLimits): MapView {
  const least = limits.leastCornerRadiusMm;
  const high = least === null ? 5 : Math.max(1, Math.ceil(2 * least));
  const scale: RampScale = { kind: 'ramp', ramp: cividis, low: 0, high };
  const ticks = [
    { at: 0, label: '0' },
    { at: high, label: `${high}+` },
  ];
  return {
    values: maps.cornerRadiusMm,
    scale,
    legend: {
      kind: 'ramp',
      title: 'Inside-corner radius, mm',
      scale,
      ticks,
      limit: least === null ? null : { at: least, label: `least ${least.toFixed(2)}` },
      noValue: 'no inside corner',
    },
  };
}

function trappedMap(maps: MapArrays, limits: MapLimits): MapView {
  return {
    values: draftClasses(maps, limits.leastDraftDeg),
    scale: draftClassColors,
    legend: {
      kind: 'classes',
      title: 'Letting go of stone',
      scale: draftClassColors,
      classes: draftClassLabels,
    },
  };
}

function kindMap(maps: MapArrays): MapView {
  return {
    values: maps.kind,
    scale: kindColors,
    legend: { kind: 'classes', title: 'What each face is', scale: kindColors, classes: kindLabels },
  };
}

const makeMap: Readonly<Record<MapTab, (maps: MapArrays, limits: MapLimits) => MapView>> = {
  wall: wallMap,
  draft: draftMap,
  trapped: trappedMap,
  corners: cornerMap,
  kinds: kindMap,
  // A cut is looked at for its wall.
  cut: wallMap,
};

/** Values, colors and legend of one map. */
export function mapView(tab: MapTab, maps: MapArrays, limits: MapLimits): MapView {
  return makeMap[tab](maps, limits);
}
