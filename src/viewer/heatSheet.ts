/** A cut through the mold in the oven as the scene draws it: colored cells, the laminate's outline, and its plane. */
import { halfCode } from '../core/cure/moldVoxels';
import { shownLaminateShare, type HeatCut } from '../core/cure/heatFields';
import type { Vec3 } from '../core/mesh/types';
import type { HeatCutReply } from '../pipeline/told';
import { cividis, colorFacets, type RampScale } from './colorScales';
import type { MapLegend } from './mapColors';
import type { PartBox } from './orbitView';

export interface DrawnHeat {
  /** 9 numbers per facet, two facets per cell, part axes. */
  readonly corners: Float32Array;
  /** RGBA word per facet. */
  readonly colors: Uint32Array;
  /** 6 numbers per piece of the laminate's outline. */
  readonly outlineMm: Float32Array;
  /** The plane of the cut, part axes. */
  readonly normal: Vec3;
  readonly throughMm: Vec3;
}

/** The other two axes of each axis, in order. */
const acrossAxes = [
  [1, 2],
  [0, 2],
  [0, 1],
] as const;

/** A point of the pull frame in the part's own axes. */
export function inPart({ frame: { axes, originMm } }: Pick<HeatCutReply, 'frame'>, pointMm: Vec3): Vec3 {
  const [x, y, z] = originMm.map(
    (origin, axis) =>
      origin + axes[0][axis]! * pointMm[0] + axes[1][axis]! * pointMm[1] + axes[2][axis]! * pointMm[2],
  );
  return [x!, y!, z!];
}

/** The whole mold in the part's own axes. */
export function moldBox(reply: Pick<HeatCutReply, 'frame' | 'lowMm' | 'highMm'>): PartBox {
  const { lowMm, highMm } = reply;
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((corner) =>
    inPart(reply, [0, 1, 2].map((axis) => ((corner >> axis) & 1 ? highMm : lowMm)[axis]!) as unknown as Vec3),
  );
  const ends = (pick: (...values: number[]) => number) =>
    [0, 1, 2].map((axis) => pick(...corners.map((corner) => corner[axis]!))) as unknown as Vec3;
  return { boxMinMm: ends(Math.min), boxMaxMm: ends(Math.max) };
}

/** Between two temperatures, rounded outward to whole steps; never to nothing. */
export function heatScale(lowC: number, highC: number, stepK = 10): RampScale {
  const low = stepK * Math.floor(lowC / stepK);
  return { kind: 'ramp', ramp: cividis, low, high: Math.max(low + stepK, stepK * Math.ceil(highC / stepK)) };
}

/** Coldest and hottest cell of a cut. */
export function cutEnds(cut: HeatCut): readonly [number, number] {
  const ends = (['laminate', 'stone'] as const).flatMap((of) => heatRange(cut, of) ?? []);
  return [Math.min(...ends), Math.max(...ends)];
}

export function heatLegend(scale: RampScale): MapLegend {
  const middle = (scale.low + scale.high) / 2;
  return {
    kind: 'ramp',
    title: 'Temperature, °C; outlined: laminate',
    scale,
    ticks: [scale.low, middle, scale.high].map((at) => ({ at, label: String(at) })),
    limit: null,
    noValue: 'the pattern alone',
  };
}

export function heatSheet(reply: HeatCutReply, scale: RampScale): DrawnHeat {
  const { cut, frame } = reply;
  const [countU, countV] = cut.counts;
  const point = (i: number, j: number): Vec3 => {
    const at: [number, number, number] = [0, 0, 0];
    const [u, v] = acrossAxes[cut.axis];
    at[cut.axis] = cut.atMm;
    at[u] = cut.lowMm[0] + i * cut.sizeMm[0];
    at[v] = cut.lowMm[1] + j * cut.sizeMm[1];
    return inPart({ frame }, at);
  };
  const corners: number[] = [];
  const temperatures: number[] = [];
  for (let j = 0; j < countV; j++)
    for (let i = 0; i < countU; i++) {
      const cell = i + countU * j;
      if (cut.half[cell] === halfCode.outside) continue;
      const [a, b, c, d] = [point(i, j), point(i + 1, j), point(i + 1, j + 1), point(i, j + 1)];
      corners.push(...a, ...b, ...c, ...a, ...c, ...d);
      temperatures.push(cut.temperatureC[cell]!, cut.temperatureC[cell]!);
    }
  return {
    corners: Float32Array.from(corners),
    colors: colorFacets(temperatures, scale),
    outlineMm: laminateOutline(cut, point),
    normal: frame.axes[cut.axis],
    throughMm: point(countU / 2, countV / 2),
  };
}

/** The edges between cells that are laminate and cells that are not. */
function laminateOutline({ counts, laminateShare }: HeatCut, point: (i: number, j: number) => Vec3) {
  const [countU, countV] = counts;
  const isLaminate = (i: number, j: number) =>
    i >= 0 && j >= 0 && i < countU && j < countV && laminateShare[i + countU * j]! >= shownLaminateShare;
  const ends: number[] = [];
  for (let j = 0; j <= countV; j++)
    for (let i = 0; i <= countU; i++) {
      if (isLaminate(i, j) !== isLaminate(i - 1, j)) ends.push(...point(i, j), ...point(i, j + 1));
      if (isLaminate(i, j) !== isLaminate(i, j - 1)) ends.push(...point(i, j), ...point(i + 1, j));
    }
  return Float32Array.from(ends);
}

/** Least and most of the cells that are laminate, or of those that are stone; null where the cut holds none. */
export function heatRange(cut: HeatCut, of: 'laminate' | 'stone'): readonly [number, number] | null {
  let [low, high] = [Infinity, -Infinity];
  cut.temperatureC.forEach((celsius, cell) => {
    if (cut.half[cell] === halfCode.outside) return;
    if (cut.laminateShare[cell]! >= shownLaminateShare !== (of === 'laminate')) return;
    low = Math.min(low, celsius);
    high = Math.max(high, celsius);
  });
  return low > high ? null : [low, high];
}

/** Where a line of sight meets the plane of the cut; null when it runs along it. */
export function sightOnSheet(
  { normal, throughMm }: Pick<DrawnHeat, 'normal' | 'throughMm'>,
  originMm: Vec3,
  direction: Vec3,
): Vec3 | null {
  const along = dot(direction, normal);
  if (Math.abs(along) < 1e-6) return null;
  const way = (dot(throughMm, normal) - dot(originMm, normal)) / along;
  return [
    originMm[0] + way * direction[0],
    originMm[1] + way * direction[1],
    originMm[2] + way * direction[2],
  ];
}

const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
