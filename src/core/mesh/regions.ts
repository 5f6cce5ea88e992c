/** Connected regions of facets. */
export interface Regions {
  /** Region of each facet, -1 for facets that belong to none. */
  readonly label: Int32Array;
  readonly count: number;
}

/**
 * Labels the connected regions of facets that carry the same code: two facets belong together when they share an
 * edge, carry the same code other than 0, and fold by no more than `mostTurnRad` there.
 * @param code 0 for facets to leave out
 * @param neighbor facet across each half-edge, negative for none
 * @param turnRad signed turn across each half-edge; left out when folds don't matter
 */
export function labelRegions(
  code: Uint8Array,
  neighbor: Int32Array,
  turnRad?: Float32Array,
  mostTurnRad = Math.PI,
): Regions {
  const label = new Int32Array(code.length).fill(-1);
  const waiting = new Int32Array(code.length);
  let count = 0;
  for (let seed = 0; seed < code.length; seed++) {
    const own = code[seed]!;
    if (own === 0 || label[seed] !== -1) continue;
    label[seed] = count;
    waiting[0] = seed;
    for (let left = 1; left > 0;) {
      const facet = waiting[--left]!;
      for (let halfEdge = 3 * facet; halfEdge < 3 * facet + 3; halfEdge++) {
        const other = neighbor[halfEdge]!;
        if (other < 0 || code[other] !== own || label[other] !== -1) continue;
        if (turnRad && Math.abs(turnRad[halfEdge]!) > mostTurnRad) continue;
        label[other] = count;
        waiting[left++] = other;
      }
    }
    count++;
  }
  return { label, count };
}
