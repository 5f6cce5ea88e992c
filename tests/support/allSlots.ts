import { slotsFrom, type SurfaceIndex } from '../../src/core/mesh/surfaceIndex';

/** All slots, in curve order. */
export const allSlots = (index: SurfaceIndex): Uint32Array => slotsFrom(0, index.facetCount);
