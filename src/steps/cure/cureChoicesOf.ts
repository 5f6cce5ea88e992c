/** What the prediction is asked with, from the inputs of all steps; or the sentence why it cannot be asked. */
import {
  laminateHeatDefaults,
  stoneHeatDefaults,
  stoneHeatOf,
  type LaminateHeat,
} from '../../core/cure/moldMaterials';
import { freeWaterDefaults } from '../../core/cure/freeWater';
import type { CureKinetics, CureLaw, DiffusionTerm, RateConstant } from '../../core/cure/kinetics';
import { usualOven } from '../../core/cure/ovenAir';
import {
  programOnDial,
  stagesOverLimits,
  type OvenProgram,
  type ProgramLimit,
} from '../../core/cure/ovenProgram';
import type { CureChoices } from '../../core/cure/predictCure';
import { supplierCure } from '../../core/cure/dose';
import {
  airFilmsWPerM2K,
  surfaceDefaults,
  trayConductance,
  type FaceSide,
  type SurfaceChoices,
} from '../../core/cure/surfaceChoices';
import { Problem } from '../../core/problem';
import type { MoldGeometry } from '../../core/stone/moldGeometry';
import type { StoneMix } from '../../core/stone/stoneMix';
import type { ProjectInputs } from '../inputs/project';
import { waterLeft } from '../stone/waterLeft';
import { mixOf } from '../stone/work';
import type { Answer } from '../stone/work';
import { pourChoicesOf } from '../mold/pourChoicesOf';
import { resolveStack } from '../shared/stack';
import { programOf } from '../shared/process';
import type { CureInputs } from '../inputs/cure';

function limitsOf({
  stoneLimitC,
  clampLimitC,
  patternLimitC,
  patternInside,
}: CureInputs): readonly ProgramLimit[] {
  return [
    { what: 'the stone', mostC: stoneLimitC },
    { what: 'the clamps', mostC: clampLimitC },
    ...(patternInside === 'in' ? [{ what: 'the printed pattern', mostC: patternLimitC }] : []),
  ];
}

/** Sentences about stages over a limit. */
export const overLimits = (inputs: ProjectInputs): readonly string[] =>
  stagesOverLimits(programOf(inputs), limitsOf(inputs.cure));

const sealedSides: Readonly<Record<CureInputs['sealedFaces'], readonly FaceSide[]>> = {
  none: [],
  sides: ['sides'],
  all: ['low z', 'high z', 'sides'],
};

function filmOf({ air, ownFilmWPerM2K }: CureInputs): number {
  return air === 'own' ? ownFilmWPerM2K : airFilmsWPerM2K[air];
}

function surfaceOf(cure: CureInputs): SurfaceChoices {
  const filmWPerM2K = filmOf(cure);
  return {
    ...surfaceDefaults,
    filmWPerM2K,
    trayUnder: ({ rack: null, 'tray, positive down': 'low z', 'tray, negative down': 'high z' } as const)[
      cure.support
    ],
    // Radiation onto the tray from below is about as much as half a still film.
    trayWPerM2K: trayConductance(cure.trayGapMm, filmWPerM2K + airFilmsWPerM2K.still),
    sealed: sealedSides[cure.sealedFaces],
  };
}

const constant = (perS: number | null, energyKJPerMol: number | null): RateConstant => ({
  perS: perS ?? 0,
  energyJPerMol: 1000 * (energyKJPerMol ?? 0),
});

