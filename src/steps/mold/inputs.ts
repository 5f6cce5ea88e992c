/** Inputs of the Stone mold step: box, stone, pour, sizes, coats, drying, repairs. */
import * as z from 'zod/mini';
import type { InputSpecs } from '../inputSpec';
import {
  coatNumberSpecs,
  dryingNumberSpecs,
  repairSchema,
  repairSpecs,
  sizeNumberSpecs,
  wantedSpecs,
  weighingSchema,
  weighingSpecs,
} from './benchInputs';
import { boxNumberSpecs, boxShapeSpec } from './boxInputs';
import { coatSheetSpecs, releaseSpec, sealerSpec } from './coatInputs';
import { notGiven, numberDefaults, numberFields, optionalNumberFields, pathsOf } from './numberInputs';
import { bagSpecs, measuredSpecs, mixNumberSpecs, pourMethodSpec, stoneTypeSpec } from './stoneInputs';

/** All plain numbers of the step, by field. */
export const moldNumberSpecs = {
  ...boxNumberSpecs,
  ...mixNumberSpecs,
  ...sizeNumberSpecs,
  ...coatNumberSpecs,
  ...dryingNumberSpecs,
} as const;

const namesOf = (table: InputSpecs) => Object.keys(table).join(', ');

export const moldSpecs: InputSpecs = pathsOf('mold', {
  boxShape: boxShapeSpec,
  stoneType: stoneTypeSpec,
  pourMethod: pourMethodSpec,
  sealer: sealerSpec,
  release: releaseSpec,
  ...moldNumberSpecs,
  bag: {
    kind: 'other',
    label: 'Your own bag',
    unit: '',
    meaning: `What the bag says, null where it says nothing: ${namesOf(bagSpecs)}.`,
    default: 'nothing given',
  },
  measured: {
    kind: 'other',
    label: 'What you have measured',
    unit: '',
    meaning: `Measured values, null until then; each replaces an estimate: ${namesOf(measuredSpecs)}.`,
    default: 'nothing measured',
  },
  coatSheet: {
    kind: 'other',
    label: 'Sheets of sealer and release',
    unit: '',
    meaning: `What the suppliers’ sheets say, null where they were not read: ${namesOf(coatSheetSpecs)}.`,
    default: 'nothing given',
  },
  wanted: {
    kind: 'other',
    label: 'Wanted finished lengths',
    unit: 'mm',
    meaning: `Along the part's axes, null where the drawn length is wanted: ${namesOf(wantedSpecs)}.`,
    default: 'as drawn',
  },
  dryingLog: {
    kind: 'other',
    label: 'Drying log',
    unit: '',
    meaning: 'List of weighings: hours since demolding, negativeG, positiveG (null when not weighed).',
    default: [],
  },
  repairs: {
    kind: 'other',
    label: 'Repairs of the stone',
    unit: '',
    meaning:
      'List of places: id, half (negative, positive), kind (filled, scraped), atMm [x, y, z], radiusMm, depthMm, note.',
    default: [],
  },
});

/** Groups and lists by path, with the numbers in them. */
export const moldGroupSpecs: Readonly<Record<string, InputSpecs>> = {
  'mold.bag': bagSpecs,
  'mold.measured': measuredSpecs,
  'mold.wanted': wantedSpecs,
  'mold.coatSheet': coatSheetSpecs,
};
export const moldEntrySpecs: Readonly<Record<string, InputSpecs>> = {
  'mold.dryingLog': weighingSpecs,
  'mold.repairs': repairSpecs,
};

export const moldInputsSchema = z.object({
  boxShape: z.enum(['rectangle', 'rounded rectangle', 'cup']),
  stoneType: z.enum(['1', '2', '3', '4', '5']),
  pourMethod: z.enum(['pressed in', 'board, sealed', 'board, leaking']),
  sealer: z.enum(['not said', 'shellac', 'acrylic', 'polyurethane', 'epoxy', 'post-cured epoxy']),
  release: z.enum(['not said', 'wax', 'PVA', 'semi-permanent', 'PTFE']),
  ...numberFields(moldNumberSpecs),
  bag: z.object(optionalNumberFields(bagSpecs)),
  measured: z.object(optionalNumberFields(measuredSpecs)),
  wanted: z.object(optionalNumberFields(wantedSpecs)),
  coatSheet: z.object(optionalNumberFields(coatSheetSpecs)),
  dryingLog: z.array(weighingSchema),
  repairs: z.array(repairSchema),
});
export type MoldInputs = z.infer<typeof moldInputsSchema>;

export const defaultMoldInputs: MoldInputs = {
  boxShape: 'rectangle',
  stoneType: '4',
  pourMethod: 'pressed in',
  sealer: 'not said',
  release: 'not said',
  ...numberDefaults(moldNumberSpecs),
  bag: notGiven(bagSpecs),
  measured: notGiven(measuredSpecs),
  wanted: notGiven(wantedSpecs),
  coatSheet: notGiven(coatSheetSpecs),
  dryingLog: [],
  repairs: [],
};
