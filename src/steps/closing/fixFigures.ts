/** Figures of what would help: the wall that the stack wants, the plies that the wall wants, force and shims. */
import { gapAtPressure } from '../../core/closing/bedCurve';
import { forceToReachN, standOffForGapMm } from '../../core/closing/fixes';
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, withBand, type FigureSpec } from '../kit/figures';
import { pliesForWall } from '../shared/wallPairs';
import { mm, newtons } from './say';
import type { ClosingState } from '../closedMold/state';

export const fixSpecs = {
  wall: { id: 'closing.wantedWallMm', label: 'Wall that this stack wants', unit: 'mm', decimals: 2 },
  wallChange: {
    id: 'closing.wallChangeMm',
    label: 'Change of the median wall for that',
    unit: 'mm',
    decimals: 2,
  },
  plies: { id: 'closing.wantedPlies', label: 'Plies that this wall wants', unit: '', decimals: 0 },
  chokingPlies: {
    id: 'closing.carryingWallPlies',
    label: 'Plies that the carrying walls want',
    unit: '',
    decimals: 0,
  },
  force: {
    id: 'closing.wantedClampForceN',
    label: 'Clamp force for the fiber share you want',
    unit: 'N',
    decimals: 0,
    source: 'closingBalance',
  },
  shim: {
    id: 'closing.landChangeMm',
    label: 'Shim that the lands want; to be scraped off where negative',
    unit: 'mm',
    decimals: 2,
  },
} as const satisfies Record<string, FigureSpec>;

const practice = 'common practice';

export function fixFigures(state: ClosingState, context: StepContext): readonly Figure[] {
  const { histogram, walls, stack, curve } = state;
  const { wantedFiberFraction } = context.inputs.closing;
  const median = state.medianWallMm ?? state.wantedWallMm;
  const pliesOf = (wallMm: number) => pliesForWall(wallMm, stack, context.inputs);
  const { carryingWallMm: carrying, pressed: faces } = state;
  const wantedGapMm = curve.solidFiberMm / wantedFiberFraction;
  const { goLowMm, goHighMm } = walls;
  return [
    withBand(
      figure(
        { ...fixSpecs.wall, status: practice },
        state.wantedWallMm,
        `${mm(walls.voidFreeMm, 3)} that the plies fill − ${mm(walls.toleranceMm, 3)} that print and stone may be off; the map of changes is this less the wall of each facet.`,
      ),
      goLowMm,
      goHighMm,
    ),
    withBand(
      figure(
        { ...fixSpecs.wallChange, status: practice },
        state.wantedWallMm - median,
        `${mm(state.wantedWallMm)} − median wall ${mm(median)}; positive is "print it thicker".`,
      ),
      goLowMm - median,
      goHighMm - median,
    ),
    figure(
      { ...fixSpecs.plies, status: practice },
      pliesOf(median),
      `For the median wall of ${mm(median)}: the fewest plies of ${mm(stack.curedPlyMm, 3)} void-free that fill it.`,
    ),
    carrying === null
      ? unknownFigure(fixSpecs.chokingPlies, 'Nothing carries: the laminate is unloaded.')
      : figure(
          { ...fixSpecs.chokingPlies, status: practice },
          pliesOf(carrying),
          `The walls that carry measure ${mm(carrying)} in the mean, weighted by what they push: so many plies there.`,
        ),
    ...(faces === null
      ? [
          unknownFigure(fixSpecs.force, 'Every wall is steep: clamps press none of them.'),
          unknownFigure(fixSpecs.shim, 'Every wall is steep: lands change none of their gaps.'),
        ]
      : [forceFigure(state, wantedFiberFraction, wantedGapMm), shimFigure(state)]),
  ];

  function forceFigure({ lands }: ClosingState, fraction: number, gap: number): Figure {
    const spec: FigureSpec = { ...fixSpecs.force, status: state.beds.status };
    const standOffMm = faces === null ? 0 : standOffForGapMm(faces, gap);
    const floorMm = lands?.shimMm ?? null;
    if (floorMm !== null && standOffMm < floorMm)
      return unknownFigure(
        spec,
        `No force gives Vf ${formatNumber(fraction, 2)}: the faces would need a gap of ${mm(gap, 3)}, and the lands stop them at ${mm((faces?.wallMm ?? 0) + floorMm, 3)}.`,
      );
    const force = forceToReachN(histogram, curve, standOffMm);
    const softest = state.scatterFactors[0];
    const stiffest = state.scatterFactors[1];
    return {
      ...figure(
        spec,
        force,
        `Faces across the pull at ${mm(gap, 3)} (Vf ${formatNumber(fraction, 2)}), so the mold at ${mm(standOffMm, 3)}: the whole bed then pushes ${newtons(force)} along the pull, without friction.`,
      ),
      band: [force * softest, force * stiffest],
    };
  }

  function shimFigure({ lands }: ClosingState): Figure {
    const spec: FigureSpec = { ...fixSpecs.shim, status: practice };
    if (lands === null || faces === null) return unknownFigure(spec, 'The mold has no lands.');
    const changeFor = (wallMm: number) => standOffForGapMm(faces, wallMm - state.filmMm) - lands.shimMm;
    const shown = figure(
      spec,
      changeFor(state.wantedWallMm),
      `(${mm(state.wantedWallMm - state.filmMm)} of gap wanted − ${mm(faces.wallMm)} wall of the faces across the pull) / ${formatNumber(faces.pullCosine, 2)} − ${mm(lands.shimMm)} shim now. Steep walls hardly follow: their gap stays.`,
      `Under it the bed first pushes at ${mm(gapAtPressure(curve, 0), 3)}.`,
    );
    return withBand(shown, changeFor(state.walls.goLowMm), changeFor(state.walls.goHighMm));
  }
}
