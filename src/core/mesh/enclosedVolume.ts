import { buildAdjacency, openEdge, runsUp, type Adjacency } from './adjacency';
import { findDuplicateFacets } from './duplicates';
import { facetBox, integrate, type MeshIntegrals } from './integrals';
import { joinNearVertices } from './nearVertices';
import type { IndexedMesh } from './types';

/** How much a surface encloses, closed or nearly. In the units of the mesh, cubed. */
export interface EnclosedVolume {
  /** Signed; with its holes closed flat. */
  readonly volume: number;
  /** What the holes could hold more or less, domed out or in; 0 for a surface without holes. */
  readonly openBy: number;
}

/** Corners along holes that lie within this share of the box diagonal are one: a slit holds nothing. */
const slitShare = 1e-4;
/** When the holes could hold more than this share of the volume, it is not known. */
const mostOpenShare = 0.5;

/** Integrals of a part, and what it encloses (null when its holes leave that open). */
export interface WholePart extends MeshIntegrals {
  readonly enclosed: EnclosedVolume | null;
}

/** @param closed every edge has exactly two facets with opposite directions, so nothing needs looking for */
export function wholePart(mesh: IndexedMesh, closed: boolean): WholePart {
  const whole = integrate(mesh);
  return { ...whole, enclosed: closed ? { volume: whole.volume, openBy: 0 } : enclosedVolume(mesh) };
}

/**
 * Volume by the divergence theorem, which needs no more than that facets run along every edge as often one way as the
 * other: an edge that four facets share is no hole. A facet that stands there twice counts once. Where edges do not balance,
 * their loops are the outlines of holes: each is closed by a fan about its middle, and could hold
 * 4 A² / (3 U) more or less, A the area of the fan and U the outline: a half ball over a round hole, next to nothing over
 * a slit. null when the holes could hold more than half of the volume.
 */
export function enclosedVolume(mesh: IndexedMesh): EnclosedVolume | null {
  const { mesh: single, adjacency } = withoutDoubles(mesh);
  const outlines = unbalancedEdges(single, adjacency);
  if (outlines.length === 0) return { volume: integrate(single).volume, openBy: 0 };
  const stands = joinAlongHoles(single, outlines);
  const joined = { positions: single.positions, facets: single.facets.map((vertex) => stands[vertex]!) };
  let { volume } = integrate(joined);
  let openBy = 0;
  for (const loop of loopsOf(outlines.map((vertex) => stands[vertex]!))) {
    const cap = fanOver(joined, loop);
    volume += cap.volume;
    openBy += cap.couldHold;
  }
  return openBy <= mostOpenShare * Math.abs(volume) ? { volume, openBy } : null;
}

/** The mesh without facets that repeat an earlier one, wound the same way. */
function withoutDoubles(mesh: IndexedMesh): { mesh: IndexedMesh; adjacency: Adjacency } {
  const adjacency = buildAdjacency(mesh);
  const doubles = findDuplicateFacets(mesh, adjacency);
  if (doubles.length === 0) return { mesh, adjacency };
  /** The three vertices from the lowest on, in the order of the winding. */
  const windingOf = (facet: number) => {
    const [a, b, c] = mesh.facets.subarray(3 * facet, 3 * facet + 3) as unknown as [number, number, number];
    if (a < b && a < c) return `${a} ${b} ${c}`;
    return b < c ? `${b} ${c} ${a}` : `${c} ${a} ${b}`;
  };
  const touched = new Set(Array.from(doubles, windingOf));
  const seen = new Set<string>();
  const facets: number[] = [];
  for (let facet = 0; 3 * facet < mesh.facets.length; facet++) {
    const winding = windingOf(facet);
    if (touched.has(winding)) {
      if (seen.has(winding)) continue;
      seen.add(winding);
    }
    facets.push(...mesh.facets.subarray(3 * facet, 3 * facet + 3));
  }
  const single = { positions: mesh.positions, facets: Uint32Array.from(facets) };
  return { mesh: single, adjacency: buildAdjacency(single) };
}

