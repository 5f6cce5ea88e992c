/** The wall that the stack wants, place by place, for whoever draws or prints the pattern. */
import { noClosingClass, type ClosingMaps } from '../../core/closing/closingMaps';
import type { ClosingSamples } from '../../core/closing/closingTypes';
import type { PartShape } from '../../pipeline/told';

/** Places along the longest side of the part: fine enough for a model, few enough for a table. */
const cellsAlong = 48;

interface CellSums {
  area: number;
  wall: number;
  change: number;
  readonly at: [number, number, number];
}

/** One line per small cube of the part with area-weighted means; coordinates as in the model, mm. */
export function wallChangeCsv(
  { boxMinMm, boxMaxMm, display }: Pick<PartShape, 'boxMinMm' | 'boxMaxMm' | 'display'>,
  { areaMm2 }: ClosingSamples,
  { closingClass, wallChangeMm }: ClosingMaps,
  wantedWallMm: number,
): string {
  const cellMm = Math.max(...boxMaxMm.map((high, axis) => high - boxMinMm[axis]!), 1e-6) / cellsAlong;
  const cells = new Map<string, CellSums>();
  for (const { firstFacet, corners } of display) {
    for (let from = 0; from < corners.length; from += 9) {
      const facet = firstFacet + from / 9;
      if (closingClass[facet] === noClosingClass) continue;
      const center = [0, 1, 2].map(
        (axis) => (corners[from + axis]! + corners[from + axis + 3]! + corners[from + axis + 6]!) / 3,
      );
      const key = center.map((at, axis) => Math.floor((at - boxMinMm[axis]!) / cellMm)).join(' ');
      const sums = cells.get(key) ?? { area: 0, wall: 0, change: 0, at: [0, 0, 0] };
      cells.set(key, sums);
      const area = areaMm2[facet]!;
      sums.area += area;
      sums.wall += area * (wantedWallMm - wallChangeMm[facet]!);
      sums.change += area * wallChangeMm[facet]!;
      for (const axis of [0, 1, 2] as const) sums.at[axis] += area * center[axis]!;
    }
  }
  const lines = [...cells.values()].map(({ area, wall, change, at }) =>
    [...at.map((sum) => (sum / area).toFixed(1)), (wall / area).toFixed(3), (change / area).toFixed(3)].join(
      ',',
    ),
  );
  return `${['x_mm,y_mm,z_mm,wall_mm,wall_change_mm', ...lines].join('\n')}\n`;
}
