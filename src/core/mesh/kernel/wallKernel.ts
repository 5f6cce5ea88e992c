import { kernelMemory, kernelModule } from '../../numeric/kernelModule';
import type { Vec3 } from '../types';
import { wallKernelBase64 } from './wallKernelBytes';

/** Where the surface of a kernel lies; see `SurfaceIndex`. */
export interface KernelPlace {
  readonly boxMinMm: Vec3;
  readonly boxMaxMm: Vec3;
  readonly diagonalMm: number;
}

/**
 * Walls and reach of one surface, for lists of up to `mostSlots` slots. Answers stand in the order of the list, in
 * views that last until the next call.
 */
export interface WallKernel {
  readonly mostSlots: number;
  /** The kernel's own copies, to be used in place of those it was made from. */
  readonly points: Float64Array;
  readonly corners: Uint32Array;
  /** Float32 mm (NaN for none) and the slot met (-1 for none). */
  rayWalls(slots: Uint32Array, nearestMm: number): { wallMm: Float32Array; metSlot: Int32Array };
  /** `rayMm` in the order of the list. */
  ballWalls(slots: Uint32Array, tangentMm: number, rayMm: Float32Array): Float32Array;
  /** `reachBit` flags along a unit pull. */
  reach(slots: Uint32Array, pull: Vec3, liftMm: number, uprightSine: number): Uint8Array;
  /** First slot along a ray of unit direction; null for none. */
  castRay(origin: Vec3, direction: Vec3): { slot: number; distanceMm: number } | null;
}

/** Points and corners in curve order. */
export interface KernelSurface {
  readonly points: Float64Array;
  readonly corners: Uint32Array;
}

/** What assembly/index.ts offers; addresses in bytes. */
interface KernelExports {
  place(
    points: number,
    corners: number,
    boxes: number,
    children: number,
    cones: number,
    leaves: number,
    slotCount: number,
  ): void;
  setSize(x: number, y: number, z: number, diagonalMm: number, largestCoordinateMm: number): void;
  prepare(scratch: number): number;
  castRay(x: number, y: number, z: number, dx: number, dy: number, dz: number): number;
  castDistanceMm(): number;
  rayWalls(count: number, slots: number, nearestMm: number, wallMm: number, metSlot: number): void;
  ballWalls(count: number, slots: number, tangentMm: number, rayMm: number, wallMm: number): void;
  reach(
    count: number,
    slots: number,
    x: number,
    y: number,
    z: number,
    liftMm: number,
    uprightSine: number,
    flags: number,
  ): void;
}

/** The kernel's own stacks and bins lie below. */
const ownBytes = 8192;
const leafSlots = 4;
const bytesPerLeaf = 208;
/** Boxes, children and cones. */
const bytesPerNode = { boxes: 96, children: 16, cones: 64 };
const scratchBytesPerLeaf = 64;
const mostSlots = 32_768;

const wallModule = kernelModule(wallKernelBase64);

/**
 * Loads a surface into a kernel of its own: its points and corners in curve order.
 * @throws as `kernelModule` and `kernelMemory`
 */
export function createWallKernel(
  { boxMinMm, boxMaxMm, diagonalMm }: KernelPlace,
  surface: KernelSurface,
): WallKernel {
  const pointNumbers = surface.points.length;
  const cornerNumbers = surface.corners.length;
  const slotCount = cornerNumbers / 3;
  // Every node but the last holds two leaves or nodes at least, so there are no more nodes than leaves. Room that is
  // never written to takes no memory.
  const leafCount = Math.ceil(slotCount / leafSlots);
  let end = ownBytes;
  const room = (bytes: number): number => {
    const at = end;
    end += Math.ceil(bytes / 16) * 16;
    return at;
  };
  const at = {
    points: room(8 * pointNumbers),
    corners: room(4 * cornerNumbers),
    leaves: room(bytesPerLeaf * leafCount),
    boxes: room(bytesPerNode.boxes * leafCount),
    children: room(bytesPerNode.children * leafCount),
    cones: room(bytesPerNode.cones * leafCount),
    slots: room(4 * mostSlots),
    rayMm: room(4 * mostSlots),
    metSlot: room(4 * mostSlots),
    ballMm: room(4 * mostSlots),
    flags: room(mostSlots),
    scratch: room(scratchBytesPerLeaf * leafCount),
  };
  const memory = kernelMemory(end);
  const { exports } = new WebAssembly.Instance(wallModule(), { env: { memory } });
  const kernel = exports as unknown as KernelExports;
  const { buffer } = memory;
  const points = new Float64Array(buffer, at.points, pointNumbers);
  const corners = new Uint32Array(buffer, at.corners, cornerNumbers);
  const middle = boxMinMm.map((low, axis) => (low + boxMaxMm[axis]!) / 2) as unknown as Vec3;
  const largestMm = Math.max(...boxMinMm.map(Math.abs), ...boxMaxMm.map(Math.abs));
  kernel.place(at.points, at.corners, at.boxes, at.children, at.cones, at.leaves, slotCount);
  kernel.setSize(middle[0], middle[1], middle[2], diagonalMm, largestMm);
  points.set(surface.points);
  corners.set(surface.corners);
  if (slotCount > 0) kernel.prepare(at.scratch);

  const slotList = new Uint32Array(buffer, at.slots, mostSlots);
  const rayList = new Float32Array(buffer, at.rayMm, mostSlots);
  const wallMm = rayList;
  const metSlot = new Int32Array(buffer, at.metSlot, mostSlots);
  const ballMm = new Float32Array(buffer, at.ballMm, mostSlots);
  const flags = new Uint8Array(buffer, at.flags, mostSlots);
  return {
    mostSlots,
    points,
    corners,
    rayWalls(slots, nearestMm) {
      slotList.set(slots);
      kernel.rayWalls(slots.length, at.slots, nearestMm, at.rayMm, at.metSlot);
      return { wallMm, metSlot };
    },
    ballWalls(slots, tangentMm, rayMm) {
      slotList.set(slots);
      rayList.set(rayMm);
      kernel.ballWalls(slots.length, at.slots, tangentMm, at.rayMm, at.ballMm);
      return ballMm;
    },
    reach(slots, [x, y, z], liftMm, uprightSine) {
      slotList.set(slots);
      kernel.reach(slots.length, at.slots, x, y, z, liftMm, uprightSine, at.flags);
      return flags;
    },
    castRay([x, y, z], [dx, dy, dz]) {
      const slot = kernel.castRay(x, y, z, dx, dy, dz);
      return slot < 0 ? null : { slot, distanceMm: kernel.castDistanceMm() };
    },
  };
}
