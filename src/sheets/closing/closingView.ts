/** What the bench view draws for this step: the balance, told for every facet of the drawn part. */
import { closingMaps } from '../../core/closing/closingMaps';
import { planAreaMm2 } from '../../core/closing/fixes';
import { meanPressureKpa } from '../../core/closing/clamps';
import type { ClosingSamples } from '../../core/closing/closingTypes';
import { isPlaced, outcomeText } from '../../steps/closing/figures';
import { closingState } from '../../steps/closing/state';
import type { StepContext } from '../../steps/context';
import type { ClosingMapData } from '../../viewer/closingMapViews';

export type ClosingView =
  { readonly known: true; readonly data: ClosingMapData } | { readonly known: false; readonly why: string };

/** `faces`: one sample per drawn facet, of the same measurement as the context. */
export function closingView(context: StepContext, faces: ClosingSamples): ClosingView {
  const state = closingState(context);
  if (!state.known) return { known: false, why: state.reason };
  if (!isPlaced(state))
    return { known: false, why: `The mold does not come to rest: ${outcomeText(state)}.` };
  const { main, curve, limits, wantedWallMm, curedMm, laidMm, histogram } = state;
  const { inputs } = context;
  const samples =
    inputs.part.nominalWall === 'print'
      ? { ...faces, wallMm: new Float32Array(faces.wallMm.length).fill(histogram.wallMm[0] ?? 0) }
      : faces;
  return {
    known: true,
    data: {
      maps: closingMaps(samples, main.solution, curve, limits, wantedWallMm),
      limits,
      curedMm,
      laidMm,
      limitFraction: curve.solidFiberMm / curve.limitGapMm,
      wantedFraction: inputs.closing.wantedFiberFraction,
      clampPressureKpa: meanPressureKpa(main.solution.clampForceN, planAreaMm2(histogram)),
    },
  };
}
