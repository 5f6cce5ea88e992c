/** What the bench view draws for this step: the balance, told for every facet of the drawn part. */
import { closingMaps } from '../../core/closing/closingMaps';
import { planAreaMm2 } from '../../core/closing/fixes';
import { meanPressureKpa } from '../../core/closing/clamps';
import type { EvenedGaps } from '../../core/closing/cavity';
import type { ClosingSamples } from '../../core/closing/closingTypes';
import { isPlaced, outcomeText } from '../../steps/closing/figures';
import { closingState } from '../../steps/closedMold/state';
import type { StepContext } from '../../steps/shared/context';
import type { DisplayChunk } from '../../pipeline/told';
import type { ClosingMapData } from '../../viewer/closingMapViews';

export type ClosingView =
  { readonly known: true; readonly data: ClosingMapData } | { readonly known: false; readonly why: string };

/** `faces`: one sample per drawn facet, of the same measurement as the context; `display`: the facets themselves. */
export function closingView(
  context: StepContext,
  faces: ClosingSamples,
  display: readonly DisplayChunk[],
): ClosingView {
  const state = closingState(context);
  if (!state.known) return { known: false, why: state.reason };
  if (!isPlaced(state))
    return { known: false, why: `The mold does not come to rest: ${outcomeText(state)}.` };
  const { main, curve, limits, wantedWallMm, filmMm, curedMm, histogram } = state;
  const { inputs } = context;
  const samples =
    inputs.part.nominalWall === 'print'
      ? { ...faces, wallMm: new Float32Array(faces.wallMm.length).fill(histogram.wallMm[0] ?? 0) }
      : filmMm > 0
        ? { ...faces, wallMm: faces.wallMm.map((wall) => Math.max(0, wall - filmMm)) }
        : faces;
  return {
    known: true,
    data: {
      maps: closingMaps(
        samples,
        main.solution,
        curve,
        limits,
        wantedWallMm - filmMm,
        main.evened === null ? null : evenedPerFacet(main.evened, faces, display),
      ),
      limits,
      curedMm,
      wantedMm: wantedWallMm,
      limitFraction: curve.solidFiberMm / curve.limitGapMm,
      wantedFraction: inputs.closing.wantedFiberFraction,
      clampPressureKpa: meanPressureKpa(main.solution.clampForceN, planAreaMm2(histogram)),
    },
  };
}

/** The evened gap at the middle of every facet that takes part. */
function evenedPerFacet(
  evened: EvenedGaps,
  { areaMm2 }: ClosingSamples,
  display: readonly DisplayChunk[],
): Float32Array {
  const gaps = new Float32Array(areaMm2.length).fill(NaN);
  for (const { firstFacet, corners } of display)
    for (let at = 0; at < corners.length; at += 9) {
      const facet = firstFacet + at / 9;
      if (areaMm2[facet] === 0) continue;
      const middle = (axis: number) =>
        (corners[at + axis]! + corners[at + axis + 3]! + corners[at + axis + 6]!) / 3;
      gaps[facet] = evened.atMm(middle(0), middle(1), middle(2));
    }
  return gaps;
}
