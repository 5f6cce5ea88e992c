/** Figures of the Mold closing step: where the mold stands, who carries the clamps, what becomes of the laminate. */
import { meanPressureKpa, totalClampForceN, vacuumBagKpa } from '../../core/closing/clamps';
import { planAreaMm2 } from '../../core/closing/fixes';
import { closingClass, type ClosingClass } from '../../core/closing/classes';
import type { ClosingSolution } from '../../core/closing/tiltedBalance';
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import { fixFigures, fixSpecs } from './fixFigures';
import { limitFigures, limitSpecs } from './limitFigures';
import { resinFigures } from './resinFigures';
import { resinSpecs } from './resinSpecs';
import { areaPercent, kilopascals, mm, newtons } from './say';
import { closingState, type ClosingCase, type ClosingState } from '../closedMold/state';

const balance = { source: 'closingBalance' } as const;

const specs = {
  rests: { id: 'closing.restsOn', label: 'The mold', unit: '', decimals: 0, ...balance },
  standOff: {
    id: 'closing.standOffMm',
    label: 'Stand-off in the middle',
    unit: 'mm',
    decimals: 2,
    ...balance,
  },
  widest: {
    id: 'closing.widestStandOffMm',
    label: 'Widest stand-off round the lands',
    unit: 'mm',
    decimals: 2,
    ...balance,
  },
  tilt: { id: 'closing.tiltDeg', label: 'Tilt', unit: '°', decimals: 2, ...balance },
  clamp: { id: 'closing.clampForceN', label: 'Clamp force', unit: 'N', decimals: 0 },
  followUp: {
    id: 'closing.followUpNPerMm',
    label: 'Clamp force lost per mm of closing',
    unit: 'N/mm',
    decimals: 1,
  },
  pressure: { id: 'closing.clampPressureKpa', label: 'Clamp force over the plan', unit: 'kPa', decimals: 0 },
  laminate: {
    id: 'closing.laminateForceN',
    label: 'Load in the laminate',
    unit: 'N',
    decimals: 0,
    ...balance,
  },
  land: { id: 'closing.landForceN', label: 'Load on the lands', unit: 'N', decimals: 0, ...balance },
  fraction: {
    id: 'closing.contactFiberFraction',
    label: 'Fiber volume fraction where pressed',
    unit: '',
    decimals: 3,
    ...balance,
  },
  contact: {
    id: 'closing.contactPressureKpa',
    label: 'Fiber-bed pressure where pressed',
    unit: 'kPa',
    decimals: 0,
    ...balance,
  },
  loose: {
    id: 'closing.looseShare',
    label: 'Loose: more air than you accept',
    unit: '',
    decimals: 3,
    ...balance,
  },
  light: {
    id: 'closing.lightShare',
    label: 'Barely pressed: some air',
    unit: '',
    decimals: 3,
    ...balance,
  },
  packed: {
    id: 'closing.packedShare',
    label: 'Pressed: filled',
    unit: '',
    decimals: 3,
    ...balance,
  },
  choked: {
    id: 'closing.chokedShare',
    label: 'Too tight: too much fiber',
    unit: '',
    decimals: 3,
    ...balance,
  },
  atShut: {
    id: 'closing.sharesAtShut',
    label: 'As drawn, shut: loose, barely pressed, pressed, too tight',
    unit: '',
    decimals: 3,
    ...balance,
  },
} as const satisfies Record<string, FigureSpec>;

const outcomeWords: Record<ClosingSolution['outcome'], string> = {
  'shut unloaded': 'shut on the lands, laminate unloaded',
  shut: 'shut on the lands',
  leans: 'leans on part of the lands',
  'stands off': 'stands off on the laminate',
  'nothing holds': 'no lands and no contact',
  tips: 'tips: the clamps act outside of what holds it',
};

export function outcomeText({ main }: ClosingState): string {
  return outcomeWords[main.solution.outcome];
}

