/**
 * Stiffness and expansion of one ply, in its own axes and turned by its angle. Order of entries: x, y, xy (or 1, 2,
 * 12) with engineering shear strain. Plane stress.
 *
 * Source: `kaw2006` in core/sources, chapter 2 (reduced and transformed stiffness, transformed expansion).
 */
import { matrix3, type Matrix3, type Vector3 } from '../numeric/matrix3';
import type { PlyElastic } from './plyElastic';

const mpaPerGPa = 1000;

/** Q in MPa (N/mm²), ply axes. */
export function reducedStiffnessMpa(elastic: PlyElastic): Matrix3 {
  const { e1GPa, e2GPa, g12GPa, nu12 } = elastic;
  const nu21 = (nu12 * e2GPa) / e1GPa;
  const q11 = (mpaPerGPa * e1GPa) / (1 - nu12 * nu21);
  const q22 = (mpaPerGPa * e2GPa) / (1 - nu12 * nu21);
  const q12 = nu12 * q22;
  return [
    [q11, q12, 0],
    [q12, q22, 0],
    [0, 0, mpaPerGPa * g12GPa],
  ];
}

/** Turns strains in laminate axes into strains in the axes of a ply at `angleDeg` (from x towards y). */
export function plyStrain(strain: Vector3, angleDeg: number): Vector3 {
  const { c, s } = cosineAndSine(angleDeg);
  const [x, y, xy] = strain;
  return [
    x * c * c + y * s * s + xy * s * c,
    x * s * s + y * c * c - xy * s * c,
    2 * (y - x) * s * c + xy * (c * c - s * s),
  ];
}

/** Q̄ in MPa, laminate axes: the stiffness of a ply at `angleDeg`. */
export function turnedStiffnessMpa(elastic: PlyElastic, angleDeg: number): Matrix3 {
  const q = reducedStiffnessMpa(elastic);
  const turn = strainTurn(angleDeg);
  const turned = matrix3((r, column) => {
    let sum = 0;
    for (const i of [0, 1, 2] as const)
      for (const j of [0, 1, 2] as const) sum += turn[i][r] * q[i][j] * turn[j][column];
    return sum;
  });
  return matrix3((r, column) => (turned[r][column] + turned[column][r]) / 2);
}

/** Free expansions per kelvin in laminate axes of a ply at `angleDeg`. */
export function turnedExpansionPerK(elastic: PlyElastic, angleDeg: number): Vector3 {
  const { c, s } = cosineAndSine(angleDeg);
  const { expansion1PerK: along, expansion2PerK: across } = elastic;
  return [along * c * c + across * s * s, along * s * s + across * c * c, 2 * (along - across) * s * c];
}

/** The matrix that `plyStrain` applies; Q̄ = Tᵀ Q T because the work is the same in both axes. */
function strainTurn(angleDeg: number): Matrix3 {
  const columns = [
    plyStrain([1, 0, 0], angleDeg),
    plyStrain([0, 1, 0], angleDeg),
    plyStrain([0, 0, 1], angleDeg),
  ] as const;
  return matrix3((r, column) => columns[column][r]);
}

function cosineAndSine(angleDeg: number): { c: number; s: number } {
  const angleRad = (angleDeg * Math.PI) / 180;
  return { c: Math.cos(angleRad), s: Math.sin(angleRad) };
}
