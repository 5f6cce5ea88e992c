/** One material card: a prepreg roll as its data sheet, its label and the bench describe it. */
import * as z from 'zod/mini';
import { mayBeLeftOut, number, optional, plain, schemaOf, startOf, type InputsOf } from '../kit/inputTable';

/** Prepregs come 1 m to 1.27 m wide, cut-offs of retailers narrower: common practice. */
export const usualRollWidthMm = 1000;

const known = 'Empty takes a typical standard-modulus carbon ply, from memory.';
const typicalShear =
  'Empty takes what is typical, from memory: 40 and 54 for a 2×2 twill, 28 and 45 for a stitched cloth (as for plain weave), 5 and 15 for unidirectional tape.';
const strength = 'Measured strength from the data sheet; empty means no look at strength.';

function modulus(label: string, meaning: string, typical: number) {
  return mayBeLeftOut(
    optional(label, 'GPa', typical, [0.1, 1000, 1], {
      meaning: `${meaning} ${known}`,
    }),
  );
}

function expansion(label: string, typical: number) {
  return mayBeLeftOut(
    optional(label, '10⁻⁶/K', typical, [-20, 200, 1], {
      meaning: `Thermal expansion from the data sheet. ${known}`,
    }),
  );
}

function megapascal(label: string, typical: number) {
  return mayBeLeftOut(
    optional(label, 'MPa', typical, [0.1, 10_000, 0], {
      meaning: strength,
    }),
  );
}

