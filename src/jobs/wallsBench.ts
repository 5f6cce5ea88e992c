import { measureBallWalls } from '../core/mesh/ballWall';
import { measureRayWalls } from '../core/mesh/rayWall';
import { measureReach } from '../core/mesh/reach';
import { buildSurfaceIndex, type SurfaceIndex } from '../core/mesh/surfaceIndex';
import type { IndexedMesh, Vec3 } from '../core/mesh/types';

/** What was measured on the facets `from` to `to - 1`. */
export interface FacetSlice {
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

/** Walls and reach of one part, a slice of facets at a time; two benches on the same part answer alike. */
export class WallsBench {
  readonly index: SurfaceIndex;
  readonly rayWallMm: Float32Array;
  readonly rayFacet: Int32Array;
  readonly ballWallMm: Float32Array;
  reach: Uint8Array;

  constructor(mesh: IndexedMesh) {
    const facetCount = mesh.facets.length / 3;
    this.index = buildSurfaceIndex(mesh);
    this.rayWallMm = new Float32Array(facetCount);
    this.rayFacet = new Int32Array(facetCount);
    this.ballWallMm = new Float32Array(facetCount);
    this.reach = new Uint8Array(facetCount);
  }

  measure(from: number, to: number, pull: Vec3, withWalls: boolean): void {
    if (withWalls) {
      measureRayWalls(this.index, from, to, this.rayWallMm, this.rayFacet);
      measureBallWalls(this.index, from, to, this.rayWallMm, this.ballWallMm);
    }
    measureReach(this.index, pull, from, to, this.reach);
  }

  /** A copy, for sending. */
  slice(from: number, to: number, withWalls: boolean): FacetSlice {
    return {
      from,
      to,
      walls: withWalls
        ? {
            rayWallMm: this.rayWallMm.slice(from, to),
            rayFacet: this.rayFacet.slice(from, to),
            ballWallMm: this.ballWallMm.slice(from, to),
          }
        : null,
      reach: this.reach.slice(from, to),
    };
  }

  /** Takes in what another bench has measured on the same part. */
  accept({ from, walls, reach }: FacetSlice): void {
    if (walls !== null) {
      this.rayWallMm.set(walls.rayWallMm, from);
      this.rayFacet.set(walls.rayFacet, from);
      this.ballWallMm.set(walls.ballWallMm, from);
    }
    this.reach.set(reach, from);
  }
}
