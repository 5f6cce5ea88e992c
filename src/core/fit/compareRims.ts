/** Two rims held face to face: gap and step along them, and the scale at which the next half meets. */
import type { IndexedMesh, Vec3 } from '../mesh/types';
import { dot, minus, plus, times } from '../numeric/vectors';
import { Problem } from '../problem';
import { fitOutlines, laidAt, type Laying } from './fitOutlines';
import {
  closestPlace,
  lengthOfOutline,
  outlineOf,
  placesAlong,
  seenFromBehind,
  withEnds,
  type Outline,
} from './outline';
import { cornerAt, normalAt } from './planePatches';
import type { RimSearch } from './rim';
import type { Point2, RimFrame } from './ringEdges';

export interface RimStation {
  /** Along the own rim, from where its outline begins. */
  readonly alongMm: number;
  /** In the axes of the own part. */
  readonly placeMm: Vec3;
  /** Own outline less the mate's, outward; null where nothing stands opposite. */
  readonly stepMm: number | null;
  /** Open width between the two lands; null where one of them has an opening. */
  readonly gapMm: number | null;
}

export interface RimComparison {
  readonly stations: readonly RimStation[];
  readonly lengthMm: number;
  readonly landMm: number;
  readonly gapMaxMm: number;
  /** Largest step either way. */
  readonly stepMaxMm: number;
  readonly worstAtMm: Vec3;
  /** To print the mate at so that it meets this half. */
  readonly mateScale: number;
  /** Taken off by scraping or filing, as far as the outlines tell; 0 where none is. */
  readonly scrapedMm: number;
  readonly scrapedShare: number;
  /** Half a turn lies as well: mark an end. */
  readonly isAmbiguous: boolean;
  /** Openings cut through one of the rims. */
  readonly isInterrupted: boolean;
  /** Where the mate's points lie in the axes of the own part. */
  readonly mateAt: Placing;
}

/** Rows of a turn, then a shift. */
export interface Placing {
  readonly turn: readonly [Vec3, Vec3, Vec3];
  readonly shiftMm: Vec3;
}

export interface RimSide {
  readonly mesh: IndexedMesh;
  readonly found: RimSearch;
}

const stationCount = 360;
/** Lengths that differ by more are not halves of one enclosure. */
const mostLengthRatio = 1.25;
/** After laying on, half of the outline lies closer than this share of its length. */
const mostUsualShare = 0.01;
/** Lands are looked for this far from the rim plane, and lean no more than this. */
const landReachMm = 1.5;
const landCosine = Math.cos((20 * Math.PI) / 180);

/**
 * Rims as they are given: scale the meshes first for sizes as cast.
 * @throws Problem `fit.noMate` where the rims are not those of two halves
 */
export function compareRims(own: RimSide, mate: RimSide, otherEnd: boolean): RimComparison {
  const [ownRim, mateRim] = [own.found.rim, mate.found.rim];
  const outline = outlineOf(ownRim.outline);
  const behind = outlineOf(seenFromBehind(mateRim.outline));
  const ratio = lengthOfOutline(behind) / lengthOfOutline(outline);
  if (!(ratio < mostLengthRatio && ratio > 1 / mostLengthRatio))
    throw notMates(`the rims are ${mm(lengthOfOutline(outline))} and ${mm(lengthOfOutline(behind))} long`);
  const fitted = fitOutlines(outline, behind, otherEnd);
  const mateOutline = moved(behind, fitted.laid);
  const heights = [landHeights(own), landHeights(mate)] as const;
  const stations = stationsOf(
    ownRim.frame,
    outline,
    mateOutline,
    (place) => {
      const mateHeight = heights[1](mirrored(back(fitted.laid, place)));
      const ownHeight = heights[0](place);
      return ownHeight === null || mateHeight === null ? null : ownHeight + mateHeight;
    },
    ownRim.landMm,
  );
  const steps = stations
    .flatMap(({ stepMm }) => (stepMm === null ? [] : [Math.abs(stepMm)]))
    .toSorted((a, b) => a - b);
  const usual = steps[Math.floor(steps.length / 2)] ?? Number.POSITIVE_INFINITY;
  if (!(usual < mostUsualShare * lengthOfOutline(outline)))
    throw notMates(
      Number.isFinite(usual)
        ? `half of the outline stands ${mm(usual)} apart or more`
        : 'no place of the rims stands opposite another',
    );
  const [worst, worstMm] = worstOf(stations);
  return {
    stations,
    lengthMm: lengthOfOutline(outline),
    landMm: Math.min(ownRim.landMm, mateRim.landMm),
    gapMaxMm: stations.reduce((most, { gapMm }) => Math.max(most, gapMm ?? 0), 0),
    stepMaxMm: Math.max(worstMm, largestStep(mateOutline, outline)),
    worstAtMm: worst,
    mateScale: fitted.scale,
    scrapedMm: fitted.scrapedMm,
    scrapedShare: fitted.scrapedShare,
    isAmbiguous: fitted.isAmbiguous,
    isInterrupted: ownRim.isInterrupted || mateRim.isInterrupted,
    mateAt: placingOf(ownRim.frame, mateRim.frame, fitted.laid),
  };
}

const mm = (value: number) => `${value.toFixed(1)} mm`;

const notMates = (why: string) =>
  new Problem(
    'fit.noMate',
    `The two parts are not mates: ${why}. Choose the other half of this enclosure, or check the units of both.`,
  );

function moved(outline: Outline, laid: Laying): Outline {
  return withEnds(outline, laidAt(laid, outline.ends));
}

