/** The elastic and thermal constants of one ply, in its own axes: 1 along the fiber (or warp), 2 across, 3 through. */
import { Problem } from '../problem';

export interface PlyElastic {
  readonly e1GPa: number;
  readonly e2GPa: number;
  readonly g12GPa: number;
  /** Strain across over strain along, for a pull along 1. */
  readonly nu12: number;
  readonly expansion1PerK: number;
  readonly expansion2PerK: number;
}

/** A layer that is the same in every in-plane direction, such as a coat: G = E / (2 (1 + ν)). */
export function isotropicElastic(eGPa: number, nu: number, expansionPerK: number): PlyElastic {
  return {
    e1GPa: eGPa,
    e2GPa: eGPa,
    g12GPa: eGPa / (2 * (1 + nu)),
    nu12: nu,
    expansion1PerK: expansionPerK,
    expansion2PerK: expansionPerK,
  };
}

/** Throws a `Problem` unless the constants belong to a material that resists every deformation. */
export function checkPlyElastic(elastic: PlyElastic): void {
  const moduli = [elastic.e1GPa, elastic.e2GPa, elastic.g12GPa];
  if (!moduli.every((modulus) => modulus > 0 && Number.isFinite(modulus)))
    throw new Problem('laminate.modulus', 'The moduli E1, E2 and G12 of a ply must be more than zero.');
  if (!(elastic.nu12 ** 2 < elastic.e1GPa / elastic.e2GPa))
    throw new Problem(
      'laminate.poisson',
      "Poisson's ratio nu12 is too large for these moduli: its square must stay below E1 / E2.",
    );
  if (!(Number.isFinite(elastic.expansion1PerK) && Number.isFinite(elastic.expansion2PerK)))
    throw new Problem('laminate.expansion', 'The thermal expansions of a ply must be numbers.');
}
