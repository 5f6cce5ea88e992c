/** Figures of the resin: the volume balance of the cavity, its pressure at gel, and what an open rim would do. */
import type { BleedMoment } from '../../core/closing/bleed';
import { resinMoved } from '../../core/closing/resin';
import { flowLawFactor, flowTimeS, permeabilityM2 } from '../../core/closing/flow';
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import { figure, percent, unknownFigure, withBand, type FigureSpec } from '../kit/figures';
import type { ClosingInputs } from '../inputs/closing';
import { acrossK0, fiberRadiusM, type ResinState } from '../closedMold/resinState';
import { resinSpecs } from './resinSpecs';
import { kilopascals, mm, newtons } from './say';
import type { ClosingState } from '../closedMold/state';

export function resinFigures(state: ClosingState, inputs: ClosingInputs): readonly Figure[] {
  const { outcome } = state.main.solution;
  if (outcome === 'tips' || outcome === 'nothing holds')
    return Object.values(resinSpecs).map((spec) => unknownFigure(spec, 'The mold does not come to rest.'));
  return [
    ...cavityFigures(state),
    ...pressureFigures(state, inputs),
    ...standOffFigures(state),
    ...flowFigures(state, inputs),
    ...movedFigures(state),
  ];
}

/** Gel time at the temperature at which it gels. */
const gelWords = ({ gelS }: ResinState) => `${formatNumber(gelS / 60, gelS < 600 ? 1 : 0)} min`;

const cm3 = (mm3: number) => `${formatNumber(mm3 / 1000, 2)} cm³`;

function cavityFigures({
  cavity: held,
  voids,
  resin,
  curedMm,
  histogram,
  walls,
}: ClosingState): readonly Figure[] {
  const area = `${formatNumber(held.areaMm2 / 100, 1)} cm² midway through the wall`;
  const evened = `Resin evens gaps out over ${mm(resin.flowLengthMm, 0)} before it gels.`;
  return [
    figure(resinSpecs.cavity, held.cavityMm3 / 1000, `Σ gap × area over ${area}, at this stand-off`),
    figure(
      resinSpecs.laminate,
      held.laminateMm3 / 1000,
      `${mm(curedMm, 3)} that the plies fill × ${area}, at most the cavity`,
    ),
    figure(
      resinSpecs.air,
      held.airMm3 / 1000,
      `${cm3(held.cavityMm3)} − ${cm3(held.laminateMm3)}; a rigid mold leaves it whatever the clamps do`,
    ),
    figure(
      resinSpecs.voids,
      percent(held.voidShare),
      `1 − ${cm3(held.laminateMm3)} / ${cm3(held.cavityMm3)}; what stays even if resin went everywhere`,
    ),
    figure(
      resinSpecs.worst,
      percent(voids.worst?.voidShare ?? 0),
      voids.worst === null
        ? 'No place is wider than the plies fill.'
        : `1 − ${mm(curedMm, 3)} / gap; wall drawn there ${mm(histogram.wallMm[voids.worst.bin]!)}. ${evened}`,
    ),
    figure(resinSpecs.bad, voids.bad, `Gap over ${mm(walls.badHighMm)}. ${evened}`),
  ];
}

/** When it gels, in the case that verdicts use: over soft and stiff bed where it is held in, else over how easily it runs. */
function atGelBand({ resin, main, soft, stiff }: ClosingState): readonly [number, number] {
  if (resin.atGelBandKPa !== null) return resin.atGelBandKPa;
  const bagKPa = resin.atGelKPa - resin.heldInKPa;
  const ends = [soft, main, stiff].map(({ solution }) => 1000 * solution.resinPressureMPa + bagKPa);
  return [Math.min(...ends), Math.max(...ends)];
}

