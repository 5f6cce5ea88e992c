import type { Adjacency } from './adjacency';

/** Facets sorted into sheets that can be wound as one. */
export interface Sheets {
  readonly sheetCount: number;
  /** 0-based sheet of each facet. */
  readonly sheetOfFacet: Uint32Array;
  /** 1 for facets wound against the majority of their sheet. */
  readonly minority: Uint8Array;
}

/**
 * Follows the winding from facet to facet over two-facet edges. Crowded edges end a sheet, since what is inside there
 * cannot be told from the edge. On a surface with one side only (a twisted band) the first winding met stays.
 */
export function followWinding(adjacency: Adjacency): Sheets {
  const { neighbor, sameWay } = adjacency;
  const facetCount = neighbor.length / 3;
  const unseen = 0xffffffff;
  const sheetOfFacet = new Uint32Array(facetCount).fill(unseen);
  const against = new Uint8Array(facetCount);
  const stack = new Int32Array(facetCount);
  let sheetCount = 0;

  for (let seed = 0; seed < facetCount; seed++) {
    if (sheetOfFacet[seed] !== unseen) continue;
    const sheet = sheetCount++;
    sheetOfFacet[seed] = sheet;
    let seen = 0;
    let height = 0;
    stack[height++] = seed;
    while (seen < height) {
      // The stack is read from its bottom and never shrinks, so afterwards it still lists the sheet.
      const facet = stack[seen++]!;
      for (let h = 3 * facet; h < 3 * facet + 3; h++) {
        const other = neighbor[h]!;
        if (other < 0 || sheetOfFacet[other] !== unseen) continue;
        sheetOfFacet[other] = sheet;
        against[other] = against[facet]! ^ sameWay[h]!;
        stack[height++] = other;
      }
    }
    let againstSeed = 0;
    for (let i = 0; i < height; i++) againstSeed += against[stack[i]!]!;
    if (2 * againstSeed > height) for (let i = 0; i < height; i++) against[stack[i]!]! ^= 1;
  }
  return { sheetCount, sheetOfFacet, minority: against };
}
