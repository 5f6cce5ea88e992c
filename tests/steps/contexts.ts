/** Step contexts made by hand: an invented tray whose numbers are easy to follow. */
import type { CurePrediction } from '../../src/core/cure/predictCure';
import type { MeshHealth, Patch, WallQuantiles } from '../../src/core/mesh/types';
import type { PartSummary } from '../../src/core/part/partSummary';
import type { MoldGeometry } from '../../src/core/stone/moldGeometry';
import type { MeasuredPart, PatternRecord, StepContext } from '../../src/steps/shared/context';
import type { Ply } from '../../src/steps/inputs/ply';
import { histogramOf, plate } from '../support/closingHands';
import { defaultProjectInputs, type ProjectInputs } from '../../src/steps/inputs/project';

export const trayPattern: PatternRecord = {
  fileName: 'tray.stl',
  sha256: '0123456789abcdef'.repeat(4),
  format: 'stl-binary',
  declaredUnit: null,
  triangles: 1200,
  meshKey: 'tray',
  packErrorFileUnits: 2e-4,
  degenerateFacets: 0,
  notes: [],
};

const none = new Uint32Array(0);

export const soundHealth: MeshHealth = {
  facetCount: 1200,
  vertexCount: 602,
  watertight: true,
  openEdges: 0,
  crowdedEdges: 0,
  flippedFacets: 0,
  degenerateFacets: 0,
  duplicateFacets: 0,
  selfTouchingFacets: null,
  bodies: [{ facetCount: 1200, closed: true, volume: 9000, boxMin: [0, 0, 0], boxMax: [120, 64, 18] }],
  bodyOfFacet: new Uint32Array(1200),
  show: {
    openEdges: none,
    crowdedEdges: none,
    flippedFacets: none,
    degenerateFacets: none,
    duplicateFacets: none,
    selfTouching: none,
  },
};

const quantiles = (median: number | null): WallQuantiles => ({
  p5: median,
  median,
  p95: median,
  min: median,
  max: median,
  hitShare: median === null ? 0 : 1,
});

/** Walls by area: pairs of wall in mm and its area in mm². */
export function walls(...pieces: readonly (readonly [wallMm: number, areaMm2: number])[]) {
  const sorted = pieces.toSorted((a, b) => a[0] - b[0]);
  let sum = 0;
  return {
    wallMm: Float32Array.from(sorted, ([wallMm]) => wallMm),
    cumulativeAreaMm2: Float64Array.from(sorted, ([, areaMm2]) => (sum += areaMm2)),
  };
}

/** 10 000 mm² of show face with a wall of 0.67 mm, what three default plies want; everything drafted by 5°. */
export const traySummary: PartSummary = {
  facetCount: 1200,
  volumeMm3: 9000,
  volumeBandMm3: null,
  areaMm2: 21_000,
  centroidMm: [60, 32, 6],
  boxMinMm: [0, 0, 0],
  boxMaxMm: [120, 64, 18],
  rayWall: quantiles(0.67),
  ballWall: quantiles(0.67),
  showRayWall: quantiles(0.67),
  showBallWall: quantiles(0.66),
  draft: { under1DegShare: 0, under3DegShare: 0, awayShare: 0.4, trappedShare: 0 },
  insideCornerRadiusMm: { p5: 2, min: 1.5 },
  outerEdgeRadiusMm: { p5: 4, min: 3.5 },
  kindAreaMm2: { show: 10_000, core: 9600, rim: 1000, detail: 400, trapped: 0, unmeasured: 0 },
  releaseDraft: { draftDeg: Float32Array.of(5), cumulativeAreaMm2: Float64Array.of(19_600) },
  showWall: walls([0.67, 10_000]),
  showWallByBall: walls([0.66, 10_000]),
  closing: histogramOf(plate(125, 80, 16, () => 0.67)),
  hollowAlongPull: false,
  solid: false,
};

export const trayMeasured: MeasuredPart = {
  health: soundHealth,
  summary: traySummary,
  patches: [],
  unitGuess: { unit: 'mm', sure: true, reason: 'As millimeters the part is 120 x 64 x 18 mm.' },
  fileBoxSize: [120, 64, 18],
};

