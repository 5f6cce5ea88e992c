/**
 * The work of a step that goes through every voxel, in the plainest way there is: one voxel after the other, and whole
 * lines of voxels as dense systems of equations. What the heat kernel is compared with; slow on purpose.
 */
import { tablePerK, tablePlace } from '../../src/core/cure/dehydrationTable';
import type { HeatRoom } from '../../src/core/cure/heatRoom';
import { waterHeatJPerKgK } from '../../src/core/cure/moldMaterials';
import {
  boilingCapacity,
  boilingJPerKg,
  boilsFromC,
  mostFallK,
  type VoxelArrays,
  type VoxelStep,
  type VoxelWork,
} from '../../src/core/cure/voxelWork';
import { boilingC } from '../../src/core/cure/waterVapor';

/** Arrays on their own, for a state that no kernel works on. */
export const plainRoom: HeatRoom = {
  float64: (count) => new Float64Array(count),
  float32: (count) => new Float32Array(count),
};

/** @param turningPerS table of `dehydrationTable`; null when no gypsum turns */
export function plainHeatWork(arrays: VoxelArrays, turningPerS: Float64Array | null): VoxelWork {
  const { system, temperatureC, heldKg, dryCapacityJPerK, dehydrationJ, turnedShare } = arrays;
  const { mass, source, rise } = system;
  const voxels = [...mass.keys()];
  const isBoiling = (at: number) => heldKg[at]! > 0 && temperatureC[at]! >= boilsFromC;
  const capacity = (at: number, waterJPerKgK: number) => dryCapacityJPerK[at]! + heldKg[at]! * waterJPerKgK;
  /** What a boiling voxel took up without warming counts as well, K. */
  const wantedK = (at: number) => rise[at]! * (isBoiling(at) ? 1 + boilingCapacity : 1);

  /** Share that turns in the step, and how much more for each kelvin that the voxel rises in it. */
  function turning(at: number, table: Float64Array, stepS: number): [base: number, perK: number] {
    const place = tablePlace(temperatureC[at]!);
    const entry = Math.floor(place);
    const slope = table[entry + 1]! - table[entry]!;
    const rate = table[entry]! + slope * (place - entry);
    const left = (stepS * (1 - turnedShare[at]!)) / (1 + 0.5 * stepS * rate);
    return [rate * left, 0.5 * slope * tablePerK * left];
  }

  /** Books what turned, and gives back as warmth what was asked for beyond all or under nothing; J. */
  function turn(at: number, capacityJPerK: number): number {
    const wanted = arrays.turnBase[at]! + arrays.turnPerK[at]! * rise[at]!;
    const turned = Math.min(1 - turnedShare[at]!, Math.max(0, wanted));
    rise[at]! += (dehydrationJ[at]! * (wanted - turned)) / capacityJPerK;
    turnedShare[at]! += turned;
    return dehydrationJ[at]! * turned;
  }

  /** Boils off what the heat over 100 °C can, kg; with water left the voxel ends at 100 °C or under. */
  function boil(at: number, capacityJPerK: number): number {
    const held = heldKg[at]!;
    rise[at] = wantedK(at);
    const overJ = (temperatureC[at]! + rise[at] - boilingC) * capacityJPerK;
    if (overJ <= 0) return 0;
    const kg = Math.min(held, overJ / boilingJPerKg);
    rise[at] -= (kg * boilingJPerKg) / capacityJPerK;
    heldKg[at] = held - kg;
    return kg;
  }

  function take({ stepS, waterJPerKgK, wet }: VoxelStep) {
    const taken = { storedJ: 0, dehydratedJ: 0, boiledKg: 0 };
    for (const at of voxels) {
      const capacityJPerK = capacity(at, waterJPerKgK);
      if (turningPerS !== null) taken.dehydratedJ += turn(at, capacityJPerK);
      if (wet && heldKg[at]! > 0) taken.boiledKg += boil(at, capacityJPerK);
      taken.storedJ += capacityJPerK * rise[at]!;
      arrays.risePerS[at] = rise[at]! / stepS;
      temperatureC[at]! += rise[at]!;
      arrays.peakC[at] = Math.max(arrays.peakC[at]!, temperatureC[at]!);
    }
    return taken;
  }

  return {
    prepare({ stepS, waterJPerKgK }) {
      for (const at of voxels) {
        mass[at] = (capacity(at, waterJPerKgK) / stepS) * (isBoiling(at) ? 1 + boilingCapacity : 1);
        source[at] = 0;
        if (turningPerS === null) continue;
        const [base, perK] = turning(at, turningPerS, stepS);
        arrays.turnBase[at] = base;
        arrays.turnPerK[at] = perK;
        mass[at] += (dehydrationJ[at]! / stepS) * perK;
        source[at] -= (dehydrationJ[at]! / stepS) * base;
      }
    },
    conduct: () => conduct(arrays),
    surpriseK: (stepS) => Math.max(...voxels.map((at) => Math.abs(rise[at]! - arrays.risePerS[at]! * stepS))),
    leapsPast(airC, besidesK) {
      const mostC = Math.max(airC, ...temperatureC) + besidesK;
      return voxels.filter(isBoiling).some((at) => {
        const dryK = (heldKg[at]! * boilingJPerKg) / capacity(at, waterHeatJPerKgK);
        return wantedK(at) < -mostFallK || temperatureC[at]! + wantedK(at) - dryK > mostC;
      });
    },
    take,
  };
}

