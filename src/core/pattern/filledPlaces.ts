/** Where the made shell has material and the import has none outside: covered holes, filled undercuts and side openings. */
import { nodePlace, type PatternGrid } from './grid';

/** Smaller places are roundings of corners. */
const leastPlaceMm3 = 1;
/** A node this near to a surface, in steps, belongs to it: no way leads through between two such nodes. */
const surfaceSteps = 0.55;
/** Material nearer to the import than this, in steps, was not added there. */
const noticedSteps = 1;

export interface FilledPlace {
  readonly volumeMm3: number;
  /** Middle of it, mm in the frame of the pattern. */
  readonly centerMm: readonly [number, number, number];
}

/** Nodes above the rim that can be come to from beside the part without crossing its surface or a membrane; 1 marks them. */
export function nodesOutside(grid: PatternGrid, distanceMm: Float32Array): Uint8Array {
  const { countX, countY, countZ, stepMm, rimLayer } = grid;
  const plane = countX * countY;
  const outside = new Uint8Array(distanceMm.length);
  const least = surfaceSteps * stepMm;
  const first = rimLayer * plane;
  const open = new Int32Array((countZ - rimLayer) * plane);
  let count = 0;
  const reach = (node: number): void => {
    if (node < first || node >= outside.length || outside[node] === 1 || distanceMm[node]! <= least) return;
    outside[node] = 1;
    open[count++] = node;
  };
  reach(first);
  for (let at = 0; at < count; at++) {
    const node = open[at]!;
    const i = node % countX;
    if (i > 0) reach(node - 1);
    if (i < countX - 1) reach(node + 1);
    const row = ((node - i) / countX) % countY;
    if (row > 0) reach(node - countX);
    if (row < countY - 1) reach(node + countX);
    reach(node - plane);
    reach(node + plane);
  }
  return outside;
}

/**
 * Connected places of the shell that stand outside of the import, largest first.
 * @param coreMm distance from the core
 * @param covered 1 for columns under a membrane
 */
export function filledPlaces(
  grid: PatternGrid,
  outside: Uint8Array,
  distanceMm: Float32Array,
  coreMm: Float32Array,
  covered: Uint8Array,
  fromMm: number,
  toMm: number,
): readonly FilledPlace[] {
  const { countX, countY, stepMm, layerMm, rimLayer } = grid;
  const plane = countX * countY;
  const filled = new Uint8Array(outside.length);
  for (let node = rimLayer * plane; node < filled.length; node++) {
    const core = coreMm[node]!;
    if (core < fromMm || core > toMm) continue;
    const isAdded = outside[node] === 1 && distanceMm[node]! > noticedSteps * stepMm;
    if (isAdded || covered[node % plane] === 1) filled[node] = 1;
  }
  const places: FilledPlace[] = [];
  const nodeMm3 = stepMm * stepMm * layerMm;
  for (let start = rimLayer * plane; start < filled.length; start++) {
    if (filled[start] !== 1) continue;
    const nodes = [start];
    filled[start] = 2;
    const center: [number, number, number] = [0, 0, 0];
    for (let at = 0; at < nodes.length; at++) {
      const node = nodes[at]!;
      nodePlace(grid, node).forEach((value, axis) => (center[axis]! += value));
      for (const next of [node - 1, node + 1, node - countX, node + countX, node - plane, node + plane]) {
        if (filled[next] !== 1) continue;
        filled[next] = 2;
        nodes.push(next);
      }
    }
    const volumeMm3 = nodes.length * nodeMm3;
    if (volumeMm3 < leastPlaceMm3) continue;
    places.push({
      volumeMm3,
      centerMm: [center[0] / nodes.length, center[1] / nodes.length, center[2] / nodes.length],
    });
  }
  return places.sort((a, b) => b.volumeMm3 - a.volumeMm3);
}
