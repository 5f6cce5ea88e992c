/** Stone mold step: how large a box, how much stone, and when is it dry? */
import type { Caution, StepReport } from '../../core/figure';
import type { StepContext } from '../shared/context';
import { boxFigures } from './boxFigures';
import { coatFigures } from './coatFigures';
import { dryingFigures } from './dryingFigures';
import { mixFigures } from './mixFigures';
import { pourFigures } from './pourFigures';
import { repairFigures } from './repairFigures';
import { sizeFigures } from './sizeFigures';
import { moldVerdicts } from './verdicts';
import { moldWork } from '../stone/work';

const cautions: readonly Caution[] = [
  {
    id: 'mold.dust',
    text: 'Weighing and pouring powder, and scraping dry stone, raise dust that irritates eyes and lungs, and natural gypsum can carry crystalline silica (limit 0.05 mg/m³ of fine dust over eight hours, action from 0.025): open bags low and slowly, scrape damp, fitted particle respirator, extraction, wipe up wet. The supplier’s safety data sheet and local rules come first.',
  },
  {
    id: 'mold.settingHeat',
    text: 'Setting stone gets hot enough to burn: never cast round a hand or finger, wear gloves, and let thick pours cool before touching.',
  },
  {
    id: 'mold.drain',
    text: 'Never pour slurry or wash water down the drain: it sets there. Let it set in the bowl, break it out, and wash over a bucket that settles.',
  },
  {
    id: 'mold.dampOven',
    text: 'Damp stone in a hot oven steams, can spall and throw pieces, and holds the laminate cold: dry below 49 °C to a steady weight first; oven with ventilation, never one for food.',
  },
  {
    id: 'mold.opening',
    text: 'Stone is heavy and its edges are sharp: pry with wooden wedges, eye protection, and fingers out of the gap.',
  },
  {
    id: 'mold.coats',
    text: 'Sealers and release agents can hold solvents: ventilation, gloves, no flame, and the supplier’s sheet for waiting times.',
  },
];

export function moldReport(context: StepContext): StepReport {
  const work = moldWork(context);
  return {
    figures: [
      ...boxFigures(context, work),
      ...mixFigures(context, work),
      ...pourFigures(context, work),
      ...sizeFigures(context, work),
      ...dryingFigures(context, work),
      ...coatFigures(context, work),
      ...repairFigures(context),
    ],
    verdicts: moldVerdicts(context, work),
    cautions,
  };
}
