/**
 * Lays a pin-jointed net on a surface (Mack and Taylor 1956; van West, Pipes and Keefe 1990): two straightest lines through the
 * start, then every node at one step from two neighbors, both steps walked on the mesh. So a length along a thread is a length on
 * the surface, chords play no part, and no thread can jump to another skin. Where a line leaves the part, or the cloth would have
 * to shear more than it can, threads go straight on from what lies: those are the fronts that a dart or slit runs between.
 */
import { writePoint, type DrapeSurface, type Place } from './drapeSurface';
import { angleBetween, Net, stepI, stepJ, type Way } from './net';
import { stitch } from './stitch';
import { noWalk, walk, type Walked } from './walk';

export interface LayChoices {
  readonly stepMm: number;
  readonly start: Place;
  /** Of the warp at the start, in the frame of its facet. */
  readonly warpRad: number;
  /** Cells that would have to shear more stay open. */
  readonly cutRad: number;
  /** Which threads run on first into what stays open: turned from ply to ply, darts do not lie on each other. */
  readonly first: 'warp' | 'weft';
}

/** Nodes of other fronts are no nearer than that share of a step: without it the net winds around and covers twice. */
const leastApart = 0.7;
/** Of nodes that are neighbors by index, yet not linked. */
const leastApartBeside = 0.3;
/**
 * Both walks to a node end within that share of a step of each other; nearly all do to a millionth. On small facets the ends of walks
 * jump from one side of a vertex to the other, and one node that is not had there would leave a slit behind it.
 */
const meetShare = 0.06;
const mostRounds = 24;
/** From that round on steps are halved and more, for walks that jump. */
const calmRound = 8;

export function layNet(surface: DrapeSurface, choices: LayChoices): Net {
  const { stepMm, start, warpRad, first } = choices;
  const areaMm2 = allArea(surface);
  const most = Math.min(400_000, Math.ceil((3 * areaMm2) / stepMm ** 2) + 2000);
  const net = new Net(
    surface,
    stepMm,
    most,
    Math.min(2500, Math.ceil((2.5 * sizeOf(surface)) / stepMm) + 10),
  );
  const layer = new Layer(net, choices.cutRad);
  const origin = net.add(0, 0, start);
  for (const way of [0, 1, 2, 3] as const) layer.runOut(origin, way, warpRad + (way * Math.PI) / 2);
  layer.fill();
  const orders: readonly (readonly Way[])[] =
    first === 'warp'
      ? [
          [0, 2],
          [1, 3],
        ]
      : [
          [1, 3],
          [0, 2],
        ];
  layer.extend(orders);
  stitch(net);
  return net;
}

function allArea({ frame }: DrapeSurface): number {
  let sum = 0;
  for (let at = 0; at < frame.length; at += 3) sum += 0.5 * frame[at]! * frame[at + 2]!;
  return sum;
}

function sizeOf({ positions }: DrapeSurface): number {
  let sum = 0;
  for (let axis = 0; axis < 3; axis++) {
    let [low, high] = [Infinity, -Infinity];
    for (let at = axis; at < positions.length; at += 3) {
      low = Math.min(low, positions[at]!);
      high = Math.max(high, positions[at]!);
    }
    sum += high - low;
  }
  return sum;
}

class Layer {
  private readonly net: Net;
  private readonly cutRad: number;
  /** Node numbers of the corner that a new node lies across from, with the two ways to go from it. */
  private readonly queue: number[] = [];
  private head = 0;
  private readonly p = noWalk();
  private readonly q = noWalk();
  private readonly points = new Float64Array(6);

  constructor(net: Net, cutRad: number) {
    this.net = net;
    this.cutRad = cutRad;
  }

  /** A straight line from a node until it leaves the surface or comes too near to what lies. */
  runOut(from: number, way: Way, angleRad: number): void {
    let [node, angle] = [from, angleRad];
    while (node >= 0) {
      node = this.step(node, way, angle);
      if (node >= 0) angle = this.net.out[4 * node + ((way + 2) % 4)]! + Math.PI;
    }
  }

  /** All nodes that two neighbors hold. */
  fill(): void {
    while (this.head < this.queue.length) {
      const code = this.queue[this.head++]!;
      this.placeAcross(Math.floor(code / 4), (code % 4) as Way);
    }
    this.queue.length = 0;
    this.head = 0;
  }

