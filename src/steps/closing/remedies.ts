/** Clamps, shims, a dam round the rim: what can be done about the closing without another part. */
import { standOffForGapMm } from '../../core/closing/fixes';
import { formatNumber } from '../../core/units/formatNumber';
import { closingState } from '../closedMold/state';
import {
  changeCosts,
  isTroubled,
  type ProposeRemedies,
  type Remedy,
  type RemedyFacts,
} from '../shared/remedy';
import type { StepContext } from '../shared/context';
import type { Clamp } from '../inputs/clamp';

/** A clamp takes so much of the outline of the mold box, mm; without a box so many are tried (common practice). */
const [clampRoomMm, mostClamps] = [25, 40];
/** More than a hand clamp gives, and than a mold of stone is trusted with under one jaw (common practice). */
const mostForceN = 600;
const factors = [2, 4] as const;
/** Shims are cut from tape and sheet in these steps, and no thicker (common practice). */
const [shimStepMm, mostShimMm] = [0.05, 1];
/** More than this is not scraped off level by hand (common practice). */
const mostScrapedMm = 0.5;

export const closingRemedies: ProposeRemedies = (facts) => [
  ...(isTroubled(facts, 'closing.resin', 'closing.closes', 'closing.load') ? strongerClamps(facts) : []),
  ...(isTroubled(facts, 'closing.tilt', 'closing.closes') ? clampsAllRound(facts) : []),
  ...(isTroubled(facts, 'closing.resin', 'closing.load', 'closing.closes', 'closing.choked')
    ? shimmedLands(facts)
    : []),
  ...choices(facts),
];

const listOf = (clamps: readonly Clamp[]) =>
  clamps.map(({ count, forceN }) => `${count} of ${formatNumber(forceN, 0)} N`).join(' and ');

const clampedWith = (changed: readonly Clamp[], how: string): Remedy => ({
  id: 'closing.clamps',
  what: `Clamp with ${how}: ${listOf(changed)}.`,
  patch: { 'closing.clamps': changed },
  cost: changeCosts.bench,
});

function roomForClamps({ mold }: StepContext): number {
  if (mold === null) return mostClamps;
  const [lengthMm, widthMm] = mold.box.innerMm;
  return Math.floor((2 * (lengthMm + widthMm)) / clampRoomMm);
}

function strongerClamps({ context }: RemedyFacts): readonly Remedy[] {
  const { clamps } = context.inputs.closing;
  const most = roomForClamps(context);
  const more = factors
    .map((factor) => clamps.map((one) => ({ ...one, count: Math.ceil(factor * one.count) })))
    .filter((changed) => changed.reduce((sum, one) => sum + one.count, 0) <= most)
    .map((changed) => clampedWith(changed, 'more clamps'));
  const fits = (factor: number) => clamps.every(({ forceN }) => factor * forceN <= mostForceN);
  const stronger = factors.filter(fits).map((factor) =>
    clampedWith(
      clamps.map((one) => ({
        ...one,
        forceN: factor * one.forceN,
        springRateNPerMm: factor * one.springRateNPerMm,
        secondForceN: factor * one.secondForceN,
      })),
      'stronger clamps',
    ),
  );
  // A few that press well are set sooner than many that do not.
  return [...stronger, ...more];
}

function clampsAllRound({ context }: RemedyFacts): readonly Remedy[] {
  const { clamps } = context.inputs.closing;
  if (clamps.every(({ placed }) => placed === 'round the rim')) return [];
  return [
    {
      id: 'closing.clampPlaces',
      what: 'Spread the clamps evenly round the rim.',
      patch: { 'closing.clamps': clamps.map((one) => ({ ...one, placed: 'round the rim' as const })) },
      cost: changeCosts.setting,
    },
  ];
}

function shimmedLands({ context }: RemedyFacts): readonly Remedy[] {
  const state = closingState(context);
  if (!state.known || state.lands === null || state.pressed === null) return [];
  const wantedMm = standOffForGapMm(state.pressed, state.wantedWallMm - state.filmMm);
  const rounded = Number((Math.round(wantedMm / shimStepMm) * shimStepMm).toFixed(2));
  if (rounded > mostShimMm || rounded < -mostScrapedMm) return [];
  if (Math.abs(rounded - state.lands.shimMm) < shimStepMm / 2) return [];
  const what =
    rounded > 0
      ? `Lay shims of ${formatNumber(rounded, 2)} mm on the lands.`
      : rounded < 0
        ? `Scrape ${formatNumber(-rounded, 2)} mm off the lands.`
        : 'Leave the lands as cast, without shims.';
  const cost = rounded < 0 ? changeCosts.bench : changeCosts.setting;
  return [{ id: 'closing.shimMm', what, patch: { 'closing.shimMm': rounded }, cost }];
}

const chosen = (path: string, value: string, what: string): Remedy => ({
  id: path,
  what,
  patch: { [path]: value },
  cost: changeCosts.bench,
});

function choices(facts: RemedyFacts): readonly Remedy[] {
  const { closing } = facts.context.inputs;
  return [
    ...(closing.resin === 'free' && isTroubled(facts, 'closing.resin', 'closing.closes', 'closing.friction')
      ? [
          chosen(
            'closing.resin',
            'trapped',
            'Dam the rim: a narrow released land all round, and a vent with an overflow at the last place to fill.',
          ),
        ]
      : []),
    ...(closing.lands === 'none' && isTroubled(facts, 'closing.closes', 'closing.choked', 'closing.tilt')
      ? [chosen('closing.lands', 'stone on stone', 'Give the halves lands that meet stone on stone.')]
      : []),
    ...(closing.debulk === 'by hand' && isTroubled(facts, 'closing.slide', 'closing.friction')
      ? [chosen('closing.debulk', 'under vacuum', 'Debulk the stack under vacuum before the mold is closed.')]
      : []),
    ...(closing.bagged === 'none' && isTroubled(facts, 'closing.resin')
      ? [chosen('closing.bagged', 'bagged', 'Put the closed mold in a vacuum bag.')]
      : []),
  ];
}
