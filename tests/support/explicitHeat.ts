/**
 * The plainest scheme for a uniform block in an air film: each voxel's rise from its neighbors' present temperatures, in
 * steps as long as stability allows. What the implicit solver is compared with.
 */
import type { UniformBlock } from './exactHeat';

export interface ExplicitResult {
  readonly temperatureC: Float64Array;
  readonly steps: number;
}

/** @param counts voxels along each axis */
export function explicitHeat(
  block: UniformBlock,
  counts: readonly [number, number, number],
  startC: number,
  ovenC: number,
  untilS: number,
): ExplicitResult {
  const [nx, ny, nz] = counts;
  const size = block.sizeM.map((metres, axis) => metres / counts[axis]!);
  const perVolume = 1 / (block.density * block.heat);
  // Rise per second and kelvin of difference, to a neighbor and through an open face.
  const inner = size.map((d) => (block.k * perVolume) / (d * d));
  const outer = size.map((d) => perVolume / (d * (1 / block.film + d / 2 / block.k)));
  const [ix, iy, iz] = inner as [number, number, number];
  const [ox, oy, oz] = outer as [number, number, number];
  const limitS = 0.98 / (2 * (ix + iy + iz));
  const steps = Math.ceil(untilS / limitS);
  const stepS = untilS / steps;
  let now = new Float64Array(nx * ny * nz).fill(startC);
  let next = new Float64Array(nx * ny * nz);
  const layer = nx * ny;
  for (let step = 0; step < steps; step++) {
    for (let k = 0, at = 0; k < nz; k++)
      for (let j = 0; j < ny; j++)
        for (let i = 0; i < nx; i++, at++) {
          const here = now[at]!;
          const gain =
            (i > 0 ? ix * (now[at - 1]! - here) : ox * (ovenC - here)) +
            (i < nx - 1 ? ix * (now[at + 1]! - here) : ox * (ovenC - here)) +
            (j > 0 ? iy * (now[at - nx]! - here) : oy * (ovenC - here)) +
            (j < ny - 1 ? iy * (now[at + nx]! - here) : oy * (ovenC - here)) +
            (k > 0 ? iz * (now[at - layer]! - here) : oz * (ovenC - here)) +
            (k < nz - 1 ? iz * (now[at + layer]! - here) : oz * (ovenC - here));
          next[at] = here + stepS * gain;
        }
    [now, next] = [next, now];
  }
  return { temperatureC: now, steps };
}
