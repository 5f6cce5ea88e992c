/** What the clamps still press with once the hot stack has thinned: springs go with it, screws do not. */
import { totalClampForceN } from '../../core/closing/clamps';
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import { closingState } from '../closedMold/state';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import type { Answer } from '../stone/work';

export interface ClampsAfterThinning {
  readonly coldN: number;
  readonly hotN: number;
  /** By how much the stack thins between laying and cure. */
  readonly thinsMm: number;
}

export function clampsAfterThinning(context: StepContext): Answer<ClampsAfterThinning> {
  const state = closingState(context);
  if (!state.known) return { known: false, why: state.reason };
  const standOffMm = Math.max(0, state.main.solution.standOffMm);
  const thinsMm = Math.max(0, state.laidMm - state.curedMm);
  return {
    known: true,
    value: {
      coldN: totalClampForceN(state.clamps, standOffMm + thinsMm),
      hotN: totalClampForceN(state.clamps, standOffMm),
      thinsMm,
    },
  };
}

const spec: FigureSpec = {
  id: 'cure.clampForceHotN',
  label: 'Clamp force once the stack has thinned',
  unit: 'N',
  decimals: 0,
  source: 'closingBalance',
};

export function clampFigure(context: StepContext): Figure {
  const clamps = clampsAfterThinning(context);
  if (!clamps.known) return unknownFigure(spec, clamps.why);
  const { coldN, hotN, thinsMm } = clamps.value;
  return figure(
    spec,
    hotN,
    `${formatNumber(coldN, 0)} N when clamped cold, on a stack ${formatNumber(thinsMm, 2)} mm thicker; springs relax by their rate times that.`,
    'Plastic pads and hot springs lose more than this: look at them through the door and tighten at the first dwell.',
  );
}
