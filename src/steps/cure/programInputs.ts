/** Input specs of the oven program and of the oven itself. */
import * as z from 'zod/mini';
import { usualOven } from '../../core/cure/ovenAir';
import { gentleKPerMin } from '../../core/cure/ovenProgram';
import type { ChoiceSpec, NumberSpec } from '../inputSpec';
import { numberFields } from '../mold/numberInputs';
import { numberIn } from '../part/inputs';

/** One stage of the program. Paths `cure.stages.N.<field>`. */
export const stageSpecs = {
  targetC: {
    kind: 'number',
    label: 'Stage goes to',
    unit: '°C',
    meaning: 'What the dial is set to; the laminate gets there later.',
    default: 70,
    min: -20,
    max: 250,
    decimals: 0,
  },
  rampKPerMin: {
    kind: 'number',
    label: 'Ramp',
    unit: 'K/min',
    meaning: 'How fast the dial is turned; left empty, it is turned there at once.',
    default: gentleKPerMin,
    min: 0.01,
    max: 100,
    decimals: 2,
  },
  dwellHours: {
    kind: 'number',
    label: 'Dwell',
    unit: 'h',
    meaning: 'How long the dial stays there.',
    default: 3,
    min: 0,
    max: 200,
    decimals: 2,
  },
} as const satisfies Record<string, NumberSpec>;

export const stageSchema = z.object({
  targetC: numberIn(stageSpecs.targetC),
  rampKPerMin: z.nullable(numberIn(stageSpecs.rampKPerMin)),
  dwellHours: numberIn(stageSpecs.dwellHours),
});
export type OvenStageInput = z.infer<typeof stageSchema>;

/** 70 °C for 3 h, then 120 °C for 1.5 h, at 1 K/min (common practice). */
export const defaultStages: OvenStageInput[] = [
  { targetC: 70, rampKPerMin: gentleKPerMin, dwellHours: 3 },
  { targetC: 120, rampKPerMin: gentleKPerMin, dwellHours: 1.5 },
];

/** One cure of the supplier's data sheet. Paths `cure.supplierCures.N.<field>`. */
export const supplierCureSpecs = {
  hours: {
    kind: 'number',
    label: 'Held for',
    unit: 'h',
    meaning:
      "Least time of this cure on the supplier's data sheet. Published ones, as examples: 20 h at 80, 4 h at 120 or 2 h at 130 °C; 25 min at 120 °C; 4 h at 132 or 1 h at 154 °C.",
    default: 16,
    min: 0.01,
    max: 1000,
    decimals: 2,
  },
  temperatureC: {
    kind: 'number',
    label: 'At',
    unit: '°C',
    meaning: "Temperature of this cure on the supplier's data sheet; of the laminate, not of the oven.",
    default: 70,
    min: 0,
    max: 250,
    decimals: 0,
  },
} as const satisfies Record<string, NumberSpec>;
export const supplierCureSchema = z.object(numberFields(supplierCureSpecs));

export const ovenChoiceSpecs = {
  air: {
    kind: 'choice',
    label: 'Air in the oven',
    unit: '',
    meaning: 'A fan brings heat into the mold about twice as fast as still air (common practice).',
    default: 'fan',
    choices: [
      { value: 'fan', label: 'moved by a fan' },
      { value: 'still', label: 'still' },
      { value: 'own', label: 'as fitted to your log' },
    ],
  },
  support: {
    kind: 'choice',
    label: 'The mold stands on',
    unit: '',
    meaning: 'On a rack air reaches it all round; a tray brings heat by contact and lets no water out.',
    default: 'rack',
    choices: [
      { value: 'rack', label: 'a rack, air all round' },
      { value: 'tray, positive down', label: 'a tray, positive down' },
      { value: 'tray, negative down', label: 'a tray, negative down' },
    ],
  },
} as const satisfies Record<string, ChoiceSpec>;

/** Temperatures that follow from something else until one is entered. */
export const followedSpecs = {
  gelC: {
    kind: 'number',
    label: 'Laminate gels at',
    unit: '°C',
    meaning:
      'Where the resin stops flowing and the laminate takes the size of the mold. Empty takes it from the oven program and the gel time of the Mold closing step; enter one only if you know better.',
    default: null,
    min: 15,
    max: 200,
    decimals: 0,
  },
  startC: {
    kind: 'number',
    label: 'Mold and oven start at',
    unit: '°C',
    meaning: 'Of the whole mold, right through. Empty takes the room of the Stone mold step.',
    default: null,
    min: -20,
    max: 100,
    decimals: 0,
  },
} as const satisfies Record<string, NumberSpec>;

export const ovenNumberSpecs = {
  supplierRampKPerMin: {
    kind: 'number',
    label: 'The supplier allows a ramp of',
    unit: 'K/min',
    meaning: 'Fastest heating on the data sheet of the prepreg; 0 while you have not read it.',
    default: 0,
    min: 0,
    max: 100,
    decimals: 1,
  },
  serviceC: {
    kind: 'number',
    label: 'Hottest in use',
    unit: '°C',
    meaning:
      'What the finished part has to bear without softening; dark parts in the sun get to about 70 °C.',
    default: 60,
    min: -40,
    max: 250,
    decimals: 0,
  },
  ovenLagS: {
    kind: 'number',
    label: 'The air follows the dial within',
    unit: 's',
    meaning:
      'Time constant of the oven: after it about two thirds of a change are done (common practice; log yours).',
    default: usualOven.lagS,
    min: 0,
    max: 7200,
    decimals: 0,
  },
  ovenFastestKPerMin: {
    kind: 'number',
    label: 'The air heats no faster than',
    unit: 'K/min',
    meaning: 'Full power with the mold inside.',
    default: usualOven.fastestKPerMin,
    min: 0.1,
    max: 100,
    decimals: 1,
  },
  overshootK: {
    kind: 'number',
    label: 'It runs over by',
    unit: 'K',
    meaning: 'By how much the air is hotter than the dial shortly after it arrives.',
    default: usualOven.overshootK,
    min: 0,
    max: 50,
    decimals: 1,
  },
  ownFilmWPerM2K: {
    kind: 'number',
    label: 'Air film, your own',
    unit: 'W/(m² K)',
    meaning: 'Used when the air is "as fitted to your log"; by convection alone, radiation is added.',
    default: 18,
    min: 1,
    max: 200,
    decimals: 1,
  },
  trayGapMm: {
    kind: 'number',
    label: 'Gap to the tray',
    unit: 'mm',
    meaning: 'Air between stone and tray, in the mean; 0 for solid contact.',
    default: 0.2,
    min: 0,
    max: 20,
    decimals: 1,
  },
} as const satisfies Record<string, NumberSpec>;
