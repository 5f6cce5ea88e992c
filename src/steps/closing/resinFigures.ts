/** Figures of the resin: how much must go where, the two limits, and whether it has the time and the pressure. */
import {
  aminePrepregEpoxy,
  flowTimeS,
  leastVoidFreeAtm,
  permeabilityM2,
  viscosityPaS,
} from '../../core/closing/flow';
import { resinMoved } from '../../core/closing/resin';
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import { figure, unknownFigure, type FigureSpec } from '../figures';
import type { ClosingInputs } from './inputs';
import { kilopascals, mm } from './say';
import type { ClosingState } from './state';

export const resinSpecs = {
  out: { id: 'closing.resinPressedOutG', label: 'Resin pressed out of tight places', unit: 'g', decimals: 2 },
  room: { id: 'closing.resinRoomG', label: 'Room for it in wide places', unit: 'g', decimals: 2 },
  rim: { id: 'closing.resinOverRimG', label: 'Resin that must leave over the rim', unit: 'g', decimals: 2 },
  freeMm: {
    id: 'closing.freeStandOffMm',
    label: 'Stand-off when resin is free to leave',
    unit: 'mm',
    decimals: 2,
    source: 'closingBalance',
  },
  trapped: {
    id: 'closing.trappedStandOffMm',
    label: 'Stand-off when no resin can leave',
    unit: 'mm',
    decimals: 2,
    source: 'closingBalance',
  },
  trappedKpa: {
    id: 'closing.trappedResinKpa',
    label: 'Resin pressure when none can leave',
    unit: 'kPa',
    decimals: 0,
    source: 'closingBalance',
  },
  wetting: {
    id: 'closing.flowThroughMinutes',
    label: 'Resin through the thickness',
    unit: 'min',
    decimals: 1,
    source: 'carmanKozeny',
  },
  bleed: {
    id: 'closing.flowToRimHours',
    label: 'Resin in the plane to the rim',
    unit: 'h',
    decimals: 1,
    source: 'carmanKozeny',
  },
  voids: {
    id: 'closing.voidFreeKpa',
    label: 'Resin pressure that keeps moisture from boiling',
    unit: 'kPa',
    decimals: 0,
    source: 'kardos1986',
  },
} as const satisfies Record<string, FigureSpec>;

const fiberRadiusM = 3.5e-6;
const acrossK0 = 11;
const alongK0 = 0.7;
/** Less of the show face under pressure than this drives no flow to speak of. */
const noticedShare = 0.005;
const unpressed = 'Next to nothing presses on the laminate, so nothing drives the resin.';
const kpaPerAtm = 101.325;

export function resinFigures(state: ClosingState, inputs: ClosingInputs): readonly Figure[] {
  const { free, trapped, histogram, curedMm, stack } = state;
  const moved = resinMoved(histogram, free.solution, curedMm);
  const density = resinDensity(state);
  const grams = (mm3: number) => (mm3 / 1000) * density;
  const rests = free.solution.outcome !== 'tips' && free.solution.outcome !== 'nothing holds';
  const how = `Gap against ${mm(curedMm, 3)} cured, over the show face; resin ${formatNumber(density, 2)} g/cm³.`;
  const moving = (spec: FigureSpec, mm3: number, what: string) =>
    rests
      ? figure({ ...spec, status: state.beds.status }, grams(mm3), what, how)
      : unknownFigure(spec, 'The mold does not come to rest.');
  return [
    moving(resinSpecs.out, moved.pressedOutMm3, 'Where the gap is under the cured thickness.'),
    moving(
      resinSpecs.room,
      moved.roomMm3,
      'Where the gap is over the cured thickness; what is not filled stays air.',
    ),
    moving(
      resinSpecs.rim,
      moved.overTheRimMm3,
      `Pressed out less room, not under zero; ${stack.total.plies} plies hold ${formatNumber(stack.content.resinGsm, 0)} g/m².`,
    ),
    figure(
      { ...resinSpecs.freeMm, status: state.beds.status },
      rests ? free.solution.standOffMm : null,
      'Fibers alone carry; the long-time limit with an open rim.',
    ),
    figure(
      { ...resinSpecs.trapped, status: state.beds.status },
      rests ? trapped.solution.standOffMm : null,
      `All gaps together hold at least the laminate, ${mm(curedMm, 3)} in the mean; inside the mold resin may move. The limit with a sealed rim.`,
    ),
    figure(
      { ...resinSpecs.trappedKpa, status: state.beds.status },
      rests ? 1000 * trapped.solution.resinPressureMPa : null,
      'What the trapped resin must push so that the gaps hold it; 0 when there is room for all of it.',
    ),
    ...flowFigures(state, inputs),
  ];
}

function resinDensity({ stack }: ClosingState): number {
  return stack.plies.reduce((sum, { card }) => sum + card.resinDensityGCm3, 0) / stack.plies.length;
}

/** Fresh resin at the first dwell; the law is of another epoxy, so only the order of size is to be read. */
function flowFigures(state: ClosingState, inputs: ClosingInputs): readonly Figure[] {
  const { main, histogram, curedMm } = state;
  const voidKpa = leastVoidFreeAtm(inputs.cureTemperatureC, inputs.humidityPercent) * kpaPerAtm;
  const voids = figure(
    { ...resinSpecs.voids, status: 'from memory' },
    voidKpa,
    `4962 exp(−4892 / T) × ${formatNumber(inputs.humidityPercent, 0)} % at ${formatNumber(inputs.cureTemperatureC, 0)} °C = ${kilopascals(voidKpa)} absolute; the air gives ${kilopascals(kpaPerAtm)} of it while the rim is open.`,
    'In a rigid mold the resin pressure falls to none once stone or fibers take the load. Dry the stone and the roll.',
  );
  const { contact } = main;
  if (contact === null || contact.areaShare < noticedShare || contact.fiberFraction >= 0.95)
    return [unknownFigure(resinSpecs.wetting, unpressed), unknownFigure(resinSpecs.bleed, unpressed), voids];
  const viscosity = viscosityPaS(aminePrepregEpoxy, inputs.flowTemperatureC, 0);
  const [halfU, halfV] = histogram.frame.halfSizeMm;
  const toRimMm = Math.min(halfU, halfV);
  const seconds = (k0: number, lengthMm: number) =>
    flowTimeS(
      viscosity,
      contact.fiberFraction,
      lengthMm / 1000,
      permeabilityM2(fiberRadiusM, contact.fiberFraction, k0),
      1000 * contact.pressureKpa,
    );
  const law = `Fresh amine-cured epoxy of ${formatNumber(viscosity, 2)} Pa s at ${formatNumber(inputs.flowTemperatureC, 0)} °C, Vf ${formatNumber(contact.fiberFraction, 3)}, ${kilopascals(contact.pressureKpa)}; your resin differs, read the order of size.`;
  return [
    figure({ ...resinSpecs.wetting, status: 'from memory' }, seconds(acrossK0, curedMm) / 60, law),
    figure(
      { ...resinSpecs.bleed, status: 'from memory' },
      seconds(alongK0, toRimMm) / 3600,
      `${mm(toRimMm, 0)} from the middle to the nearer rim.`,
      law,
    ),
    voids,
  ];
}