const mirrored = ([x, y]: Point2): Point2 => [x, -y];

function back({ turnRad, xMm, yMm }: Laying, [x, y]: Point2): Point2 {
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  return [cos * (x - xMm) + sin * (y - yMm), cos * (y - yMm) - sin * (x - xMm)];
}

function stationsOf(
  frame: RimFrame,
  own: Outline,
  mate: Outline,
  heightAt: (place: Point2) => number | null,
  landMm: number,
): readonly RimStation[] {
  const places = placesAlong(own, stationCount);
  const stepAlong = lengthOfOutline(own) / stationCount;
  const raw = Array.from({ length: places.length / 2 }, (_, k) => {
    const [x, y] = [places[2 * k]!, places[2 * k + 1]!];
    const { outX, outY } = closestPlace(own, x, y);
    const there = closestPlace(mate, x, y);
    // In from the edge, where both lands are.
    const inMm = 0.4 * landMm;
    return {
      alongMm: (k + 0.5) * stepAlong,
      placeMm: plus(frame.originMm, plus(times(frame.first, x), times(frame.second, y))),
      stepMm: there.isEnd ? null : there.signedMm,
      height: heightAt([x - inMm * outX, y - inMm * outY]),
    };
  });
  const touching = raw.reduce((most, { height }) => Math.max(most, height ?? most), Number.NEGATIVE_INFINITY);
  return raw.map(({ height, ...station }) => ({
    ...station,
    gapMm: height === null ? null : touching - height,
  }));
}

/** A place on the edge of a facet belongs to it. */
const edgeMm = 1e-6;

/** Height of the land over the rim plane at a place of it; null over an opening. */
function landHeights({ mesh, found }: RimSide): (place: Point2) => number | null {
  const { frame } = found.rim;
  const { normals, areasMm2 } = found.planes;
  interface Land {
    readonly corners: readonly (readonly [number, number, number])[];
    readonly low: Point2;
    readonly high: Point2;
  }
  const lands: Land[] = [];
  for (let facet = 0; facet < areasMm2.length; facet++) {
    if (dot(normalAt(normals, facet), frame.normal) < landCosine) continue;
    const corners = [0, 1, 2].map((k) => {
      const from = minus(cornerAt(mesh, 3 * facet + k), frame.originMm);
      return [dot(from, frame.first), dot(from, frame.second), dot(from, frame.normal)] as const;
    });
    if (!corners.every(([, , height]) => Math.abs(height) <= landReachMm)) continue;
    const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
    lands.push({
      corners,
      low: [Math.min(...xs) - edgeMm, Math.min(...ys) - edgeMm],
      high: [Math.max(...xs) + edgeMm, Math.max(...ys) + edgeMm],
    });
  }
  return ([x, y]) => {
    let highest: number | null = null;
    for (const { corners, low, high } of lands) {
      if (x < low[0] || x > high[0] || y < low[1] || y > high[1]) continue;
      const height = heightOver(corners, x, y);
      if (height !== null && (highest === null || height > highest)) highest = height;
    }
    return highest;
  };
}

function heightOver(
  corners: readonly (readonly [number, number, number])[],
  x: number,
  y: number,
): number | null {
  const [[ax, ay, ah], [bx, by, bh], [cx, cy, ch]] = corners as [
    readonly [number, number, number],
    readonly [number, number, number],
    readonly [number, number, number],
  ];
  const whole = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
  if (whole === 0) return null;
  const b = ((x - ax) * (cy - ay) - (cx - ax) * (y - ay)) / whole;
  const c = ((bx - ax) * (y - ay) - (x - ax) * (by - ay)) / whole;
  return b >= -1e-9 && c >= -1e-9 && b + c <= 1 + 1e-9 ? ah + b * (bh - ah) + c * (ch - ah) : null;
}

function worstOf(stations: readonly RimStation[]): readonly [Vec3, number] {
  const off = ({ stepMm }: RimStation) => Math.abs(stepMm ?? 0);
  const worst = stations.reduce((most, one) => (off(one) > off(most) ? one : most));
  return [worst.placeMm, off(worst)];
}

function largestStep(from: Outline, to: Outline): number {
  const places = placesAlong(from, stationCount);
  let most = 0;
  for (let at = 0; at < places.length; at += 2) {
    const place = closestPlace(to, places[at]!, places[at + 1]!);
    if (!place.isEnd) most = Math.max(most, Math.abs(place.signedMm));
  }
  return most;
}

/** The mate's frame seen from behind, laid on, in the axes of the own part. */
function placingOf(own: RimFrame, mate: RimFrame, { turnRad, xMm, yMm }: Laying): Placing {
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  const first = plus(times(own.first, cos), times(own.second, sin));
  const second = minus(times(own.second, cos), times(own.first, sin));
  // Own axes that the mate's three axes go to: its second and its normal are turned round.
  const images = [first, times(second, -1), times(own.normal, -1)] as const;
  const axes = [mate.first, mate.second, mate.normal] as const;
  const row = (axis: 0 | 1 | 2): Vec3 =>
    [0, 1, 2].map((column) =>
      images.reduce((sum, image, k) => sum + image[axis] * axes[k]![column]!, 0),
    ) as unknown as Vec3;
  const turn = [row(0), row(1), row(2)] as const;
  const origin = plus(own.originMm, plus(times(own.first, xMm), times(own.second, yMm)));
  const turned: Vec3 = [
    dot(turn[0], mate.originMm),
    dot(turn[1], mate.originMm),
    dot(turn[2], mate.originMm),
  ];
  return { turn, shiftMm: minus(origin, turned) };
}
