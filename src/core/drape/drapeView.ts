/** What of a drape is drawn: threads on the part, and strips of like shear on the flat cloth. */
import type { Drape } from './drapePly';
import type { Way } from './net';
import type { ShearLimits } from './weaveLimits';

/** 0: under half of the warning angle; 1: under it; 2: over it. */
export type ShearClass = 0 | 1 | 2;

export interface DrapeView {
  /** Stretches of every few threads, 6 numbers each, mm of the part's own axes. */
  readonly threadsMm: Float32Array;
  /** Rows of cells of like shear in net coordinates, 4 numbers each: from x, to x, from y, shear class. */
  readonly strips: Float32Array;
  readonly stepMm: number;
}

/** Threads are drawn about that far apart. */
const threadEveryMm = 5;

export function drapeView(drape: Drape, limits: ShearLimits): DrapeView {
  return { threadsMm: threadsOf(drape), strips: stripsOf(drape, limits), stepMm: drape.net.stepMm };
}

function threadsOf({ net }: Drape): Float32Array {
  const every = Math.max(1, Math.round(threadEveryMm / net.stepMm));
  const stretches: number[] = [];
  for (let node = 0; node < net.count; node++)
    for (const way of [0, 1] as readonly Way[]) {
      const [i, j] = [net.i[node]!, net.j[node]!];
      if ((way === 0 ? j : i) % every !== 0 || !net.hasLink(node, way)) continue;
      const next = way === 0 ? net.at(i + 1, j) : net.at(i, j + 1);
      for (const end of [node, next]) for (let k = 0; k < 3; k++) stretches.push(net.pointMm[3 * end + k]!);
    }
  return Float32Array.from(stretches);
}

function stripsOf({ net, cells, keptShare }: Drape, { warningDeg }: ShearLimits): Float32Array {
  const rows = new Map<number, { readonly i: number; readonly shear: ShearClass }[]>();
  cells.forEach(({ nodes: [corner], shearRad }, index) => {
    if (keptShare[index]! <= 0) return;
    const deg = (Math.abs(shearRad) * 180) / Math.PI;
    const shear = deg > warningDeg ? 2 : deg > warningDeg / 2 ? 1 : 0;
    if (shear === 0) return;
    const j = net.j[corner]!;
    const row = rows.get(j);
    if (row === undefined) rows.set(j, [{ i: net.i[corner]!, shear }]);
    else row.push({ i: net.i[corner]!, shear });
  });
  const strips: number[] = [];
  for (const [j, row] of rows) {
    row.sort((a, b) => a.i - b.i);
    for (let at = 0; at < row.length;) {
      let end = at + 1;
      while (end < row.length && row[end]!.i === row[end - 1]!.i + 1 && row[end]!.shear === row[at]!.shear)
        end++;
      strips.push(
        row[at]!.i * net.stepMm,
        (row[end - 1]!.i + 1) * net.stepMm,
        j * net.stepMm,
        row[at]!.shear,
      );
      at = end;
    }
  }
  return Float32Array.from(strips);
}
