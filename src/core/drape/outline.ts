/**
 * The border of the laid cloth in net coordinates. Cells are cut where the rim runs through them, at the very place where each thread
 * crosses it; what two cells share falls away, and what is left is chained into outlines.
 */
import type { Cell } from './cells';
import { region, type DrapeSurface } from './drapeSurface';
import type { CellNodes, Net, Way } from './net';
import { noWalk, walk } from './walk';

/** A corner of an outline. */
export interface BorderPoint {
  readonly x: number;
  readonly y: number;
  /** On the edge of a dart or slit, not on the rim or a seam. */
  readonly onDart: boolean;
  /** The node that it is; -1 for places between nodes. */
  readonly node: number;
}

/** Which side of a seam is kept: places where it is 0 or more. */
export type KeptSide = (pointMm: Float64Array, at: number) => number;

export interface CutCells {
  /** Closed; counterclockwise around cloth, clockwise around what stays open within. */
  readonly outlines: readonly (readonly BorderPoint[])[];
  /** Per cell: share of it that is kept. */
  readonly keptShare: Float64Array;
}

interface Crossing {
  readonly share: number;
  /** Vertex of the rim before it and share to the next one; -1 on a seam. */
  readonly rimAt: number;
}

interface Corner {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly node: number;
  readonly rimAt: number | null;
}

export function cutCells(net: Net, cells: readonly Cell[], kept: KeptSide | null): CutCells {
  const cutter = new CellCutter(net, kept);
  const keptShare = new Float64Array(cells.length);
  const edges = new Map<string, Edge>();
  // Nearly all edges are links: by number, since a text for each takes longer than all the rest.
  const links = new Map<number, Edge>();
  cells.forEach(({ nodes }, index) => {
    const polygon = cutter.cut(nodes);
    keptShare[index] = areaOf(polygon) / net.stepMm ** 2;
    polygon.forEach((from, at) => {
      const to = polygon[(at + 1) % polygon.length]!;
      if (from.node >= 0 && to.node >= 0) {
        if (!links.delete(to.node * net.count + from.node))
          links.set(from.node * net.count + to.node, { from, to });
      } else if (!edges.delete(`${to.key}>${from.key}`)) edges.set(`${from.key}>${to.key}`, { from, to });
    });
  });
  return { outlines: chained([...edges.values(), ...links.values()]), keptShare };
}

class CellCutter {
  private readonly net: Net;
  private readonly kept: KeptSide | null;
  private readonly surface: DrapeSurface;
  private readonly rimOf: Map<number, number>;
  private readonly crossings = new Map<number, Crossing>();

  constructor(net: Net, kept: KeptSide | null) {
    this.net = net;
    this.kept = kept;
    this.surface = net.surface;
    this.rimOf = new Map(Array.from(net.surface.rim, (vertex, at) => [vertex, at]));
  }

  cut(nodes: CellNodes): readonly Corner[] {
    const { net } = this;
    const inside = nodes.map((node) => this.isInside(node));
    if (inside.every((one) => !one)) return [];
    const corners: Corner[] = [];
    nodes.forEach((node, at) => {
      const next = nodes[(at + 1) % 4]!;
      const last = corners.at(-1);
      if (inside[at]) {
        // Coming in over the rim: its vertices within the cell lie between the two crossings.
        corners.push(this.cornerAt(node));
      }
      if (inside[at] === inside[(at + 1) % 4]) return;
      const crossing = this.crossingOf(node, next, at as Way, inside[at] === true);
      const key = node < next ? `${node}|${next}` : `${next}|${node}`;
      const [x, y] = [0, 1].map((axis) => {
        const index = axis === 0 ? net.i : net.j;
        return (index[node]! + crossing.share * (index[next]! - index[node]!)) * net.stepMm;
      }) as [number, number];
      if (!inside[at] && last !== undefined && last.rimAt !== null)
        corners.push(...this.rimWithin(nodes, last.rimAt, crossing.rimAt));
      corners.push({ key, x, y, node: -1, rimAt: crossing.rimAt });
    });
    // A cell whose walk around begins outside has its way in before its way out.
    const [first] = corners;
    const last = corners.at(-1);
    if (!inside[0] && first?.rimAt != null && last?.rimAt != null)
      corners.push(...this.rimWithin(nodes, last.rimAt, first.rimAt));
    return corners;
  }

  private isInside(node: number): boolean {
    const { net, surface, kept } = this;
    if (surface.region[net.facet[node]!] === region.beyond) return false;
    return kept === null || kept(net.pointMm, 3 * node) >= 0;
  }

  private cornerAt(node: number): Corner {
    const { net } = this;
    return {
      key: `${node}`,
      x: net.i[node]! * net.stepMm,
      y: net.j[node]! * net.stepMm,
      node,
      rimAt: null,
    };
  }

  private crossingOf(node: number, next: number, way: Way, leaves: boolean): Crossing {
    const [from, to] = leaves ? [node, next] : [next, node];
    const key = 4 * from + (leaves ? way : (way + 2) % 4);
    let found = this.crossings.get(key);
    if (found === undefined) {
      found = this.findCrossing(from, to, key);
      this.crossings.set(key, found);
    }
    return leaves ? found : { ...found, share: 1 - found.share };
  }

