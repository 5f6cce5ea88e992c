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
    { areaMm2: 28.3, depthMm: 12, centerMm: [10, 20, 12], plugged: true },
    { areaMm2: 900, depthMm: 12, centerMm: [-30, 5, 12], plugged: false },
  ],
  rimShiftMm: { median: 0.001, p99: 0.012, max: 0.3 },
  movedMm: 0.005,
  triangles: 31_000,
};
