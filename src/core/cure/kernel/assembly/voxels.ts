import {
  dehydration,
  dryCapacity,
  heldKg,
  mass,
  peak,
  rise,
  risePerS,
  source,
  temperature,
  turnBase,
  turnedShare,
  turnPerK,
  voxelCount,
} from './mold';
import { storeNarrowed, widened } from './pairs';

/** See voxelWork.ts, whose work this is; `setLaw` brings its numbers. */
let boilsFromC: f64 = 0;
let boilingC: f64 = 0;
let boilingCapacity: f64 = 0;
let boilingJPerKg: f64 = 0;
let mostFallK: f64 = 0;
/** Share that turns per second, from 0 °C up in steps of 1 / `tablePerK` K; 0 where nothing turns. */
let table: usize = 0;
let tablePerK: f64 = 0;
let lastEntry: f64 = 0;

let storedJ: f64 = 0;
let dehydratedJ: f64 = 0;
let boiledKg: f64 = 0;

export function setLaw(
  boilsFromC_: f64,
  boilingC_: f64,
  boilingCapacity_: f64,
  boilingJPerKg_: f64,
  mostFallK_: f64,
  table_: usize,
  tablePerK_: f64,
  lastEntry_: f64,
): void {
  boilsFromC = boilsFromC_;
  boilingC = boilingC_;
  boilingCapacity = boilingCapacity_;
  boilingJPerKg = boilingJPerKg_;
  mostFallK = mostFallK_;
  table = table_;
  tablePerK = tablePerK_;
  lastEntry = lastEntry_;
}

/**
 * Heat capacities over the step; boiling voxels take up heat without warming. Share of each voxel's gypsum that turns in the
 * step, as `turnBase` plus `turnPerK` for each kelvin that it rises in it: the rate at mid-step, straightened. Enters the
 * step as heat taken and as extra capacity.
 */
export function prepare(stepS: f64, waterJPerKgK: f64): void {
  const perStep = 1 / stepS;
  for (let at: usize = 0; at < voxelCount; at++) {
    const held = load<f64>(heldKg + 8 * at);
    const warmth = load<f64>(temperature + 8 * at);
    let heavy = (load<f64>(dryCapacity + 8 * at) + held * waterJPerKgK) * perStep;
    if (held > 0 && warmth >= boilsFromC) heavy = heavy * (1 + boilingCapacity);
    let heat: f64 = 0;
    if (table != 0) {
      const place = min(lastEntry, max<f64>(0, warmth * tablePerK));
      const entry = <i32>place;
      const low = load<f64>(table + 8 * <usize>entry);
      const slope = load<f64>(table + 8 * <usize>entry, 8) - low;
      let base: f64 = 0;
      let perK: f64 = 0;
      if (low != 0 || slope != 0) {
        const rate = low + slope * (place - <f64>entry);
        const left = (stepS * (1 - load<f64>(turnedShare + 8 * at))) / (1 + 0.5 * stepS * rate);
        base = rate * left;
        perK = 0.5 * slope * tablePerK * left;
        const all = load<f64>(dehydration + 8 * at) * perStep;
        heavy += all * perK;
        heat = -(all * base);
      }
      store<f64>(turnBase + 8 * at, base);
      store<f64>(turnPerK + 8 * at, perK);
    }
    store<f64>(mass + 8 * at, heavy);
    store<f64>(source + 8 * at, heat);
  }
}

export function surpriseK(stepS: f64): f64 {
  const size = f64x2.splat(stepS);
  let most = f64x2.splat(0);
  let at: usize = 0;
  for (; at + 2 <= voxelCount; at += 2) {
    const going = f64x2.mul(widened(risePerS + 4 * at), size);
    most = f64x2.max(most, f64x2.abs(f64x2.sub(v128.load(rise + 8 * at), going)));
  }
  let off = max(f64x2.extract_lane(most, 0), f64x2.extract_lane(most, 1));
  if (at < voxelCount)
    off = max(off, abs(load<f64>(rise + 8 * at) - <f64>load<f32>(risePerS + 4 * at) * stepS));
  return off;
}

export function leapsPast(airC: f64, besidesK: f64, waterJPerKgK: f64): bool {
  let hottestC = airC;
  let boils = false;
  for (let at: usize = 0; at < voxelCount; at++) {
    const warmth = load<f64>(temperature + 8 * at);
    hottestC = max(hottestC, warmth);
    boils = boils || warmth >= boilsFromC;
  }
  if (!boils) return false;
  const mostC = hottestC + besidesK;
  for (let at: usize = 0; at < voxelCount; at++) {
    const held = load<f64>(heldKg + 8 * at);
    const before = load<f64>(temperature + 8 * at);
    if (!(held > 0) || before < boilsFromC) continue;
    const capacity = load<f64>(dryCapacity + 8 * at) + held * waterJPerKgK;
    const wanted = load<f64>(rise + 8 * at) * (1 + boilingCapacity);
    if (wanted < -mostFallK || before + wanted - (held * boilingJPerKg) / capacity > mostC) return true;
  }
  return false;
}

