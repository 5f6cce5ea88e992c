/** The one JSON object of the headless report: what was measured, and every step's report. */
import type { StepReport } from '../core/figure';
import type { WallQuantiles } from '../core/mesh/types';
import type { PartSummary } from '../core/part/partSummary';
import type { Answers } from './evaluate';
import type { PlanFound, TriedFix } from './plan';
import type { MeasureReply, PartShape } from './told';
import type { PatternRecord } from '../steps/shared/context';

export interface ReportContent {
  readonly pattern: PatternRecord | null;
  readonly answers: Answers;
  readonly reports: ReadonlyMap<string, StepReport>;
  readonly plan?: PlanFound | null;
  /** Of each verdict by its id, when remedies were tried on what is reported. */
  readonly fixes?: PlanFound['fixes'] | null;
}

/** Refuses what JSON would turn into null without a word. */
function finiteOnly(key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new RangeError(`the report holds ${String(value)} under "${key}"`);
  return value;
}

export function reportJson({ pattern, answers, reports, plan = null, fixes = null }: ReportContent): string {
  const shape = answers.part?.told ?? null;
  const measured = answers.measurement?.told ?? null;
  const content = {
    file: pattern === null ? null : fileBlock(pattern, shape, measured),
    health: measured === null || pattern === null ? null : healthBlock(measured, pattern),
    measurement: measured === null ? null : measurementBlock(measured),
    steps: Object.fromEntries(
      fixes === null ? reports : [...reports].map(([step, report]) => [step, withFixes(report, fixes)]),
    ),
    ...(plan !== null && { plan: planBlock(plan) }),
  };
  return JSON.stringify(content, finiteOnly, 2);
}

/** Fixes that were not tried are not told; nor those that were tried and did not help. */
function withFixes(report: StepReport, fixes: PlanFound['fixes']) {
  return {
    ...report,
    verdicts: report.verdicts.map((verdict) => ({
      ...verdict,
      fixes: (fixes.get(verdict.id) ?? []).map(fixBlock),
    })),
  };
}

// oxlint-disable-next-line unicorn/no-thenable -- the name that the report's readers go by; nobody awaits it
const fixBlock = ({ what, patch, says }: TriedFix) => ({ what, patch, then: says });

const planBlock = ({ outcome, now, changes, after, anew, left }: PlanFound) => ({
  outcome,
  now,
  changes,
  after,
  anew,
  left,
});

function fileBlock(pattern: PatternRecord, shape: PartShape | null, measured: MeasureReply | null) {
  return {
    name: pattern.fileName,
    sha256: pattern.sha256,
    format: pattern.format,
    triangles: pattern.triangles,
    bodies: measured?.health.bodies.length ?? null,
    unit: shape?.unit ?? null,
  };
}

/** Counts over the whole file; facets without area that were left out on reading are counted too. */
function healthBlock({ health }: MeasureReply, { degenerateFacets }: PatternRecord) {
  return {
    watertight: health.watertight,
    openEdges: health.openEdges,
    crowdedEdges: health.crowdedEdges,
    flippedFacets: health.flippedFacets,
    degenerateFacets: degenerateFacets + health.degenerateFacets,
    duplicateFacets: health.duplicateFacets,
    bodies: health.bodies.length,
  };
}

function measurementBlock({ summary, pull }: MeasureReply) {
  return {
    volumeMm3: summary.volumeMm3,
    volumeBandMm3: summary.volumeBandMm3,
    areaMm2: summary.areaMm2,
    boxMm: boxSize(summary),
    pull,
    rayWallMm: quantileBlock(summary.rayWall),
    ballWallMm: quantileBlock(summary.ballWall),
    draft: summary.draft,
    insideCornerRadiusMm: summary.insideCornerRadiusMm,
  };
}

const boxSize = ({ boxMinMm, boxMaxMm }: PartSummary) =>
  boxMaxMm.map((high, axis) => high - (boxMinMm[axis] ?? 0));

const quantileBlock = ({ p5, median, p95, min, max, hitShare }: WallQuantiles) => ({
  p5,
  median,
  p95,
  min,
  max,
  hitShare,
});
