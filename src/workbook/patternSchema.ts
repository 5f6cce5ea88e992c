/** What is saved of a pattern file, and of what a made pattern was made of. */
import * as z from 'zod/mini';
import type { PatternChoices, PatternSummary } from '../core/pattern/makePattern';
import type { PartInputs } from '../steps/inputs/part';
import type { PatternRecord } from '../steps/shared/context';

const atLeastZero = z.number().check(z.minimum(0));
const count = z.number().check(z.minimum(0), z.multipleOf(1));

export const patternSchema = z.object({
  fileName: z.string(),
  sha256: z.string().check(z.regex(/^[0-9a-f]{64}$/)),
  format: z.enum(['stl-binary', 'stl-ascii', 'obj', '3mf']),
  declaredUnit: z.nullable(z.enum(['mm', 'cm', 'm', 'in'])),
  triangles: count,
  meshKey: z.string().check(z.regex(/^[0-9a-f]{32}$/)),
  packErrorFileUnits: atLeastZero,
  degenerateFacets: count,
  notes: z.array(z.string()),
});

/** Kept while a made pattern is in use, so that the maker can go back to the import. */
export interface MadeOf {
  readonly import: PatternRecord;
  /** How the import is read; a made pattern is read in its own way. */
  readonly part: Pick<PartInputs, 'unit' | 'body' | 'scale' | 'nominalWall' | 'rightWayUp' | 'pull'>;
  readonly choices: PatternChoices;
  readonly summary: PatternSummary;
}

const point = z.tuple([z.number(), z.number(), z.number()]);
const runs = z.array(point);

const choicesSchema = z.object({
  pull: point,
  wallMm: z.number(),
  draftDeg: z.number(),
  neutralPlane: z.enum(['rim', 'top']),
  insideRadiusMm: z.number(),
  edges: z.enum(['sharp', 'eased']),
  keepHolesOverMm: z.nullable(z.number()),
  gridMm: z.number(),
});

const summarySchema = z.object({
  triangles: count,
  wallMm: z.object({ p1: z.number(), median: z.number(), p99: z.number() }),
  leastDraftDeg: z.number(),
  shareUnderDraft: z.number(),
  addedShare: z.number(),
  addedMaxMm: z.number(),
  takenMaxMm: z.number(),
  rimShiftMm: z.object({ median: z.number(), p99: z.number(), max: z.number() }),
  holes: z.array(
    z.object({
      areaMm2: z.number(),
      depthMm: z.number(),
      centerMm: point,
      plugged: z.boolean(),
      runsMm: runs,
    }),
  ),
  filled: z.array(z.object({ volumeMm3: z.number(), centerMm: point })),
  filledMm3: z.number(),
  template: z.nullable(
    z.object({
      outlineMm: z.array(z.number()),
      stepMm: z.number(),
      holes: z.array(z.object({ number: count, runsMm: runs })),
    }),
  ),
  movedMm: z.number(),
  layerSteps: z.object({ onRim: z.number(), onLongSide: z.number(), onShortSide: z.number() }),
});

export const madeOfSchema = z.object({
  import: patternSchema,
  part: z.object({
    unit: z.enum(['unconfirmed', 'mm', 'cm', 'm', 'in']),
    body: count,
    scale: z.number(),
    nominalWall: z.enum(['model', 'print']),
    rightWayUp: z.enum(['settled', 'asked']),
    pull: point,
  }),
  choices: choicesSchema,
  summary: summarySchema,
});
