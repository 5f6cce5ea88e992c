import { describe, expect, it } from 'vitest';
import { measureBallWalls } from '../../src/core/mesh/ballWall';
import { measureRayWalls } from '../../src/core/mesh/rayWall';
import { buildSurfaceIndex, surfaceFromData, type SurfaceIndex } from '../../src/core/mesh/surfaceIndex';
import { handOver, type PartTaker } from '../../src/jobs/handOver';
import { allSlots } from '../support/allSlots';
import { shellOfTriangles } from '../support/meshes';

const kernelIndex = buildSurfaceIndex(shellOfTriangles(8000));

const later = () => new Promise((resolve) => setTimeout(resolve, 0));

/** A taker on the own thread, that takes in the order of sending and answers a turn of the event loop later. */
function takerHere(failsFrom = Infinity) {
  const arrays = new Set<ArrayBuffer>();
  const seen = { index: null as SurfaceIndex | null, taken: 0, underWay: 0, mostUnderWay: 0, arrays };
  const taker: PartTaker = {
    load: async (_part, data) => {
      if (failsFrom === 0) throw new Error('no room');
      seen.index = surfaceFromData(structuredClone(data));
      await later();
    },
    take: async (_part, piece, bytes) => {
      if (seen.taken >= failsFrom - 1) throw new Error('the taker is gone');
      seen.index?.kernel.take(piece, bytes);
      seen.taken++;
      arrays.add(bytes.buffer);
      seen.mostUnderWay = Math.max(seen.mostUnderWay, ++seen.underWay);
      await later();
      seen.underWay--;
      return bytes;
    },
  };
  return { taker, seen };
}

function walls(index: SurfaceIndex) {
  const rayWallMm = new Float32Array(index.facetCount);
  const rayFacet = new Int32Array(index.facetCount);
  const ballWallMm = new Float32Array(index.facetCount);
  measureRayWalls(index, allSlots(index), rayWallMm, rayFacet);
  measureBallWalls(index, allSlots(index), rayWallMm, ballWallMm);
  return { rayWallMm, rayFacet, ballWallMm };
}

describe('handing a part over', () => {
  const pieces = kernelIndex.kernel.pieces.length;

  it.each([1, 2, 3, pieces, pieces + 5])('gives all of it with %i arrays to carry it', async (carriers) => {
    const { taker, seen } = takerHere();
    await handOver(taker, 1, kernelIndex, carriers);
    expect(seen.taken).toBe(pieces);
    expect(seen.arrays.size).toBe(Math.min(carriers, pieces));
    expect(seen.mostUnderWay).toBeLessThanOrEqual(carriers);
    expect(walls(seen.index!)).toEqual(walls(kernelIndex));
  });

  it('rejects when the taker fails while there is more to give', async () => {
    for (const failsFrom of [0, 2, 3]) {
      await expect(handOver(takerHere(failsFrom).taker, 1, kernelIndex, 1)).rejects.toThrow();
    }
  });
});