/** What a step did to all voxels together is asked for next. */
export function take(stepS: f64, waterJPerKgK: f64, wet: bool): void {
  storedJ = 0;
  dehydratedJ = 0;
  boiledKg = 0;
  const perStep = 1 / stepS;
  let at: usize = 0;
  for (; at + 2 <= voxelCount; at += 2) takePair(at, perStep, waterJPerKgK, wet);
  if (at < voxelCount) takeOne(at, perStep, waterJPerKgK, wet);
}

export function takenStoredJ(): f64 {
  return storedJ;
}

export function takenDehydratedJ(): f64 {
  return dehydratedJ;
}

export function takenBoiledKg(): f64 {
  return boiledKg;
}

/** Two voxels that neither boil nor have turned all they can; anything else goes one by one. */
function takePair(at: usize, perStep: f64, waterJPerKgK: f64, wet: bool): void {
  const place: usize = 8 * at;
  const held = v128.load(heldKg + place);
  const before = v128.load(temperature + place);
  const risen = v128.load(rise + place);
  const after = f64x2.add(before, risen);
  if (wet) {
    const hot = v128.or(f64x2.ge(before, f64x2.splat(boilsFromC)), f64x2.gt(after, f64x2.splat(boilingC)));
    if (v128.any_true(v128.and(hot, f64x2.gt(held, f64x2.splat(0))))) {
      takeOne(at, perStep, waterJPerKgK, wet);
      takeOne(at + 1, perStep, waterJPerKgK, wet);
      return;
    }
  }
  if (table != 0) {
    const wanted = f64x2.add(v128.load(turnBase + place), f64x2.mul(v128.load(turnPerK + place), risen));
    const turned = v128.load(turnedShare + place);
    const nothing = f64x2.splat(0);
    const under = f64x2.lt(wanted, nothing);
    const over = f64x2.gt(wanted, f64x2.sub(f64x2.splat(1), turned));
    if (v128.any_true(v128.or(under, over))) {
      takeOne(at, perStep, waterJPerKgK, wet);
      takeOne(at + 1, perStep, waterJPerKgK, wet);
      return;
    }
    v128.store(turnedShare + place, f64x2.add(turned, wanted));
    const heat = f64x2.mul(v128.load(dehydration + place), wanted);
    dehydratedJ += f64x2.extract_lane(heat, 0);
    dehydratedJ += f64x2.extract_lane(heat, 1);
  }
  const capacity = f64x2.add(v128.load(dryCapacity + place), f64x2.mul(held, f64x2.splat(waterJPerKgK)));
  const stored = f64x2.mul(capacity, risen);
  storedJ += f64x2.extract_lane(stored, 0);
  storedJ += f64x2.extract_lane(stored, 1);
  storeNarrowed(risePerS + 4 * at, f64x2.mul(risen, f64x2.splat(perStep)));
  v128.store(temperature + place, after);
  storeNarrowed(peak + 4 * at, f64x2.max(after, widened(peak + 4 * at)));
}

function takeOne(at: usize, perStep: f64, waterJPerKgK: f64, wet: bool): void {
  const place: usize = 8 * at;
  const held = load<f64>(heldKg + place);
  // The capacity that the step was worked out with.
  const capacity = load<f64>(dryCapacity + place) + held * waterJPerKgK;
  if (table != 0) turn(place, capacity);
  if (wet && held > 0) boil(place, capacity);
  const risen = load<f64>(rise + place);
  const after = load<f64>(temperature + place) + risen;
  storedJ += capacity * risen;
  store<f32>(risePerS + 4 * at, <f32>(risen * perStep));
  store<f64>(temperature + place, after);
  if (after > <f64>load<f32>(peak + 4 * at)) store<f32>(peak + 4 * at, <f32>after);
}

/** Books the gypsum that turned; what the straightened rate asked for beyond all or under nothing goes back as warmth. */
function turn(place: usize, capacity: f64): void {
  const wanted = load<f64>(turnBase + place) + load<f64>(turnPerK + place) * load<f64>(rise + place);
  if (wanted == 0) return;
  const before = load<f64>(turnedShare + place);
  const turned = min(1 - before, max<f64>(0, wanted));
  const heat = load<f64>(dehydration + place);
  if (turned != wanted)
    store<f64>(rise + place, load<f64>(rise + place) + (heat * (wanted - turned)) / capacity);
  store<f64>(turnedShare + place, before + turned);
  dehydratedJ += heat * turned;
}

/** Boils off what free water the heat over 100 °C can; while it holds water the voxel ends at 100 °C or under. */
function boil(place: usize, capacity: f64): void {
  const held = load<f64>(heldKg + place);
  const before = load<f64>(temperature + place);
  const risen = load<f64>(rise + place);
  // What a boiling voxel took up without warming.
  const wanted = before >= boilsFromC ? risen * (1 + boilingCapacity) : risen;
  const over = before + wanted - boilingC;
  if (over <= 0) {
    store<f64>(rise + place, wanted);
    return;
  }
  const kg = min(held, (over * capacity) / boilingJPerKg);
  store<f64>(rise + place, kg < held ? boilingC - before : wanted - (kg * boilingJPerKg) / capacity);
  store<f64>(heldKg + place, held - kg);
  boiledKg += kg;
}