/** Edges that facets run along more often one way than the other, as from, to, from, to ...; each as often as the surplus. */
function unbalancedEdges(mesh: IndexedMesh, adjacency: Adjacency): number[] {
  const { neighbor, sameWay, crowdedHalfEdges, crowdedStarts } = adjacency;
  const { facets } = mesh;
  const found: number[] = [];
  const put = (halfEdge: number) =>
    found.push(facets[halfEdge]!, facets[halfEdge % 3 === 2 ? halfEdge - 2 : halfEdge + 1]!);
  for (let halfEdge = 0; halfEdge < facets.length; halfEdge++) {
    if (neighbor[halfEdge] === openEdge || sameWay[halfEdge] === 1) put(halfEdge);
  }
  for (let group = 0; group + 1 < crowdedStarts.length; group++) {
    const members = crowdedHalfEdges.subarray(crowdedStarts[group], crowdedStarts[group + 1]);
    const up = members.filter((halfEdge) => runsUp(mesh, halfEdge));
    const down = members.filter((halfEdge) => !runsUp(mesh, halfEdge));
    const [more, fewer] = up.length > down.length ? [up, down] : [down, up];
    more.subarray(fewer.length).forEach(put);
  }
  return found;
}

/** The vertex that stands for each vertex when the two rims of a slit are joined. */
function joinAlongHoles(mesh: IndexedMesh, outlines: readonly number[]): Uint32Array {
  const { min, max } = facetBox(mesh);
  const slit = slitShare * Math.hypot(max[0] - min[0], max[1] - min[1], max[2] - min[2]);
  const along = [...new Set(outlines)];
  const positions = Float64Array.from(along.flatMap((vertex) => [...corner(mesh, vertex)]));
  const near = joinNearVertices({ positions, facets: new Uint32Array(0) }, slit);
  const stands = Uint32Array.from({ length: mesh.positions.length / 3 }, (_, vertex) => vertex);
  along.forEach((vertex, at) => (stands[vertex] = along[near[at]!]!));
  return stands;
}

/** Sorts directed edges into loops that visit no vertex twice; edges that run back over others cancel. */
function loopsOf(edges: readonly number[]): number[][] {
  const next = new Map<number, number[]>();
  for (let at = 0; at < edges.length; at += 2) {
    const [from, to] = [edges[at]!, edges[at + 1]!];
    if (from === to) continue;
    const back = next.get(to);
    const twin = back?.indexOf(from) ?? -1;
    if (twin >= 0) back!.splice(twin, 1);
    else next.set(from, [...(next.get(from) ?? []), to]);
  }
  const loops: number[][] = [];
  for (const start of next.keys()) {
    const path: number[] = [];
    const placeOf = new Map<number, number>();
    for (let at: number | undefined = start; at !== undefined; at = next.get(at)?.pop()) {
      const place = placeOf.get(at);
      if (place !== undefined) {
        const loop = path.splice(place);
        for (const vertex of loop) placeOf.delete(vertex);
        loops.push(loop);
      }
      placeOf.set(at, path.length);
      path.push(at);
    }
  }
  return loops;
}

/** A fan about the middle of a loop, facing as the surface around it does: what it adds to the integral, and its dome. */
function fanOver(mesh: IndexedMesh, loop: readonly number[]): { volume: number; couldHold: number } {
  const { min, max } = facetBox(mesh);
  const about = [0, 1, 2].map((axis) => (min[axis]! + max[axis]!) / 2);
  const points = loop.map((vertex) => corner(mesh, vertex).map((value, axis) => value - about[axis]!));
  const middle = [0, 1, 2].map(
    (axis) => points.reduce((sum, point) => sum + point[axis]!, 0) / points.length,
  );
  let volume = 0;
  let area = 0;
  let outline = 0;
  points.forEach((from, at) => {
    const to = points[(at + 1) % points.length]!;
    const u = from.map((value, axis) => value - middle[axis]!);
    const v = to.map((value, axis) => value - middle[axis]!);
    // The surface runs along its outline from `from` to `to`; what closes it runs back.
    const normal = [
      v[1]! * u[2]! - v[2]! * u[1]!,
      v[2]! * u[0]! - v[0]! * u[2]!,
      v[0]! * u[1]! - v[1]! * u[0]!,
    ];
    volume += (middle[0]! * normal[0]! + middle[1]! * normal[1]! + middle[2]! * normal[2]!) / 6;
    area += Math.hypot(...normal) / 2;
    outline += Math.hypot(...from.map((value, axis) => to[axis]! - value));
  });
  return { volume, couldHold: outline > 0 ? (4 * area ** 2) / (3 * outline) : 0 };
}

function corner({ positions }: IndexedMesh, vertex: number): readonly number[] {
  return [positions[3 * vertex]!, positions[3 * vertex + 1]!, positions[3 * vertex + 2]!];
}