export function closingFigures(context: StepContext): readonly Figure[] {
  const state = closingState(context);
  if (!state.known)
    return [specs, limitSpecs, resinSpecs, fixSpecs]
      .flatMap((table) => Object.values<FigureSpec>(table))
      .map((spec) => unknownFigure(spec, state.reason));
  return [
    ...positionFigures(state),
    ...forceFigures(state),
    ...shareFigures(state),
    ...limitFigures(state, context.inputs.closing),
    ...resinFigures(state, context.inputs.closing),
    ...fixFigures(state, context),
  ];
}

/** The value over soft, nominal and stiff bed, low end first. */
export function bandOver(
  state: ClosingState,
  value: (one: ClosingCase) => number,
): readonly [number, number] {
  const all = [state.soft, state.main, state.stiff].map(value);
  return [Math.min(...all), Math.max(...all)];
}

/** The part has lost its hold: no position to tell. */
export function isPlaced({ main }: ClosingState): boolean {
  return main.solution.outcome !== 'tips' && main.solution.outcome !== 'nothing holds';
}

function banded(
  state: ClosingState,
  spec: FigureSpec,
  value: (one: ClosingCase) => number,
  ...working: readonly string[]
): Figure {
  if (!isPlaced(state)) return unknownFigure(spec, `The mold does not come to rest: ${outcomeText(state)}.`);
  return {
    ...figure({ ...spec, status: state.beds.status }, value(state.main), ...working),
    band: bandOver(state, value),
  };
}

const bandNote = 'Range: fiber bed softer and stiffer by the scatter. Gaps hardly change, forces do.';

function positionFigures(state: ClosingState): readonly Figure[] {
  const { main, lands, histogram, curve } = state;
  const { halfSizeMm } = histogram.frame;
  const { standOffMm } = main.solution;
  return [
    figure({ ...specs.rests, status: state.beds.status }, outcomeText(state), ...state.beds.words),
    banded(
      state,
      specs.standOff,
      ({ solution }) => solution.standOffMm,
      `Gap of each place = wall + ${mm(standOffMm, 3)} × its pull cosine + tilts; the bed pushes where it is under ${mm(curve.unloadedGapMm, 3)}.`,
      `Σ pressure × cosine × area = ${newtons(main.solution.laminateForceN)} of ${newtons(main.solution.clampForceN)} clamp force, over ${histogram.areaMm2.length} bins of the show face.`,
      bandNote,
    ),
    banded(
      state,
      specs.widest,
      ({ solution }) => Math.max(...solution.cornerStandOffMm),
      `At the corners of ${lands === null ? 'the part' : 'the lands'}: ${main.solution.cornerStandOffMm.map((one) => formatNumber(one, 3)).join(', ')} mm.`,
    ),
    banded(
      state,
      specs.tilt,
      ({ solution }) => tiltDeg(solution),
      `Over a plan of ${formatNumber(2 * halfSizeMm[0], 0)} × ${formatNumber(2 * halfSizeMm[1], 0)} mm. The halves turn about their parting plane: places higher up also move sideways.`,
    ),
  ];
}

export function tiltDeg({ tiltURad, tiltVRad }: ClosingSolution): number {
  return (Math.hypot(tiltURad, tiltVRad) * 180) / Math.PI;
}

