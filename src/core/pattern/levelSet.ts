/** The surface on which a field of the grid has one value, as triangles: marching cubes with the table of `cubeCases.ts`. */
import { cubeEdges, cubeTriangles } from './cubeCases';
import type { PatternGrid } from './grid';

/** A crossing is kept this share of a step away from the nodes, so that no triangle shrinks to a line. */
const leastShare = 0.008;

export interface LevelSet {
  /** 3 numbers per vertex, mm in the frame. */
  readonly positions: Float64Array;
  /** Counter-clockwise seen from outside. */
  readonly facets: Uint32Array;
  /** Vertex on the edge from each node of the first layer to the next along x and along y; -1 where none. */
  readonly onX: Int32Array;
  readonly onY: Int32Array;
}

/**
 * @param sign 1 where the inside has lower values than the level, -1 where it has higher ones
 * @param fromLayer the surface is open there
 */
export function levelSet(
  grid: PatternGrid,
  fieldMm: Float32Array,
  levelMm: number,
  sign: 1 | -1,
  fromLayer: number,
): LevelSet {
  const plane = grid.countX * grid.countY;
  const points = new CrossingPoints(grid, fieldMm, levelMm, sign);
  const facets: number[] = [];
  let low = layerInside(fieldMm, levelMm, sign, fromLayer * plane, plane);
  let first: { onX: Int32Array; onY: Int32Array } | null = null;
  for (let k = fromLayer; k + 1 < grid.countZ; k++) {
    const high = layerInside(fieldMm, levelMm, sign, (k + 1) * plane, plane);
    points.startLayer(k);
    cutLayer(grid, low, high, points, facets);
    first ??= { onX: points.low.onX.slice(), onY: points.low.onY.slice() };
    low = high;
  }
  if (first === null) throw new Error('a level set needs two layers');
  return { positions: Float64Array.from(points.positions), facets: Uint32Array.from(facets), ...first };
}

export function layerInside(
  fieldMm: Float32Array,
  levelMm: number,
  sign: 1 | -1,
  from: number,
  count: number,
): Uint8Array {
  const inside = new Uint8Array(count);
  for (let at = 0; at < count; at++) if (sign * (fieldMm[from + at]! - levelMm) < 0) inside[at] = 1;
  return inside;
}

function cutLayer(
  { countX, countY }: PatternGrid,
  low: Uint8Array,
  high: Uint8Array,
  points: CrossingPoints,
  facets: number[],
): void {
  for (let j = 0; j + 1 < countY; j++) {
    for (let i = 0; i + 1 < countX; i++) {
      const at = j * countX + i;
      const cut =
        low[at]! |
        (low[at + 1]! << 1) |
        (low[at + countX]! << 2) |
        (low[at + countX + 1]! << 3) |
        (high[at]! << 4) |
        (high[at + 1]! << 5) |
        (high[at + countX]! << 6) |
        (high[at + countX + 1]! << 7);
      if (cut === 0 || cut === 255) continue;
      const triangles = cubeTriangles[cut]!;
      for (let corner = 0; corner < triangles.length; corner++)
        facets.push(points.onEdge(at, triangles[corner]!));
    }
  }
}

interface LayerPoints {
  readonly onX: Int32Array;
  readonly onY: Int32Array;
}

/** The vertices of two layers of nodes and of the edges between them; each is made once. */
class CrossingPoints {
  readonly positions: number[] = [];
  low: LayerPoints;
  private high: LayerPoints;
  private readonly between: Int32Array;
  private readonly plane: number;
  private layer = 0;

  constructor(
    private readonly grid: PatternGrid,
    private readonly fieldMm: Float32Array,
    private readonly levelMm: number,
    private readonly sign: 1 | -1,
  ) {
    this.plane = grid.countX * grid.countY;
    const empty = () => new Int32Array(this.plane).fill(-1);
    this.low = { onX: empty(), onY: empty() };
    this.high = { onX: empty(), onY: empty() };
    this.between = empty();
  }

  startLayer(layer: number): void {
    this.layer = layer;
    [this.low, this.high] = [this.high, this.low];
    this.high.onX.fill(-1);
    this.high.onY.fill(-1);
    this.between.fill(-1);
  }

  /** Vertex on an edge of the cube whose lowest corner is node `at` of the layer. */
  onEdge(at: number, edge: number): number {
    const [corner] = cubeEdges[edge]!;
    const node = at + (corner & 1) + (corner & 2 ? this.grid.countX : 0);
    const isHigh = (corner & 4) !== 0;
    const row = isHigh ? this.high : this.low;
    const known = edge < 4 ? row.onX : edge < 8 ? row.onY : this.between;
    const before = known[node]!;
    if (before >= 0) return before;
    const made = this.add(node, isHigh ? this.layer + 1 : this.layer, edge >> 2);
    known[node] = made;
    return made;
  }

  private add(node: number, layer: number, axis: number): number {
    const { countX, stepMm, layerMm, lowXMm, lowYMm, lowZMm } = this.grid;
    const from = layer * this.plane + node;
    const to = from + (axis === 0 ? 1 : axis === 1 ? countX : this.plane);
    const a = this.sign * (this.fieldMm[from]! - this.levelMm);
    const b = this.sign * (this.fieldMm[to]! - this.levelMm);
    const share = Math.min(1 - leastShare, Math.max(leastShare, a / (a - b)));
    const i = node % countX;
    const j = (node - i) / countX;
    this.positions.push(
      lowXMm + (i + (axis === 0 ? share : 0)) * stepMm,
      lowYMm + (j + (axis === 1 ? share : 0)) * stepMm,
      lowZMm + (layer + (axis === 2 ? share : 0)) * layerMm,
    );
    return this.positions.length / 3 - 1;
  }
}
