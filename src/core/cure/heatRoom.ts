/** Where the arrays of one number per voxel are laid: each on its own, or side by side in the memory of the heat kernel. */
export interface HeatRoom {
  /** `count` zeros. */
  readonly float64: (count: number) => Float64Array;
  readonly float32: (count: number) => Float32Array;
}

export const plainRoom: HeatRoom = {
  float64: (count) => new Float64Array(count),
  float32: (count) => new Float32Array(count),
};
