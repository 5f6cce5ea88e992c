/** How much a molded corner closes when it leaves the mold. */
import { Problem } from '../problem';

export interface SpringInInputs {
  /** The angle through which the wall turns: 90 for a box corner. */
  readonly arcAngleDeg: number;
  readonly expansionInPlanePerK: number;
  readonly expansionThroughPerK: number;
  /** Room less cure temperature: negative for cooling. */
  readonly temperatureChangeK: number;
  /** Cure strains, negative for shrinkage. */
  readonly cureStrainInPlane: number;
  readonly cureStrainThrough: number;
}

/**
 * Δφ = φ [(αI − αR) ΔT / (1 + αR ΔT) + (sI − sR) / (1 + sR)], degrees; positive means the corner closes. The mold's
 * own expansion and its friction are left out, and cure shrinkage can double the result, so this is an estimate.
 * Source: `springInForm` in core/sources; the thermal term is the geometry of an arc that strains freely.
 */
export function springInDeg(inputs: SpringInInputs): number {
  const { arcAngleDeg, expansionInPlanePerK, expansionThroughPerK, temperatureChangeK } = inputs;
  const { cureStrainInPlane, cureStrainThrough } = inputs;
  const throughStrain = expansionThroughPerK * temperatureChangeK;
  if (!(throughStrain > -0.5 && cureStrainThrough > -0.5))
    throw new Problem(
      'laminate.springIn',
      'The wall would lose half its thickness: check expansion, temperature and cure shrinkage.',
    );
  const thermal = ((expansionInPlanePerK - expansionThroughPerK) * temperatureChangeK) / (1 + throughStrain);
  const cure = (cureStrainInPlane - cureStrainThrough) / (1 + cureStrainThrough);
  return arcAngleDeg * (thermal + cure);
}