/** Fields of one material card; paths are `plies.materials.N.<field>`. Empty (null) is allowed where said. */
export const materialTable = {
  id: plain(z.string().check(z.minLength(1)), ''),
  name: plain(z.string(), ''),
  weave: plain(z.enum(['woven', 'unidirectional', 'non-crimp']), 'woven', {
    label: 'Kind of fabric',
    meaning: 'How the fibers lie: crossing over and under, all one way, or stitched layers.',
    choices: [
      { value: 'woven', label: 'woven' },
      { value: 'unidirectional', label: 'unidirectional' },
      { value: 'non-crimp', label: 'non-crimp' },
    ],
  }),
  arealWeightGsm: number('Fiber areal weight', 'g/m²', 200, [10, 3000, 0], {
    meaning: 'Mass of dry fiber per area, from the roll label; not the prepreg weight.',
  }),
  fiberDensityGCm3: number('Fiber density', 'g/cm³', 1.77, [0.5, 5, 2], {
    meaning: 'Density of the fiber itself; high-strength carbon is about 1.76 to 1.80.',
  }),
  resinDensityGCm3: number('Resin density', 'g/cm³', 1.2, [0.5, 3, 2], {
    meaning: 'Density of the cured resin; epoxy is about 1.15 to 1.30.',
  }),
  resinMassFraction: number('Resin mass fraction', '', 0.42, [0.05, 0.9, 3], {
    meaning: 'Share of resin in the prepreg by mass, from the data sheet; 0.42 means 42 %.',
  }),
  /** null when not measured: the bulk factor is used and the figure says so. */
  laidThicknessMm: optional('Thickness as laid, one ply', 'mm', 0.25, [0.01, 10, 3], {
    meaning:
      'Caliper over laid plies divided by their number; empty when not measured. A twill of 200 g/m² is 0.23 to 0.27 mm (from memory). It tells how the stack gets in, not what fills the gap.',
  }),
  caliperTotalMm: mayBeLeftOut(
    optional('Caliper over plies as laid', 'mm', 0.75, [0.01, 100, 2], {
      meaning:
        'Reading over several plies of this roll laid on each other; divided by their number it replaces the thickness above.',
    }),
  ),
  caliperPlies: mayBeLeftOut(
    number('Plies under the caliper', 'plies', 3, [1, 50, 0], {
      meaning: 'How many plies lay under the caliper for that reading.',
      whole: true,
    }),
  ),
  /** Measured at the bench; both together replace `resinMassFraction`. */
  offcutMassG: mayBeLeftOut(
    optional('Weighed offcut, mass', 'g', 3.45, [0.001, 10_000, 2], {
      meaning:
        'An offcut of this roll without its backing on a scale; with its area it replaces the resin content of the data sheet.',
    }),
  ),
  offcutAreaCm2: mayBeLeftOut(
    optional('Weighed offcut, area', 'cm²', 100, [0.1, 100_000, 1], {
      meaning: 'Area of the weighed offcut, one ply; 10 × 10 cm is 100 cm².',
    }),
  ),
  e1GPa: modulus(
    'Modulus along the warp (E1)',
    'Young’s modulus of a cured ply along its fiber or warp.',
    60,
  ),
  e2GPa: modulus(
    'Modulus across (E2)',
    'Young’s modulus of a cured ply across its fiber or along its weft.',
    60,
  ),
  g12GPa: modulus('Shear modulus (G12)', 'In-plane shear modulus of a cured ply.', 4.5),
  nu12: mayBeLeftOut(
    optional('Poisson’s ratio (nu12)', '', 0.05, [0, 1, 3], {
      meaning: `Strain across over strain along for a pull along the warp. ${known}`,
    }),
  ),
  expansion1PpmPerK: expansion('Expansion along the warp', 3),
  expansion2PpmPerK: expansion('Expansion across', 3),
  expansion3PpmPerK: expansion('Expansion through the thickness', 50),
  tension1Mpa: megapascal('Tensile strength along', 700),
  compression1Mpa: megapascal('Compressive strength along', 570),
  tension2Mpa: megapascal('Tensile strength across', 700),
  compression2Mpa: megapascal('Compressive strength across', 570),
  shear12Mpa: megapascal('Shear strength', 90),
  /** As written on the label, any form; '' when not known. */
  freezerDate: mayBeLeftOut(
    plain(z.string().check(z.maxLength(40)), '', {
      label: 'Freezer date, as on the label',
      meaning: 'When the roll went into the freezer, or until when it keeps there.',
    }),
  ),
  hoursOutH: mayBeLeftOut(
    number('Hours out of the freezer so far', 'h', 0, [0, 100_000, 1], {
      meaning: 'All the time this roll has spent out of the freezer, added up from its log.',
    }),
  ),
  allowedOutTimeH: mayBeLeftOut(
    optional('Out-time allowed', 'h', 720, [0, 100_000, 0], {
      meaning:
        'Hours out of the freezer that the data sheet allows at its room temperature (30 days are 720 h); empty when not known.',
    }),
  ),
  shearWarningDeg: mayBeLeftOut(
    optional('Shear at which it wrinkles', '°', 40, [0.5, 80, 0], {
      meaning: `Pull a square of the cloth by two corners until it puckers: how far its threads are from square then. ${typicalShear}`,
    }),
  ),
  shearLockingDeg: mayBeLeftOut(
    optional('Shear at which it locks', '°', 54, [0.5, 85, 0], {
      meaning: `The same where it gives no further. ${typicalShear}`,
    }),
  ),
  rollWidthMm: mayBeLeftOut(
    optional('Width of the roll', 'mm', usualRollWidthMm, [10, 5000, 0], {
      meaning: `Across the warp, between the selvedges. Empty takes ${usualRollWidthMm}, common practice.`,
    }),
  ),
  remnantLengthMm: mayBeLeftOut(
    optional('Remnant, along the warp', 'mm', null, [10, 100_000, 0], {
      meaning: 'A rectangle that was left over; with its width it is cut up before the roll is. Empty: none.',
    }),
  ),
  remnantWidthMm: mayBeLeftOut(
    optional('Remnant, across the warp', 'mm', null, [10, 5000, 0], {
      meaning: 'The other side of that rectangle.',
    }),
  ),
  pricePerM2: mayBeLeftOut(
    optional('Price per square meter', '', null, [0, 100_000, 2], {
      meaning: 'In your own currency; empty leaves the cost out.',
    }),
  ),
};
export const materialSchema = schemaOf(materialTable);
export type Material = InputsOf<typeof materialTable>;

export const defaultMaterial: Material = {
  ...startOf(materialTable),
  id: 'twill-200',
  name: 'Twill prepreg 200 g/m²',
  laidThicknessMm: 0.25,
};
