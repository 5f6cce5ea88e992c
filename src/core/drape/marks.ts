/** Marks on pieces: where both sides of a dart meet, where the part's middle lines cross the rim, and what a piece is laid by. */
import type { MatchMark, Outline, Point2 } from '../templates/piece';
import type { Drape } from './drapePly';
import { locate } from './locate';
import type { BorderPoint } from './outline';
import type { PartDatum } from './partDatum';
import { isWithin } from './smoothOutline';

/** A mark of net coordinates, before it is set on the outline of its piece. */
export interface RawMark {
  readonly atMm: Point2;
  readonly label: string;
}

/** Along a dart, from mark to mark. */
const markEveryMm = 12;
/** Both sides of a dart lie within so many steps of each other. */
const acrossSteps = 2.6;
/** Beside each other in the net: no dart. */
const besideSteps = 1.6;

/** Pairs of marks with the same label on both sides of each dart and slit. */
export function dartMarks({ net }: Drape, outlines: readonly (readonly BorderPoint[])[]): readonly RawMark[] {
  const border = outlines.flatMap((points) => points.filter(({ node, onDart }) => onDart && node >= 0));
  const marked: { readonly at: number; readonly mark: RawMark }[] = [];
  const apart = (a: number, b: number) =>
    Math.hypot(...[0, 1, 2].map((k) => net.pointMm[3 * a + k]! - net.pointMm[3 * b + k]!));
  let label = 0;
  for (const point of border) {
    if (marked.some(({ at }) => apart(at, point.node) < markEveryMm)) continue;
    let [best, bestMm]: [BorderPoint | null, number] = [null, acrossSteps * net.stepMm];
    for (const other of border) {
      const inNet = Math.hypot(other.x - point.x, other.y - point.y);
      const onPart = apart(other.node, point.node);
      if (inNet > besideSteps * net.stepMm && inNet > 1.5 * onPart && onPart < bestMm)
        [best, bestMm] = [other, onPart];
    }
    if (best === null) continue;
    label++;
    for (const one of [point, best])
      marked.push({ at: one.node, mark: { atMm: [one.x, one.y], label: String(label) } });
  }
  return marked.map(({ mark }) => mark);
}

/** Where the rim crosses the middle lines of the plan: the same places on every ply and on the mate. */
export function rimMarks(
  { net, surface }: Drape,
  { middleMm, length, across }: PartDatum,
): readonly RawMark[] {
  const { rim, positions } = surface;
  const on = (way: readonly number[], vertex: number) =>
    [0, 1, 2].reduce((sum, k) => sum + way[k]! * (positions[3 * vertex + k]! - middleMm[k]!), 0);
  const marks: RawMark[] = [];
  for (const [way, along, names] of [
    [across, length, ['L+', 'L-']],
    [length, across, ['W+', 'W-']],
  ] as const) {
    rim.forEach((vertex, at) => {
      const next = rim[(at + 1) % rim.length]!;
      const [here, there] = [on(way, vertex), on(way, next)];
      if (here < 0 === there < 0) return;
      const share = here / (here - there);
      const point = Float64Array.from(
        [0, 1, 2],
        (k) => positions[3 * vertex + k]! * (1 - share) + positions[3 * next + k]! * share,
      );
      const place = locate(net, point, 0);
      if (place !== null)
        marks.push({ atMm: [place.xMm, place.yMm], label: on(along, vertex) >= 0 ? names[0] : names[1] });
    });
  }
  return marks;
}

/** Marks further off an outline than that belong to another piece. */
const offOutlineMm = 4;

export function marksOn(outline: Outline, marks: readonly RawMark[]): readonly MatchMark[] {
  return marks.flatMap(({ atMm, label }) => {
    let best: { readonly at: Point2; readonly into: Point2; readonly off: number } | null = null;
    outline.forEach(([ax, ay], index) => {
      const [bx, by] = outline[(index + 1) % outline.length]!;
      const [ex, ey] = [bx - ax, by - ay];
      const size = Math.hypot(ex, ey);
      if (size === 0) return;
      const share = Math.min(1, Math.max(0, ((atMm[0] - ax) * ex + (atMm[1] - ay) * ey) / (size * size)));
      const at: Point2 = [ax + share * ex, ay + share * ey];
      const off = Math.hypot(atMm[0] - at[0], atMm[1] - at[1]);
      if (best === null || off < best.off) best = { at, into: [-ey / size, ex / size], off };
    });
    const found = best as { readonly at: Point2; readonly into: Point2; readonly off: number } | null;
    return found === null || found.off > offOutlineMm ? [] : [{ atMm: found.at, into: found.into, label }];
  });
}

const looks = 240;

/** The part's datum on a piece: through the start where it is on the piece, else through its middle; and a pair of holes on it. */
export function datumOn(
  outline: Outline,
  fiberDeg: number,
): { readonly datumMm: readonly [Point2, Point2]; readonly registrationMm: readonly Point2[] } {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const [low, high] = [
    [Math.min(...xs), Math.min(...ys)],
    [Math.max(...xs), Math.max(...ys)],
  ] as const;
  const through: Point2 = isWithin(outline, [0, 0])
    ? [0, 0]
    : [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
  const turn = (-fiberDeg * Math.PI) / 180;
  const [dx, dy] = [Math.cos(turn), Math.sin(turn)];
  const reach = Math.hypot(high[0] - low[0], high[1] - low[1]);
  const at = (look: number): Point2 => {
    const way = reach * ((2 * look) / looks - 1);
    return [through[0] + way * dx, through[1] + way * dy];
  };
  let [best, bestLength, from] = [0, 0, -1];
  for (let look = 0; look <= looks + 1; look++) {
    const within = look <= looks && isWithin(outline, at(look));
    if (within && from < 0) from = look;
    if (within || from < 0) continue;
    if (look - from > bestLength) [best, bestLength] = [from, look - from];
    from = -1;
  }
  const share = (part: number) => at(best + part * Math.max(0, bestLength - 1));
  return { datumMm: [share(0.03), share(0.97)], registrationMm: [share(0.12), share(0.88)] };
}
