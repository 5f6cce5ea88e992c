/** What each number of a material card is, and the range it may have. */
import type { InputSpecs, NumberSpec } from '../inputSpec';

const known = 'Empty takes a typical standard-modulus carbon ply, from memory.';
const strength = 'Measured strength from the data sheet; empty means no look at strength.';

function modulus(label: string, meaning: string, typical: number) {
  return {
    kind: 'number',
    label,
    unit: 'GPa',
    meaning: `${meaning} ${known}`,
    default: typical,
    min: 0.1,
    max: 1000,
    decimals: 1,
  } as const satisfies NumberSpec;
}

function expansion(label: string, typical: number) {
  return {
    kind: 'number',
    label,
    unit: '10⁻⁶/K',
    meaning: `Thermal expansion from the data sheet. ${known}`,
    default: typical,
    min: -20,
    max: 200,
    decimals: 1,
  } as const satisfies NumberSpec;
}

function megapascal(label: string, typical: number) {
  return {
    kind: 'number',
    label,
    unit: 'MPa',
    meaning: strength,
    default: typical,
    min: 0.1,
    max: 10_000,
    decimals: 0,
  } as const satisfies NumberSpec;
}

/** Fields of one material card; paths are `plies.materials.N.<field>`. Empty (null) is allowed where said. */
export const materialSpecs = {
  arealWeightGsm: {
    kind: 'number',
    label: 'Fiber areal weight',
    unit: 'g/m²',
    meaning: 'Mass of dry fiber per area, from the roll label; not the prepreg weight.',
    default: 200,
    min: 10,
    max: 3000,
    decimals: 0,
  },
  fiberDensityGCm3: {
    kind: 'number',
    label: 'Fiber density',
    unit: 'g/cm³',
    meaning: 'Density of the fiber itself; high-strength carbon is about 1.76 to 1.80.',
    default: 1.77,
    min: 0.5,
    max: 5,
    decimals: 2,
  },
  resinDensityGCm3: {
    kind: 'number',
    label: 'Resin density',
    unit: 'g/cm³',
    meaning: 'Density of the cured resin; epoxy is about 1.15 to 1.30.',
    default: 1.2,
    min: 0.5,
    max: 3,
    decimals: 2,
  },
  resinMassFraction: {
    kind: 'number',
    label: 'Resin mass fraction',
    unit: '',
    meaning: 'Share of resin in the prepreg by mass, from the data sheet; 0.42 means 42 %.',
    default: 0.42,
    min: 0.05,
    max: 0.9,
    decimals: 3,
  },
  laidThicknessMm: {
    kind: 'number',
    label: 'Thickness as laid, one ply',
    unit: 'mm',
    meaning:
      'Caliper over laid plies divided by their number; empty when not measured. A twill of 200 g/m² is 0.23 to 0.27 mm (from memory). It tells how the stack gets in, not what fills the gap.',
    default: 0.25,
    min: 0.01,
    max: 10,
    decimals: 3,
  },
  caliperTotalMm: {
    kind: 'number',
    label: 'Caliper over plies as laid',
    unit: 'mm',
    meaning:
      'Reading over several plies of this roll laid on each other; divided by their number it replaces the thickness above.',
    default: 0.75,
    min: 0.01,
    max: 100,
    decimals: 2,
  },
  caliperPlies: {
    kind: 'number',
    label: 'Plies under the caliper',
    unit: 'plies',
    meaning: 'How many plies lay under the caliper for that reading.',
    default: 3,
    min: 1,
    max: 50,
    decimals: 0,
    whole: true,
  },
  offcutMassG: {
    kind: 'number',
    label: 'Weighed offcut, mass',
    unit: 'g',
    meaning:
      'An offcut of this roll without its backing on a scale; with its area it replaces the resin content of the data sheet.',
    default: 3.45,
    min: 0.001,
    max: 10_000,
    decimals: 2,
  },
  offcutAreaCm2: {
    kind: 'number',
    label: 'Weighed offcut, area',
    unit: 'cm²',
    meaning: 'Area of the weighed offcut, one ply; 10 × 10 cm is 100 cm².',
    default: 100,
    min: 0.1,
    max: 100_000,
    decimals: 1,
  },
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
  nu12: {
    kind: 'number',
    label: 'Poisson’s ratio (nu12)',
    unit: '',
    meaning: `Strain across over strain along for a pull along the warp. ${known}`,
    default: 0.05,
    min: 0,
    max: 1,
    decimals: 3,
  },
  expansion1PpmPerK: expansion('Expansion along the warp', 3),
  expansion2PpmPerK: expansion('Expansion across', 3),
  expansion3PpmPerK: expansion('Expansion through the thickness', 50),
  tension1Mpa: megapascal('Tensile strength along', 700),
  compression1Mpa: megapascal('Compressive strength along', 570),
  tension2Mpa: megapascal('Tensile strength across', 700),
  compression2Mpa: megapascal('Compressive strength across', 570),
  shear12Mpa: megapascal('Shear strength', 90),
  hoursOutH: {
    kind: 'number',
    label: 'Hours out of the freezer so far',
    unit: 'h',
    meaning: 'All the time this roll has spent out of the freezer, added up from its log.',
    default: 0,
    min: 0,
    max: 100_000,
    decimals: 1,
  },
  allowedOutTimeH: {
    kind: 'number',
    label: 'Out-time allowed',
    unit: 'h',
    meaning:
      'Hours out of the freezer that the data sheet allows at its room temperature (30 days are 720 h); empty when not known.',
    default: 720,
    min: 0,
    max: 100_000,
    decimals: 0,
  },
} as const satisfies InputSpecs;
