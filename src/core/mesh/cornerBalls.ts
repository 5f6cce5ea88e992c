/**
 * How large a ball fits into inside corners, for edges between facets so narrow that their own turn tells nothing: a mesh from a grid, or
 * one that lost triangles, has slivers in its fillets that read as sharp.
 *
 * An empty ball of radius r that touches the surface at p: its center c starts at r over p, is pushed off its closest surface point to r,
 * pulled back to |c - p| = r, and so on; it fits when the surface comes no nearer to it than r less a small gap. p is the middle of the edge,
 * which lies up to a chord's height deeper than the facets beside it, so the gap is a little more than that height; a fillet in a square
 * corner then reads up to 0.09 mm too large (0.784 for 0.7, 0.585 for 0.5). A sharp square corner stays sharp.
 */
import type { Vector3 } from '../numeric/matrix3';
import { cross, dot, minus, plus, times } from '../numeric/vectors';
import { CloseFacets } from './closeFacets';
import { closestOnTriangle } from './closestOnTriangle';
import { cornersOf } from './triangleDistance';
import type { IndexedMesh } from './types';

/** A concave edge with the radius that its two facets tell. */
export interface ConcaveEdge {
  readonly halfEdge: number;
  readonly otherHalfEdge: number;
  readonly radiusMm: number;
  readonly edgeMm: number;
  /** From the edge to where the narrower facet would touch the circle. */
  readonly touchMm: number;
}

/** Where facets are wider their own turn tells the radius. */
const narrowMm = 0.6;
/** Radii that are tried, each a twentieth larger than the one before. Under the first a corner is as its edge says. */
const triedMm: readonly number[] = Array.from({ length: 56 }, (_, at) => 0.2 * 1.05 ** at);
const largestMm = triedMm.at(-1)!;
const gapMm = 0.03;
const mostRounds = 25;
/** A ball that a round brings no nearer to fitting than this does not fit. */
const leastGainMm = 5e-5;
/** Edges this near to each other are one corner. */
const cornerMm = 1;
/** More corners than this are taken together with their neighbors, so that the time stays bounded. */
const mostCorners = 250;

/** The same edges, those of narrow facets with the radius of the ball that fits where it is the larger one. */
export function withBalls(mesh: IndexedMesh, edges: readonly ConcaveEdge[]): readonly ConcaveEdge[] {
  const isNarrow = ({ touchMm, radiusMm }: ConcaveEdge) => touchMm < narrowMm && radiusMm < largestMm;
  const narrow = edges.filter(isNarrow);
  if (narrow.length === 0) return edges;
  const corners = cornersOfEdges(mesh, narrow);
  const surface = surfaceNear(mesh, narrow);
  const fitting = new Map<ConcaveEdge, number>();
  for (const corner of corners) {
    const tightest = corner.reduce((least, one) =>
      one.radiusMm < least.radiusMm || (one.radiusMm === least.radiusMm && one.edgeMm > least.edgeMm)
        ? one
        : least,
    );
    const radius = ballAt(mesh, surface, tightest);
    for (const edge of corner) fitting.set(edge, Math.max(radius, edge.radiusMm));
  }
  return edges.map((edge) => ({ ...edge, radiusMm: fitting.get(edge) ?? edge.radiusMm }));
}

const vertexAt = ({ positions }: IndexedMesh, vertex: number): Vector3 => [
  positions[3 * vertex]!,
  positions[3 * vertex + 1]!,
  positions[3 * vertex + 2]!,
];

function middleOf(mesh: IndexedMesh, halfEdge: number): Vector3 {
  const next = halfEdge % 3 === 2 ? halfEdge - 2 : halfEdge + 1;
  const [a, b] = [vertexAt(mesh, mesh.facets[halfEdge]!), vertexAt(mesh, mesh.facets[next]!)];
  return times(plus(a, b), 0.5);
}

/** Edges by the cell that their middle lies in. */
function cornersOfEdges(
  mesh: IndexedMesh,
  edges: readonly ConcaveEdge[],
): readonly (readonly ConcaveEdge[])[] {
  for (let cellMm = cornerMm; ; cellMm *= 1.5) {
    const cells = new Map<string, ConcaveEdge[]>();
    for (const edge of edges) {
      const cell = middleOf(mesh, edge.halfEdge)
        .map((one) => Math.floor(one / cellMm))
        .join();
      const known = cells.get(cell);
      if (known === undefined) cells.set(cell, [edge]);
      else known.push(edge);
    }
    if (cells.size <= mostCorners) return [...cells.values()];
  }
}

