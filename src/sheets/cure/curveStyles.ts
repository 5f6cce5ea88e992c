/** How each of the three runs is drawn and named, the same on the chart, its key and the tables. */
import type { DehydrationTreatment } from '../../core/cure/dehydration';
import { treatmentNames } from '../../steps/cure/say';

export const curveClass: Readonly<Record<DehydrationTreatment, string>> = {
  none: 'heat-keeps',
  'vapor-held': 'heat-held',
  'open air': 'heat-lets',
};

export const curveLabel = (treatment: DehydrationTreatment): string =>
  `Laminate, if ${treatmentNames[treatment]}`;