  /** Lets threads go straight on wherever they end, those of the first ways before the others. */
  extend(orders: readonly (readonly Way[])[]): void {
    const { net } = this;
    const next = orders.map(() => 0);
    for (let order = 0; order < orders.length;) {
      const node = next[order]!;
      if (node >= net.count) {
        order++;
        continue;
      }
      next[order] = node + 1;
      let placed = false;
      for (const way of orders[order]!) {
        const back = ((way + 2) % 4) as Way;
        if (!net.hasLink(node, back) || net.at(net.i[node]! + stepI[way], net.j[node]! + stepJ[way]) >= 0)
          continue;
        placed = this.step(node, way, net.out[4 * node + back]! + Math.PI) >= 0 || placed;
        this.fill();
      }
      if (placed) order = 0;
    }
  }

  /** One step straight on; -1 where that is not possible. */
  private step(from: number, way: Way, angleRad: number): number {
    const { net, p } = this;
    const [i, j] = [net.i[from]! + stepI[way], net.j[from]! + stepJ[way]];
    if (net.at(i, j) >= 0 || !net.canHold(i, j)) return -1;
    walk(net.surface, net.placeOf(from), angleRad, net.stepMm, p);
    if (p.leftMm > 0) return -1;
    writePoint(net.surface, p, this.points, 0);
    if (this.isTooNear(i, j)) return -1;
    const node = net.add(i, j, p);
    this.link(from, way, angleRad, node, Math.atan2(p.dirY, p.dirX));
    this.offer(node);
    return node;
  }

  private link(from: number, way: Way, leavesRad: number, to: number, arrivesRad: number): void {
    this.net.out[4 * from + way] = leavesRad;
    this.net.out[4 * to + ((way + 2) % 4)] = arrivesRad + Math.PI;
  }

  /** Queues the corners that the new node and two others leave open. */
  private offer(node: number): void {
    const { net } = this;
    const [i, j] = [net.i[node]!, net.j[node]!];
    for (const quarter of [0, 1, 2, 3] as const) {
      this.offerAcross(node, quarter);
      const second = ((quarter + 1) % 4) as Way;
      // As the neighbor along one way or along the other of a corner.
      this.offerAcross(net.at(i - stepI[quarter], j - stepJ[quarter]), quarter);
      this.offerAcross(net.at(i - stepI[second], j - stepJ[second]), quarter);
    }
  }

  /** @param quarter 0: between +i and +j, and so on counter-clockwise */
  private offerAcross(corner: number, quarter: Way): void {
    if (corner < 0) return;
    const { net } = this;
    const second = ((quarter + 1) % 4) as Way;
    if (!net.hasLink(corner, quarter) || !net.hasLink(corner, second)) return;
    const i = net.i[corner]! + stepI[quarter] + stepI[second];
    const j = net.j[corner]! + stepJ[quarter] + stepJ[second];
    if (net.at(i, j) < 0) this.queue.push(4 * corner + quarter);
  }

  /** The node across from a corner, one step from both of its neighbors there. */
  private placeAcross(corner: number, firstWay: Way): void {
    const { net, p, q } = this;
    const secondWay = ((firstWay + 1) % 4) as Way;
    const i = net.i[corner]! + stepI[firstWay] + stepI[secondWay];
    const j = net.j[corner]! + stepJ[firstWay] + stepJ[secondWay];
    if (net.at(i, j) >= 0 || !net.canHold(i, j)) return;
    const a = net.at(net.i[corner]! + stepI[firstWay], net.j[corner]! + stepJ[firstWay]);
    const b = net.at(net.i[corner]! + stepI[secondWay], net.j[corner]! + stepJ[secondWay]);
    const open = angleBetween(net.out[4 * corner + firstWay]!, net.out[4 * corner + secondWay]!);
    const backA = net.out[4 * a + ((firstWay + 2) % 4)]!;
    const backB = net.out[4 * b + ((secondWay + 2) % 4)]!;
    const met = meet(net, a, b, backA + Math.PI + open, backB + Math.PI - open, p, q, this.points);
    if (met === null) return;
    const arrivesA = Math.atan2(p.dirY, p.dirX);
    const arrivesB = directionIn(net.surface, q, p.facet);
    // Corner by corner: at the old one, at both neighbors, at the new one.
    const atA = angleBetween(met.leavesA, backA);
    const atB = angleBetween(backB, met.leavesB);
    const atNew = angleBetween(arrivesA + Math.PI, arrivesB + Math.PI);
    const inner = Math.min(atNew, 2 * Math.PI - atNew);
    const shear = (atA + atB - open - inner) / 4;
    if (!(Math.abs(shear) <= this.cutRad) || atA > Math.PI || atB > Math.PI || open > Math.PI) return;
    if (this.isTooNear(i, j)) return;
    const node = net.add(i, j, p);
    this.link(a, secondWay, met.leavesA, node, arrivesA);
    this.link(b, firstWay, met.leavesB, node, arrivesB);
    this.offer(node);
  }

