/**
 * What goes through every voxel of the mold at every step of the oven, two voxels at a time in float64, by the same
 * operations in the same order as in TypeScript (voxelWork.ts, adiStep.ts), so that both give the same figures.
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
