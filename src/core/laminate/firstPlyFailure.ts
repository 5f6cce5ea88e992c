/** A first look at strength: the ply that fails first under a given load, where cards have strengths. An estimate. */
import { vector3 } from '../numeric/matrix3';
import {
  checkPlyStrength,
  maximumStrainIndex,
  tsaiWuIndex,
  tsaiWuReserve,
  type PlyStrength,
} from './failureIndex';
import type { Laminate } from './lamination';
import { loadStates, residualStates, type PlateLoad } from './plyStresses';

export interface FirstPlyFailure {
  /** The layer nearest to failure by Tsai-Wu, 0 for the first. */
  readonly layer: number;
  readonly face: 'low' | 'high';
  readonly tsaiWuIndex: number;
  /** The load could grow by this factor, residual stresses unchanged; null when the load stresses no such ply. */
  readonly reserveFactor: number | null;
  /** The largest maximum-strain index of any layer, which may be another one. */
  readonly maximumStrainIndex: number;
  /** Layers without strengths, which nothing is known about. */
  readonly layersNotJudged: readonly number[];
}

/**
 * `strengths` runs along the laminate's layers, null where a card has none. Residual stress of `temperatureChangeK` is
 * included (0 leaves it out). null when no layer has strengths.
 */
export function firstPlyFailure(
  laminate: Laminate,
  strengths: readonly (PlyStrength | null)[],
  load: PlateLoad,
  temperatureChangeK: number,
): FirstPlyFailure | null {
  for (const strength of strengths) if (strength !== null) checkPlyStrength(strength);
  const residual = residualStates(laminate, temperatureChangeK);
  const judged = loadStates(laminate, load).flatMap((state, i) => {
    const strength = strengths[state.layer] ?? null;
    const { elastic } = laminate.layers[state.layer]!;
    const rest = residual[i]!;
    if (strength === null) return [];
    const strain = vector3((r) => state.strain[r] + rest.strain[r]);
    const stressMpa = vector3((r) => state.stressMpa[r] + rest.stressMpa[r]);
    return {
      layer: state.layer,
      face: state.face,
      tsaiWuIndex: tsaiWuIndex(stressMpa, strength),
      reserveFactor: tsaiWuReserve(state.stressMpa, rest.stressMpa, strength),
      maximumStrainIndex: maximumStrainIndex(strain, elastic, strength),
    };
  });
  const [first] = judged;
  if (first === undefined) return null;
  const nearest = judged.reduce((worst, one) => (nearness(one) < nearness(worst) ? one : worst), first);
  return {
    ...nearest,
    maximumStrainIndex: Math.max(...judged.map((one) => one.maximumStrainIndex)),
    layersNotJudged: laminate.layers.flatMap((_, layer) =>
      (strengths[layer] ?? null) === null ? [layer] : [],
    ),
  };
}

/** Smaller is nearer to failure. */
function nearness(one: { readonly reserveFactor: number | null }): number {
  return one.reserveFactor ?? Number.POSITIVE_INFINITY;
}
