import type { IndexedMesh, Vec3 } from '../mesh/types';
import { intoFrame, patternFrame } from './frame';

/**
 * A pattern as it is printed: standing on its rim, its pull up, square to the bed, its lowest place on it, and larger by the
 * print scale.
 * @throws Problem `pull.zero`
 */
export function onPrintBed({ positions, facets }: IndexedMesh, pull: Vec3, printScale: number): IndexedMesh {
  const standing = intoFrame(patternFrame(positions, pull), positions);
  const low = [Infinity, Infinity, Infinity];
  for (let at = 0; at < standing.length; at++) low[at % 3] = Math.min(low[at % 3]!, standing[at]!);
  return { positions: standing.map((one, at) => printScale * (one - low[at % 3]!)), facets };
}
