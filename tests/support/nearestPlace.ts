/** Where on a face a point of the part lies, by trying every facet. */
import { region, type DrapeSurface, type Place } from '../../src/core/drape/drapeSurface';

export function nearestPlace(
  surface: DrapeSurface,
  pointMm: readonly [number, number, number],
): Place & { readonly offMm: number } {
  const { positions, facets, frame, axes } = surface;
  const best = { facet: -1, x: 0, y: 0, offMm: Infinity };
  for (let facet = 0; facet < frame.length / 3; facet++) {
    if (surface.region[facet] === region.beyond) continue;
    const first = 3 * facets[3 * facet]!;
    const to = [0, 1, 2].map((k) => pointMm[k]! - positions[first + k]!) as [number, number, number];
    const dot = (at: number) => to[0] * axes[at]! + to[1] * axes[at + 1]! + to[2] * axes[at + 2]!;
    const [px, py] = [dot(6 * facet), dot(6 * facet + 3)];
    const [x, y] = nearestInTriangle(px, py, frame[3 * facet]!, frame[3 * facet + 1]!, frame[3 * facet + 2]!);
    const square = Math.max(0, to[0] ** 2 + to[1] ** 2 + to[2] ** 2 - px ** 2 - py ** 2);
    const offMm = Math.sqrt(square + (px - x) ** 2 + (py - y) ** 2);
    if (offMm < best.offMm) Object.assign(best, { facet, x, y, offMm });
  }
  return best;
}

function nearestInTriangle(
  px: number,
  py: number,
  length: number,
  cx: number,
  cy: number,
): readonly [number, number] {
  const corners = [0, 0, length, 0, cx, cy];
  let [x, y, least, inside] = [px, py, Infinity, true];
  for (let k = 0; k < 3; k++) {
    const [ax, ay] = [corners[2 * k]!, corners[2 * k + 1]!];
    const [ex, ey] = [corners[(2 * k + 2) % 6]! - ax, corners[(2 * k + 3) % 6]! - ay];
    if (ex * (py - ay) - ey * (px - ax) < 0) inside = false;
    const share = Math.min(1, Math.max(0, ((px - ax) * ex + (py - ay) * ey) / (ex * ex + ey * ey)));
    const off = Math.hypot(px - ax - share * ex, py - ay - share * ey);
    if (off < least) [least, x, y] = [off, ax + share * ex, ay + share * ey];
  }
  return inside ? [px, py] : [x, y];
}