  private findCrossing(from: number, to: number, way: number): Crossing {
    const { net, surface, kept } = this;
    const onSeam = (): Crossing => {
      const [here, there] = [kept!(net.pointMm, 3 * from), kept!(net.pointMm, 3 * to)];
      return { share: here / (here - there), rimAt: -1 };
    };
    if (surface.region[net.facet[to]!] !== region.beyond) return onSeam();
    let rimAt = -1;
    const end = noWalk();
    walk(surface, net.placeOf(from), net.out[way]!, net.stepMm, end, (half, share, across) => {
      if (surface.region[Math.floor(across / 3)] !== region.beyond) return false;
      const at = this.rimOf.get(surface.facets[half]!);
      rimAt = at === undefined ? -1 : at + share;
      return true;
    });
    const share = Math.min(1, Math.max(0, 1 - end.leftMm / net.stepMm));
    if (kept !== null && kept(net.pointMm, 3 * to) < 0) {
      const seam = onSeam();
      if (seam.share < share) return seam;
    }
    return { share, rimAt };
  }

  /** Vertices of the rim from one crossing to the next, where they lie in the cell. */
  private rimWithin(nodes: CellNodes, fromAt: number, toAt: number): readonly Corner[] {
    if (fromAt < 0 || toAt < 0) return [];
    const { rim } = this.surface;
    const count = rim.length;
    const first = Math.ceil(fromAt);
    const steps = Math.floor((((toAt - first) % count) + count) % count);
    if (steps > count / 2) return [];
    const corners: Corner[] = [];
    for (let step = 0; step <= steps; step++) {
      const at = (first + step) % count;
      const place = placeInCell(this.net, nodes, this.surface.positions, 3 * rim[at]!);
      if (place === null) continue;
      corners.push({
        key: `r${at}c${nodes[0]}`,
        x: (this.net.i[nodes[0]]! + place[0]) * this.net.stepMm,
        y: (this.net.j[nodes[0]]! + place[1]) * this.net.stepMm,
        node: -1,
        rimAt: at,
      });
    }
    return corners;
  }
}

const slack = 0.02;

/** Shares along and across a cell at which a point lies nearest to it; null where that is outside. */
export function placeInCell(
  { pointMm }: Pick<Net, 'pointMm'>,
  [a, b, c, d]: CellNodes,
  points: Float64Array,
  at: number,
): readonly [number, number] | null {
  let [u, v] = [0.5, 0.5];
  for (let round = 0; round < 12; round++) {
    let [uu, uv, vv, ur, vr] = [0, 0, 0, 0, 0];
    for (let k = 0; k < 3; k++) {
      const [pa, pb, pc, pd] = [
        pointMm[3 * a + k]!,
        pointMm[3 * b + k]!,
        pointMm[3 * c + k]!,
        pointMm[3 * d + k]!,
      ];
      const off =
        points[at + k]! - ((1 - u) * (1 - v) * pa + u * (1 - v) * pb + u * v * pc + (1 - u) * v * pd);
      const du = (1 - v) * (pb - pa) + v * (pc - pd);
      const dv = (1 - u) * (pd - pa) + u * (pc - pb);
      uu += du * du;
      uv += du * dv;
      vv += dv * dv;
      ur += du * off;
      vr += dv * off;
    }
    const free = uu * vv - uv * uv;
    if (free <= 1e-12 * uu * vv) return null;
    const [stepU, stepV] = [(vv * ur - uv * vr) / free, (uu * vr - uv * ur) / free];
    u += stepU;
    v += stepV;
    if (Math.abs(u - 0.5) > 3 || Math.abs(v - 0.5) > 3) return null;
    if (Math.abs(stepU) + Math.abs(stepV) < 1e-9) break;
  }
  return u >= -slack && u <= 1 + slack && v >= -slack && v <= 1 + slack ? [u, v] : null;
}

function areaOf(polygon: readonly { readonly x: number; readonly y: number }[]): number {
  let twice = 0;
  polygon.forEach(({ x, y }, at) => {
    const next = polygon[(at + 1) % polygon.length]!;
    twice += x * next.y - y * next.x;
  });
  return twice / 2;
}

interface Edge {
  readonly from: Corner;
  readonly to: Corner;
}

function chained(edges: readonly Edge[]): readonly (readonly BorderPoint[])[] {
  const leaving = new Map<string, Edge[]>();
  for (const edge of edges) {
    const list = leaving.get(edge.from.key);
    if (list === undefined) leaving.set(edge.from.key, [edge]);
    else list.push(edge);
  }
  const outlines: (readonly BorderPoint[])[] = [];
  for (const list of leaving.values())
    while (list.length > 0) {
      const first = list.pop()!;
      const loop: Edge[] = [first];
      while (loop.at(-1)!.to.key !== first.from.key) {
        const before = loop.at(-1)!;
        const next = takeRightmost(leaving.get(before.to.key) ?? [], before);
        if (next === undefined) break;
        loop.push(next);
      }
      if (loop.length >= 3 && loop.at(-1)!.to.key === first.from.key)
        outlines.push(loop.map((edge, at) => pointOf(edge, loop.at(at - 1)!)));
    }
  return outlines;
}

/** Where two borders touch in a node they part again: pieces hang together over edges, not over a thread's end. */
function takeRightmost(list: Edge[], { from, to }: Edge): Edge | undefined {
  if (list.length < 2) return list.pop();
  const back = Math.atan2(from.y - to.y, from.x - to.x);
  const turnOf = (edge: Edge) => {
    const turn = Math.atan2(edge.to.y - to.y, edge.to.x - to.x) - back;
    return ((turn % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  };
  // The cloth lies to the left: the first way found turning counter-clockwise from where it came is around the same cloth.
  const order = list.toSorted((a, b) => turnOf(b) - turnOf(a));
  const next = order[0]!;
  list.splice(list.indexOf(next), 1);
  return next;
}

const isOnLink = ({ from, to }: Edge) => from.node >= 0 || to.node >= 0;

function pointOf(leaves: Edge, arrives: Edge): BorderPoint {
  const { x, y, node } = leaves.from;
  return { x, y, node, onDart: isOnLink(leaves) || isOnLink(arrives) };
}
