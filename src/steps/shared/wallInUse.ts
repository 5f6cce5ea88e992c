/** The wall that verdicts are taken on: measured on the show face, or the maker's nominal wall of the print. */
import type { WallDistribution, WallQuantiles } from '../../core/mesh/types';
import { areaShares, type AreaShares } from '../../core/numeric/areaShares';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from './context';
import { availablePart } from './missing';

export interface WallInUse {
  readonly known: true;
  /** One number for the whole wall: the area-weighted median, or the nominal wall. */
  readonly medianMm: number;
  readonly nominal: boolean;
  /** How it is known, in words. */
  readonly how: string;
  /** Shares of the wall under, within and over two limits in mm. */
  readonly shares: (lowMm: number, highMm: number) => AreaShares;
}

export type WallAnswer = WallInUse | { readonly known: false; readonly reason: string; readonly fix: string };

export function wallInUse(context: StepContext): WallAnswer {
  const { part, plies, walls } = context.inputs;
  if (part.nominalWall === 'print') return nominalWall(part.printLines, plies.lineWidthMm);
  const available = availablePart(context);
  if (!available.known) return available;
  const { summary } = available.measured;
  return walls.measure === 'ball'
    ? measuredWall(summary.showBallWall, summary.showWallByBall, 'largest sphere', summary.solid)
    : measuredWall(summary.showRayWall, summary.showWall, 'along the normal', summary.solid);
}

function nominalWall(lines: number, lineWidthMm: number): WallInUse {
  const wallMm = lines * lineWidthMm;
  return {
    known: true,
    medianMm: wallMm,
    nominal: true,
    how: `${lines} beads × ${formatNumber(lineWidthMm, 3)} mm, your entry, the same everywhere`,
    shares: (lowMm, highMm) => ({
      under: wallMm < lowMm ? 1 : 0,
      within: wallMm >= lowMm && wallMm <= highMm ? 1 : 0,
      over: wallMm > highMm ? 1 : 0,
    }),
  };
}

function measuredWall(
  quantiles: WallQuantiles,
  distribution: WallDistribution,
  measure: string,
  solid: boolean,
): WallAnswer {
  const { wallMm, cumulativeAreaMm2 } = distribution;
  if (solid)
    return {
      known: false,
      reason: 'The model is drawn solid, so there is no wall to measure.',
      fix: 'Take the wall from the print at the Part step, or import the shell.',
    };
  if (quantiles.median === null || areaShares(wallMm, cumulativeAreaMm2, 0, 0) === null)
    return {
      known: false,
      reason: 'No show face with a core face behind it was found, so no wall can be held against the stack.',
      fix: 'Check the pull and the health of the model at the Part step.',
    };
  const none: AreaShares = { under: 0, within: 0, over: 0 };
  return {
    known: true,
    medianMm: quantiles.median,
    nominal: false,
    how: `median over the show face by ${measure}`,
    shares: (lowMm, highMm) => areaShares(wallMm, cumulativeAreaMm2, lowMm, highMm) ?? none,
  };
}
