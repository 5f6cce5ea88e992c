/** Inputs of the size chain, the coats, and the drying; with the lists that are kept while the mold is worked on. */
import * as z from 'zod/mini';
import type { NumberSpec } from '../inputSpec';
import { numberFields } from './numberInputs';

export const sizeNumberSpecs = {
  printScale: {
    kind: 'number',
    label: 'Print scale',
    unit: '×',
    meaning: 'Factor on the drawn size that the pattern is printed with.',
    default: 1,
    min: 0.5,
    max: 2,
    decimals: 4,
  },
  printShrinkPercent: {
    kind: 'number',
    label: 'Print comes out smaller by',
    unit: '%',
    meaning: 'Printed against asked-for length of a test bar; negative when it comes out larger.',
    default: 0,
    min: -5,
    max: 5,
    decimals: 2,
  },
  stoneExpansionPerMK: {
    kind: 'number',
    label: 'Thermal expansion of the stone',
    unit: '10⁻⁶/K',
    meaning: 'Set gypsum is 15 to 18 (from memory); gypsum board is 16.2 (published).',
    default: 16,
    min: 0,
    max: 60,
    decimals: 1,
  },
  laminateExpansionPerMK: {
    kind: 'number',
    label: 'Thermal expansion of the laminate',
    unit: '10⁻⁶/K',
    meaning: 'In its plane; a woven carbon laminate is 2 to 4, 2.1 in a maker’s table.',
    default: 3,
    min: -5,
    max: 60,
    decimals: 1,
  },
  sizeToleranceMm: {
    kind: 'number',
    label: 'Size may be off by',
    unit: 'mm',
    meaning: 'How far a finished length, or one rim from the other, may be off before it counts as wrong.',
    default: 0.3,
    min: 0.01,
    max: 10,
    decimals: 2,
  },
} as const satisfies Record<string, NumberSpec>;

/** Wanted finished lengths along the part's axes; null where the drawn length is wanted. Paths `mold.wanted.<field>`. */
export const wantedSpecs = {
  xMm: wanted('x'),
  yMm: wanted('y'),
  zMm: wanted('z'),
} as const satisfies Record<string, NumberSpec>;

function wanted(axis: string): NumberSpec {
  return {
    kind: 'number',
    label: `Wanted length along ${axis}`,
    unit: 'mm',
    meaning: `Finished outer length along ${axis}; left out, the drawn length is wanted.`,
    default: 100,
    min: 0.1,
    max: 10_000,
    decimals: 2,
  };
}

const coverage = (what: string, perLiter: number): NumberSpec => ({
  kind: 'number',
  label: `${what}, coverage`,
  unit: 'm²/L',
  meaning: 'Area that one liter covers in one coat, from the supplier’s sheet.',
  default: perLiter,
  min: 0.5,
  max: 200,
  decimals: 1,
});
const coats = (what: string, usual: number): NumberSpec => ({
  kind: 'number',
  label: `${what}, coats`,
  unit: '',
  meaning:
    'Number of coats on each face, from the supplier’s sheet. Epoxy that has cured is washed and sanded with P80 to P120 before the next coat, the last one ended at P220 to P400 (published guides).',
  default: usual,
  min: 0,
  max: 12,
  decimals: 0,
  whole: true,
});
const wait = (what: string, usual: number): NumberSpec => ({
  kind: 'number',
  label: `${what}, wait after each coat`,
  unit: 'min',
  meaning: 'As the supplier gives it.',
  default: usual,
  min: 0,
  max: 2880,
  decimals: 0,
});

const solids = (what: string, usual: number): NumberSpec => ({
  kind: 'number',
  label: `${what}, solids`,
  unit: '%',
  meaning: 'Share of its volume that stays when it has dried, from the supplier’s sheet; 100 loses nothing.',
  default: usual,
  min: 0.1,
  max: 100,
  decimals: 1,
});

export const coatNumberSpecs = {
  sealerCoats: coats('Sealer', 2),
  sealerM2PerL: coverage('Sealer', 8),
  sealerSolidsPercent: solids('Sealer', 40),
  sealerWaitMin: wait('Sealer', 30),
  releaseCoats: coats('Release', 3),
  releaseM2PerL: coverage('Release', 15),
  releaseSolidsPercent: solids('Release', 5),
  releaseWaitMin: wait('Release', 15),
  coatLossPercent: {
    kind: 'number',
    label: 'Coats lost in brush and pot',
    unit: '%',
    meaning: 'Taken on top; 20 to 50 % by brush.',
    default: 30,
    min: 0,
    max: 200,
    decimals: 0,
  },
} as const satisfies Record<string, NumberSpec>;

export const dryingNumberSpecs = {
  dryingC: {
    kind: 'number',
    label: 'Drying at',
    unit: '°C',
    meaning: 'Air round the stone while it dries; a fan does more than heat.',
    default: 45,
    min: 5,
    max: 200,
    decimals: 0,
  },
  dryingHours: {
    kind: 'number',
    label: 'Drying planned for',
    unit: 'h',
    meaning: 'First guess; the weighings decide.',
    default: 24,
    min: 1,
    max: 1000,
    decimals: 0,
  },
  scaleStepG: {
    kind: 'number',
    label: 'Scale shows steps of',
    unit: 'g',
    meaning: 'Smallest step of the scale that the halves are weighed on.',
    default: 1,
    min: 0.001,
    max: 100,
    decimals: 2,
  },
} as const satisfies Record<string, NumberSpec>;

/** One line of the drying log; a half that was not weighed is null. Paths `mold.dryingLog.N.<field>`. */
export const weighingSpecs = {
  hours: {
    kind: 'number',
    label: 'After demolding',
    unit: 'h',
    meaning: 'Hours since the half came out of the box; 0 is the fresh weight.',
    default: 0,
    min: 0,
    max: 10_000,
    decimals: 1,
  },
  negativeG: weight('negative'),
  positiveG: weight('positive'),
} as const satisfies Record<string, NumberSpec>;

function weight(half: string): NumberSpec {
  return {
    kind: 'number',
    label: `Weight of the ${half}`,
    unit: 'g',
    meaning: `The ${half} alone on the scale.`,
    default: 500,
    min: 0.01,
    max: 1_000_000,
    decimals: 1,
  };
}

export const weighingSchema = z.object({
  ...numberFields({ hours: weighingSpecs.hours }),
  negativeG: z.nullable(numberFields(weighingSpecs).negativeG),
  positiveG: z.nullable(numberFields(weighingSpecs).positiveG),
});

/** One repair of the stone. Paths `mold.repairs.N.<field>`. */
export const repairSpecs = {
  radiusMm: {
    kind: 'number',
    label: 'Radius of the place',
    unit: 'mm',
    meaning: 'Half its width along the surface.',
    default: 5,
    min: 0.1,
    max: 500,
    decimals: 1,
  },
  depthMm: {
    kind: 'number',
    label: 'Off the cast surface by',
    unit: 'mm',
    meaning: 'Stone scraped away, or filler standing proud; 0 for a bubble filled flush.',
    default: 0,
    min: 0,
    max: 20,
    decimals: 2,
  },
} as const satisfies Record<string, NumberSpec>;

export const repairSchema = z.object({
  id: z.string().check(z.minLength(1)),
  half: z.enum(['negative', 'positive']),
  kind: z.enum(['filled', 'scraped']),
  atMm: z.tuple([z.number(), z.number(), z.number()]),
  ...numberFields(repairSpecs),
  note: z.string().check(z.maxLength(200)),
});
