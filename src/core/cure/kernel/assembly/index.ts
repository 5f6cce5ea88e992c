/**
 * What goes through every voxel of the mold at every step of the oven, two voxels at a time in float64. What each piece of
 * the work is for stands in `VoxelWork`.
 */
export { placeFloat32, placeFloat64, setSize } from './mold';
export { conduct } from './conduct';
export {
  leapsPast,
  prepare,
  setLaw,
  surpriseK,
  take,
  takenBoiledKg,
  takenDehydratedJ,
  takenStoredJ,
} from './voxels';
