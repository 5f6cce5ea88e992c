/**
 * Stress and strain in each ply under a load per width and a change of temperature, in the ply's own axes.
 * Source: `kaw2006` in core/sources, chapter 4: stress = Q̄ (ε⁰ + z κ − α ΔT).
 */
import { timesVector, transposed, vector3, type Vector3 } from '../numeric/matrix3';
import type { Laminate, PlacedLayer } from './lamination';
import { plyStrain, reducedStiffnessMpa } from './plyStiffness';
import { thermalResponse } from './thermalResponse';

/** Force (N/mm) and moment (N·mm per mm) per width, laminate axes. */
export interface PlateLoad {
  readonly forceNPerMm: Vector3;
  readonly momentN: Vector3;
}

export interface PlyState {
  /** 0 is the first layer. */
  readonly layer: number;
  /** The face of the layer towards the first or the last layer of the stack. */
  readonly face: 'low' | 'high';
  /** Strain that makes stress (free expansion taken off): along 1, 2 and engineering shear 12. */
  readonly strain: Vector3;
  readonly stressMpa: Vector3;
}

/** The state at both faces of every layer under `load` alone; strain is linear between them. */
export function loadStates(laminate: Laminate, load: PlateLoad): readonly PlyState[] {
  const { aMmPerN, bPerN, dPerNmm } = laminate.compliance;
  const stretch = timesVector(aMmPerN, load.forceNPerMm);
  const stretchByMoment = timesVector(bPerN, load.momentN);
  const curlByForce = timesVector(transposed(bPerN), load.forceNPerMm);
  const curl = timesVector(dPerNmm, load.momentN);
  return statesOf(
    laminate,
    vector3((r) => stretch[r] + stretchByMoment[r]),
    vector3((r) => curlByForce[r] + curl[r]),
    0,
  );
}

/** The state that a change of temperature leaves in a laminate that lies free: its residual stresses. */
export function residualStates(laminate: Laminate, temperatureChangeK: number): readonly PlyState[] {
  const { midplaneStrain, curvaturePerM } = thermalResponse(laminate, temperatureChangeK);
  return statesOf(
    laminate,
    midplaneStrain,
    vector3((r) => curvaturePerM[r] / 1000),
    temperatureChangeK,
  );
}

function statesOf(
  laminate: Laminate,
  midplaneStrain: Vector3,
  curvaturePerMm: Vector3,
  temperatureChangeK: number,
): readonly PlyState[] {
  const stateAt = (layer: PlacedLayer, index: number, face: 'low' | 'high'): PlyState => {
    const zMm = face === 'low' ? layer.lowMm : layer.highMm;
    const stressing = vector3(
      (r) => midplaneStrain[r] + zMm * curvaturePerMm[r] - layer.expansionPerK[r] * temperatureChangeK,
    );
    const strain = plyStrain(stressing, layer.angleDeg);
    return {
      layer: index,
      face,
      strain,
      stressMpa: timesVector(reducedStiffnessMpa(layer.elastic), strain),
    };
  };
  return laminate.layers.flatMap((layer, index) => [
    stateAt(layer, index, 'low'),
    stateAt(layer, index, 'high'),
  ]);
}
