/**
 * The work of a step that goes through every voxel: heat capacities, the turning of gypsum, conduction, and what the rise
 * does to the voxel. Written here in TypeScript; kernel/ does the same with vectors, to the same figures.
 */
import { adiStep, type AdiSystem } from './adiStep';
import { tablePerK, tablePlace } from './dehydrationTable';
import { waterHeatJPerKgK } from './moldMaterials';
import { boilingC, evaporationJPerKg } from './waterVapor';

/** A boiling voxel takes up heat as if it were this many times heavier; what it took then leaves as steam. */
export const boilingCapacity = 1e4;
export const boilingJPerKg = evaporationJPerKg(boilingC);
/** A voxel this warm counts as boiling, °C. */
export const boilsFromC = boilingC - 1e-3;
/** A boiling voxel that stops in a step may end by so much under 100 °C, K: it gave off heat as if it were held there. */
export const mostFallK = 2;

/** What the work reads and changes, one number per voxel. */
export interface VoxelArrays {
  readonly temperatureC: Float64Array;
  /** In the step before, K/s. */
  readonly risePerS: Float32Array;
  /** Free water, kg. */
  readonly heldKg: Float64Array;
  /** Without its free water, J/K. */
  readonly dryCapacityJPerK: Float64Array;
  /** Heat of turning all of the voxel's gypsum back to plaster, J; 0 where there is none. */
  readonly dehydrationJ: Float64Array;
  /** Share of it that has turned, 0 to 1. */
  readonly turnedShare: Float64Array;
  /** Scratch of the step: share that turns, and how much more for each kelvin. */
  readonly turnBase: Float64Array;
  readonly turnPerK: Float64Array;
  /** Highest temperature so far. */
  readonly peakC: Float32Array;
  readonly system: AdiSystem;
}

export interface VoxelStep {
  readonly stepS: number;
  /** Heat of the water held now, J/(kg K), less what will have left by the middle of the step. */
  readonly waterJPerKgK: number;
  readonly wet: boolean;
}

/** What a step did to all voxels together. */
export interface VoxelsTaken {
  readonly storedJ: number;
  readonly dehydratedJ: number;
  readonly boiledKg: number;
}

export interface VoxelWork {
  /** Fills `system.mass` and `system.source`, turning gypsum included. */
  prepare(step: VoxelStep): void;
  /** Fills `system.rise`. */
  conduct(): void;
  /** By how much the rise differs from a plain going-on of the step before, K. */
  surpriseK(stepS: number): number;
  /**
   * Whether a boiling voxel would end where nothing drives it: boiled dry by more than `besidesK` over `airC` and every
   * voxel's temperature before, or by more than `mostFallK` under 100 °C.
   */
  leapsPast(airC: number, besidesK: number): boolean;
  /** Takes the step; `system.rise` is then what each voxel really rose. */
  take(step: VoxelStep): VoxelsTaken;
}

/** @param turningPerS table of `dehydrationTable`; null when no gypsum turns */
export function plainVoxelWork(arrays: VoxelArrays, turningPerS: Float64Array | null): VoxelWork {
  return {
    prepare(step) {
      fillMass(arrays, step);
      if (turningPerS !== null) addTurning(arrays, turningPerS, step.stepS);
    },
    conduct: () => adiStep(arrays.system, arrays.temperatureC),
    surpriseK: (stepS) => surpriseK(arrays, stepS),
    leapsPast: (airC, besidesK) => leapsPast(arrays, airC, besidesK),
    take: (step) => take(arrays, step, turningPerS !== null),
  };
}

/** Heat capacities over the step; boiling voxels take up heat without warming. */
function fillMass(arrays: VoxelArrays, { stepS, waterJPerKgK }: VoxelStep): void {
  const { system, temperatureC, heldKg, dryCapacityJPerK } = arrays;
  const { mass, source } = system;
  const perStep = 1 / stepS;
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
  { system, temperatureC, turnedShare, dehydrationJ, turnBase, turnPerK }: VoxelArrays,
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

function surpriseK({ system, risePerS }: VoxelArrays, stepS: number): number {
  const { rise } = system;
  let most = 0;
  for (let at = 0; at < rise.length; at++) {
    const off = Math.abs(rise[at]! - risePerS[at]! * stepS);
    if (off > most) most = off;
  }
  return most;
}

function leapsPast(
  { system, temperatureC, heldKg, dryCapacityJPerK }: VoxelArrays,
  airC: number,
  besidesK: number,
): boolean {
  const { rise } = system;
  let hottestC = airC;
  for (let at = 0; at < rise.length; at++) if (temperatureC[at]! > hottestC) hottestC = temperatureC[at]!;
  const mostC = hottestC + besidesK;
  for (let at = 0; at < rise.length; at++) {
    const held = heldKg[at]!;
    const before = temperatureC[at]!;
    if (!(held > 0) || before < boilsFromC) continue;
    const capacity = dryCapacityJPerK[at]! + held * waterHeatJPerKgK;
    const wanted = rise[at]! * (1 + boilingCapacity);
    if (wanted < -mostFallK || before + wanted - (held * boilingJPerKg) / capacity > mostC) return true;
  }
  return false;
}

function take(arrays: VoxelArrays, { stepS, waterJPerKgK, wet }: VoxelStep, turns: boolean): VoxelsTaken {
  const { system, temperatureC, risePerS, peakC, heldKg, dryCapacityJPerK } = arrays;
  const { rise } = system;
  const perStep = 1 / stepS;
  let [storedJ, dehydratedJ, boiledKg] = [0, 0, 0];
  for (let at = 0; at < rise.length; at++) {
    const held = heldKg[at]!;
    // The capacity that the step was worked out with.
    const capacity = dryCapacityJPerK[at]! + held * waterJPerKgK;
    if (turns) dehydratedJ += turn(arrays, at, capacity);
    if (wet && held > 0) boiledKg += boil(arrays, at, capacity);
    const risen = rise[at]!;
    const after = temperatureC[at]! + risen;
    storedJ += capacity * risen;
    risePerS[at] = risen * perStep;
    temperatureC[at] = after;
    if (after > peakC[at]!) peakC[at] = after;
  }
  return { storedJ, dehydratedJ, boiledKg };
}

/**
 * Books the gypsum of one voxel that turned, J; what the straightened rate asked for beyond all or under nothing goes back
 * as warmth.
 */
function turn(
  { system, turnedShare, dehydrationJ, turnBase, turnPerK }: VoxelArrays,
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
function boil({ system, temperatureC, heldKg }: VoxelArrays, at: number, capacityJPerK: number): number {
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
