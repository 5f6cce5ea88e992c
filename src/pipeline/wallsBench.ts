import { measureBallWalls } from '../core/mesh/ballWall';
import { measureRayWalls } from '../core/mesh/rayWall';
import { measureReach } from '../core/mesh/reach';
import { facetOf, slotsFrom, type SurfaceIndex } from '../core/mesh/surfaceIndex';
import type { Vec3 } from '../core/mesh/types';

/** What is measured on a facet: its walls, or whether the halves reach it along a pull. */
export type SlotTask = { readonly measure: 'walls' } | { readonly measure: 'reach'; readonly pull: Vec3 };

/** What was measured on the facets in the slots `from` to `to - 1`, in their order. */
export interface WallSlice {
  readonly from: number;
  readonly to: number;
  /** Null when the reach was asked for. */
  readonly walls: {
    readonly rayWallMm: Float32Array;
    readonly rayFacet: Int32Array;
    readonly ballWallMm: Float32Array;
  } | null;
  /** Null when the walls were asked for. */
  readonly reach: Uint8Array | null;
}

/**
 * Walls and reach of one part, a slice of slots at a time. A _slot_ is a facet's place along the index's curve through space.
 * Two benches on the same part have the same slots and answer alike. Its arrays are indexed by facet.
 */
export class WallsBench {
  readonly index: SurfaceIndex;
  readonly rayWallMm: Float32Array;
  readonly rayFacet: Int32Array;
  readonly ballWallMm: Float32Array;
  /** Written anew for each pull. */
  readonly reach: Uint8Array;

  constructor(index: SurfaceIndex) {
    const { facetCount } = index;
    this.index = index;
    this.rayWallMm = new Float32Array(facetCount);
    this.rayFacet = new Int32Array(facetCount);
    this.ballWallMm = new Float32Array(facetCount);
    this.reach = new Uint8Array(facetCount);
  }

  measure(from: number, to: number, task: SlotTask): void {
    const slots = slotsFrom(from, to);
    if (task.measure === 'reach') {
      measureReach(this.index, task.pull, slots, this.reach);
      return;
    }
    measureRayWalls(this.index, slots, this.rayWallMm, this.rayFacet);
    measureBallWalls(this.index, slots, this.rayWallMm, this.ballWallMm);
  }

  /** A copy, for sending. */
  slice(from: number, to: number, { measure }: SlotTask): WallSlice {
    const facets = this.index.facetOfSlot.subarray(from, to);
    const picked = <Values extends Float32Array | Int32Array | Uint8Array>(
      all: Values,
      into: Values,
    ): Values => {
      for (let at = 0; at < facets.length; at++) into[at] = all[facets[at]!]!;
      return into;
    };
    const count = facets.length;
    if (measure === 'reach')
      return { from, to, walls: null, reach: picked(this.reach, new Uint8Array(count)) };
    const walls = {
      rayWallMm: picked(this.rayWallMm, new Float32Array(count)),
      rayFacet: picked(this.rayFacet, new Int32Array(count)),
      ballWallMm: picked(this.ballWallMm, new Float32Array(count)),
    };
    return { from, to, walls, reach: null };
  }

  /** Takes in what another bench has measured on the same part. */
  accept({ from, to, walls, reach }: WallSlice): void {
    for (let slot = from; slot < to; slot++) {
      const facet = facetOf(this.index, slot);
      if (walls !== null) {
        this.rayWallMm[facet] = walls.rayWallMm[slot - from]!;
        this.rayFacet[facet] = walls.rayFacet[slot - from]!;
        this.ballWallMm[facet] = walls.ballWallMm[slot - from]!;
      }
      if (reach !== null) this.reach[facet] = reach[slot - from]!;
    }
  }
}
