/** How the hot mold may cool: what opening the oven at once would do to the stone, and the program's ramps. */
import {
  openedDifferenceK,
  skinTensionMPa,
  steadyDifferenceK,
  stoneBearsMPa,
  stoneModulusGPa,
  type OpeningStone,
} from '../../core/cure/openingStress';
import { gentleKPerMin } from '../../core/cure/ovenProgram';
import type { CurePrediction } from '../../core/cure/predictCure';
import type { Figure, Verdict } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import { figure, unknownFigure } from '../kit/figures';
import type { ProjectInputs } from '../inputs/project';
import { cureChoicesOf } from './cureChoicesOf';
import { cureFigureSpecs as specs } from './figureSpecs';
import type { CureInputs } from '../inputs/cure';
import { celsius } from './say';

/** Under this the stone may meet the room's air, °C (common practice). */
export const openUnderC = 60;
/** Radiation between warm stone and a room, W/(m² K), about. */
const radiationWPerM2K = 8;
const one = (value: number) => formatNumber(value, 1);

export interface Opening {
  readonly fromC: number;
  readonly differenceK: number;
  /** Usual, and with the softest and stiffest stone. */
  readonly tensionMPa: readonly [usual: number, low: number, high: number];
  /** Cooled evenly at `gentleKPerMin`. */
  readonly gentleK: number;
  readonly gentleMPa: number;
  readonly stone: OpeningStone;
}

/** null while the program cannot be run. */
function openingOf(inputs: ProjectInputs, { counts, voxelMm }: CurePrediction): Opening | null {
  const choices = cureChoicesOf(inputs);
  if (!choices.known) return null;
  const { stone: heat, surface, program } = choices.value;
  const stone: OpeningStone = {
    thicknessMm: Math.min(...counts) * voxelMm,
    conductivityWPerMK: heat.dryConductivityWPerMK,
    capacityJPerM3K: heat.dryDensityKgM3 * heat.dryHeatJPerKgK,
    filmWPerM2K: surface.filmWPerM2K + radiationWPerM2K,
    expansionPerK: inputs.mold.stoneExpansionPerMK / 1e6,
    modulusGPa: stoneModulusGPa.usual,
  };
  const fromC = program.stages.at(-1)?.targetC ?? program.startC;
  const differenceK = openedDifferenceK(stone, Math.max(0, fromC - program.roomC));
  const tension = (modulusGPa: number) => skinTensionMPa({ ...stone, modulusGPa }, differenceK);
  const gentleK = steadyDifferenceK(stone, gentleKPerMin);
  return {
    fromC,
    differenceK,
    tensionMPa: [tension(stoneModulusGPa.usual), tension(stoneModulusGPa.low), tension(stoneModulusGPa.high)],
    gentleK,
    gentleMPa: skinTensionMPa(stone, gentleK),
    stone,
  };
}

export function openingFigure(inputs: ProjectInputs, prediction: CurePrediction): Figure {
  const opening = openingOf(inputs, prediction);
  if (opening === null) return unknownFigure(specs.opening, 'The oven program cannot be run yet.');
  const { fromC, differenceK, tensionMPa, gentleK, gentleMPa, stone } = opening;
  return {
    ...figure(
      specs.opening,
      tensionMPa[0],
      `Opened at ${celsius(fromC)}: Bi = ${formatNumber(stone.filmWPerM2K, 0)} W/(m² K) × ${formatNumber(stone.thicknessMm / 2, 0)} mm / ${formatNumber(stone.conductivityWPerMK, 2)} W/(m K), core over skin ΔT Bi / (2 + Bi) = ${one(differenceK)} K.`,
      `E α ⅔ ΔT / (1 − ν) with ${stone.modulusGPa} GPa (${stoneModulusGPa.low} to ${stoneModulusGPa.high}), ${formatNumber(1e6 * stone.expansionPerK, 1)} × 10⁻⁶/K and 0.25, from memory; type 4 stone bears ${stoneBearsMPa[0]} to ${stoneBearsMPa[1]} MPa in tension (Hersek et al. 2002, abstract).`,
      `Falling by ${formatNumber(gentleKPerMin, 0)} K/min with the door shut: ρc L² rate / (2 k) = ${one(gentleK)} K, ${one(gentleMPa)} MPa.`,
    ),
    band: [tensionMPa[1], tensionMPa[2]],
  };
}

