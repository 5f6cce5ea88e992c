/** What is told of an invented pattern with two holes, one of them covered. */
import type { PatternSummary } from '../../src/core/pattern/makePattern';

export const madeSummary: PatternSummary = {
  wallMm: { p1: 0.71, median: 0.72, p99: 0.73 },
  leastDraftDeg: 2.95,
  shareUnderDraft: 0,
  addedShare: 0.012,
  addedMaxMm: 1.4,
  filled: [{ volumeMm3: 42, centerMm: [10, 20, 9] }],
  filledMm3: 42,
  takenMaxMm: 0.6,
  holes: [
    { areaMm2: 28.3, depthMm: 12, centerMm: [10, 20, 12], plugged: true, runsMm: [[7, 20, 6]] },
    { areaMm2: 900, depthMm: 12, centerMm: [-30, 5, 12], plugged: false, runsMm: [[-45, 5, 30]] },
  ],
  rimShiftMm: { median: 0.001, p99: 0.012, max: 0.3 },
  template: {
    outlineMm: [-60, -40, 60, -40, 60, -40, 60, 40, 60, 40, -60, -40],
    stepMm: 0.4,
    holes: [{ number: 1, runsMm: [[7, 20, 6]] }],
  },
  movedMm: 0.005,
  layerSteps: { onRim: 0.3, onLongSide: 0.5, onShortSide: 0.6 },
  triangles: 31_000,
};
