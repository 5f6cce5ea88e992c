/** Any inputs through all steps: a report comes of it, and no figure, verdict or line of the checklist holds a number that is none. */
import { checklistText } from '../../../src/checklist/checklistText';
import { checklistModel } from '../../../src/checklist/printModel';
import type { StepContext } from '../../../src/steps/shared/context';
import { stepReports } from '../../../src/steps/registry';
import { arbitraryProject } from '../../workbook/arbitraryProject';
import { checkReports, type FuzzTarget } from '../fuzzTarget';
import { fuzzParts } from '../parts';
import { sampleOf } from './saved';

const facts = { project: 'Lamp', part: 'Lid', date: '2031-05-06', appVersion: '0', formatNumber: 1 };

export const reports: FuzzTarget = {
  name: 'reports',
  run(chance) {
    const { context } = chance.pick(fuzzParts);
    const { inputs, record } = sampleOf(chance, arbitraryProject);
    const known = chance.below(5);
    const asked: StepContext = {
      ...context,
      inputs,
      measured: known > 0 ? context.measured : null,
      mold: known > 1 ? context.mold : null,
      cure: known > 2 ? (context.cure ?? null) : null,
    };
    const told = stepReports(asked);
    checkReports(told, checklistText(checklistModel(facts, asked, record, told)));
  },
};
