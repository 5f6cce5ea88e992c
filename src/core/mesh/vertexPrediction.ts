/**
 * Guesses each vertex from the facets before it, so that only small differences need saving: a new vertex is expected
 * to complete a parallelogram with the facet across its edge.
 *
 * Source: C. Touma and C. Gotsman, "Triangle Mesh Compression", Graphics Interface (1998), the
 * parallelogram rule.
 */

/**
 * Differences of `steps` from their guesses, folded to whole numbers of 0 or more, axis after axis.
 *
 * @param facets vertices numbered by first use
 * @param steps 3 whole numbers per vertex, below 2^24
 */
export function differencesFromGuesses(facets: Uint32Array, steps: Int32Array): Uint32Array {
  const vertexCount = steps.length / 3;
  const differences = new Uint32Array(steps.length);
  visitNewVertices(facets, steps, (vertex, x, y, z) => {
    differences[vertex] = fold((steps[3 * vertex] as number) - x);
    differences[vertexCount + vertex] = fold((steps[3 * vertex + 1] as number) - y);
    differences[2 * vertexCount + vertex] = fold((steps[3 * vertex + 2] as number) - z);
  });
  return differences;
}

/** Inverse of `differencesFromGuesses`. Vertices that no facet uses stay at zero. */
export function stepsFromDifferences(facets: Uint32Array, differences: Uint32Array): Int32Array {
  const vertexCount = differences.length / 3;
  const steps = new Int32Array(differences.length);
  visitNewVertices(facets, steps, (vertex, x, y, z) => {
    steps[3 * vertex] = x + unfold(differences[vertex] as number);
    steps[3 * vertex + 1] = y + unfold(differences[vertexCount + vertex] as number);
    steps[3 * vertex + 2] = z + unfold(differences[2 * vertexCount + vertex] as number);
  });
  return steps;
}

/** Small numbers of either sign become small numbers of 0 or more. */
function fold(difference: number): number {
  return ((difference << 1) ^ (difference >> 31)) >>> 0;
}

function unfold(folded: number): number {
  return (folded >>> 1) ^ -(folded & 1);
}

/**
 * Calls `visit` for each vertex in counting order with its guess. Only steps of vertices visited before are read, so a
 * reader can fill them in as it goes.
 */
function visitNewVertices(
  facets: Uint32Array,
  steps: Int32Array,
  visit: (vertex: number, x: number, y: number, z: number) => void,
): void {
  const vertexCount = steps.length / 3;
  /** Start of the latest facet at each vertex. */
  const latest = new Int32Array(vertexCount).fill(-1);
  let next = 0;
  for (let f = 0; f < facets.length; f += 3) {
    const a = facets[f] as number;
    const b = facets[f + 1] as number;
    const c = facets[f + 2] as number;
    // At most three new vertices per facet, lowest first.
    while (next < vertexCount && (a === next || b === next || c === next)) {
      const [p, q] = a === next ? [b, c] : b === next ? [c, a] : [a, b];
      if (next === 0) {
        visit(0, 0, 0, 0);
      } else if (p < next && q < next) {
        guessFromEdge(p, q, next);
      } else {
        const known = 3 * (p < next ? p : q < next ? q : next - 1);
        visit(next, steps[known] as number, steps[known + 1] as number, steps[known + 2] as number);
      }
      next++;
    }
    latest[a] = f;
    latest[b] = f;
    latest[c] = f;
  }

  function guessFromEdge(p: number, q: number, vertex: number): void {
    const across =
      cornerAcross(facets, latest[p] as number, p, q) ?? cornerAcross(facets, latest[q] as number, p, q);
    const i = 3 * p;
    const j = 3 * q;
    // Without a facet across the edge, the edge's own end is the guess.
    const k = 3 * (across ?? q);
    visit(
      vertex,
      (steps[i] as number) + (steps[j] as number) - (steps[k] as number),
      (steps[i + 1] as number) + (steps[j + 1] as number) - (steps[k + 1] as number),
      (steps[i + 2] as number) + (steps[j + 2] as number) - (steps[k + 2] as number),
    );
  }
}

/** Third corner of the facet at `f` when the facet holds both p and q. */
function cornerAcross(facets: Uint32Array, f: number, p: number, q: number): number | null {
  if (f < 0) return null;
  const a = facets[f] as number;
  const b = facets[f + 1] as number;
  const c = facets[f + 2] as number;
  if ((a === p && b === q) || (a === q && b === p)) return c;
  if ((b === p && c === q) || (b === q && c === p)) return a;
  if ((c === p && a === q) || (c === q && a === p)) return b;
  return null;
}
