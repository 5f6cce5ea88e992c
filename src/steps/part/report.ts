/** Part step: is this model sound, the right size, the right way up? */
import type { Caution, StepReport } from '../../core/figure';
import type { StepContext } from '../shared/context';
import { partFigures } from './figures';
import { partVerdicts } from './verdicts';

const cautions: readonly Caution[] = [
  {
    id: 'part.patternDust',
    text: 'Printed patterns are sanded and trimmed: sand wet or under extraction, wear a dust mask and eye protection, and cut away from the hand. Keep to the safety data sheet of the printing material and to local rules.',
  },
];

export function partReport(context: StepContext): StepReport {
  return { figures: partFigures(context), verdicts: partVerdicts(context), cautions };
}