/** Facets that a ball at one of the edges may meet. */
function surfaceNear(mesh: IndexedMesh, edges: readonly ConcaveEdge[]): Surface {
  const cellMm = 2 * largestMm;
  const near = new Set<string>();
  for (const { halfEdge } of edges) {
    const [i, j, k] = middleOf(mesh, halfEdge).map((one) => Math.floor(one / cellMm)) as [
      number,
      number,
      number,
    ];
    for (let di = -1; di <= 1; di++)
      for (let dj = -1; dj <= 1; dj++)
        for (let dk = -1; dk <= 1; dk++) near.add(`${i + di},${j + dj},${k + dk}`);
  }
  const corners = cornersOf(mesh.positions, mesh.facets);
  const kept: number[] = [];
  for (let from = 0; from < corners.length; from += 9)
    if (touchesCells(corners, from, cellMm, near))
      for (let at = 0; at < 9; at++) kept.push(corners[from + at]!);
  const own = Float64Array.from(kept);
  return { corners: own, close: new CloseFacets(own, 1) };
}

interface Surface {
  /** 9 numbers per triangle. */
  readonly corners: Float64Array;
  readonly close: CloseFacets;
}

/** Whether the box around a triangle meets one of the cells. */
function touchesCells(
  corners: Float64Array,
  from: number,
  cellMm: number,
  cells: ReadonlySet<string>,
): boolean {
  const range = [0, 1, 2].map((axis) => {
    const [a, b, c] = [corners[from + axis]!, corners[from + 3 + axis]!, corners[from + 6 + axis]!];
    return [Math.floor(Math.min(a, b, c) / cellMm), Math.floor(Math.max(a, b, c) / cellMm)] as const;
  });
  const [x, y, z] = range as [
    readonly [number, number],
    readonly [number, number],
    readonly [number, number],
  ];
  for (let i = x[0]; i <= x[1]; i++)
    for (let j = y[0]; j <= y[1]; j++)
      for (let k = z[0]; k <= z[1]; k++) if (cells.has(`${i},${j},${k}`)) return true;
  return false;
}

/** Largest of the tried radii that fits at the middle of an edge; 0 where none does. */
function ballAt(mesh: IndexedMesh, surface: Surface, { halfEdge, otherHalfEdge }: ConcaveEdge): number {
  const at = middleOf(mesh, halfEdge);
  const both = plus(areaNormal(mesh, halfEdge), areaNormal(mesh, otherHalfEdge));
  const length = Math.sqrt(dot(both, both));
  if (!(length > 0)) return 0;
  const normal = times(both, 1 / length);
  let [fits, fails] = [-1, triedMm.length];
  while (fails - fits > 1) {
    const next = (fits + fails) >> 1;
    if (ballFits(surface, at, normal, triedMm[next]!)) fits = next;
    else fails = next;
  }
  return fits < 0 ? 0 : triedMm[fits]!;
}

/** Outward, as long as twice the facet's area. */
function areaNormal(mesh: IndexedMesh, halfEdge: number): Vector3 {
  const first = halfEdge - (halfEdge % 3);
  const [a, b, c] = [0, 1, 2].map((corner) => vertexAt(mesh, mesh.facets[first + corner]!)) as [
    Vector3,
    Vector3,
    Vector3,
  ];
  return cross(minus(b, a), minus(c, a));
}

function ballFits({ corners, close }: Surface, at: Vector3, normal: Vector3, radiusMm: number): boolean {
  let center = plus(at, times(normal, radiusMm));
  let before = 0;
  for (let round = 0; round < mostRounds; round++) {
    const away = close.distanceMm(center[0], center[1], center[2], radiusMm);
    if (away >= radiusMm - gapMm) return true;
    if (!(away > 0) || (round > 7 && away < before + leastGainMm)) return false;
    before = Math.max(before, away);
    const corner = (one: number): Vector3 => {
      const from = 9 * close.nearest + 3 * one;
      return [corners[from]!, corners[from + 1]!, corners[from + 2]!];
    };
    const near = closestOnTriangle(center, corner(0), corner(1), corner(2));
    const pushed = plus(near, times(minus(center, near), radiusMm / away));
    const back = minus(pushed, at);
    center = plus(at, times(back, radiusMm / Math.sqrt(dot(back, back))));
  }
  return false;
}
