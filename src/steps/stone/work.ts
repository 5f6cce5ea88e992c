/** Everything the mold step works out, once, for its figures, verdicts and the checklist. */
import { Problem } from '../../core/problem';
import { floatUp, type FloatUp } from '../../core/stone/floatUp';
import { powderDensityGCm3 } from '../../core/stone/gypsum';
import type { MoldBox, MoldGeometry } from '../../core/stone/moldGeometry';
import { halfStone, mixingPlan, type HalfStone, type MixingPlan } from '../../core/stone/pourBatch';
import { settingHeat, type SettingHeat } from '../../core/stone/settingHeat';
import { stoneMix, type StoneMix } from '../../core/stone/stoneMix';
import type { StepContext } from '../shared/context';
import { availablePart } from '../shared/missing';
import type { MoldInputs } from '../inputs/mold';
import { stoneInUse, type StoneInUse } from './stoneInUse';

export type Half = 'negative' | 'positive';
export const halves: readonly Half[] = ['negative', 'positive'];

/** Something worked out, or the sentence why it is not. */
export type Answer<Value> =
  { readonly known: true; readonly value: Value } | { readonly known: false; readonly why: string };

export interface HalfWork {
  readonly stone: HalfStone;
  readonly plan: MixingPlan;
  readonly heat: SettingHeat;
  /** By which share the volume may be off either way; 0 where solids give it. */
  readonly volumeScatter: number;
}

export interface MoldWork {
  readonly stone: StoneInUse;
  readonly mix: Answer<StoneMix>;
  readonly geometry: Answer<MoldGeometry>;
  readonly half: Readonly<Record<Half, Answer<HalfWork>>>;
  /** Mass of the pattern, and whether it was weighed. */
  readonly pattern: Answer<{ readonly grams: number; readonly weighed: boolean }>;
  readonly float: Answer<FloatUp>;
}

/** The value, or the sentence of the problem that kept it from being worked out. */
function attempt<Value>(make: () => Value): Answer<Value> {
  try {
    return { known: true, value: make() };
  } catch (error) {
    if (error instanceof Problem) return { known: false, why: error.message };
    throw error;
  }
}

/** The mix that the mold is poured with. */
export function mixOf(mold: MoldInputs): Answer<StoneMix> {
  const stone = stoneInUse(mold);
  return attempt(() =>
    stoneMix({
      waterPowderRatio: stone.waterPowderRatio.value,
      settingExpansionPercent: stone.settingExpansionPercent.value,
      powderDensityGCm3: powderDensityGCm3[stone.card.powder],
      degreeOfReaction: mold.degreeOfReactionPercent / 100,
      weighedSlurryGMl: mold.measured.slurryGMl,
    }),
  );
}

export function moldWork(context: StepContext): MoldWork {
  const { mold } = context.inputs;
  const stone = stoneInUse(mold);
  const mix = mixOf(mold);
  const geometry = geometryOf(context);
  const halfOf = (half: Half): Answer<HalfWork> => {
    if (!geometry.known) return geometry;
    if (!mix.known) return mix;
    return attempt(() => halfWork(context, stone, mix.value, geometry.value, half));
  };
  const pattern = patternOf(context, geometry);
  return {
    stone,
    mix,
    geometry,
    half: { negative: halfOf('negative'), positive: halfOf('positive') },
    pattern,
    float: floatOf(context, mix, geometry, pattern),
  };
}

function geometryOf(context: StepContext): Answer<MoldGeometry> {
  if (context.mold !== null) return { known: true, value: context.mold };
  const part = availablePart(context);
  if (!part.known) return { known: false, why: part.reason };
  return { known: false, why: context.moldProblem ?? 'The two pours are not worked out yet.' };
}

const volumeMlOf = (geometry: MoldGeometry, half: Half) =>
  (half === 'negative' ? geometry.negativeMm3 : geometry.positiveMm3) / 1000;

function halfWork(
  context: StepContext,
  stone: StoneInUse,
  mix: StoneMix,
  geometry: MoldGeometry,
  half: Half,
): HalfWork {
  const { mold } = context.inputs;
  const volumeMl = volumeMlOf(geometry, half);
  return {
    volumeScatter: geometry.errorMm3.others / 1000 / volumeMl,
    stone: halfStone(volumeMl, mix),
    plan: mixingPlan(volumeMl, mix, {
      lossPercent: mold.lossPercent,
      bowlMl: mold.bowlMl,
      bowlFillShare: mold.bowlFillPercent / 100,
      workingMin: stone.workingMin.value,
      mixingMin: mold.mixingMin,
      pouringMlPerMin: mold.pouringMlPerMin,
    }),
    heat: settingHeat({
      waterPowderRatio: mix.waterPowderRatio,
      powder: stone.card.powder,
      wetDensityGMl: mix.wetDensityGMl,
      volumeMl,
      outsideMm2: outsideMm2(
        geometry.box,
        half === 'negative' ? geometry.box.negativeHeightMm : geometry.box.positiveHeightMm,
      ),
      settingMin: stone.finalSetMin.value,
      roomC: mold.roomC,
    }),
  };
}

/** Back and sides of one pour; the side toward the pattern is taken as insulated by it. */
function outsideMm2({ shape, innerMm }: MoldBox, heightMm: number): number {
  const [length, width] = innerMm;
  return shape === 'cup'
    ? (Math.PI / 4) * length ** 2 + Math.PI * length * heightMm
    : length * width + 2 * (length + width) * heightMm;
}

function patternOf({ inputs }: StepContext, geometry: Answer<MoldGeometry>): MoldWork['pattern'] {
  const { measured, patternDensityGCm3 } = inputs.mold;
  if (measured.patternG !== null) return { known: true, value: { grams: measured.patternG, weighed: true } };
  if (!geometry.known) return geometry;
  const grams = (geometry.value.patternMm3 / 1000) * patternDensityGCm3;
  return { known: true, value: { grams, weighed: false } };
}

function floatOf(
  { inputs }: StepContext,
  mix: Answer<StoneMix>,
  geometry: Answer<MoldGeometry>,
  pattern: MoldWork['pattern'],
): Answer<FloatUp> {
  if (!geometry.known) return geometry;
  if (!mix.known) return mix;
  if (!pattern.known) return pattern;
  const { envelopeMm3, planAreaMm2, box } = geometry.value;
  return {
    known: true,
    value: floatUp({
      method: inputs.mold.pourMethod,
      slurryDensityGMl: mix.value.slurryDensityGMl,
      envelopeMl: envelopeMm3 / 1000,
      patternG: pattern.value.grams,
      slurryHeightMm: box.negativeHeightMm,
      planAreaMm2,
      margin: inputs.mold.counterweightMargin,
    }),
  };
}
