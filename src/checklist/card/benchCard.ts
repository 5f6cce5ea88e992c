/** The card that goes to the bench: cleared or not, twelve numbers, drawings, the readings that decide, safety. */
import { formatNumber } from '../../core/units/formatNumber';
import { placesThatMatter, type NotedPlace } from '../../steps/bench/places';
import { closingState } from '../../steps/closedMold/state';
import { clockHours, hoursMinutes } from '../../steps/cure/say';
import { cureState } from '../../steps/cure/state';
import { steepestDraftDeg } from '../../core/stone/opening';
import { decide, headline, stamps } from '../../steps/shared/decision';
import { processOf } from '../../steps/shared/process';
import { wallInUse } from '../../steps/shared/wallInUse';
import { isKnown, value, type Material } from '../lines';
import type { BenchCard, CardNumber, ChecklistFacts } from '../model';
import { beforeAnything, overrules } from '../safety';
import { boxAxes } from './boxAxes';
import { clampPlan } from './clampPlan';
import { moldCut } from './moldCut';
import { ovenCurve } from './ovenCurve';

/** In place of a number that must not be used. */
const held = '–';

export function benchCard(facts: ChecklistFacts, material: Material): BenchCard {
  const { context, reports, blanks } = material;
  const decision = decide(reports);
  const { pattern } = context;
  return {
    of: [
      facts.date,
      pattern === null ? 'no pattern imported' : `${pattern.fileName} · ${pattern.sha256.slice(0, 12)}`,
      `workbook ${facts.appVersion}, format ${facts.formatNumber}`,
    ].join(' · '),
    word: decision.word,
    stamp: stamps[decision.word].toUpperCase(),
    headline: headline(decision),
    numbers: cardNumbers(material),
    drawings: [...cutOf(material), ...planOf(material), ...ovenOf(material)],
    blanks: blanks.filter(({ isOnCard }) => isOnCard),
    safety: beforeAnything,
    footer: overrules,
  };
}

const heldOr = (isHeld: boolean, one: CardNumber): CardNumber =>
  isHeld ? { label: one.label, value: held, after: 'not before cleared' } : one;

/** Value and unit of a figure apart, so that the number can stand large. */
function split(text: string): Pick<CardNumber, 'value' | 'after'> {
  const at = text.search(/[\s\u202f](?=[^\d×]*$)/u);
  return at < 0 ? { value: text, after: '' } : { value: text.slice(0, at), after: text.slice(at + 1) };
}

function cardNumbers(material: Material): readonly CardNumber[] {
  const { context, work, isHeld } = material;
  const { plies, closing, cure } = context.inputs;
  const of = (label: string, id: string, after?: string): CardNumber => {
    const own = split(value(material, id));
    return { label, value: own.value.replaceAll(' × ', '×'), after: after ?? own.after };
  };
  const mix = (half: 'negative' | 'positive'): CardNumber => {
    const answer = work.half[half];
    const label = half === 'negative' ? 'Negative' : 'Positive';
    if (!answer.known) return heldOr(isHeld, { label, value: held, after: '' });
    const { powderG, waterG } = answer.value.plan;
    return heldOr(isHeld, {
      label,
      value: formatNumber(powderG, 0),
      after: `g + ${formatNumber(waterG, 0)} g water`,
    });
  };
  const clamps = closing.clamps.reduce((sum, { count }) => sum + count, 0);
  const state = cureState(context);
  const openS =
    state.known && state.middle.demoldAfterS !== null
      ? state.prediction.heatedS + state.middle.demoldAfterS
      : null;
  const dry = ['negative', 'positive'].map((half) => split(value(material, `mold.${half}.dryTargetG`)).value);
  return [
    of('Wall to print', 'plies.wantedWallMm'),
    {
      label: 'Plies',
      value: String(plies.stack.length),
      after: plies.stack.map(({ angleDeg }) => angleDeg).join('/'),
    },
    of('Prepreg to cut', 'plies.prepregBuyCm2'),
    of('Box inside', 'mold.boxMm'),
    mix('negative'),
    mix('positive'),
    heldOr(isHeld, of('Weight on top', 'mold.counterweightG')),
    heldOr(isHeld, {
      label: 'Dry at, neg. / pos.',
      value: dry.join(' / '),
      after: isKnown(material, 'mold.negative.dryTargetG') ? 'g' : '',
    }),
    {
      label: clamps === 1 ? 'Clamp' : 'Clamps',
      value: `${clamps}×${closing.clamps.map(({ forceN }) => formatNumber(forceN, 0)).join(', ')}`,
      after: 'N',
    },
    heldOr(isHeld, {
      label: 'Oven',
      value: cure.stages.map(({ targetC }) => formatNumber(targetC, 0)).join(', '),
      after: `°C, ${cure.stages.map(({ dwellHours }) => hoursMinutes(3600 * dwellHours)).join(', ')}`,
    }),
    heldOr(isHeld, of('Coldest laminate', 'cure.coldest.peakC')),
    heldOr(isHeld, {
      label: 'Open after',
      value: openS === null ? 'not known' : clockHours(openS),
      after: `h:min, under ${formatNumber(cure.demoldC, 0)} °C`,
    }),
  ];
}

