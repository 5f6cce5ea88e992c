/** Verdicts of the Stone mold step, in the order of the bench work. */
import type { Verdict } from '../../core/figure';
import type { StepContext } from '../shared/context';
import { boxVerdict, findingVerdicts, thinnestVerdict } from './boxVerdicts';
import { dryVerdicts, dryingVerdict } from './dryingVerdicts';
import { floatVerdict, heatVerdict, layersVerdict, mixVerdict } from './pourVerdicts';
import { repairsVerdict } from './repairsVerdict';
import { rimsVerdict, sizeVerdict } from './sizeVerdicts';
import type { MoldWork } from '../stone/work';

export function moldVerdicts(context: StepContext, work: MoldWork): readonly Verdict[] {
  return [
    boxVerdict(context, work),
    thinnestVerdict(context, work),
    ...findingVerdicts(context),
    mixVerdict(work),
    layersVerdict(work),
    floatVerdict(context, work),
    heatVerdict(context, work),
    sizeVerdict(context),
    ...rimsVerdict(context),
    dryingVerdict(context),
    ...dryVerdicts(context, work),
    ...repairsVerdict(context),
  ];
}
