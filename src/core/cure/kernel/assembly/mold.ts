/** Where the mold lies in memory: the arrays of `VoxelArrays` and its `AdiSystem`, one number per voxel, x running fastest. */
export let temperature: usize = 0;
export let heldKg: usize = 0;
export let dryCapacity: usize = 0;
export let dehydration: usize = 0;
export let turnedShare: usize = 0;
export let turnBase: usize = 0;
export let turnPerK: usize = 0;
export let mass: usize = 0;
export let source: usize = 0;
export let rise: usize = 0;
export let scratch: usize = 0;
/** From here on float32. */
export let risePerS: usize = 0;
export let peak: usize = 0;
export let halfX: usize = 0;
export let halfY: usize = 0;
export let halfZ: usize = 0;
export let filmX: usize = 0;
export let filmY: usize = 0;
export let filmZ: usize = 0;
export let nx: usize = 0;
export let ny: usize = 0;
export let nz: usize = 0;
export let voxelCount: usize = 0;

export function setSize(x: i32, y: i32, z: i32): void {
  nx = x;
  ny = y;
  nz = z;
  voxelCount = nx * ny * nz;
}

export function placeFloat64(
  temperature_: usize,
  heldKg_: usize,
  dryCapacity_: usize,
  dehydration_: usize,
  turnedShare_: usize,
  turnBase_: usize,
  turnPerK_: usize,
  mass_: usize,
  source_: usize,
  rise_: usize,
  scratch_: usize,
): void {
  temperature = temperature_;
  heldKg = heldKg_;
  dryCapacity = dryCapacity_;
  dehydration = dehydration_;
  turnedShare = turnedShare_;
  turnBase = turnBase_;
  turnPerK = turnPerK_;
  mass = mass_;
  source = source_;
  rise = rise_;
  scratch = scratch_;
}

export function placeFloat32(
  risePerS_: usize,
  peak_: usize,
  halfX_: usize,
  halfY_: usize,
  halfZ_: usize,
  filmX_: usize,
  filmY_: usize,
  filmZ_: usize,
): void {
  risePerS = risePerS_;
  peak = peak_;
  halfX = halfX_;
  halfY = halfY_;
  halfZ = halfZ_;
  filmX = filmX_;
  filmY = filmY_;
  filmZ = filmZ_;
}