/** The scheme of Douglas and Gunn: the whole flux once, then along x, y and z each a system of equations per line. */
function conduct({ system, temperatureC }: VoxelArrays): void {
  const { nx, ny, nz, mass, source, rise, conductances } = system;
  const axes = [
    { count: nx, stride: 1, half: conductances.halfX, film: system.filmX },
    { count: ny, stride: nx, half: conductances.halfY, film: system.filmY },
    { count: nz, stride: nx * ny, half: conductances.halfZ, film: system.filmZ },
  ];
  let right = source.slice();
  for (const { count, stride, half } of axes)
    for (let at = 0; at < mass.length; at++) {
      if (Math.floor(at / stride) % count === count - 1) continue;
      const flux = 2 * half[at]! * (temperatureC[at + stride]! - temperatureC[at]!);
      right[at]! += flux;
      right[at + stride]! -= flux;
    }
  for (const { count, stride, half, film } of axes) {
    for (let first = 0; first < mass.length; first++) {
      if (Math.floor(first / stride) % count !== 0) continue;
      const line = Array.from({ length: count }, (_, place) => first + place * stride);
      const rows = line.map((at, row) =>
        line.map((_, column) => {
          const ahead = row < count - 1 ? half[at]! : 0;
          const behind = row > 0 ? half[at - stride]! : 0;
          if (column === row) return mass[at]! + film[at]! + ahead + behind;
          return column === row + 1 ? -ahead : column === row - 1 ? -behind : 0;
        }),
      );
      const risen = solved(
        rows,
        line.map((at) => right[at]!),
      );
      line.forEach((at, place) => (rise[at] = risen[place]!));
    }
    right = mass.map((own, at) => own * rise[at]!);
  }
}

/** Gauss, without looking for pivots: what a voxel holds itself outweighs its neighbors. */
function solved(rows: number[][], right: number[]): number[] {
  for (let pivot = 0; pivot < rows.length; pivot++)
    for (let row = pivot + 1; row < rows.length; row++) {
      const share = rows[row]![pivot]! / rows[pivot]![pivot]!;
      if (share === 0) continue;
      rows[row] = rows[row]!.map((value, column) => value - share * rows[pivot]![column]!);
      right[row]! -= share * right[pivot]!;
    }
  for (let row = rows.length - 1; row >= 0; row--) {
    for (let column = row + 1; column < rows.length; column++)
      right[row]! -= rows[row]![column]! * right[column]!;
    right[row]! /= rows[row]![row]!;
  }
  return right;
}
