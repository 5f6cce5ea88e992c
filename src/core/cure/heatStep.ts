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
import { capacityJPerK, heldMidway, sumOf, type HeatState } from './heatState';
import { waterHeatJPerKgK } from './moldMaterials';
import { straighten, surfaceHeat } from './surfaceExchange';
import { boilingC, evaporationJPerKg } from './waterVapor';

/** A boiling voxel takes up heat as if it were this many times heavier; what it took then leaves as steam. */
const boilingCapacity = 1e4;
const boilingJPerKg = evaporationJPerKg(boilingC);
/** A voxel this warm counts as boiling, °C. */
const boilsFromC = boilingC - 1e-3;

export interface StepInput {
  readonly airC: number;
  readonly stepS: number;
  readonly dehydrationPerS: Float64Array | null;
  /** Heat of reaction in each laminate voxel over the step, J; null when none is counted. */
  readonly reactionJ: Float64Array | null;
  readonly wet: boolean;
}

/** Works out `state.system.rise`; changes nothing that a step taken back would miss. */
export function tryStep(one: HeatCase, state: HeatState, input: StepInput): void {
  const { fullKg, heldKg, system, temperatureC } = state;
  const { stepS, reactionJ } = input;
  fillMass(state, input);
  if (input.dehydrationPerS !== null) addTurning(state, input.dehydrationPerS, stepS);
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
  adiStep(system, temperatureC);
}

/** Heat capacities over the step; boiling voxels take up heat without warming. */
function fillMass(state: HeatState, input: StepInput): void {
  const { system, temperatureC, heldKg, dryCapacityJPerK } = state;
  const { mass, source } = system;
  const waterJPerKgK = waterHeatJPerKgK * heldMidway(state, input.stepS);
  const perStep = 1 / input.stepS;
  source.fill(0);
  for (let at = 0; at < mass.length; at++) {
    const held = heldKg[at]!;
    const capacity = (dryCapacityJPerK[at]! + held * waterJPerKgK) * perStep;
    mass[at] = held > 0 && temperatureC[at]! >= boilsFromC ? capacity * (1 + boilingCapacity) : capacity;
  }
}

/**
 * Share of each voxel's gypsum that turns in the step, as `turnBase` plus `turnPerK` for each kelvin that it rises in it:
 * the rate at mid-step, straightened. Enters the step as heat taken and as extra capacity.
 */
