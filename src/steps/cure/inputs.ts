/** Inputs of the Clamp & cure step: oven program, oven, mold, supplier's cures, kinetics, limits. */
import * as z from 'zod/mini';
import type { InputSpecs } from '../inputSpec';
import { notGiven, numberDefaults, numberFields, optionalNumberFields, pathsOf } from '../mold/numberInputs';
import { kineticsFormSpec, kineticsSpecs } from './kineticsInputs';
import { moldChoiceSpecs, moldNumberSpecs } from './moldInputs';
import {
  defaultStages,
  followedSpecs,
  ovenChoiceSpecs,
  ovenNumberSpecs,
  stageSchema,
  stageSpecs,
  supplierCureSchema,
  supplierCureSpecs,
} from './programInputs';

export const cureNumberSpecs = { ...ovenNumberSpecs, ...moldNumberSpecs } as const;
export const cureChoiceSpecs = { ...ovenChoiceSpecs, ...moldChoiceSpecs } as const;

export const cureSpecs: InputSpecs = pathsOf('cure', {
  ...cureChoiceSpecs,
  ...cureNumberSpecs,
  ...followedSpecs,
  stages: {
    kind: 'other',
    label: 'Oven program',
    unit: '',
    meaning:
      'List of stages: targetC, rampKPerMin (null: at once), dwellHours. Ready-made: 70 °C 3 h, 120 °C 1.5 h.',
    default: defaultStages,
  },
  supplierCures: {
    kind: 'other',
    label: "Supplier's cures",
    unit: '',
    meaning: "List of cures of the prepreg's data sheet: hours, temperatureC. Two or more give the dose.",
    default: [],
  },
  kineticsForm: kineticsFormSpec,
  kinetics: {
    kind: 'other',
    label: 'Kinetics and Tg',
    unit: '',
    meaning: `Fitted to this very resin, null until given: ${Object.keys(kineticsSpecs).join(', ')}.`,
    default: 'none given',
  },
});

export const cureGroupSpecs: Readonly<Record<string, InputSpecs>> = { 'cure.kinetics': kineticsSpecs };
export const cureEntrySpecs: Readonly<Record<string, InputSpecs>> = {
  'cure.stages': stageSpecs,
  'cure.supplierCures': supplierCureSpecs,
};

export const cureInputsSchema = z.object({
  air: z.enum(['fan', 'still', 'own']),
  support: z.enum(['rack', 'tray, positive down', 'tray, negative down']),
  drying: z.enum(['wicks', 'stays']),
  sealedFaces: z.enum(['none', 'sides', 'all']),
  patternInside: z.enum(['out', 'in']),
  clampLimitFrom: z.enum(['not read yet', 'read']),
  ...numberFields(cureNumberSpecs),
  ...optionalNumberFields(followedSpecs),
  stages: z.array(stageSchema),
  supplierCures: z.array(supplierCureSchema),
  kineticsForm: z.enum(['none', 'autocatalytic', 'diffusion-limited', 'two-term diffusion-limited']),
  kinetics: z.object(optionalNumberFields(kineticsSpecs)),
});
export type CureInputs = z.infer<typeof cureInputsSchema>;

export const defaultCureInputs: CureInputs = {
  air: 'fan',
  support: 'rack',
  drying: 'wicks',
  sealedFaces: 'none',
  patternInside: 'out',
  clampLimitFrom: 'not read yet',
  ...numberDefaults(cureNumberSpecs),
  ...notGiven(followedSpecs),
  stages: defaultStages,
  supplierCures: [],
  kineticsForm: 'none',
  kinetics: notGiven(kineticsSpecs),
};
