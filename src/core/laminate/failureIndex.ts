/**
 * How near one ply is to failing. An index of 1 is failure by that criterion. In-plane stresses only: no delamination,
 * no buckling, no edges or holes; an estimate whatever the strengths.
 */
import type { Vector3 } from '../numeric/matrix3';
import { Problem } from '../problem';
import type { PlyElastic } from './plyElastic';

/** Measured strengths of a ply, all positive, MPa. */
export interface PlyStrength {
  readonly tension1Mpa: number;
  readonly compression1Mpa: number;
  readonly tension2Mpa: number;
  readonly compression2Mpa: number;
  readonly shear12Mpa: number;
}

export function checkPlyStrength(strength: PlyStrength): void {
  if (!Object.values(strength).every((value: number) => value > 0 && Number.isFinite(value)))
    throw new Problem('laminate.strength', 'The strengths of a ply must all be given and more than zero.');
}

/**
 * The largest of strain over ultimate strain along 1, 2 and 12, with ultimate strain = strength / modulus (a ply
 * that is linear up to failure).
 */
export function maximumStrainIndex(strain: Vector3, elastic: PlyElastic, strength: PlyStrength): number {
  const [along, across, shear] = strain;
  const limit1 = sideOf(along, strength.tension1Mpa, strength.compression1Mpa);
  const limit2 = sideOf(across, strength.tension2Mpa, strength.compression2Mpa);
  return Math.max(
    (Math.abs(along) * 1000 * elastic.e1GPa) / limit1,
    (Math.abs(across) * 1000 * elastic.e2GPa) / limit2,
    (Math.abs(shear) * 1000 * elastic.g12GPa) / strength.shear12Mpa,
  );
}

/**
 * F1 σ1 + F2 σ2 + F11 σ1² + F22 σ2² + F66 τ² + 2 F12 σ1 σ2, with F12 = −√(F11 F22) / 2 (a choice, not a measurement).
 * Source: `tsaiWu1971` in core/sources. Negative when the linear terms relieve; not a share of the load.
 */
export function tsaiWuIndex(stressMpa: Vector3, strength: PlyStrength): number {
  return linearPart(stressMpa, strength) + squarePart(stressMpa, stressMpa, strength);
}

/**
 * The factor on `loadMpa` at which load and unscaled `residualMpa` together reach index 1; null when the load makes no
 * stress, so that no factor fails it, and 0 when the residual stress alone has failed the ply.
 */
export function tsaiWuReserve(loadMpa: Vector3, residualMpa: Vector3, strength: PlyStrength): number | null {
  const square = squarePart(loadMpa, loadMpa, strength);
  const linear = linearPart(loadMpa, strength) + 2 * squarePart(loadMpa, residualMpa, strength);
  const room = 1 - tsaiWuIndex(residualMpa, strength);
  if (room <= 0) return 0;
  if (square <= 0) return null;
  return (-linear + Math.sqrt(linear * linear + 4 * square * room)) / (2 * square);
}

function sideOf(strain: number, tensionMpa: number, compressionMpa: number): number {
  return strain >= 0 ? tensionMpa : compressionMpa;
}

function linearPart([s1, s2]: Vector3, strength: PlyStrength): number {
  const f1 = 1 / strength.tension1Mpa - 1 / strength.compression1Mpa;
  const f2 = 1 / strength.tension2Mpa - 1 / strength.compression2Mpa;
  return f1 * s1 + f2 * s2;
}

/** The bilinear form of the quadratic terms. */
function squarePart(p: Vector3, q: Vector3, strength: PlyStrength): number {
  const f11 = 1 / (strength.tension1Mpa * strength.compression1Mpa);
  const f22 = 1 / (strength.tension2Mpa * strength.compression2Mpa);
  const f66 = 1 / strength.shear12Mpa ** 2;
  const f12 = -0.5 * Math.sqrt(f11 * f22);
  return f11 * p[0] * q[0] + f22 * p[1] * q[1] + f66 * p[2] * q[2] + f12 * (p[0] * q[1] + p[1] * q[0]);
}
