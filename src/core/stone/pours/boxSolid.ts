import { integrate } from '../../mesh/integrals';
import type { IndexedMesh } from '../../mesh/types';
import type { MoldBox } from '../moldGeometry';
import type { FrameBox } from './pullFrame';
import type { PourChoices } from './pourChoices';

/** The box as a solid in the pull frame. */
export interface BoxSolid {
  readonly box: MoldBox;
  readonly mesh: IndexedMesh;
  /** Inside the box above and below the level of the parting. */
  readonly aboveMm3: number;
  readonly belowMm3: number;
  readonly centerMm: readonly [number, number];
  readonly partingMm: number;
  readonly floorMm: number;
  readonly ceilingMm: number;
  /** Half the inner length and width at the widest level. */
  readonly reachMm: readonly [number, number];
}

const arcSteps = 24;
const circleSteps = 240;

/**
 * The box round a pattern: three outlines (floor, parting, ceiling) joined by walls that lean outward from the parting,
 * so that each pour widens toward its open end.
 * @param outlineReachMm of the pattern from the middle of its plan: for a cup
 */
export function boxSolid(
  pattern: FrameBox,
  outlineReachMm: number,
  partingMm: number,
  choices: PourChoices,
): BoxSolid {
  const { coverMm, landWidthMm, shape, wallDraftDeg } = choices;
  const beyond = (cover: number) => Math.max(cover, landWidthMm);
  const low = [pattern.low[0]! - beyond(coverMm.xLowMm), pattern.low[1]! - beyond(coverMm.yLowMm)] as const;
  const high = [
    pattern.high[0]! + beyond(coverMm.xHighMm),
    pattern.high[1]! + beyond(coverMm.yHighMm),
  ] as const;
  const sideCover = Math.max(
    ...[coverMm.xLowMm, coverMm.xHighMm, coverMm.yLowMm, coverMm.yHighMm].map(beyond),
  );
  const isCup = shape === 'cup';
  const centerMm = isCup
    ? ([(pattern.low[0]! + pattern.high[0]!) / 2, (pattern.low[1]! + pattern.high[1]!) / 2] as const)
    : ([(low[0] + high[0]) / 2, (low[1] + high[1]) / 2] as const);
  const halfX = isCup ? outlineReachMm + sideCover : (high[0] - low[0]) / 2;
  const halfY = isCup ? halfX : (high[1] - low[1]) / 2;
  const cornerRadiusMm = {
    rectangle: 0,
    'rounded rectangle': Math.min(choices.cornerRadiusMm, halfX, halfY),
    cup: halfX,
  }[shape];
  const floorMm = Math.min(pattern.low[2]!, partingMm) - coverMm.underRimMm;
  const ceilingMm = Math.max(pattern.high[2]!, partingMm) + coverMm.overShowMm;
  const lean = Math.tan((wallDraftDeg * Math.PI) / 180);
  const floorOutMm = (partingMm - floorMm) * lean;
  const ceilingOutMm = (ceilingMm - partingMm) * lean;
  const outline = (outMm: number) => boxOutline(shape, centerMm, halfX, halfY, cornerRadiusMm, outMm);
  const floor = [outline(floorOutMm), floorMm] as const;
  const parting = [outline(0), partingMm] as const;
  const ceiling = [outline(ceilingOutMm), ceilingMm] as const;
  const widestMm = Math.max(floorOutMm, ceilingOutMm);
  return {
    box: {
      shape,
      innerMm: [2 * halfX, 2 * halfY, ceilingMm - floorMm],
      negativeHeightMm: ceilingMm - partingMm,
      positiveHeightMm: partingMm - floorMm,
      cornerRadiusMm,
      wallDraftDeg,
    },
    mesh: stacked([floor, parting, ceiling]),
    aboveMm3: integrate(stacked([parting, ceiling])).volume,
    belowMm3: integrate(stacked([floor, parting])).volume,
    centerMm,
    partingMm,
    floorMm,
    ceilingMm,
    reachMm: [halfX + widestMm, halfY + widestMm],
  };
}

type Outline = readonly (readonly [number, number])[];

/** Counter-clockwise outline, `outMm` outside the nominal one, always with the same number of corners. */
function boxOutline(
  shape: MoldBox['shape'],
  [centerX, centerY]: readonly [number, number],
  halfX: number,
  halfY: number,
  cornerRadiusMm: number,
  outMm: number,
): Outline {
  if (shape === 'cup') {
    return Array.from({ length: circleSteps }, (_, step) => {
      const angle = (2 * Math.PI * step) / circleSteps;
      const radius = halfX + outMm;
      return [centerX + radius * Math.cos(angle), centerY + radius * Math.sin(angle)] as const;
    });
  }
  const corners = [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
  ] as const;
  if (shape === 'rectangle' || cornerRadiusMm === 0) {
    return corners.map(([x, y]) => [centerX + x * (halfX + outMm), centerY + y * (halfY + outMm)] as const);
  }
  const radius = cornerRadiusMm + outMm;
  return corners.flatMap(([x, y], corner) =>
    Array.from({ length: arcSteps + 1 }, (_, step) => {
      const angle = (Math.PI / 2) * (corner + step / arcSteps);
      return [
        centerX + x * (halfX - cornerRadiusMm) + radius * Math.cos(angle),
        centerY + y * (halfY - cornerRadiusMm) + radius * Math.sin(angle),
      ] as const;
    }),
  );
}

/** Convex outlines of equal corner count at rising heights, joined and closed below and above. */
export function stacked(levels: readonly (readonly [Outline, number])[]): IndexedMesh {
  const count = levels[0]![0].length;
  const positions = levels.flatMap(([outline, height]) => outline.flatMap(([x, y]) => [x, y, height]));
  const facets: number[] = [];
  for (let level = 0; level + 1 < levels.length; level++) {
    for (let k = 0; k < count; k++) {
      const next = (k + 1) % count;
      const [a, b] = [level * count + k, level * count + next];
      facets.push(a, b, b + count, a, b + count, a + count);
    }
  }
  const top = (levels.length - 1) * count;
  for (let k = 1; k + 1 < count; k++) facets.push(0, k + 1, k, top, top + k, top + k + 1);
  return { positions: Float64Array.from(positions), facets: Uint32Array.from(facets) };
}
