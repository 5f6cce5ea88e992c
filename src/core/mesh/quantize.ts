/**
 * The grid that a saved mesh lies on: one step for all three axes, so that shapes aren't skewed.
 *
 * Steps are decimal fractions of the file's unit, halved up to three times (0.001, 0.0005, ... 0.0001). Drawn
 * dimensions are mostly decimal, so flat faces land exactly where they were drawn; a step that cuts across them
 * would shift a whole face one way, which a thin wall's volume shows at once.
 */
import { Problem } from '../problem';
import { figuresAgree, shapeFigures } from './shapeFigures';
import type { IndexedMesh, Vec3 } from './types';

/** Vertices lie at `(origin + whole number) / stepsPerUnit` on each axis, in file units. */
export interface Grid {
  readonly stepsPerUnit: number;
  /** Lowest corner of the box, counted in steps from the file's own zero; whole numbers. */
  readonly origin: Vec3;
}

export interface QuantizedMesh {
  readonly grid: Grid;
  /** 3 whole numbers per vertex, 0 or more, in steps from the grid's origin. */
  readonly steps: Int32Array;
  /** Bits that the longest side takes. */
  readonly bits: number;
  /** Largest distance between a vertex and its grid point, file units. */
  readonly errorFileUnits: number;
}

/** Largest displacement against the longest side of the box: 1 micrometer on 100 mm. */
export const displacementLimit = 1e-5;
/** Finer than this a 32-bit float, the number type of most files, holds nothing more. */
const mostBits = 24;

/**
 * Puts the vertices on the coarsest grid that keeps every displacement under `displacementLimit` and the shape's
 * figures within the limits of shapeFigures.ts; on the finest allowed grid where none does.
 *
 * @throws Problem `mesh.empty`, `mesh.notFinite` or `mesh.noSize`
 */
export function quantize(mesh: IndexedMesh): QuantizedMesh {
  const box = boxOf(mesh);
  const wanted = shapeFigures(mesh.positions, mesh.facets, 1);
  let quantized: QuantizedMesh | null = null;
  for (const stepsPerUnit of candidateGrids(box.longest)) {
    quantized = putOnGrid(mesh.positions, stepsPerUnit, box);
    const { errorFileUnits, steps } = quantized;
    if (errorFileUnits >= displacementLimit * box.longest) continue;
    const reached = shapeFigures(steps, mesh.facets, stepsPerUnit);
    if (figuresAgree(wanted, reached, box.longest)) return quantized;
  }
  if (quantized === null) throw new Error('no grid was tried');
  return quantized;
}

/** Position in file units of a grid count. The one place where it is worked out, so that it is bit for bit the same. */
export function gridPosition(grid: Grid, axis: number, steps: number): number {
  return ((grid.origin[axis] as number) + steps) / grid.stepsPerUnit;
}

interface Box {
  readonly min: Vec3;
  readonly longest: number;
}

function boxOf({ positions, facets }: IndexedMesh): Box {
  if (facets.length === 0) {
    throw new Problem('mesh.empty', 'The model holds no triangles, so there is nothing to save.');
  }
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i++) {
    const value = positions[i] as number;
    const axis = (i % 3) as 0 | 1 | 2;
    if (!Number.isFinite(value)) {
      throw new Problem('mesh.notFinite', 'The model holds a corner that is not a number. Export it again.');
    }
    if (value < min[axis]) min[axis] = value;
    if (value > max[axis]) max[axis] = value;
  }
  const longest = Math.max(max[0] - min[0], max[1] - min[1], max[2] - min[2]);
  if (!(longest > 0)) {
    throw new Problem('mesh.noSize', 'All corners of the model lie in one point. Export it again.');
  }
  return { min, longest };
}

/** Steps per file unit, coarse to fine, from the first that can keep the displacement limit to the last within `mostBits`. */
function candidateGrids(longest: number): number[] {
  const fewest = 0.5 / (displacementLimit * longest);
  const most = 2 ** mostBits / longest;
  const grids: number[] = [];
  for (let decade = Math.floor(Math.log10(fewest)) - 1; Number(`1e${decade}`) <= most; decade++) {
    for (const halvings of [1, 2, 4, 8]) {
      const stepsPerUnit = Number(`1e${decade}`) * halvings;
      if (stepsPerUnit >= fewest && stepsPerUnit <= most) grids.push(stepsPerUnit);
    }
  }
  return grids;
}

function putOnGrid(positions: Float64Array, stepsPerUnit: number, box: Box): QuantizedMesh {
  const origin = box.min.map((value) => Math.round(value * stepsPerUnit)) as unknown as Vec3;
  const grid: Grid = { stepsPerUnit, origin };
  const steps = new Int32Array(positions.length);
  let worstSquared = 0;
  for (let i = 0; i < positions.length; i += 3) {
    let squared = 0;
    for (let axis = 0; axis < 3; axis++) {
      const value = positions[i + axis] as number;
      const count = Math.round(value * stepsPerUnit) - (origin[axis] as number);
      const error = gridPosition(grid, axis, count) - value;
      steps[i + axis] = count;
      squared += error * error;
    }
    if (squared > worstSquared) worstSquared = squared;
  }
  const bits = Math.ceil(Math.log2(box.longest * stepsPerUnit + 1));
  return { grid, steps, bits, errorFileUnits: Math.sqrt(worstSquared) };
}
