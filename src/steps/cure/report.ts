/** Clamp & cure step: will the laminate in the middle of the stone really cure? */
import type { Caution, StepReport } from '../../core/figure';
import type { StepContext } from '../shared/context';
import { clampFigure } from './clamps';
import { cureFigures } from './figures';
import { cureVerdicts } from './verdicts';

const cautions: readonly Caution[] = [
  {
    id: 'cure.oven',
    text: 'An oven of its own with ventilation to the outside, never one that food goes into; nothing with cells or electronics in it, all solvent gone, no rags near. No drilling, rewiring or defeating the door switch; a separate over-temperature cut-out; changes by a licensed electrician. Thermocouple leads clear of carbon and live parts. Stay with the oven during the whole first run.',
  },
  {
    id: 'cure.dampStone',
    text: 'Damp stone can spall or burst from its own steam, and throws hot pieces: dry to a steady weight first, heat slowly, door shut, eye protection when it is opened.',
  },
  {
    id: 'cure.hotMold',
    text: 'Stone stays hot for hours after the oven is off: gloves for hot things, a heat-proof place to put it, and a note beside it that says hot.',
  },
  {
    id: 'cure.hotClamps',
    text: 'Hot clamps can let go: springs weaken, plastic pads melt. Read their limit, stand beside the line of the spring, and tighten with gloves.',
  },
  {
    id: 'cure.fumes',
    text: 'Resin gives off fumes while it cures, and cures with heat of its own: no thick lumps or piles of offcuts in the oven, extraction, no face over the open door. The supplier’s safety data sheet, its cure, and local rules come first.',
  },
];

export function cureReport(context: StepContext): StepReport {
  return {
    figures: [...cureFigures(context), clampFigure(context)],
    verdicts: cureVerdicts(context),
    cautions,
  };
}
