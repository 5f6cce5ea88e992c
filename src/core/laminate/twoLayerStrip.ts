/** Curvature of a narrow strip of two layers that expand differently. */
import { Problem } from '../problem';

export interface StripLayer {
  readonly eGPa: number;
  readonly thicknessMm: number;
  readonly expansionPerK: number;
}

/**
 * κ = 6 (α2 − α1) ΔT (1 + m)² / {h [3 (1 + m)² + (1 + m n)(m² + 1 / (m n))]}, m = t1/t2, n = E1/E2, h = t1 + t2; 1/m.
 * Positive when the second layer lies on the outside of the bend. A plate agrees only for layers of equal Poisson's
 * ratio. Source: `timoshenko1925` in core/sources.
 */
export function twoLayerCurvaturePerM(
  first: StripLayer,
  second: StripLayer,
  temperatureChangeK: number,
): number {
  if (![first.eGPa, second.eGPa, first.thicknessMm, second.thicknessMm].every((value) => value > 0))
    throw new Problem('laminate.notPositive', 'Modulus and thickness of both layers must be more than zero.');
  const m = first.thicknessMm / second.thicknessMm;
  const n = first.eGPa / second.eGPa;
  const thicknessM = (first.thicknessMm + second.thicknessMm) / 1000;
  const freeDifference = (second.expansionPerK - first.expansionPerK) * temperatureChangeK;
  return (
    (6 * freeDifference * (1 + m) ** 2) /
    (thicknessM * (3 * (1 + m) ** 2 + (1 + m * n) * (m * m + 1 / (m * n))))
  );
}
