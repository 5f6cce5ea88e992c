/**
 * One step of the whole mold: conduction with everything that takes or gives heat in the voxels. Sinks that answer to the
 * temperature (dehydration, boiling) enter the implicit step as extra heat capacity, so that no splitting error remains and
 * what they take is what is booked.
 */
import { takeFromHalves } from './freeWater';
import type { HeatCase } from './heatCase';
import type { HeatLedger } from './heatLedger';
import { capacityJPerK, heldMidway, type HeatState } from './heatState';
import { waterHeatJPerKgK } from './moldMaterials';
import { straighten, surfaceHeat } from './surfaceExchange';
import { boilingJPerKg, type VoxelStep, type VoxelWork } from './voxelWork';
import { boilingC, evaporationJPerKg } from './waterVapor';

export interface StepInput {
  readonly airC: number;
  readonly stepS: number;
  /** Heat of reaction in each laminate voxel over the step, J; null when none is counted. */
  readonly reactionJ: Float64Array | null;
  readonly wet: boolean;
}

const voxelStep = (state: HeatState, { stepS, wet }: StepInput): VoxelStep => ({
  stepS,
  waterJPerKgK: waterHeatJPerKgK * heldMidway(state, stepS),
  wet,
});

/** Works out `state.system.rise`; changes nothing that a step taken back would miss. */
export function tryStep(one: HeatCase, state: HeatState, work: VoxelWork, input: StepInput): void {
  const { fullKg, heldKg, system, temperatureC } = state;
  const { stepS, reactionJ } = input;
  work.prepare(voxelStep(state, input));
  if (reactionJ !== null)
    state.laminateVoxels.forEach((at, place) => (system.source[at]! += reactionJ[place]! / stepS));
  const dries = input.wet && one.water.rule === 'wicks';
  straighten(
    state.exchange,
    {
      temperatureC,
      risePerS: state.risePerS,
      conductivityWPerMK: state.conductivityWPerMK,
      heldKg,
      fullKg,
      wetFromShare: dries ? one.water.fallingRateUnder / heldMidway(state, stepS) : null,
    },
    input.airC,
    stepS,
  );
  addFaces(state);
  work.conduct();
}

function addFaces({ system, exchange }: HeatState): void {
  const films = [system.filmX, system.filmY, system.filmZ];
  const { cell, axis } = exchange.faces;
  for (let face = 0; face < cell.length; face++) films[axis[face]!]![cell[face]!] = 0;
  for (let face = 0; face < cell.length; face++) {
    const at = cell[face]!;
    films[axis[face]!]![at]! -= 0.5 * exchange.intoVoxelPerK[face]!;
    system.source[at]! += exchange.intoVoxelW[face]!;
  }
}

/**
 * Whether a voxel would boil dry in the step that was tried and leap past everything that heats it: what flowed in while it
 * was held at 100 °C then warms it at once. A shorter step holds less. @param reactionK what the resin itself may add, K
 */
export const leapsPastOven = (work: VoxelWork, { wet, airC }: StepInput, reactionK: number): boolean =>
  wet && work.leapsPast(airC, reactionK);

/** Takes the step whose rise has been worked out, and books it. */
export function takeStep(
  one: HeatCase,
  state: HeatState,
  work: VoxelWork,
  input: StepInput,
  ledger: HeatLedger,
): void {
  const { stepS, reactionJ } = input;
  const surface = surfaceHeat(state.exchange, one.voxels.half, state.system.rise);
  const { storedJ, dehydratedJ, boiledKg } = work.take(voxelStep(state, input));
  state.boiling = boiledKg > 0;
  ledger.fromOvenJ += surface.fromOvenW * stepS;
  ledger.storedJ += storedJ;
  ledger.dehydratedJ += dehydratedJ;
  ledger.boiledKg += boiledKg;
  ledger.evaporatedJ += boiledKg * boilingJPerKg + surface.evaporationW * stepS;
  if (reactionJ !== null) for (const heatJ of reactionJ) ledger.reactionJ += heatJ;
  state.dryingPerS = 0;
  if (surface.evaporationW > 0) dryFaces(one, state, surface.waterKgPerS, stepS, ledger);
}

/** Takes what the faces evaporated out of the halves; heat for water that was not there stays in the mold. */
function dryFaces(
  one: HeatCase,
  state: HeatState,
  kgPerS: readonly [number, number, number],
  stepS: number,
  ledger: HeatLedger,
): void {
  const { half } = one.voxels;
  const takeKg = [0, kgPerS[1] * stepS, kgPerS[2] * stepS] as const;
  const { hadKg, short } = takeFromHalves(state.heldKg, half, takeKg);
  if (hadKg > 0) state.dryingPerS = Math.min(1 / stepS, (kgPerS[1] + kgPerS[2]) / hadKg);
  ledger.driedKg += (kgPerS[1] + kgPerS[2]) * stepS - short[1] - short[2];
  for (const code of [1, 2] as const) {
    if (short[code] === 0) continue;
    let capacity = 0;
    for (let at = 0; at < half.length; at++) if (half[at] === code) capacity += capacityJPerK(state, at);
    const backJ = short[code] * evaporationJPerKg(boilingC);
    for (let at = 0; at < half.length; at++)
      if (half[at] === code) state.temperatureC[at]! += backJ / capacity;
    ledger.evaporatedJ -= backJ;
    ledger.storedJ += backJ;
  }
}
