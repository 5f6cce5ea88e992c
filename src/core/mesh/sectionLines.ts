import type { IndexedMesh, SectionPlane } from './types';

/** One chained line of a cut. */
export interface CutLine {
  /** 2 numbers per point; a closed line repeats no point: its last segment returns to the first. */
  readonly pointsMm: Float64Array;
  readonly closed: boolean;
  /** Facet that each segment was cut from; segment i runs from point i to point i + 1. */
  readonly facets: readonly number[];
}

/**
 * Cuts a mesh by a plane and chains the pieces over shared edges. A corner at the plane counts as above it, so a
 * facet is cut across exactly two of its edges or not at all; both facets of an edge compute its point from the same
 * corners in the same order and so agree on it to the last bit. Where no facet stands across an edge (open or
 * crowded), lines end and are joined to another line that ends at the same edge.
 * @param neighbor facet across each half-edge, negative for none
 */
export function chainCut(mesh: IndexedMesh, neighbor: Int32Array, plane: SectionPlane): CutLine[] {
  const { positions, facets } = mesh;
  const axis = { x: 0, y: 1, z: 2 }[plane.axis];
  const firstAxis = (axis + 1) % 3;
  const secondAxis = (axis + 2) % 3;
  const { atMm } = plane;
  const isAbove = (corner: number) => positions[3 * facets[corner]! + axis]! >= atMm;

  /** The half-edge by which the facet's boundary goes up (or down) through the plane; -1 when it is not cut. */
  function crossing(facet: number, up: boolean): number {
    for (let corner = 3 * facet; corner < 3 * facet + 3; corner++) {
      if (isAbove(corner) !== up && isAbove(nextCorner(corner)) === up) return corner;
    }
    return -1;
  }

  function pointOn(halfEdge: number): [number, number] {
    const one = facets[halfEdge]!;
    const other = facets[nextCorner(halfEdge)]!;
    const low = 3 * Math.min(one, other);
    const high = 3 * Math.max(one, other);
    const from = positions[low + axis]!;
    const share = (atMm - from) / (positions[high + axis]! - from);
    const between = (along: number) =>
      positions[low + along]! + share * (positions[high + along]! - positions[low + along]!);
    return [between(firstAxis), between(secondAxis)];
  }

  // Seen from the outside of a facet wound counter-clockwise, the material is on the left of a segment that runs from
  // the edge going down through the plane to the edge going up.
  const isChained = new Uint8Array(facets.length / 3);
  const pieces: Piece[] = [];
  for (let seed = 0; seed < isChained.length; seed++) {
    if (isChained[seed] === 1) continue;
    const entry = crossing(seed, false);
    if (entry < 0) continue;
    let start = seed;
    for (;;) {
      const before = neighbor[crossing(start, false)]!;
      if (before < 0 || before === seed || isChained[before] === 1 || crossing(before, false) < 0) break;
      start = before;
    }
    const piece: Piece = { facets: [], points: [...pointOn(crossing(start, false))], closed: false };
    for (let facet = start; ;) {
      isChained[facet] = 1;
      piece.facets.push(facet);
      const exit = crossing(facet, true);
      const after = neighbor[exit]!;
      if (after === start) {
        piece.closed = true;
        break;
      }
      piece.points.push(...pointOn(exit));
      if (after < 0 || isChained[after] === 1) break;
      facet = after;
    }
    pieces.push(piece);
  }
  return joinEnds(pieces)
    .map(toLine)
    .filter(({ facets: cut }) => cut.length > 0);
}

const nextCorner = (corner: number) => (corner % 3 === 2 ? corner - 2 : corner + 1);

interface Piece {
  facets: number[];
  points: number[];
  closed: boolean;
}

/** Joins open pieces whose ends meet in exactly the same point (at crowded edges). */
function joinEnds(pieces: readonly Piece[]): Piece[] {
  const done = pieces.filter(({ closed }) => closed);
  const starting = new Map<string, Piece[]>();
  const open = pieces.filter(({ closed }) => !closed);
  for (const piece of open) {
    const key = `${piece.points[0]} ${piece.points[1]}`;
    starting.set(key, [...(starting.get(key) ?? []), piece]);
  }
  const isUsed = new Set<Piece>();
  const takeStarting = (key: string) => starting.get(key)?.find((piece) => !isUsed.has(piece));
  const endKey = ({ points }: Piece) => `${points.at(-2)} ${points.at(-1)}`;
  // Pieces that nothing leads to go first, so that a chain is not begun in its middle.
  const endings = new Set(open.map(endKey));
  const isLedTo = ({ points }: Piece) => endings.has(`${points[0]} ${points[1]}`);
  for (const piece of [...open.filter((one) => !isLedTo(one)), ...open.filter(isLedTo)]) {
    if (isUsed.has(piece)) continue;
    isUsed.add(piece);
    const whole: Piece = { facets: [...piece.facets], points: [...piece.points], closed: false };
    const startKey = `${piece.points[0]} ${piece.points[1]}`;
    while (endKey(whole) !== startKey) {
      const next = takeStarting(endKey(whole));
      if (!next) break;
      isUsed.add(next);
      whole.facets.push(...next.facets);
      whole.points.push(...next.points.slice(2));
    }
    if (whole.facets.length > 1 && endKey(whole) === startKey) {
      whole.points.length -= 2;
      whole.closed = true;
    }
    done.push(whole);
  }
  return done;
}

/** Leaves out segments without length (from corners that lie in the plane). */
function toLine({ points, closed, facets }: Piece): CutLine {
  const kept: number[] = [points[0]!, points[1]!];
  const keptFacets: number[] = [];
  const pointCount = points.length / 2;
  facets.forEach((facet, at) => {
    const to = 2 * ((at + 1) % pointCount);
    const x = points[to]!;
    const y = points[to + 1]!;
    if (x === kept.at(-2) && y === kept.at(-1)) return;
    keptFacets.push(facet);
    kept.push(x, y);
  });
  // The last segment of a closed line returns to its first point.
  if (closed && keptFacets.length > 0 && kept[0] === kept.at(-2) && kept[1] === kept.at(-1)) kept.length -= 2;
  return { pointsMm: Float64Array.from(kept), closed, facets: keptFacets };
}
