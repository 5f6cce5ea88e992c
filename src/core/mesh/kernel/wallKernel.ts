import { kernelModule } from '../../numeric/kernelModule';
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
  /** A copy of all that was made ready, for a kernel on another thread. */
  image(): KernelImage;
}

/** What a kernel has made ready of a surface, as plain arrays. */
export interface KernelImage {
  readonly points: Float64Array<ArrayBuffer>;
  readonly corners: Uint32Array<ArrayBuffer>;
  readonly leaves: Uint8Array<ArrayBuffer>;
  readonly boxes: Uint8Array<ArrayBuffer>;
  readonly children: Uint8Array<ArrayBuffer>;
  readonly cones: Uint8Array<ArrayBuffer>;
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

const pageBytes = 65_536;
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
 * Loads a surface into a kernel of its own: its points and corners in curve order, or the image that a kernel on another
 * thread has made of it. A kernel gives the same figures as the TypeScript beside it, several times as fast; null where
 * the platform can't run it (no 128-bit vectors, no memory).
 */
export function createWallKernel(
  { boxMinMm, boxMaxMm, diagonalMm }: KernelPlace,
  surface: Pick<KernelImage, 'points' | 'corners'> | KernelImage,
): WallKernel | null {
  const slotCount = surface.corners.length / 3;
  const module = wallModule();
  if (module === null || slotCount === 0) return null;
  const leafCount = Math.ceil(slotCount / leafSlots);
  const image = 'leaves' in surface ? surface : null;
  // Every node but the last holds two leaves or nodes at least, so there are no more nodes than leaves.
  const mostNodes = image === null ? leafCount : image.children.length / bytesPerNode.children;
  let end = ownBytes;
  const room = (bytes: number): number => {
    const at = end;
    end += Math.ceil(bytes / 16) * 16;
    return at;
  };
  const at = {
    points: room(surface.points.byteLength),
    corners: room(surface.corners.byteLength),
    leaves: room(bytesPerLeaf * leafCount),
    boxes: room(bytesPerNode.boxes * mostNodes),
    children: room(bytesPerNode.children * mostNodes),
    cones: room(bytesPerNode.cones * mostNodes),
    slots: room(4 * mostSlots),
    rayMm: room(4 * mostSlots),
    metSlot: room(4 * mostSlots),
    ballMm: room(4 * mostSlots),
    flags: room(mostSlots),
    scratch: room(image === null ? scratchBytesPerLeaf * leafCount : 0),
  };
  let memory: WebAssembly.Memory;
  try {
    memory = new WebAssembly.Memory({ initial: Math.ceil(end / pageBytes) });
  } catch {
    return null;
  }
  const kernel = new WebAssembly.Instance(module, { env: { memory } }).exports as unknown as KernelExports;
  const { buffer } = memory;
  const points = new Float64Array(buffer, at.points, surface.points.length);
  const corners = new Uint32Array(buffer, at.corners, surface.corners.length);
  points.set(surface.points);
  corners.set(surface.corners);
  const middle = boxMinMm.map((low, axis) => (low + boxMaxMm[axis]!) / 2) as unknown as Vec3;
  const largestMm = Math.max(...boxMinMm.map(Math.abs), ...boxMaxMm.map(Math.abs));
  kernel.place(at.points, at.corners, at.boxes, at.children, at.cones, at.leaves, slotCount);
  kernel.setSize(middle[0], middle[1], middle[2], diagonalMm, largestMm);
  let nodeCount = mostNodes;
  if (image === null) nodeCount = kernel.prepare(at.scratch);
  else {
    for (const part of ['leaves', 'boxes', 'children', 'cones'] as const)
      new Uint8Array(buffer, at[part], image[part].length).set(image[part]);
  }

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
    image() {
      return {
        points: points.slice(),
        corners: corners.slice(),
        leaves: copied(buffer, at.leaves, bytesPerLeaf * leafCount),
        boxes: copied(buffer, at.boxes, bytesPerNode.boxes * nodeCount),
        children: copied(buffer, at.children, bytesPerNode.children * nodeCount),
        cones: copied(buffer, at.cones, bytesPerNode.cones * nodeCount),
      };
    },
  };
}

function copied(buffer: ArrayBuffer, from: number, bytes: number): Uint8Array<ArrayBuffer> {
  return new Uint8Array(buffer.slice(from, from + bytes));
}
