/** Where the arrays of one number per voxel are laid: side by side in the memory of the heat kernel. */
export interface HeatRoom {
  /** `count` zeros. */
  readonly float64: (count: number) => Float64Array;
  readonly float32: (count: number) => Float32Array;
}