/** A block of 140 × 84 × 48 mm round the tray: 564.48 mL, of which 126 mL are the tray and its cavity. */
export const trayMold: MoldGeometry = {
  method: 'solid booleans',
  why: 'The mesh is one closed body.',
  box: {
    shape: 'rectangle',
    innerMm: [140, 84, 48],
    negativeHeightMm: 28,
    positiveHeightMm: 20,
    cornerRadiusMm: 0,
    wallDraftDeg: 0,
  },
  boxTurnDeg: 0,
  negativeMm3: 203_280,
  positiveMm3: 352_200,
  envelopeMm3: 126_000,
  cavityMm3: 117_000,
  patternMm3: 9000,
  errorMm3: { pattern: 0, others: 0 },
  gapFillMm3: 0,
  negativeFaceMm2: 14_000,
  positiveFaceMm2: 13_600,
  planAreaMm2: 7680,
  rimOutlineMm: [
    [0, 0],
    [120, 0],
    [120, 64],
    [0, 64],
  ],
  thinnest: { negative: { mm: 10, atMm: [60, 32, 18] }, positive: { mm: 12, atMm: [0, 32, 0] } },
  volumeCheck: 1,
};

interface Changes {
  readonly part?: Partial<ProjectInputs['part']>;
  readonly walls?: Partial<ProjectInputs['walls']>;
  readonly plies?: Partial<ProjectInputs['plies']>;
  readonly cutting?: Partial<ProjectInputs['cutting']>;
  readonly closing?: Partial<ProjectInputs['closing']>;
  readonly moldInputs?: Partial<ProjectInputs['mold']>;
  readonly patternInputs?: Partial<ProjectInputs['pattern']>;
  readonly mold?: MoldGeometry | null;
  readonly cure?: Partial<ProjectInputs['cure']>;
  readonly bench?: Partial<ProjectInputs['bench']>;
  readonly fit?: Partial<ProjectInputs['fit']>;
  readonly finish?: Partial<ProjectInputs['finish']>;
  readonly prediction?: CurePrediction | null;
  readonly health?: Partial<MeshHealth>;
  readonly summary?: Partial<PartSummary>;
  readonly measured?: Partial<MeasuredPart>;
  readonly pattern?: Partial<PatternRecord>;
}

/** The tray with the default stack (three plies that fill 0.70 mm), changed where asked. */
export function trayContext(changes: Changes = {}): StepContext {
  return {
    inputs: inputsWith(changes),
    pattern: { ...trayPattern, ...changes.pattern },
    measured: {
      ...trayMeasured,
      health: { ...soundHealth, ...changes.health },
      summary: { ...traySummary, ...changes.summary },
      ...changes.measured,
    },
    mold: changes.mold === undefined ? trayMold : changes.mold,
    cure: changes.prediction ?? null,
  };
}

export function inputsWith(changes: Changes): ProjectInputs {
  return {
    part: { ...defaultProjectInputs.part, ...changes.part },
    pattern: { ...defaultProjectInputs.pattern, ...changes.patternInputs },
    walls: { ...defaultProjectInputs.walls, ...changes.walls },
    plies: { ...defaultProjectInputs.plies, ...changes.plies },
    cutting: { ...defaultProjectInputs.cutting, ...changes.cutting },
    closing: { ...defaultProjectInputs.closing, ...changes.closing },
    mold: { ...defaultProjectInputs.mold, ...changes.moldInputs },
    cure: { ...defaultProjectInputs.cure, ...changes.cure },
    bench: { ...defaultProjectInputs.bench, ...changes.bench },
    fit: { ...defaultProjectInputs.fit, ...changes.fit },
    finish: { ...defaultProjectInputs.finish, ...changes.finish },
  };
}

export function emptyContext(changes: Changes = {}): StepContext {
  return { inputs: inputsWith(changes), pattern: null, measured: null, mold: null };
}

export const thickPatch: Patch = {
  finding: 'thick',
  place: 'show face, −y side',
  areaMm2: 1200,
  worst: 1.6,
  worstAtMm: [60, 4, 10],
  worstFacet: 17,
  draftDeg: 5,
  facetCount: 40,
};

export const lockPatch: Patch = {
  finding: 'locks',
  place: 'undercut, +x side',
  areaMm2: 12,
  worst: -20,
  worstAtMm: [118, 30, 6],
  worstFacet: 900,
  draftDeg: -20,
  facetCount: 6,
};

/** A ply of the default card, face up and in one piece unless said. */
export function plyAt(id: string, angleDeg = 0, changes: Partial<Ply> = {}): Ply {
  return { id, materialId: 'twill-200', angleDeg, faceDown: false, mirroredPair: false, ...changes };
}
