/** Overlap and distance of placed pieces, asked of a general polygon library. */
import { areaPathsD, FillRule, intersectD, inflatePathsD, differenceD, JoinType, EndType } from 'clipper2-ts';
import type { Placement } from '../../src/core/templates/nest';
import { posed } from '../../src/core/templates/outline';
import type { Outline } from '../../src/core/templates/piece';

type Path = { x: number; y: number }[];
/** Decimal places that the library rounds to: a tenth of a micrometer. */
const places = 4;

export const pathOf = (outline: Outline): Path => outline.map(([x, y]) => ({ x, y }));
export const placedPath = (placement: Placement): Path =>
  pathOf(placement.piece.outlineMm.map((point) => posed(point, placement)));

export const sharedAreaMm2 = (a: Path, b: Path): number =>
  Math.abs(areaPathsD(intersectD([a], [b], FillRule.NonZero, places)));

export const areaOutsideMm2 = (piece: Path, sheet: Path): number =>
  Math.abs(areaPathsD(differenceD([piece], [sheet], FillRule.NonZero, places)));

/** Area within a gap of `a` that `b` lies in; corners of what is grown are round, drawn a trace inside. */
export const areaWithinGapMm2 = (a: Path, b: Path, gapMm: number): number =>
  gapMm === 0
    ? sharedAreaMm2(a, b)
    : Math.abs(
        areaPathsD(
          intersectD(
            inflatePathsD([a], gapMm, JoinType.Round, EndType.Polygon, 2, places, 0.001),
            [b],
            FillRule.NonZero,
            places,
          ),
        ),
      );