function addTurning(
  { system, temperatureC, turnedShare, dehydrationJ, turnBase, turnPerK }: HeatState,
  table: Float64Array,
  stepS: number,
): void {
  const { mass, source } = system;
  const perStep = 1 / stepS;
  for (let at = 0; at < mass.length; at++) {
    const place = tablePlace(temperatureC[at]!);
    const entry = place | 0;
    const low = table[entry]!;
    const slope = table[entry + 1]! - low;
    if (low === 0 && slope === 0) {
      turnBase[at] = 0;
      turnPerK[at] = 0;
      continue;
    }
    const rate = low + slope * (place - entry);
    const left = (stepS * (1 - turnedShare[at]!)) / (1 + 0.5 * stepS * rate);
    const base = rate * left;
    const perK = 0.5 * slope * tablePerK * left;
    turnBase[at] = base;
    turnPerK[at] = perK;
    const heat = dehydrationJ[at]! * perStep;
    mass[at]! += heat * perK;
    source[at]! -= heat * base;
  }
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
 * was held at 100 °C then warms it at once. A shorter step holds less. Not asked where the resin heats from inside.
 */
export function leapsPastOven(
  { system, temperatureC, heldKg, dryCapacityJPerK }: HeatState,
  input: StepInput,
): boolean {
  if (!input.wet || input.reactionJ !== null) return false;
  const { rise } = system;
  let hottestC = input.airC;
  for (let at = 0; at < rise.length; at++) if (temperatureC[at]! > hottestC) hottestC = temperatureC[at]!;
  for (let at = 0; at < rise.length; at++) {
    const held = heldKg[at]!;
    const before = temperatureC[at]!;
    if (!(held > 0) || before < boilsFromC) continue;
    const capacity = dryCapacityJPerK[at]! + held * waterHeatJPerKgK;
    const after = before + rise[at]! * (1 + boilingCapacity) - (held * boilingJPerKg) / capacity;
    if (after > hottestC) return true;
  }
  return false;
}

/** Takes the step whose rise has been worked out, and books it. */
export function takeStep(one: HeatCase, state: HeatState, input: StepInput, ledger: HeatLedger): void {
  const { system, temperatureC, risePerS, peakC, heldKg, dryCapacityJPerK } = state;
  const { stepS, wet, dehydrationPerS, reactionJ } = input;
  const surface = surfaceHeat(state.exchange, one.voxels.half, system.rise);
  // From here on `rise` is what the voxel really rises.
  const { rise } = system;
  const waterJPerKgK = waterHeatJPerKgK * heldMidway(state, stepS);
  const perStep = 1 / stepS;
  let [stored, boiledKg, dehydrated] = [0, 0, 0];
  for (let at = 0; at < rise.length; at++) {
    const held = heldKg[at]!;
    // The capacity that the step was worked out with.
    const capacity = dryCapacityJPerK[at]! + held * waterJPerKgK;
    if (dehydrationPerS !== null) dehydrated += turn(state, at, capacity);
    if (wet && held > 0) boiledKg += boil(state, at, capacity);
    const risen = rise[at]!;
    const after = temperatureC[at]! + risen;
    stored += capacity * risen;
    risePerS[at] = risen * perStep;
    temperatureC[at] = after;
    if (after > peakC[at]!) peakC[at] = after;
  }
  state.boiling = boiledKg > 0;
  ledger.fromOvenJ += surface.fromOvenW * stepS;
  ledger.storedJ += stored;
  ledger.dehydratedJ += dehydrated;
  ledger.boiledKg += boiledKg;
  ledger.evaporatedJ += boiledKg * boilingJPerKg + surface.evaporationW * stepS;
  if (reactionJ !== null) for (const heatJ of reactionJ) ledger.reactionJ += heatJ;
  state.dryingPerS = 0;
  if (surface.evaporationW > 0) dryFaces(one, state, surface.waterKgPerS, stepS, ledger);
}

/**
 * Books the gypsum of one voxel that turned, J; what the straightened rate asked for beyond all or under nothing goes back
 * as warmth.
 */
function turn(
  { system, turnedShare, dehydrationJ, turnBase, turnPerK }: HeatState,
  at: number,
  capacityJPerK: number,
): number {
  const wanted = turnBase[at]! + turnPerK[at]! * system.rise[at]!;
  if (wanted === 0) return 0;
  const before = turnedShare[at]!;
  const turned = Math.min(1 - before, Math.max(0, wanted));
  const heat = dehydrationJ[at]!;
  if (turned !== wanted) system.rise[at]! += (heat * (wanted - turned)) / capacityJPerK;
  turnedShare[at] = before + turned;
  return heat * turned;
}

/** Boils off what free water of one voxel the heat over 100 °C can, kg; while it holds water it ends at 100 °C or under. */
function boil({ system, temperatureC, heldKg }: HeatState, at: number, capacityJPerK: number): number {
  const { rise } = system;
  const held = heldKg[at]!;
  const before = temperatureC[at]!;
  // What a boiling voxel took up without warming.
  const wanted = before >= boilsFromC ? rise[at]! * (1 + boilingCapacity) : rise[at]!;
  const over = before + wanted - boilingC;
  if (over <= 0) {
    rise[at] = wanted;
    return 0;
  }
  const kg = Math.min(held, (over * capacityJPerK) / boilingJPerKg);
  rise[at] = kg < held ? boilingC - before : wanted - (kg * boilingJPerKg) / capacityJPerK;
  heldKg[at] = held - kg;
  return kg;
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
  const heldKg = sumOf(state.heldKg);
  if (heldKg > 0) state.dryingPerS = Math.min(1 / stepS, (kgPerS[1] + kgPerS[2]) / heldKg);
  const short = takeFromHalves(state.heldKg, half, [0, kgPerS[1] * stepS, kgPerS[2] * stepS]);
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
