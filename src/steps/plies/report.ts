/** Ply schedule step: which plies, how many, which way? */
import type { Caution, StepReport } from '../../core/figure';
import type { StepContext } from '../shared/context';
import { pliesFigures } from './figures';
import { pliesVerdicts } from './verdicts';

const cautions: readonly Caution[] = [
  {
    id: 'plies.resinSkin',
    text: 'Uncured epoxy prepreg can make the skin allergic for life: nitrile gloves when laying, closing and wiping, changed often (latex does not protect), no bare skin, wash with soap and not with solvent. The supplier’s safety data sheet and local rules come first.',
  },
  {
    id: 'plies.blades',
    text: 'Cutting plies means fresh blades: cut away from the hand, on a mat, along a steel edge; cap the knife and drop spent blades into a closed box. Cut fiber and resin flash are needle-sharp.',
  },
  {
    id: 'plies.carbonDust',
    text: 'Carbon dust and loose fiber irritate skin, eyes and lungs and conduct electricity: sand wet or under extraction with a fitted particle respirator, never under-cured resin; wipe up wet, never blow off, and keep them away from open electronics. Waste in a sealed bag, by its data sheet.',
  },
];

const coatCaution: Caution = {
  id: 'plies.coat',
  text: 'Clear coats give off vapors and can make the skin and the airways allergic: air the room, gloves, no spraying without the protection that the safety data sheet and local rules ask for. Two-part sprays may hold isocyanates: only with the supplied air that the data sheet asks for.',
};

export function pliesReport(context: StepContext): StepReport {
  const coated = context.inputs.plies.coatFace !== 'none';
  return {
    figures: pliesFigures(context),
    verdicts: pliesVerdicts(context),
    cautions: coated ? [...cautions, coatCaution] : cautions,
  };
}