function forceFigures(state: ClosingState): readonly Figure[] {
  const { main, histogram, clamps, landAreaMm2 } = state;
  const { solution } = main;
  /** A mold that tips is told with the clamps as they stand on the shut mold. */
  const clampN = isPlaced(state) ? solution.clampForceN : totalClampForceN(clamps, 0);
  const count = clamps.length;
  const planMm2 = planAreaMm2(histogram);
  const kpa = meanPressureKpa(clampN, planMm2);
  const contact = isPlaced(state) ? main.contact : null;
  const untouched = isPlaced(state) ? 'Nothing presses on the laminate.' : `${outcomeText(state)}.`;
  const contactFigure = (spec: FigureSpec, value: 'fiberFraction' | 'pressureKpa', working: string) =>
    contact === null
      ? unknownFigure(spec, untouched)
      : banded(
          state,
          spec,
          (one) => (one.contact ?? contact)[value] * (value === 'pressureKpa' ? stiffnessOf(state, one) : 1),
          working,
        );
  return [
    figure(
      {
        ...specs.clamp,
        status: 'your entry',
        source: 'springPractice',
        entries: state.inputs.closing.clamps.flatMap((clamp, at) =>
          clamp.count > 0 ? [`closing.clamps.${at}.forceN`] : [],
        ),
      },
      clampN,
      `${count} ${count === 1 ? 'clamp' : 'clamps'}, each with its force at its own opening. Measure yours on a scale: hand clamps of one kind differ by a factor of two.`,
    ),
    figure(
      { ...specs.followUp, status: 'your entry' },
      clamps.reduce((sum, { rateNPerMm }) => sum + rateNPerMm, 0),
      'Sum of the spring rates: what the clamps lose while the stack thins by 1 mm. A screw clamp loses all of it, so tighten again when warm.',
    ),
    figure(
      specs.pressure,
      kpa,
      `${newtons(clampN)} / ${formatNumber(planMm2, 0)} mm² across the pull = ${kilopascals(kpa)}; a good vacuum bag gives ${kilopascals(vacuumBagKpa(0.95))}.`,
      'Only faces across the pull feel it; steep walls get what their gap leaves them.',
    ),
    banded(
      state,
      specs.laminate,
      (one) => one.solution.laminateForceN + one.solution.resinForceN,
      `${newtons(solution.clampForceN)} from the clamps − ${newtons(solution.landForceN)} on the lands`,
      bandNote,
    ),
    banded(
      state,
      specs.land,
      (one) => one.solution.landForceN,
      landAreaMm2 > 0
        ? `On ${formatNumber(landAreaMm2, 0)} mm² of stone: ${kilopascals(meanPressureKpa(solution.landForceN, landAreaMm2))} in the mean. Lands only push; they carry what the laminate does not.`
        : 'The mold has no lands.',
      bandNote,
    ),
    contactFigure(
      specs.fraction,
      'fiberFraction',
      contact === null
        ? ''
        : `Mean over the ${areaPercent(contact.areaShare)} of the show face that carries; ${mm(state.curve.solidFiberMm, 3)} of fiber over the gap.`,
    ),
    contactFigure(
      specs.contact,
      'pressureKpa',
      'Mean over the area that carries. Resin between the fibers takes its own part until it has run.',
    ),
  ];
}

/** A case's own bed is softer or stiffer than the curve that means are taken on. */
function stiffnessOf(state: ClosingState, one: ClosingCase): number {
  return one === state.soft ? state.scatterFactors[0] : one === state.stiff ? state.scatterFactors[1] : 1;
}

function shareFigures(state: ClosingState): readonly Figure[] {
  const { limits, sharesAtShut, main } = state;
  const edges = `Too tight under ${mm(limits.chokedUnderMm, 3)}, pressed up to ${mm(limits.packedUpToMm, 3)}, barely pressed up to ${mm(limits.lightUpToMm, 3)}, loose over it; asked in this order, of the gap at this stand-off.`;
  const share = (name: ClosingClass) =>
    banded(
      state,
      specs[name],
      ({ shares }) => shares[name],
      edges,
      `As drawn and shut it would be ${areaPercent(sharesAtShut[name])}.`,
    );
  const names = Object.keys(closingClass).toReversed() as ClosingClass[];
  return [
    ...names.map(share),
    figure(
      { ...specs.atShut, status: state.beds.status },
      names.map((name) => sharesAtShut[name]),
      edges,
      `The mold itself ${outcomeWords[main.solution.outcome]}.`,
    ),
  ];
}
