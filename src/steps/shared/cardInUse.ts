/** A material card with what was measured at the bench put in place of what its data sheet says. */
import { weighedOffcut } from '../../core/laminate/bleedAndVoids';
import { Problem } from '../../core/problem';
import { defaultMaterial, type Material } from '../inputs/material';

export interface CardInUse {
  /** `laidThicknessMm` and `resinMassFraction` as measured where they were. */
  readonly card: Material;
  readonly laidMeasured: boolean;
  readonly resinMeasured: boolean;
}

/** Throws a `Problem` for measurements that no roll can give. */
export function cardInUse(card: Material): CardInUse {
  const { caliperTotalMm, caliperPlies } = card;
  const resinMassFraction = weighedResinFraction(card);
  return {
    card: {
      ...card,
      laidThicknessMm: caliperTotalMm === null ? card.laidThicknessMm : caliperTotalMm / caliperPlies,
      resinMassFraction: resinMassFraction ?? card.resinMassFraction,
    },
    laidMeasured: caliperTotalMm !== null || laidWasMeasured(card),
    resinMeasured: resinMassFraction !== null,
  };
}

/** A value still as it came with the ready-made card was measured by nobody. */
function laidWasMeasured(card: Material): boolean {
  const untouched =
    card.id === defaultMaterial.id && card.laidThicknessMm === defaultMaterial.laidThicknessMm;
  return card.laidThicknessMm !== null && !untouched;
}

function weighedResinFraction(card: Material): number | null {
  const { offcutMassG, offcutAreaCm2, name } = card;
  if (offcutMassG === null && offcutAreaCm2 === null) return null;
  if (offcutMassG === null || offcutAreaCm2 === null)
    throw new Problem(
      'plies.offcut',
      `The weighed offcut of ${name} needs both its mass and its area; give both, or clear both.`,
    );
  try {
    return weighedOffcut([card], offcutMassG, 100 * offcutAreaCm2).resinMassFraction;
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    throw new Problem(error.code, `${name}: ${error.message}`);
  }
}
