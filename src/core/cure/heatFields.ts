/** Whole fields of an oven run, kept small, so that the mold can be cut anywhere at any time of it. */
import type { Vec3 } from '../mesh/types';
import type { Curve } from './curve';
import type { HeatFrame } from './heatFrames';
import { halfCode, type MoldVoxels } from './moldVoxels';

export interface HeatFields {
  readonly voxels: MoldVoxels;
  readonly timesS: readonly number[];
  /** Fiftieths of a degree Celsius per voxel, one array per time: good to 0.01 K and up to 655 °C, over any oven's reach. */
  readonly fiftiethsC: readonly Int16Array[];
}

/** A layer of bricks; u and v are the other two axes of the pull frame in order. */
export interface HeatCut {
  readonly axis: 0 | 1 | 2;
  /** Where it lies along its axis, pull frame. */
  readonly atMm: number;
  readonly timeS: number;
  readonly counts: readonly [number, number];
  readonly sizeMm: readonly [number, number];
  /** Low corner of cell (0, 0), u and v. */
  readonly lowMm: readonly [number, number];
  /** One of `halfCode` per cell, u + count v. */
  readonly half: Uint8Array;
  readonly laminateShare: Float32Array;
  readonly temperatureC: Float32Array;
}

/** What lies at a point and how warm it gets; between the kept times straight lines. */
export interface HeatAtPoint {
  readonly fill: 'laminate' | 'negative' | 'positive';
  readonly curve: Curve;
}

/** A brick with at least this much laminate shows the laminate's temperature. */
export const shownLaminateShare = 0.2;

const stepsPerK = 50;

/** @param mostBytes every second, third, ... frame is kept when all would take more; first and last always are */
export function keptFields(voxels: MoldVoxels, frames: readonly HeatFrame[], mostBytes: number): HeatFields {
  const stride = Math.max(1, Math.ceil((2 * frames.length * voxels.half.length) / mostBytes));
  const kept = frames.filter((_, i) => i % stride === 0 || i === frames.length - 1);
  return {
    voxels,
    timesS: kept.map(({ timeS }) => timeS),
    fiftiethsC: kept.map(({ temperatureC }) => {
      const whole = new Int16Array(temperatureC.length);
      for (let at = 0; at < whole.length; at++) whole[at] = Math.round(stepsPerK * temperatureC[at]!);
      return whole;
    }),
  };
}

/** The two kept times about `timeS`, and how far it lies between them. */
function between({ timesS }: HeatFields, timeS: number): { from: number; until: number; share: number } {
  const next = timesS.findIndex((time) => time >= timeS);
  if (next <= 0) {
    const only = next === 0 ? 0 : timesS.length - 1;
    return { from: only, until: only, share: 0 };
  }
  const [low, high] = [timesS[next - 1]!, timesS[next]!];
  return { from: next - 1, until: next, share: (timeS - low) / (high - low) };
}

/** Ends of the mold along each axis, pull frame. */
export function fieldBounds({ voxels }: HeatFields): { readonly lowMm: Vec3; readonly highMm: Vec3 } {
  const { nx, ny, nz, sizeMm, originMm } = voxels;
  return {
    lowMm: originMm,
    highMm: [originMm[0] + nx * sizeMm[0], originMm[1] + ny * sizeMm[1], originMm[2] + nz * sizeMm[2]],
  };
}

/** The layer of bricks that `atMm` lies in; the outermost one for a place outside the mold. */
export function cutFields(fields: HeatFields, axis: 0 | 1 | 2, atMm: number, timeS: number): HeatCut {
  const { nx, ny, nz, sizeMm, originMm, half, laminateShare } = fields.voxels;
  const counts = [nx, ny, nz] as const;
  const strides = [1, nx, nx * ny] as const;
  const [u, v] = axis === 0 ? ([1, 2] as const) : axis === 1 ? ([0, 2] as const) : ([0, 1] as const);
  const layer = Math.min(counts[axis] - 1, Math.max(0, Math.floor((atMm - originMm[axis]) / sizeMm[axis])));
  const cells = counts[u] * counts[v];
  const { from, until, share } = between(fields, timeS);
  const [early, late] = [fields.fiftiethsC[from]!, fields.fiftiethsC[until]!];
  const cut = {
    half: new Uint8Array(cells),
    laminateShare: new Float32Array(cells),
    temperatureC: new Float32Array(cells),
  };
  for (let j = 0, cell = 0; j < counts[v]; j++)
    for (let i = 0; i < counts[u]; i++, cell++) {
      const at = layer * strides[axis] + i * strides[u] + j * strides[v];
      cut.half[cell] = half[at]!;
      cut.laminateShare[cell] = laminateShare[at]!;
      cut.temperatureC[cell] = (early[at]! + share * (late[at]! - early[at]!)) / stepsPerK;
    }
  return {
    axis,
    atMm,
    timeS,
    counts: [counts[u], counts[v]],
    sizeMm: [sizeMm[u], sizeMm[v]],
    lowMm: [originMm[u], originMm[v]],
    ...cut,
  };
}

/** null for a point outside the mold. */
export function heatAtPoint(fields: HeatFields, pointMm: Vec3): HeatAtPoint | null {
  const { nx, ny, nz, sizeMm, originMm, half, laminateShare } = fields.voxels;
  const [i, j, k] = pointMm.map((mm, axis) => Math.floor((mm - originMm[axis]!) / sizeMm[axis]!));
  if (i! < 0 || j! < 0 || k! < 0 || i! >= nx || j! >= ny || k! >= nz) return null;
  const at = i! + nx * (j! + ny * k!);
  if (half[at] === halfCode.outside) return null;
  const stone = half[at] === halfCode.negative ? 'negative' : 'positive';
  return {
    fill: laminateShare[at]! >= shownLaminateShare ? 'laminate' : stone,
    curve: { timesS: fields.timesS, valuesC: fields.fiftiethsC.map((field) => field[at]! / stepsPerK) },
  };
}
