/**
 * How a surface cuts a cube of the grid, for each of the 256 ways its corners can lie inside or outside. The table is worked out
 * and not typed in: on each face the corners inside are cut off one run after the other, by the same rule from both sides, so
 * that no crack can open between two cubes.
 */

/** Corner c lies at x = bit 0, y = bit 1, z = bit 2 of c. Each edge joins two corners; the first has the lower number. */
export const cubeEdges: readonly (readonly [number, number])[] = [0, 1, 2].flatMap((axis) =>
  [0, 1, 2, 3, 4, 5, 6, 7]
    .filter((corner) => (corner & (1 << axis)) === 0)
    .map((corner) => [corner, corner | (1 << axis)] as const),
);

/** Corners of each face, counter-clockwise seen from outside of the cube. */
const cubeFaces: readonly (readonly number[])[] = [
  [0, 4, 6, 2],
  [1, 3, 7, 5],
  [0, 1, 5, 4],
  [2, 6, 7, 3],
  [0, 2, 3, 1],
  [4, 5, 7, 6],
];

const edgeOf = (a: number, b: number): number =>
  cubeEdges.findIndex(([low, high]) => low === Math.min(a, b) && high === Math.max(a, b));

const facesOfEdge: readonly (readonly number[])[] = cubeEdges.map(([a, b]) =>
  cubeFaces.flatMap((face, at) => (face.includes(a) && face.includes(b) ? [at] : [])),
);
const shareFace = (a: number, b: number): boolean =>
  facesOfEdge[a]!.some((face) => facesOfEdge[b]!.includes(face));

/** Closed lines of edges that the surface crosses, counter-clockwise seen from outside of the body. */
function loopsOf(inside: number): readonly (readonly number[])[] {
  const isIn = (corner: number) => (inside & (1 << corner)) !== 0;
  const next = new Map<number, number>();
  for (const face of cubeFaces) {
    for (let at = 0; at < 4; at++) {
      if (isIn(face[at]!) || !isIn(face[(at + 1) % 4]!)) continue;
      let end = at + 1;
      while (isIn(face[(end + 1) % 4]!)) end++;
      next.set(edgeOf(face[at]!, face[(at + 1) % 4]!), edgeOf(face[end % 4]!, face[(end + 1) % 4]!));
    }
  }
  const loops: number[][] = [];
  while (next.size > 0) {
    const loop: number[] = [];
    let [edge] = next.keys();
    while (edge !== undefined && next.has(edge)) {
      loop.push(edge);
      const following = next.get(edge);
      next.delete(edge);
      edge = following;
    }
    loops.push(loop);
  }
  return loops;
}

/**
 * Triangles of a loop without a diagonal that lies in a face of the cube: the neighbor could have the same, and four triangles
 * would meet in it. null where there is no such way.
 */
function trianglesOf(loop: readonly number[]): readonly number[] | null {
  if (loop.length === 3) return loop;
  for (let tip = 0; tip < loop.length; tip++) {
    const [before, here, after] = [
      loop[(tip + loop.length - 1) % loop.length]!,
      loop[tip]!,
      loop[(tip + 1) % loop.length]!,
    ];
    if (shareFace(before, after)) continue;
    const rest = trianglesOf(loop.filter((_, at) => at !== tip));
    if (rest !== null) return [before, here, after, ...rest];
  }
  return null;
}

/** Three edge numbers per triangle, counter-clockwise seen from outside of the body, for each set of corners inside. */
export const cubeTriangles: readonly (readonly number[])[] = Array.from({ length: 256 }, (_, inside) =>
  loopsOf(inside).flatMap((loop) => {
    const triangles = trianglesOf(loop);
    if (triangles === null) throw new Error(`a cube cut as ${inside} has no triangles`);
    return triangles;
  }),
);