function pressureFigures(state: ClosingState, inputs: ClosingInputs): readonly Figure[] {
  const { resin, main, trapped } = state;
  const { need, atGelKPa, heldInKPa } = resin;
  const { neededKPa, bandKPa } = need;
  const bag = inputs.bagged === 'bagged' ? ', and the air presses on the bag with 101 kPa' : '';
  const { clampForceN, laminateForceN, landForceN, resinForceN } = trapped.solution;
  return [
    withBand(
      figure(
        { ...resinSpecs.atGel, status: 'from memory' },
        atGelKPa,
        inputs.resin === 'trapped'
          ? `Held in: ${kilopascals(heldInKPa)} from the clamps${bag}.`
          : `Open rim: what is left of ${kilopascals(heldInKPa)} after ${gelWords(resin)}${bag}.`,
        'A rigid mold shields the resin from the air outside, so that does not count without a bag.',
        inputs.resin === 'trapped'
          ? 'Range: fiber bed softer and stiffer by the scatter.'
          : `Range: a resin that runs ${flowLawFactor} times as hard or as easily.`,
      ),
      ...atGelBand(state),
    ),
    withBand(
      figure(
        { ...resinSpecs.need, status: 'from memory' },
        neededKPa + inputs.resinMarginKPa,
        `${kilopascals(neededKPa)} + ${kilopascals(inputs.resinMarginKPa)} to be sure (common practice)`,
      ),
      bandKPa[0] + inputs.resinMarginKPa,
      bandKPa[1] + inputs.resinMarginKPa,
    ),
    withBand(
      figure({ ...resinSpecs.moisture, status: 'from memory' }, neededKPa, ...need.working),
      ...bandKPa,
    ),
    figure(
      resinSpecs.trapped,
      trapped.solution.standOffMm,
      'The gaps together then hold just what the plies fill: (t0 − wall) × area / plan area where the wall is even.',
    ),
    figure(
      resinSpecs.trappedKpa,
      heldInKPa,
      `(${newtons(clampForceN)} clamps − ${newtons(laminateForceN)} fibers − ${newtons(landForceN)} lands) over the plan = ${newtons(resinForceN)}; 0 once lands or fibers carry all.`,
      main === trapped ? 'The case that the verdicts use.' : 'Not the case that the verdicts use.',
    ),
  ];
}

function standOffFigures(state: ClosingState): readonly Figure[] {
  const { resin, free, laidMm, laidIsMeasured } = state;
  return [
    figure(
      { ...resinSpecs.cold, status: laidIsMeasured ? 'measured' : 'common practice' },
      resin.coldStandOffMm,
      `The stack of ${mm(laidMm)} before closing held as it is: (${mm(laidMm)} − wall) × area / plan area. It falls to the warm value as air leaves and the resin runs; close at 50 to 60 °C (common practice).`,
    ),
    figure(
      { ...resinSpecs.freeMm, status: state.beds.status },
      free.solution.standOffMm,
      'Fibers and lands alone carry, the resin has no pressure left: the long-time limit with an open rim.',
    ),
  ];
}

/** A figure that may be off by a factor either way. */
const within = (one: Figure, factor: number): Figure =>
  typeof one.value === 'number' ? withBand(one, one.value / factor, one.value * factor) : one;

