import type { MeasuredShape } from '../../jobs/protocol';

/** Facets of all kept measurements together; about 90 bytes a facet are held, so this keeps it under 100 MB. */
const mostFacetsKept = 1_100_000;

/** Measurements of this session by the hash of what went in, the ones used last kept. */
export interface MeasureCache {
  get(question: string): MeasuredShape | null;
  put(question: string, measured: MeasuredShape): void;
}

export function createMeasureCache(): MeasureCache {
  const kept = new Map<string, MeasuredShape>();
  return {
    get(question) {
      const found = kept.get(question);
      if (found === undefined) return null;
      // A Map keeps its order of insertion: putting it in again makes it the newest.
      kept.delete(question);
      kept.set(question, found);
      return found;
    },
    put(question, measured) {
      kept.delete(question);
      kept.set(question, measured);
      let facets = [...kept.values()].reduce((sum, one) => sum + one.shape.facetCount, 0);
      for (const [oldest, one] of kept) {
        if (facets <= mostFacetsKept || oldest === question) break;
        kept.delete(oldest);
        facets -= one.shape.facetCount;
      }
    },
  };
}
