/** Inputs of the Stone mold step: box, stone, pour, sizes, coats, drying, repairs. */
import { folded, group, list, type InputsOf, type InputTable } from '../kit/inputTable';
import { coatSheetTable, release, sealer } from './coat';
import {
  coatNumbers,
  dryingNumbers,
  repairTable,
  sizeNumbers,
  wantedTable,
  weighingTable,
} from './moldBench';
import { boxNumbers, boxShape } from './moldBox';
import { bagTable, measuredTable, mixNumbers, pourMethod, stoneType } from './stone';

const namesOf = (table: InputTable) => Object.keys(table).join(', ');

export const moldTable = {
  boxShape,
  stoneType,
  pourMethod,
  ...folded('Sealer and release', { sealer, release }),
  ...boxNumbers,
  ...mixNumbers,
  ...folded('Sizes from print to part', sizeNumbers),
  ...folded('Sealer and release', coatNumbers),
  ...dryingNumbers,
  ...folded('Your own bag', {
    bag: group('Your own bag', bagTable, {
      meaning: `What the bag says, null where it says nothing: ${namesOf(bagTable)}.`,
      startWords: 'nothing given',
    }),
  }),
  measured: group('What you have measured', measuredTable, {
    meaning: `Measured values, null until then; each replaces an estimate: ${namesOf(measuredTable)}.`,
    startWords: 'nothing measured',
  }),
  ...folded('Sizes from print to part', {
    wanted: group('Wanted finished lengths', wantedTable, {
      unit: 'mm',
      meaning: `Along the part's axes, null where the drawn length is wanted: ${namesOf(wantedTable)}.`,
      startWords: 'as drawn',
    }),
  }),
  ...folded('Sealer and release', {
    coatSheet: group('Sheets of sealer and release', coatSheetTable, {
      meaning: `What the suppliers’ sheets say, null where they were not read: ${namesOf(coatSheetTable)}.`,
      startWords: 'nothing given',
    }),
  }),
  dryingLog: list('Drying log', weighingTable, [], {
    meaning: 'List of weighings: hours since demolding, negativeG, positiveG (null when not weighed).',
  }),
  repairs: list('Repairs of the stone', repairTable, [], {
    meaning:
      'List of places: id, half (negative, positive), kind (filled, scraped), atMm [x, y, z], radiusMm, depthMm, note.',
  }),
};
export type MoldInputs = InputsOf<typeof moldTable>;
