/** Facets that still use three different vertices once each vertex is replaced; others are counted. */
export function keepThreeCornered(facets: Uint32Array): { facets: Uint32Array; dropped: number } {
  let kept = 0;
  for (let at = 0; at < facets.length; at += 3) {
    const a = facets[at]!;
    const b = facets[at + 1]!;
    const c = facets[at + 2]!;
    if (a === b || b === c || c === a) continue;
    facets[kept] = a;
    facets[kept + 1] = b;
    facets[kept + 2] = c;
    kept += 3;
  }
  return { facets: facets.slice(0, kept), dropped: (facets.length - kept) / 3 };
}
