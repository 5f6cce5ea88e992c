/**
 * A hand-held wind meter of our own invention, in two halves. Its numbers are invented. The upper half carries a
 * deliberate fault for the workbook to find; the lower half is as it should be.
 */
import type { IndexedMesh } from '../../core/mesh/types';
import { rotorMarkMm } from './rotorMark';
import { smoothStep } from './shellDesign';
import { shellMesh } from './shellMesh';
import type { ShellDesign } from './shellDesign';

const shared = {
  halfLengthMm: 35,
  halfWidthMm: 20.5,
  sideDraftDeg: 3.5,
  wallMm: 0.67,
} as const;

const upper: ShellDesign = {
  ...shared,
  heightMm: 12.1,
  crownFallXMm: 0.9,
  crownFallYMm: 1.1,
  shoulderRadiusMm: 3.4,
  reliefMm: (x, y) => rotorMarkMm({ centerXMm: -18, centerYMm: 0, heightMm: 0.4 }, x, y),
  // Fault: the +y side is drawn too thick over some 15 mm. Full height, so that it locks nothing in the core.
  sideExtraWallMm: (x, y, z) => {
    const inRegion = y > 0 ? smoothStep(10, 5, Math.abs(x - 4)) * smoothStep(10.8, 8.9, z) : 0;
    return 0.35 * inRegion;
  },
  window: { centerXMm: 11.5, halfLengthMm: 14.5, halfWidthMm: 10.5 },
  cellMm: 0.8,
};

const lower: ShellDesign = {
  ...shared,
  heightMm: 10.2,
  crownFallXMm: 0.5,
  crownFallYMm: 0.7,
  shoulderRadiusMm: 4,
  // A shallow panel for the label.
  reliefMm: (x, y) => -0.4 * smoothStep(1, -1, roundedBoxDistanceMm(x, y, 20, 9, 3)),
  sideExtraWallMm: () => 0,
  window: null,
  cellMm: 0.95,
};

/** About 70 x 41 x 12.5 mm, rim down, show face up: pull +z. */
export function windMeterUpper(): IndexedMesh {
  return shellMesh(upper);
}

/** About 70 x 41 x 10 mm, rim up, show face down: pull -z. */
export function windMeterLower(): IndexedMesh {
  return turnedAboutX(shellMesh(lower));
}

/** Half a turn about x: the show face looks down, the facets still look outwards. */
function turnedAboutX({ positions, facets }: IndexedMesh): IndexedMesh {
  return { positions: positions.map((value, i) => (i % 3 === 0 || value === 0 ? value : -value)), facets };
}

/** Distance to a rectangle with rounded corners around the origin, negative inside. */
function roundedBoxDistanceMm(
  x: number,
  y: number,
  halfLengthMm: number,
  halfWidthMm: number,
  cornerRadiusMm: number,
): number {
  const overX = Math.abs(x) - halfLengthMm + cornerRadiusMm;
  const overY = Math.abs(y) - halfWidthMm + cornerRadiusMm;
  return (
    Math.hypot(Math.max(0, overX), Math.max(0, overY)) + Math.min(0, Math.max(overX, overY)) - cornerRadiusMm
  );
}
