import type { IndexedMesh } from '../core/mesh/types';
import type { DisplayChunk } from './told';

/** Facets per chunk: the page hands one chunk per frame to the graphics card, about 2 MB with its colors. */
const chunkFacets = 40_000;

/** The part's facets as loose corners in chunks, for drawing. Float32: good to 1e-7 of the distance from the origin. */
export function displayChunks({ positions, facets }: IndexedMesh): DisplayChunk[] {
  const facetCount = facets.length / 3;
  const chunks: DisplayChunk[] = [];
  for (let firstFacet = 0; firstFacet < facetCount; firstFacet += chunkFacets) {
    const endFacet = Math.min(facetCount, firstFacet + chunkFacets);
    const corners = new Float32Array(9 * (endFacet - firstFacet));
    for (let from = 3 * firstFacet, to = 0; from < 3 * endFacet; from++, to += 3) {
      const vertex = 3 * facets[from]!;
      corners[to] = positions[vertex]!;
      corners[to + 1] = positions[vertex + 1]!;
      corners[to + 2] = positions[vertex + 2]!;
    }
    chunks.push({ firstFacet, corners });
  }
  return chunks;
}
