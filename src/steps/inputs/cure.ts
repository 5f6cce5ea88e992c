/** Inputs of the Clamp & cure step: oven program, oven, mold, supplier's cures, kinetics, limits. */
import { folded, group, list, type InputsOf } from '../kit/inputTable';
import { moldChoices, moldNumbers } from './heatedMold';
import { kineticsForm, kineticsTable } from './kinetics';
import {
  defaultStages,
  followedRows,
  ovenChoices,
  ovenNumbers,
  stageTable,
  supplierCureTable,
} from './program';

export const cureTable = {
  ...ovenChoices,
  ...moldChoices,
  ...ovenNumbers,
  ...moldNumbers,
  ...followedRows,
  stages: list('Oven program', stageTable, defaultStages, {
    meaning:
      'List of stages: targetC, rampKPerMin (null: at once), dwellHours. Ready-made: 70 °C 3 h, 120 °C 1.5 h.',
  }),
  supplierCures: list("Supplier's cures", supplierCureTable, [], {
    meaning: "List of cures of the prepreg's data sheet: hours, temperatureC. Two or more give the dose.",
  }),
  ...folded('Kinetics and Tg of this resin', {
    kineticsForm,
    kinetics: group('Kinetics and Tg', kineticsTable, {
      meaning: `Fitted to this very resin, null until given: ${Object.keys(kineticsTable).join(', ')}.`,
      startWords: 'none given',
    }),
  }),
};
export type CureInputs = InputsOf<typeof cureTable>;
