/** What the laminate went through, place by place, as the run keeps it. */
import { mostCounts } from '../counts';
import type { Curve } from './curve';
import { doseOver, type SupplierCure } from './dose';
import type { HeatState } from './heatState';

export interface LaminateRecord {
  /** Voxel of each place. */
  readonly voxels: Uint32Array;
  /** Seconds of the kept temperatures. */
  readonly timesS: number[];
  /** One array of the temperatures of all places per kept time. */
  readonly temperatureC: Float32Array[];
  readonly peakC: Float32Array;
  /** Supplier dose of each place so far; zeros without a supplier's cure. */
  readonly dose: Float64Array;
}

export function laminateRecord({ laminateVoxels, temperatureC }: HeatState): LaminateRecord {
  const now = Float32Array.from(laminateVoxels, (at) => temperatureC[at]!);
  return {
    voxels: laminateVoxels,
    timesS: [0],
    temperatureC: [now],
    peakC: now.slice(),
    dose: new Float64Array(laminateVoxels.length),
  };
}

/** Kept temperatures stand at least this far apart, s: as wanted, and wider where a long run through many places would fill the memory. */
export function recordSpacingS(wantedS: number, untilS: number, places: number): number {
  return Math.max(wantedS, (untilS * places) / mostCounts.keptTemperatures);
}

/** Adds the step just taken; `before` holds the places' temperatures ahead of it and is brought up to date. */
export function recordStep(
  record: LaminateRecord,
  state: HeatState,
  before: Float64Array,
  stepS: number,
  supplier: SupplierCure | null,
): void {
  for (let place = 0; place < record.voxels.length; place++) {
    const after = state.temperatureC[record.voxels[place]!]!;
    if (supplier !== null) record.dose[place]! += doseOver(supplier, before[place]!, after, stepS);
    if (after > record.peakC[place]!) record.peakC[place] = after;
    before[place] = after;
  }
}

/** Keeps the temperatures of all places as of now. */
export function keepTemperatures(record: LaminateRecord, timeS: number, now: Float64Array): void {
  record.timesS.push(timeS);
  record.temperatureC.push(new Float32Array(now));
}

/** Temperature of one place over the kept times. */
export function curveAtPlace(record: LaminateRecord, place: number): Curve {
  return { timesS: record.timesS, valuesC: record.temperatureC.map((all) => all[place]!) };
}

/** The place with the least dose (the least peak where no dose is counted), and the one with the highest peak. */
export function extremePlaces({ dose, peakC }: LaminateRecord): {
  readonly coldest: number;
  readonly hottest: number;
} {
  const counted = dose.some((one) => one > 0);
  const rank = counted ? dose : peakC;
  let [coldest, hottest] = [0, 0];
  for (let place = 1; place < peakC.length; place++) {
    if (rank[place]! < rank[coldest]!) coldest = place;
    if (peakC[place]! > peakC[hottest]!) hottest = place;
  }
  return { coldest, hottest };
}
