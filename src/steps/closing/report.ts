/** Mold closing step: when I clamp it, does the load go into the laminate everywhere? */
import type { Caution, StepReport } from '../../core/figure';
import type { StepContext } from '../shared/context';
import { closingFigures } from './figures';
import { closingVerdicts } from './verdicts';

const cautions: readonly Caution[] = [
  {
    id: 'closing.fingers',
    text: 'Clamps and closing halves crush fingers: hold the mold by its outside, set clamps one at a time, and never reach between the halves.',
  },
  {
    id: 'closing.springs',
    text: 'A spring clamp that slips and a stone mold that breaks throw pieces: eye protection, face aside, clamps square on stone that is thick and flat.',
  },
  {
    id: 'closing.stoneBreaks',
    text: 'Stone takes pressure and breaks in bending: thin stone over steep walls is wedged apart. Tighten crosswise in small steps and stop at the first crack or creak.',
  },
];

export function closingReport(context: StepContext): StepReport {
  return { figures: closingFigures(context), verdicts: closingVerdicts(context), cautions };
}
