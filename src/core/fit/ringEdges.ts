/** Borders of a set of facets that lie in one plane, as edges in that plane. */
import { dot, minus } from '../numeric/vectors';
import type { IndexedMesh, Vec3 } from '../mesh/types';
import { cornerAt } from './planePatches';

export type Point2 = readonly [number, number];

/** A plane with two axes in it; `first` x `second` is `normal`. */
export interface RimFrame {
  readonly originMm: Vec3;
  readonly first: Vec3;
  readonly second: Vec3;
  /** Out of the material, towards the other half. */
  readonly normal: Vec3;
}

/** One border edge; the material lies on its left, seen against the normal. */
export interface Edge {
  readonly from: Point2;
  readonly to: Point2;
  readonly lengthMm: number;
  /** Vertex numbers of its ends. */
  readonly fromVertex: number;
  readonly toVertex: number;
  /** The facet on the other side; negative for none. */
  readonly beyond: number;
}

const inPlane = ({ originMm, first, second }: RimFrame, point: readonly [number, number, number]): Point2 => {
  const from = minus(point, originMm);
  return [dot(from, first), dot(from, second)];
};

export function edgesOf(
  mesh: IndexedMesh,
  frame: RimFrame,
  facets: readonly number[],
  neighbor: Int32Array,
): readonly Edge[] {
  const own = new Set(facets);
  const edges: Edge[] = [];
  for (const facet of facets)
    for (let k = 0; k < 3; k++) {
      const beyond = neighbor[3 * facet + k]!;
      if (beyond >= 0 && own.has(beyond)) continue;
      const next = 3 * facet + ((k + 1) % 3);
      const [from, to] = [
        inPlane(frame, cornerAt(mesh, 3 * facet + k)),
        inPlane(frame, cornerAt(mesh, next)),
      ];
      const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
      edges.push({
        from,
        to,
        lengthMm,
        fromVertex: mesh.facets[3 * facet + k]!,
        toVertex: mesh.facets[next]!,
        beyond,
      });
    }
  return edges;
}

/** Edges one after the other; where several go on from a vertex, the first that is left. */
export function loopsOf(edges: readonly Edge[]): readonly (readonly Edge[])[] {
  const from = new Map<number, Edge[]>();
  for (const edge of edges) from.set(edge.fromVertex, [...(from.get(edge.fromVertex) ?? []), edge]);
  const used = new Set<Edge>();
  const loops: Edge[][] = [];
  for (const start of edges) {
    if (used.has(start)) continue;
    const loop: Edge[] = [];
    let edge: Edge | undefined = start;
    while (edge !== undefined) {
      used.add(edge);
      loop.push(edge);
      edge = from.get(edge.toVertex)?.find((one) => !used.has(one));
    }
    loops.push(loop);
  }
  return loops;
}

/** Area inside of a loop: positive where the material lies inside, negative round a hole. */
export const areaOf = (loop: readonly Edge[]): number =>
  loop.reduce((sum, { from, to }) => sum + (from[0] * to[1] - to[0] * from[1]) / 2, 0);

/**
 * The edges whose way out of the material meets no other edge, round the middle: the outer outline of a ring in pieces. A plan with
 * deep bays loses the edges that look into them.
 */
export function outwardEdges(edges: readonly Edge[]): readonly Edge[] {
  const noticed = edges.filter(({ lengthMm }) => lengthMm > 1e-6);
  const outer = noticed.filter((edge) => !noticed.some((other) => other !== edge && meets(edge, other)));
  const count = Math.max(1, outer.length);
  const cx = outer.reduce((sum, { from }) => sum + from[0], 0) / count;
  const cy = outer.reduce((sum, { from }) => sum + from[1], 0) / count;
  const turn = ({ from, to }: Edge) => Math.atan2((from[1] + to[1]) / 2 - cy, (from[0] + to[0]) / 2 - cx);
  return outer.toSorted((a, b) => turn(a) - turn(b));
}

/** Whether the way out of the middle of `edge` crosses `other`. */
function meets({ from, to, lengthMm }: Edge, other: Edge): boolean {
  const [mx, my] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const [dx, dy] = [(to[1] - from[1]) / lengthMm, -(to[0] - from[0]) / lengthMm];
  const [ex, ey] = [other.to[0] - other.from[0], other.to[1] - other.from[1]];
  const across = dx * ey - dy * ex;
  if (Math.abs(across) < 1e-12) return false;
  const [wx, wy] = [other.from[0] - mx, other.from[1] - my];
  const along = (wx * ey - wy * ex) / across;
  const share = (wx * dy - wy * dx) / across;
  return along > 1e-6 && share >= 0 && share <= 1;
}