/** @throws Problem `cure.kineticsMissing` */
export function kineticsOf({ kineticsForm, kinetics }: CureInputs): CureKinetics | null {
  if (kineticsForm === 'none') return null;
  const { k2PerS, k2EnergyKJPerMol, m, n, sharpness, criticalCure, criticalCurePerK } = kinetics;
  if (k2PerS === null || k2EnergyKJPerMol === null || m === null || n === null)
    throw new Problem(
      'cure.kineticsMissing',
      'The kinetics need A2, E2, m and n. Enter them, or choose none.',
    );
  const k1 = constant(kinetics.k1PerS, kinetics.k1EnergyKJPerMol);
  const k2 = constant(k2PerS, k2EnergyKJPerMol);
  const rest = { startCure: kinetics.startCure ?? 0, heatJPerG: kinetics.heatJPerG ?? 0 };
  if (kineticsForm === 'autocatalytic') return { law: { form: 'autocatalytic', k1, k2, m, n }, ...rest };
  if (sharpness === null || criticalCure === null || criticalCurePerK === null)
    throw new Problem('cure.kineticsMissing', 'The diffusion-limited form also needs C, αC0 and αCT.');
  const slowed = { k: k2, m, n, limited: true };
  const law: CureLaw = {
    form: 'diffusion-limited',
    terms: kineticsForm === 'diffusion-limited' ? [slowed] : [unslowedTerm(kinetics), slowed],
    sharpness,
    criticalCure,
    criticalCurePerK,
  };
  return { law, ...rest };
}

/** @throws Problem `cure.kineticsMissing` */
function unslowedTerm({ k1PerS, k1EnergyKJPerMol, k1M, k1N }: CureInputs['kinetics']): DiffusionTerm {
  if (k1PerS === null || k1EnergyKJPerMol === null || k1M === null || k1N === null)
    throw new Problem('cure.kineticsMissing', 'The two-term form also needs A1, E1, m1 and n1.');
  return { k: constant(k1PerS, k1EnergyKJPerMol), m: k1M, n: k1N, limited: false };
}

function glassOf({ kinetics: { tgUncuredC, tgCuredC, lambda } }: CureInputs): CureChoices['glass'] {
  if (tgUncuredC === null || tgCuredC === null || lambda === null) return null;
  return { uncuredC: tgUncuredC, fullyCuredC: tgCuredC, lambda };
}

function laminateOf({ plies }: Pick<ProjectInputs, 'plies'>): LaminateHeat {
  const stack = resolveStack(plies);
  if (!stack.known) return laminateHeatDefaults;
  const cards = stack.plies.map(({ card }) => card);
  const resin = cards.reduce((sum, card) => sum + card.resinMassFraction, 0) / cards.length;
  return { ...laminateHeatDefaults, resinMassFraction: resin };
}

/** @param mold the pours, by whose volume a half that was not weighed fresh tells its water; null: not worked out */
export function cureChoicesOf(inputs: ProjectInputs, mold: MoldGeometry | null = null): Answer<CureChoices> {
  const { cure } = inputs;
  const mix = mixOf(inputs.mold);
  if (!mix.known) return mix;
  try {
    const program = programOf(inputs);
    programOnDial(program);
    if (cure.supplierCures.length > 0) supplierCure(cure.supplierCures);
    return { known: true, value: choicesFor(inputs, program, mix.value, mold) };
  } catch (error) {
    if (error instanceof Problem) return { known: false, why: error.message };
    throw error;
  }
}

function choicesFor(
  inputs: ProjectInputs,
  program: OvenProgram,
  mix: StoneMix,
  mold: MoldGeometry | null,
): CureChoices {
  const { cure } = inputs;
  return {
    pour: pourChoicesOf(inputs),
    voxelMm: cure.voxelMm,
    stone: {
      ...stoneHeatOf(mix),
      dryHeatJPerKgK: cure.stoneHeatJPerKgK,
      dryConductivityWPerMK: cure.stoneConductivityWPerMK,
      wetConductivityWPerMK:
        cure.stoneConductivityWPerMK *
        (stoneHeatDefaults.wetConductivityWPerMK / stoneHeatDefaults.dryConductivityWPerMK),
    },
    laminate: laminateOf(inputs),
    surface: surfaceOf(cure),
    water: { ...freeWaterDefaults, rule: cure.drying, heldShare: waterLeft(inputs, mold).percent / 100 },
    dehydrationRateFactor: cure.dehydrationRateFactor,
    program,
    oven: {
      ...usualOven,
      lagS: cure.ovenLagS,
      fastestKPerMin: cure.ovenFastestKPerMin,
      overshootK: cure.overshootK,
    },
    supplier: cure.supplierCures,
    kinetics: kineticsOf(cure),
    glass: glassOf(cure),
    demoldC: cure.demoldC,
    thermocouple: null,
  };
}