export function openingVerdict(inputs: ProjectInputs, prediction: CurePrediction): readonly Verdict[] {
  const id = 'cure.opening';
  const opening = openingOf(inputs, prediction);
  if (opening === null) return [];
  const { fromC, differenceK, tensionMPa, gentleMPa } = opening;
  const [bears] = stoneBearsMPa;
  const opened = `Opened at ${celsius(fromC)} the skin is some ${formatNumber(differenceK, 0)} K cooler than the core and pulled by about ${one(tensionMPa[0])} MPa (estimate)`;
  if (tensionMPa[2] < bears)
    return [
      { id, word: 'go', reason: `${opened}; the stone bears ${bears} to ${stoneBearsMPa[1]}.`, fix: '' },
    ];
  const shut = `door shut until ${celsius(openUnderC)}, falling by at most ${formatNumber(gentleKPerMin, 0)} K/min, it is ${one(gentleMPa)} MPa`;
  return gentleMPa < bears
    ? [
        {
          id,
          word: 'go',
          reason: `Cool with the ${shut}. ${opened}: more than the ${bears} to ${stoneBearsMPa[1]} it bears.`,
          fix: '',
        },
      ]
    : [
        {
          id,
          word: 'look again',
          reason: `${opened}; even with the ${shut}. It bears ${bears} to ${stoneBearsMPa[1]}.`,
          fix: '',
        },
      ];
}

/** The program's ramps against what the supplier allows. */
export function rampVerdicts({ cure }: ProjectInputs): readonly Verdict[] {
  if (cure.stages.length === 0) return [];
  return [rampVerdict(cure)];
}

function rampVerdict(cure: CureInputs): Verdict {
  const id = 'cure.ramp';
  const { supplierRampKPerMin, stages, ovenFastestKPerMin } = cure;
  const fastest = Math.max(...stages.map(({ rampKPerMin }) => rampKPerMin ?? ovenFastestKPerMin));
  const told = `The fastest ramp is ${one(fastest)} K/min`;
  if (supplierRampKPerMin === 0)
    return {
      id,
      word: fastest > gentleKPerMin ? 'look again' : 'not yet known',
      reason: `${told}; what the supplier allows is not entered.`,
      fix: `Read it off the data sheet and enter it; until then no more than ${formatNumber(gentleKPerMin, 0)} K/min (common practice).`,
    };
  return fastest > supplierRampKPerMin
    ? {
        id,
        word: 'look again',
        reason: `${told}, over the ${one(supplierRampKPerMin)} K/min that the supplier allows.`,
        fix: '',
      }
    : { id, word: 'go', reason: `${told}; the supplier allows ${one(supplierRampKPerMin)}.`, fix: '' };
}

/** Softer than its hottest use by less than this is too near, K (common practice). */
const underTgK = 25;

/** Where Tg is known: the hottest the part sees in use. */
export function serviceVerdict({ cure }: ProjectInputs, tgC: number | null): readonly Verdict[] {
  if (tgC === null) return [];
  const id = 'cure.service';
  const told = `Tg at the coldest place is ${celsius(tgC)}, the part sees ${celsius(cure.serviceC)} in use`;
  const margin = tgC - cure.serviceC;
  if (margin >= underTgK) return [{ id, word: 'go', reason: `${told}.`, fix: '' }];
  return [
    {
      id,
      word: margin < 0 ? 'stop' : 'look again',
      reason: `${told}: ${margin < 0 ? 'it softens there' : `less than ${underTgK} K apart (common practice)`}.`,
      fix: '',
    },
  ];
}
