/**
 * One time step of heat conduction on a brick grid by the alternating-direction scheme of Douglas and Gunn (Numer. Math. 6
 * (1964) 428-453): three sweeps of tridiagonal systems, second order in time, stable at any step. Written for the rise of
 * temperature over the step, in watts, with flat arrays; the voxel's heat capacity over the step stands in `mass`.
 */
import type { Conductances } from './conductionGrid';
import { plainRoom, type HeatRoom } from './heatRoom';
import { voxelCount, type MoldVoxels } from './moldVoxels';

export interface AdiSystem {
  readonly nx: number;
  readonly ny: number;
  readonly nz: number;
  readonly conductances: Conductances;
  /** Half of what a face takes less per kelvin that its voxel is warmer, W/K, by the axis of the face. */
  readonly filmX: Float32Array;
  readonly filmY: Float32Array;
  readonly filmZ: Float32Array;
  /** Heat capacity over the step, W/K; above zero everywhere. */
  readonly mass: Float64Array;
  /** Heat set free in the voxel or brought through its open faces at the temperature before the step, W. */
  readonly source: Float64Array;
  /** Result: rise over the step, K. */
  readonly rise: Float64Array;
  /** Scratch of the eliminations. */
  readonly scratch: Float64Array;
}

/** Arrays for the steps of one mold, all zero but `mass`. */
export function adiWorkspace(
  voxels: MoldVoxels,
  conductances: Conductances,
  room: HeatRoom = plainRoom,
): AdiSystem {
  const { nx, ny, nz } = voxels;
  const count = voxelCount(voxels);
  return {
    nx,
    ny,
    nz,
    conductances,
    filmX: room.float32(count),
    filmY: room.float32(count),
    filmZ: room.float32(count),
    mass: room.float64(count).fill(1),
    source: room.float64(count),
    rise: room.float64(count),
    scratch: room.float64(count),
  };
}

/** Fills `system.rise` for one step from `temperature`. */
export function adiStep(system: AdiSystem, temperature: Float64Array): void {
  const { nx, ny, nz, conductances, filmY, filmZ } = system;
  sweepX(system, temperature);
  sweepAcross(system, conductances.halfY, filmY, { stride: nx, count: ny, outer: nz, outerStride: nx * ny });
  sweepAcross(system, conductances.halfZ, filmZ, { stride: nx * ny, count: nz, outer: 1, outerStride: 0 });
}

/** First sweep: the whole right-hand side, implicit along x. */
function sweepX(system: AdiSystem, temperature: Float64Array): void {
  const { nx, ny, nz, filmX, mass, source, rise, scratch } = system;
  const { halfX, halfY, halfZ } = system.conductances;
  const layer = nx * ny;
  for (let k = 0; k < nz; k++)
    for (let j = 0; j < ny; j++) {
      // At the edge a neighbor is the voxel itself: no difference, no flux.
      const north = j + 1 < ny ? nx : 0;
      const south = j > 0 ? nx : 0;
      const above = k + 1 < nz ? layer : 0;
      const below = k > 0 ? layer : 0;
      const line = nx * (j + ny * k);
      const end = line + nx;
      let westHalf = 0;
      let fromWest = 0;
      let coupled = 0;
      let risen = 0;
      for (let at = line; at < end; at++) {
        const here = temperature[at]!;
        const eastHalf = halfX[at]!;
        const east = at + 1 < end ? at + 1 : at;
        const toEast = eastHalf * (here - temperature[east]!);
        const across =
          halfY[at]! * (temperature[at + north]! - here) +
          halfY[at - south]! * (temperature[at - south]! - here) +
          halfZ[at]! * (temperature[at + above]! - here) +
          halfZ[at - below]! * (temperature[at - below]! - here);
        const right = source[at]! + 2 * (fromWest - toEast + across);
        const pivot = 1 / (mass[at]! + eastHalf + westHalf + filmX[at]! - westHalf * coupled);
        coupled = eastHalf * pivot;
        risen = (right + westHalf * risen) * pivot;
        scratch[at] = coupled;
        rise[at] = risen;
        westHalf = eastHalf;
        fromWest = toEast;
      }
      for (let at = end - 2; at >= line; at--) {
        risen = rise[at]! + scratch[at]! * risen;
        rise[at] = risen;
      }
    }
}

interface Lines {
  /** Between neighbors of one line; also how many lines lie side by side. */
  readonly stride: number;
  /** Voxels in a line. */
  readonly count: number;
  /** Groups of lines and their distance. */
  readonly outer: number;
  readonly outerStride: number;
}

/** Second and third sweep: implicit along y or z, all lines of a layer side by side so that memory is read in order. */
function sweepAcross(system: AdiSystem, half: Float32Array, film: Float32Array, lines: Lines): void {
  const { mass, rise, scratch } = system;
  const { stride, count, outer, outerStride } = lines;
  for (let group = 0; group < outer; group++) {
    const first = group * outerStride;
    for (let at = first; at < first + stride; at++) {
      const pivot = 1 / (mass[at]! + half[at]! + film[at]!);
      scratch[at] = half[at]! * pivot;
      rise[at] = mass[at]! * rise[at]! * pivot;
    }
    const end = first + count * stride;
    for (let at = first + stride; at < end; at++) {
      const before = half[at - stride]!;
      const ahead = half[at]!;
      const pivot = 1 / (mass[at]! + ahead + before + film[at]! - before * scratch[at - stride]!);
      scratch[at] = ahead * pivot;
      rise[at] = (mass[at]! * rise[at]! + before * rise[at - stride]!) * pivot;
    }
    for (let at = end - stride - 1; at >= first; at--) rise[at]! += scratch[at]! * rise[at + stride]!;
  }
}
