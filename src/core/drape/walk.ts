/**
 * Straightest lines on a mesh: straight within a facet, and over an edge as if both facets lay in one plane (Polthier and Schmies,
 * Straightest geodesics on polyhedral surfaces, 1998). Cost: one edge at a time, so a few tenths of a microsecond.
 */
import type { DrapeSurface, Place } from './drapeSurface';

/** Where a walk has come to. */
export interface Walked extends Place {
  /** The way it goes on, as a unit vector of the facet's frame. */
  dirX: number;
  dirY: number;
  /** What is left of the length where the surface ended; 0 where it did not. */
  leftMm: number;
}

export const noWalk = (): Walked => ({ facet: -1, x: 0, y: 0, dirX: 1, dirY: 0, leftMm: 0 });

/** More edges than this in one step of the net is no walk: facets without area. */
const mostEdges = 3000;

/**
 * Walks from a place.
 * @param to written: where it ends
 * @param watch told of every half-edge that is crossed and of the share of that edge; true ends the walk there
 */
export function walk(
  { twin, frame }: DrapeSurface,
  { facet: fromFacet, x: fromX, y: fromY }: Place,
  angleRad: number,
  lengthMm: number,
  to: Walked,
  watch?: (halfEdge: number, share: number, twin: number) => boolean,
): void {
  let facet = fromFacet;
  let x = fromX;
  let y = fromY;
  let left = lengthMm;
  let dx = Math.cos(angleRad);
  let dy = Math.sin(angleRad);
  for (let edges = 0; edges < mostEdges; edges++) {
    const length = frame[3 * facet]!;
    const cx = frame[3 * facet + 1]!;
    const cy = frame[3 * facet + 2]!;
    // Edges 0, 1, 2 by their first corner and vector; what lies to their left is inside.
    let way = Infinity;
    let exit = -1;
    if (dy < 0) {
      way = Math.max(0, y / -dy);
      exit = 0;
    }
    const ux = cx - length;
    const uy = cy;
    const out1 = dx * uy - dy * ux;
    if (out1 > 0) {
      const t = Math.max(0, (ux * y - uy * (x - length)) / out1);
      if (t < way) {
        way = t;
        exit = 1;
      }
    }
    const out2 = dy * cx - dx * cy;
    if (out2 > 0) {
      const t = Math.max(0, (-cx * (y - cy) + cy * (x - cx)) / out2);
      if (t < way) {
        way = t;
        exit = 2;
      }
    }
    if (way >= left || exit < 0) return end(to, facet, x + dx * left, y + dy * left, dx, dy, 0);
    x += dx * way;
    y += dy * way;
    left -= way;
    const ax = exit === 0 ? 0 : exit === 1 ? length : cx;
    const ay = exit === 2 ? cy : 0;
    const ex = exit === 0 ? length : exit === 1 ? ux : -cx;
    const ey = exit === 0 ? 0 : exit === 1 ? uy : -cy;
    const size = Math.sqrt(ex * ex + ey * ey);
    const share = Math.min(1, Math.max(0, ((x - ax) * ex + (y - ay) * ey) / (size * size)));
    const half = 3 * facet + exit;
    const across = twin[half]!;
    if (across < 0 || watch?.(half, share, across) === true) return end(to, facet, x, y, dx, dy, left);
    const along = (dx * ex + dy * ey) / size;
    const outward = (dx * ey - dy * ex) / size;
    facet = (across / 3) | 0;
    const edge = across - 3 * facet;
    const l2 = frame[3 * facet]!;
    const c2x = frame[3 * facet + 1]!;
    const c2y = frame[3 * facet + 2]!;
    const bx = edge === 0 ? 0 : edge === 1 ? l2 : c2x;
    const by = edge === 2 ? c2y : 0;
    const fx = edge === 0 ? l2 : edge === 1 ? c2x - l2 : -c2x;
    const fy = edge === 0 ? 0 : edge === 1 ? c2y : -c2y;
    x = bx + (1 - share) * fx;
    y = by + (1 - share) * fy;
    dx = (-along * fx - outward * fy) / size;
    dy = (-along * fy + outward * fx) / size;
  }
  end(to, facet, x, y, dx, dy, left);
}

function end(
  to: Walked,
  facet: number,
  x: number,
  y: number,
  dirX: number,
  dirY: number,
  leftMm: number,
): void {
  to.facet = facet;
  to.x = x;
  to.y = y;
  to.dirX = dirX;
  to.dirY = dirY;
  to.leftMm = leftMm;
}
