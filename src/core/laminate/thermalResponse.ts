/**
 * What a change of temperature does to a flat laminate that lies free: stretch and curvature. Linear, with constants
 * that do not change with temperature, counted from the temperature at which the layers are free of stress (about
 * where it gelled). Cure shrinkage and moisture are left out.
 *
 * Source: `kaw2006` in core/sources, chapter 4 (thermal forces and moments).
 */
import { timesVector, transposed, vector3, type Vector3 } from '../numeric/matrix3';
import { Problem } from '../problem';
import { middleMm, type Laminate, type PlacedLayer } from './lamination';

export interface ThermalResponse {
  /** NT = ΔT Σ Q̄ α t, N/mm. */
  readonly forceNPerMm: Vector3;
  /** MT = ΔT Σ Q̄ α t z about the mid-plane, N·mm per mm. */
  readonly momentN: Vector3;
  /** What is left of the moment when the plate has stretched freely, MT − B A⁻¹ NT: the one cause of curvature. */
  readonly freeMomentN: Vector3;
  readonly midplaneStrain: Vector3;
  readonly curvaturePerM: Vector3;
  /** False when the free moment is rounding only: the stack stays flat whatever its B. */
  readonly warps: boolean;
}

/** A free moment below this share of what the layers' thermal forces could make at all is rounding. */
const roundingShare = 1e-9;

/**
 * `temperatureChangeK` is negative for cooling.
 *
 * The warp warning keys on the free moment. B alone says nothing (four plies of one balanced fabric at 0/45/0/45 have
 * a B and stay flat); nor does MT about the mid-plane (two layers of equal expansion and unequal modulus have an MT and
 * stay flat). The free moment does not depend on the reference plane, and curvature is zero exactly when it is.
 */
export function thermalResponse(laminate: Laminate, temperatureChangeK: number): ThermalResponse {
  if (!Number.isFinite(temperatureChangeK))
    throw new Problem('laminate.temperature', 'The change of temperature must be a number of kelvin.');
  const sum = (of: (layer: PlacedLayer) => number): number =>
    laminate.layers.reduce((total, layer) => total + of(layer), 0);
  const pushNPerMm = (layer: PlacedLayer): Vector3 =>
    vector3(
      (r) => temperatureChangeK * layer.thicknessMm * timesVector(layer.stiffnessMpa, layer.expansionPerK)[r],
    );
  const forceNPerMm = vector3((r) => sum((layer) => pushNPerMm(layer)[r]));
  const momentN = vector3((r) => sum((layer) => pushNPerMm(layer)[r] * middleMm(layer)));
  const { aMmPerN, bPerN, dPerNmm } = laminate.compliance;
  const flatStrain = timesVector(laminate.heldFlatMmPerN, forceNPerMm);
  const stretchMoment = timesVector(laminate.bN, flatStrain);
  const freeMomentN = vector3((r) => momentN[r] - stretchMoment[r]);
  const couldBeN = sum((layer) => Math.hypot(...pushNPerMm(layer)) * laminate.thicknessMm);
  const warps = Math.hypot(...freeMomentN) > roundingShare * couldBeN;
  const stretch = timesVector(aMmPerN, forceNPerMm);
  const stretchByMoment = timesVector(bPerN, momentN);
  const curlByForcePerMm = timesVector(transposed(bPerN), forceNPerMm);
  const curlPerMm = timesVector(dPerNmm, momentN);
  return {
    forceNPerMm,
    momentN,
    freeMomentN,
    midplaneStrain: vector3((r) => stretch[r] + stretchByMoment[r]),
    curvaturePerM: warps ? vector3((r) => 1000 * (curlByForcePerMm[r] + curlPerMm[r])) : [0, 0, 0],
    warps,
  };
}

/** In-plane expansion of the laminate held flat, A⁻¹ Σ Q̄ α t, 1/K: x, y and shear. */
export function laminateExpansionPerK(laminate: Laminate): Vector3 {
  return timesVector(laminate.heldFlatMmPerN, thermalResponse(laminate, 1).forceNPerMm);
}
