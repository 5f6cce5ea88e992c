import { measureBallWalls } from '../core/mesh/ballWall';
import { measureRayWalls } from '../core/mesh/rayWall';
import { measureReach } from '../core/mesh/reach';
import { facetOf, slotsFrom, type SurfaceIndex } from '../core/mesh/surfaceIndex';
import type { Vec3 } from '../core/mesh/types';

/** What was measured on the facets in the slots `from` to `to - 1`, in their order. */
export interface WallSlice {
  readonly from: number;
  readonly to: number;
  /** Null when only the reach was asked for. */
  readonly walls: {
    readonly rayWallMm: Float32Array;
    readonly rayFacet: Int32Array;
    readonly ballWallMm: Float32Array;
  } | null;
  readonly reach: Uint8Array;
}

/**
 * Walls and reach of one part, a slice of slots at a time. Two benches on the same part have the same slots and answer
 * alike. Its arrays are indexed by facet.
 */
export class WallsBench {
  readonly index: SurfaceIndex;
  readonly rayWallMm: Float32Array;
  readonly rayFacet: Int32Array;
  readonly ballWallMm: Float32Array;
  reach: Uint8Array;

  constructor(index: SurfaceIndex) {
    const { facetCount } = index;
    this.index = index;
    this.rayWallMm = new Float32Array(facetCount);
    this.rayFacet = new Int32Array(facetCount);
    this.ballWallMm = new Float32Array(facetCount);
    this.reach = new Uint8Array(facetCount);
  }

  measure(from: number, to: number, pull: Vec3, withWalls: boolean): void {
    const slots = slotsFrom(from, to);
    if (withWalls) {
      measureRayWalls(this.index, slots, this.rayWallMm, this.rayFacet);
      measureBallWalls(this.index, slots, this.rayWallMm, this.ballWallMm);
    }
    measureReach(this.index, pull, slots, this.reach);
  }

  /** A copy, for sending. */
  slice(from: number, to: number, withWalls: boolean): WallSlice {
    const facets = this.index.facetOfSlot.subarray(from, to);
    const picked = <Values extends Float32Array | Int32Array | Uint8Array>(
      all: Values,
      into: Values,
    ): Values => {
      for (let at = 0; at < facets.length; at++) into[at] = all[facets[at]!]!;
      return into;
    };
    const count = facets.length;
    return {
      from,
      to,
      walls: withWalls
        ? {
            rayWallMm: picked(this.rayWallMm, new Float32Array(count)),
            rayFacet: picked(this.rayFacet, new Int32Array(count)),
            ballWallMm: picked(this.ballWallMm, new Float32Array(count)),
          }
        : null,
      reach: picked(this.reach, new Uint8Array(count)),
    };
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
      this.reach[facet] = reach[slot - from]!;
    }
  }
}