/** Fresh resin at the temperature at which it gels; the law is of another epoxy, so only the order of size is to be read. */
function flowFigures(state: ClosingState, inputs: ClosingInputs): readonly Figure[] {
  const { resin, curedMm, stack } = state;
  const { bleed, lostAfterS, inPlaneS, heldInKPa } = resin;
  const fraction = stack.volume.fiberMm / curedMm;
  const law = `Fresh amine-cured epoxy of ${formatNumber(resin.viscosityPaS, 2)} Pa s at ${formatNumber(resin.need.atC, 0)} °C (${resin.need.atHow}), Vf ${formatNumber(fraction, 3)}; your resin differs by up to ${flowLawFactor} times either way (from memory), read the order of size.`;
  const unpressed = 'The resin has no pressure, so nothing drives it.';
  const known = <T>(spec: FigureSpec, value: T | null, shown: (value: T) => Figure) =>
    heldInKPa > 0 && value !== null ? shown(value) : unknownFigure(spec, unpressed);
  const last = bleed.at(-1)!;
  return [
    lostAfterS === null
      ? unknownFigure(
          resinSpecs.lost,
          heldInKPa > 0
            ? `Not within ${formatNumber(last.timeS / 60, 0)} min, down to ${mm(last.standOffMm, 3)} of stand-off.`
            : unpressed,
        )
      : within(
          figure(
            { ...resinSpecs.lost, status: 'from memory' },
            lostAfterS / 60,
            `Excess over the land from ${mm(bleed[0]!.standOffMm, 3)}, 6 μ w A / (S P) × (1/h1² − 1/h0²) in steps; it gels after ${gelWords(resin)}. A released land as dam, a vent for the air and an overflow behind it keep the pressure.`,
            sinkingWords(bleed),
            law,
          ),
          flowLawFactor,
        ),
    known(resinSpecs.bleed, inPlaneS, (value) =>
      within(
        figure(
          { ...resinSpecs.bleed, status: 'from memory' },
          value / 3600,
          'e μ L² / (3 K P), from the middle to the nearer rim, driven by the resin’s own pressure.',
          law,
        ),
        flowLawFactor,
      ),
    ),
    within(
      figure(
        { ...resinSpecs.reach, status: 'from memory' },
        resin.flowLengthMm,
        heldInKPa > 0
          ? `√(2 K P t / (μ (1 − Vf))) along the fibers in ${gelWords(resin)}. ${law}`
          : unpressed,
      ),
      Math.sqrt(flowLawFactor),
    ),
    known(resinSpecs.wetting, heldInKPa, (kPa) =>
      within(
        figure(
          { ...resinSpecs.wetting, status: 'from memory' },
          flowTimeS(
            resin.viscosityPaS,
            fraction,
            curedMm / 1000,
            permeabilityM2(fiberRadiusM, fraction, acrossK0),
            1000 * kPa,
          ) / 60,
          law,
        ),
        flowLawFactor,
      ),
    ),
    withBand(
      figure(
        { ...resinSpecs.residual, status: 'common practice' },
        percent(resin.residualAirShare),
        `Air of the stack before closing, 1 − ${mm(curedMm)} / ${mm(state.laidMm)}, times ${inputs.debulk === 'under vacuum' ? '5 kPa that a vacuum leaves' : '101 kPa'} over ${kilopascals(resin.atGelKPa)}: about f × p air / p resin, absolute.`,
        'What goes out through a vent before the resin closes it is not counted.',
      ),
      ...residualBand(state),
    ),
  ];
}

/** Less air stays under more pressure: at the ends of the pressure at gel, %. */
function residualBand(state: ClosingState): readonly [number, number] {
  const [low, high] = atGelBand(state).map((kPa) => 100 * state.resin.residualAirAt(kPa));
  return [low!, high!];
}

/** The stand-off against time over an open rim, at some of its moments. */
function sinkingWords(bleed: readonly BleedMoment[]): string {
  const told = bleed.filter((_, index) => index % 6 === 0 || index === bleed.length - 1);
  return `It sinks: ${told.map(({ timeS, standOffMm }) => `${mm(standOffMm, 3)} at ${formatNumber(timeS / 60, 1)} min`).join(', ')}.`;
}

function movedFigures({ histogram, main, curedMm, stack, cavity: held }: ClosingState): readonly Figure[] {
  const moved = resinMoved(histogram, main.solution, curedMm);
  const density = stack.plies.reduce((sum, { card }) => sum + card.resinDensityGCm3, 0) / stack.plies.length;
  const grams = (mm3: number) => (mm3 / 1000) * density;
  const how = `Gap against ${mm(curedMm, 3)} that the plies fill, over the show face; resin ${formatNumber(density, 2)} g/cm³.`;
  return [
    figure(resinSpecs.out, grams(moved.pressedOutMm3), 'Where the gap is narrower than the plies fill.', how),
    figure(
      resinSpecs.room,
      grams(moved.roomMm3),
      'Where the gap is wider; what is not filled stays air.',
      how,
    ),
    figure(
      resinSpecs.rim,
      grams(held.pressedOutMm3),
      'What the cavity does not hold. With the resin held in, none: the mold stands off instead.',
      how,
    ),
  ];
}