function cutOf({ context }: Material): BenchCard['drawings'] {
  const { mold, measured } = context;
  const wall = wallInUse(context);
  if (mold === null || measured === null || !wall.known) return [];
  const { frame } = measured.summary.closing;
  const drawing = moldCut({
    boxMm: mold.box.innerMm[0],
    negativeMm: mold.box.negativeHeightMm,
    positiveMm: mold.box.positiveHeightMm,
    partMm: 2 * frame.halfSizeMm[0],
    depthMm: frame.depthMm,
    gapMm: wall.medianMm,
    draftDeg: steepestDraftDeg(measured.summary.releaseDraft) ?? 0,
  });
  return [{ drawing, under: 'mm; drawn to scale, the form of the part simplified' }];
}

function planOf({ context }: Material): BenchCard['drawings'] {
  const { mold, measured } = context;
  if (mold === null || measured === null) return [];
  const { frame } = measured.summary.closing;
  const closing = closingState(context);
  const places = placesThatMatter(context);
  const axes = boxAxes(frame, mold.boxTurnDeg);
  const cure = cureState(context);
  const drawing = clampPlan({
    boxMm: [mold.box.innerMm[0], mold.box.innerMm[1]],
    outlineMm: mold.rimOutlineMm?.map(axes.ofOutline) ?? null,
    halfSizeMm: frame.halfSizeMm,
    clampsMm: closing.known ? closing.clamps.map(({ planMm }) => axes.ofPlan(planMm)) : [],
    places: places.map(({ letter, planMm }) => ({ letter, planMm: axes.ofPlan(planMm) })),
    coldestMm: cure.known ? [cure.middle.coldestAtMm[0], cure.middle.coldestAtMm[1]] : null,
  });
  return [{ drawing, under: underPlan(places) }];
}

/** Three places in words; the rest is read on the map. */
const mostSaid = 3;

function underPlan(places: readonly NotedPlace[]): string {
  const said = places
    .slice(0, mostSaid)
    .map(({ letter, finding, place }) => `${letter} ${finding}, ${place}`);
  return ['numbers: tightened in this order, a little at a time', 'T: thermocouple', ...said].join('; ');
}

function ovenOf({ context, isHeld }: Material): BenchCard['drawings'] {
  const state = cureState(context);
  if (!state.known || isHeld) return [];
  const { prediction, middle } = state;
  const { demoldAfterS } = middle;
  const drawing = ovenCurve({
    air: prediction.air,
    coldest: middle.coldest.curve,
    others: prediction.runs.filter((run) => run !== middle).map(({ coldest }) => coldest.curve),
    heatedS: prediction.heatedS,
    openAtS: demoldAfterS === null ? null : prediction.heatedS + demoldAfterS,
    demoldC: context.inputs.cure.demoldC,
    targetsC: context.inputs.cure.stages.map(({ targetC }) => targetC),
  });
  const start = `starts at ${formatNumber(processOf(context.inputs).start.valueC, 0)} °C`;
  return [{ drawing, under: `thin: air; thick: laminate in its band; ${start}` }];
}
