/**
 * Links neighbors of the net that lie one step apart although neither was placed from the other: a front that ran on past a place
 * where one node could not be had comes back to where the cloth goes on. Without it a slit would run along a thread for nothing.
 */
import { writePoint } from './drapeSurface';
import { stepI, stepJ, type Net, type Way } from './net';
import { noWalk, walk } from './walk';

/** A walk of one step ends within that share of it at the neighbor. */
const meetShare = 0.08;
const rounds = 6;

export function stitch(net: Net): void {
  const end = noWalk();
  const point = new Float64Array(3);
  for (let node = 0; node < net.count; node++)
    for (const way of [0, 1] as const) {
      if (net.hasLink(node, way)) continue;
      const other = net.at(net.i[node]! + stepI[way], net.j[node]! + stepJ[way]);
      if (other < 0 || net.hasLink(other, ((way + 2) % 4) as Way)) continue;
      if (!isStepApart(net, node, other)) continue;
      let angle = guessOf(net, node, way);
      if (angle === null) continue;
      for (let round = 0; round < rounds; round++) {
        walk(net.surface, net.placeOf(node), angle, net.stepMm, end);
        if (end.leftMm > 0) break;
        writePoint(net.surface, end, point, 0);
        const { axes } = net.surface;
        let [aside, square] = [0, 0];
        for (let k = 0; k < 3; k++) {
          const across = end.dirX * axes[6 * end.facet + 3 + k]! - end.dirY * axes[6 * end.facet + k]!;
          const off = net.pointMm[3 * other + k]! - point[k]!;
          aside += across * off;
          square += off * off;
        }
        if (square < (meetShare * net.stepMm) ** 2) {
          net.out[4 * node + way] = angle;
          net.out[4 * other + ((way + 2) % 4)] = backAngle(net, other, end);
          break;
        }
        angle += aside / net.stepMm;
      }
    }
}

function isStepApart(net: Net, node: number, other: number): boolean {
  let square = 0;
  for (let k = 0; k < 3; k++) square += (net.pointMm[3 * node + k]! - net.pointMm[3 * other + k]!) ** 2;
  const chord = Math.sqrt(square) / net.stepMm;
  return chord > 0.7 && chord < 1 + meetShare;
}

/** Straight on from the other side, else square to a thread that crosses. */
function guessOf(net: Net, node: number, way: Way): number | null {
  const behind = net.out[4 * node + ((way + 2) % 4)]!;
  if (!Number.isNaN(behind)) return behind + Math.PI;
  for (const turn of [1, 3]) {
    const from = net.out[4 * node + ((way + turn) % 4)]!;
    if (!Number.isNaN(from)) return from - (turn * Math.PI) / 2;
  }
  return null;
}

/** The way back, in the frame of the neighbor's facet. */
function backAngle(net: Net, other: number, end: { facet: number; dirX: number; dirY: number }): number {
  const { axes } = net.surface;
  const [from, to] = [6 * end.facet, 6 * net.facet[other]!];
  let [x, y] = [0, 0];
  for (let k = 0; k < 3; k++) {
    const dir = end.dirX * axes[from + k]! + end.dirY * axes[from + 3 + k]!;
    x += dir * axes[to + k]!;
    y += dir * axes[to + 3 + k]!;
  }
  return Math.atan2(y, x) + Math.PI;
}
