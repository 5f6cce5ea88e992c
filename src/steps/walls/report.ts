/** Walls & draft step: is the wall even, and will stone let go of it? */
import type { Caution, StepReport } from '../../core/figure';
import type { StepContext } from '../shared/context';
import { wallsFigures } from './figures';
import { wallsVerdicts } from './verdicts';

const cautions: readonly Caution[] = [
  {
    id: 'walls.fillerDust',
    text: 'Filling an undercut and sanding the filler makes dust, and fillers can irritate: gloves, extraction or wet sanding, dust mask. The safety data sheet of the filler and local rules come first.',
  },
];

export function wallsReport(context: StepContext): StepReport {
  return { figures: wallsFigures(context), verdicts: wallsVerdicts(context), cautions };
}
