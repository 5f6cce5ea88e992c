import { bytesPerPiece } from '../../src/core/mesh/kernel/wallKernel';
import { surfaceData, surfaceFromData, type SurfaceIndex } from '../../src/core/mesh/surfaceIndex';

/** The index as another thread gets it: everything is copied. */
export function indexElsewhere(index: SurfaceIndex): SurfaceIndex {
  const there = surfaceFromData(structuredClone(surfaceData(index)));
  const carrier = new Uint8Array(bytesPerPiece);
  for (const piece of index.kernel.pieces) {
    index.kernel.give(piece, carrier);
    there.kernel.take(piece, carrier);
  }
  return there;
}