  /** Of the point at the front of `points`. */
  private isTooNear(i: number, j: number): boolean {
    const { net } = this;
    const far = (leastApart * net.stepMm) ** 2;
    const beside = (leastApartBeside * net.stepMm) ** 2;
    return net.someNear(this.points, 0, (node, squareMm2) => {
      const apart = Math.max(Math.abs(net.i[node]! - i), Math.abs(net.j[node]! - j));
      return squareMm2 < (apart > 1 ? far : beside);
    });
  }
}

interface Met {
  readonly leavesA: number;
  readonly leavesB: number;
  /** How far apart both walks end. */
  readonly offMm: number;
}

/** The angles at which two nodes each walk one step to the same point; null where they do not. */
function meet(
  net: Net,
  a: number,
  b: number,
  guessA: number,
  guessB: number,
  p: Walked,
  q: Walked,
  points: Float64Array,
): Met | null {
  const { surface, stepMm } = net;
  const { axes } = surface;
  const placeA = net.placeOf(a);
  const placeB = net.placeOf(b);
  let leavesA = guessA;
  let leavesB = guessB;
  let best: Met = { leavesA, leavesB, offMm: Infinity };
  for (let round = 0; round < mostRounds; round++) {
    walk(surface, placeA, leavesA, stepMm, p);
    walk(surface, placeB, leavesB, stepMm, q);
    if (p.leftMm > 0 || q.leftMm > 0) break;
    writePoint(surface, p, points, 0);
    writePoint(surface, q, points, 3);
    // How each end moves when its way is turned: across itself, by the step.
    const u = 6 * p.facet;
    const v = 6 * q.facet;
    let square = 0;
    let mixed = 0;
    let onU = 0;
    let onV = 0;
    for (let k = 0; k < 3; k++) {
      const acrossP = p.dirX * axes[u + 3 + k]! - p.dirY * axes[u + k]!;
      const acrossQ = q.dirX * axes[v + 3 + k]! - q.dirY * axes[v + k]!;
      const apart = (points[3 + k]! - points[k]!) / stepMm;
      square += apart * apart;
      mixed += acrossP * acrossQ;
      onU += acrossP * apart;
      onV += acrossQ * apart;
    }
    const offMm = Math.sqrt(square) * stepMm;
    if (offMm < best.offMm) best = { leavesA, leavesB, offMm };
    if (square < 1e-12) return best;
    const free = 1 - mixed * mixed;
    if (free < 0.02) break;
    const turnA = (onU - mixed * onV) / free;
    const turnB = (mixed * onU - onV) / free;
    const calm = round < calmRound ? 1 : 0.7 / (1 + (round % 4));
    const damp = calm * Math.min(1, 0.6 / Math.max(Math.abs(turnA), Math.abs(turnB), 1e-9));
    leavesA += damp * turnA;
    leavesB += damp * turnB;
  }
  if (best.offMm > meetShare * stepMm) return null;
  walk(surface, placeA, best.leavesA, stepMm, p);
  walk(surface, placeB, best.leavesB, stepMm, q);
  writePoint(surface, p, points, 0);
  return best;
}

/** The angle of a walk's way in the frame of another facet. */
function directionIn({ axes }: DrapeSurface, { facet, dirX, dirY }: Walked, other: number): number {
  if (facet === other) return Math.atan2(dirY, dirX);
  const [from, to] = [6 * facet, 6 * other];
  let [x, y] = [0, 0];
  for (let k = 0; k < 3; k++) {
    const way = dirX * axes[from + k]! + dirY * axes[from + 3 + k]!;
    x += way * axes[to + k]!;
    y += way * axes[to + 3 + k]!;
  }
  return Math.atan2(y, x);
}
