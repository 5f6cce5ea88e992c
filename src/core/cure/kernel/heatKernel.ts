/** The work of a step in vectors: the arrays of one run laid side by side in the memory of a WebAssembly module. */
import { kernelMemory, kernelModule } from '../../numeric/kernelModule';
import { tablePerK } from '../dehydrationTable';
import type { HeatRoom } from '../heatRoom';
import { waterHeatJPerKgK } from '../moldMaterials';
import {
  boilingCapacity,
  boilingJPerKg,
  boilsFromC,
  mostFallK,
  type VoxelArrays,
  type VoxelWork,
} from '../voxelWork';
import { boilingC } from '../waterVapor';
import { heatKernelBase64 } from './heatKernelBytes';

/** Room and work for one run. Both last until the next `heatKernel` on the same thread, which takes the memory over. */
export interface HeatKernel {
  readonly room: HeatRoom;
  /** @param arrays laid in `room` */
  readonly workOn: (arrays: VoxelArrays, turningPerS: Float64Array | null) => VoxelWork;
}

/** What assembly/index.ts offers; places in bytes. */
interface HeatExports {
  setSize(nx: number, ny: number, nz: number): void;
  placeFloat64(...places: readonly number[]): void;
  placeFloat32(...places: readonly number[]): void;
  setLaw(
    boilsFromC: number,
    boilingC: number,
    boilingCapacity: number,
    boilingJPerKg: number,
    mostFallK: number,
    table: number,
    tablePerK: number,
    lastEntry: number,
  ): void;
  prepare(stepS: number, waterJPerKgK: number): void;
  conduct(): void;
  surpriseK(stepS: number): number;
  leapsPast(airC: number, besidesK: number, waterJPerKgK: number): number;
  take(stepS: number, waterJPerKgK: number, wet: number): void;
  takenStoredJ(): number;
  takenDehydratedJ(): number;
  takenBoiledKg(): number;
}

/** The kernel's own constants lie below. */
const ownBytes = 8192;
/** Zeros before and after each array: a pair may reach one voxel over its end. */
const guardBytes = 16;
/** At most, of a `HeatState`. */
const bytesPerVoxel = 8 * 12 + 4 * 12;
/** For the table of turning and the guards. */
const otherBytes = 32_768;
/** A memory over this size is given back before a run that needs far less. */
const keptBytes = 64e6;

const heatModule = kernelModule(heatKernelBase64);
/** One memory per thread, taken over by run after run: each one reserves far more address space than it uses. */
let ground: { readonly memory: WebAssembly.Memory; readonly kernel: HeatExports } | null = null;

/** @throws as `kernelModule` and `kernelMemory` */
export function heatKernel(voxelCount: number): HeatKernel {
  const bytes = ownBytes + otherBytes + bytesPerVoxel * voxelCount;
  const have = ground?.memory.buffer.byteLength ?? 0;
  if (bytes > have || have > Math.max(keptBytes, 8 * bytes)) ground = null;
  ground ??= newGround(bytes);
  const { kernel } = ground;
  const { buffer } = ground.memory;
  let end = ownBytes;
  const place = (arrayBytes: number): number => {
    const at = end + guardBytes;
    end = at + Math.ceil(arrayBytes / guardBytes) * guardBytes + guardBytes;
    new Uint8Array(buffer, at - guardBytes, end - at + guardBytes).fill(0);
    return at;
  };
  const room: HeatRoom = {
    float64: (count) => new Float64Array(buffer, place(8 * count), count),
    float32: (count) => new Float32Array(buffer, place(4 * count), count),
  };
  return { room, workOn: (arrays, turningPerS) => workOn(kernel, room, arrays, turningPerS) };
}

function newGround(bytes: number): NonNullable<typeof ground> {
  const memory = kernelMemory(bytes);
  const { exports } = new WebAssembly.Instance(heatModule(), { env: { memory } });
  return { memory, kernel: exports as unknown as HeatExports };
}

const placesOf = (arrays: readonly { readonly byteOffset: number }[]): number[] =>
  arrays.map(({ byteOffset }) => byteOffset);

function workOn(
  kernel: HeatExports,
  room: HeatRoom,
  arrays: VoxelArrays,
  turningPerS: Float64Array | null,
): VoxelWork {
  const { system } = arrays;
  const { halfX, halfY, halfZ } = system.conductances;
  let table = 0;
  if (turningPerS !== null) {
    const own = room.float64(turningPerS.length);
    own.set(turningPerS);
    table = own.byteOffset;
  }
  const lastEntry = (turningPerS?.length ?? 2) - 2;
  kernel.setSize(system.nx, system.ny, system.nz);
  kernel.setLaw(boilsFromC, boilingC, boilingCapacity, boilingJPerKg, mostFallK, table, tablePerK, lastEntry);
  const { temperatureC, heldKg, dryCapacityJPerK, dehydrationJ, turnedShare, turnBase, turnPerK } = arrays;
  const { mass, source, rise, scratch, filmX, filmY, filmZ } = system;
  const gypsum = [dehydrationJ, turnedShare, turnBase, turnPerK];
  kernel.placeFloat64(
    ...placesOf([temperatureC, heldKg, dryCapacityJPerK, ...gypsum, mass, source, rise, scratch]),
  );
  const faces = [halfX, halfY, halfZ, filmX, filmY, filmZ];
  kernel.placeFloat32(...placesOf([arrays.risePerS, arrays.peakC, ...faces]));
  return {
    prepare: ({ stepS, waterJPerKgK }) => kernel.prepare(stepS, waterJPerKgK),
    conduct: () => kernel.conduct(),
    surpriseK: (stepS) => kernel.surpriseK(stepS),
    leapsPast: (airC, besidesK) => kernel.leapsPast(airC, besidesK, waterHeatJPerKgK) !== 0,
    take({ stepS, waterJPerKgK, wet }) {
      kernel.take(stepS, waterJPerKgK, wet ? 1 : 0);
      return {
        storedJ: kernel.takenStoredJ(),
        dehydratedJ: kernel.takenDehydratedJ(),
        boiledKg: kernel.takenBoiledKg(),
      };
    },
  };
}
