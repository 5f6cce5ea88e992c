/**
 * One step of the whole mold: conduction with everything that takes or gives heat in the voxels. Sinks that answer to the
 * temperature (dehydration, boiling) enter the implicit step as extra heat capacity, so that no splitting error remains and
 * what they take is what is booked.
 */
import { adiStep } from './adiStep';
import { tablePerK, tablePlace } from './dehydrationTable';
import { takeFromHalves } from './freeWater';
import type { HeatCase } from './heatCase';
import type { HeatLedger } from './heatLedger';
import { capacityJPerK, type HeatState } from './heatState';
import { waterHeatJPerKgK } from './moldMaterials';
import { straighten, surfaceHeat } from './surfaceExchange';
import { boilingC, evaporationJPerKg } from './waterVapor';

/** A boiling voxel takes up heat as if it were this many times heavier; what it took then leaves as steam. */
const boilingCapacity = 1e4;
const boilingJPerKg = evaporationJPerKg(boilingC);
/** A voxel within this of boiling counts as boiling, K. */
const boilingSlackK = 1e-3;

export interface StepInput {
  readonly airC: number;
  readonly stepS: number;
  readonly dehydrationPerS: Float64Array | null;
  /** Heat of reaction in each laminate voxel over the step, J; null when none is counted. */
  readonly reactionJ: Float64Array | null;
  readonly wet: boolean;
}

const isBoiling = (state: HeatState, at: number) =>
  state.heldKg[at]! > 0 && state.temperatureC[at]! >= boilingC - boilingSlackK;

/** Works out `state.system.rise`; changes nothing else that a step taken back would miss. */
export function tryStep(one: HeatCase, state: HeatState, input: StepInput): void {
  const { system, temperatureC, heldKg, fullKg, dryCapacityJPerK } = state;
  const { mass, source } = system;
  const { stepS, wet, dehydrationPerS, reactionJ } = input;
  const perStep = 1 / stepS;
  for (let at = 0; at < mass.length; at++) {
    const capacity = dryCapacityJPerK[at]! + heldKg[at]! * waterHeatJPerKgK;
    mass[at] = capacity * perStep;
    source[at] = 0;
    if (dehydrationPerS !== null) {
      const turn = turnInStep(dehydrationPerS, state, at, stepS);
      mass[at]! += state.dehydrationJ[at]! * turn.perK * perStep;
      source[at] = -state.dehydrationJ[at]! * turn.base * perStep;
    }
    if (wet && isBoiling(state, at)) mass[at]! += boilingCapacity * capacity * perStep;
  }
  if (reactionJ !== null)
    state.laminateVoxels.forEach((at, place) => (source[at]! += reactionJ[place]! * perStep));
  const dries = wet && one.water.rule === 'wicks';
  const wetFull = one.water.fallingRateUnder;
  const wetness = (at: number) =>
    fullKg[at]! > 0 ? Math.min(1, heldKg[at]! / (wetFull * fullKg[at]!)) : 0;
  straighten(
    state.exchange,
    {
      temperatureC,
      risePerS: state.risePerS,
      conductivityWPerMK: state.conductivityWPerMK,
      wetness: dries ? wetness : null,
    },
    input.airC,
    stepS,
  );
  addFaces(state);
  adiStep(system, temperatureC);
}

/** Share of a voxel's gypsum that turns in a step: `base` plus `perK` for each kelvin that the voxel rises in it. */
const turning = { base: 0, perK: 0 };

function turnInStep(table: Float64Array, state: HeatState, at: number, stepS: number): typeof turning {
  const place = tablePlace(state.temperatureC[at]!);
  const entry = Math.floor(place);
  const low = table[entry]!;
  const slope = table[entry + 1]! - low;
  const rate = low + slope * (place - entry);
  const left = (1 - state.turnedShare[at]!) / (1 + 0.5 * stepS * rate);
  turning.base = stepS * rate * left;
  turning.perK = 0.5 * stepS * slope * tablePerK * left;
  return turning;
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

/** Takes the step whose rise has been worked out, and books it. */
export function takeStep(one: HeatCase, state: HeatState, input: StepInput, ledger: HeatLedger): void {
  const { half } = one.voxels;
  const { system, temperatureC, risePerS, peakC } = state;
  const { stepS, wet, dehydrationPerS, reactionJ } = input;
  const surface = surfaceHeat(state.exchange, half, system.rise);
  let stored = 0;
  let dehydrated = 0;
  let boiledKg = 0;
  for (let at = 0; at < temperatureC.length; at++) {
    const before = temperatureC[at]!;
    const capacity = capacityJPerK(state, at);
    const rise = system.rise[at]!;
    let after = before + rise;
    if (dehydrationPerS !== null) {
      const turn = turnInStep(dehydrationPerS, state, at, stepS);
      const wanted = turn.base + turn.perK * rise;
      const turned = Math.min(1 - state.turnedShare[at]!, Math.max(0, wanted));
      after += (state.dehydrationJ[at]! * (wanted - turned)) / capacity;
      dehydrated += state.dehydrationJ[at]! * turned;
      state.turnedShare[at]! += turned;
    }
    if (wet && state.heldKg[at]! > 0) {
      if (isBoiling(state, at)) after += boilingCapacity * rise;
      const boilable = Math.max(0, after - boilingC) * capacity;
      const kg = Math.min(state.heldKg[at]!, boilable / boilingJPerKg);
      after = kg < state.heldKg[at]! ? Math.min(after, boilingC) : after - (kg * boilingJPerKg) / capacity;
      state.heldKg[at]! -= kg;
      boiledKg += kg;
    }
    stored += capacity * (after - before);
    risePerS[at] = (after - before) / stepS;
    temperatureC[at] = after;
    if (after > peakC[at]!) peakC[at] = after;
  }
  ledger.fromOvenJ += surface.fromOvenW * stepS;
  ledger.storedJ += stored;
  ledger.dehydratedJ += dehydrated;
  ledger.boiledKg += boiledKg;
  ledger.evaporatedJ += boiledKg * boilingJPerKg + surface.evaporationW * stepS;
  if (reactionJ !== null) for (const heatJ of reactionJ) ledger.reactionJ += heatJ;
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
  const short = takeFromHalves(state.heldKg, half, [0, kgPerS[1] * stepS, kgPerS[2] * stepS]);
  ledger.driedKg += (kgPerS[1] + kgPerS[2]) * stepS - short[1] - short[2];
  for (const code of [1, 2] as const) {
    if (short[code] === 0) continue;
    let capacity = 0;
    for (let at = 0; at < half.length; at++) if (half[at] === code) capacity += capacityJPerK(state, at);
    const backJ = short[code] * evaporationJPerKg(boilingC);
    for (let at = 0; at < half.length; at++) if (half[at] === code) state.temperatureC[at]! += backJ / capacity;
    ledger.evaporatedJ -= backJ;
    ledger.storedJ += backJ;
  }
}
