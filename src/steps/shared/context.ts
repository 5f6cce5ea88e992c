/** What a step report is worked out from: inputs that the maker gave, and what was measured. */
import type { StepReport } from '../../core/figure';
import type { CurePrediction } from '../../core/cure/predictCure';
import type { FitFindings } from '../../core/fit/findings';
import type { MeshHealth, Patch, Vec3 } from '../../core/mesh/types';
import type { LengthUnit } from '../../core/units/length';
import type { PartSummary } from '../../core/part/partSummary';
import type { MoldGeometry } from '../../core/stone/moldGeometry';
import type { PourFindings } from '../../core/stone/pours/castHalves';
import type { FinishedRim } from '../../core/stone/rimMatch';
import type { AwaitedResult } from '../kit/awaited';
import type { ProjectInputs } from '../inputs/project';
import type { Origins } from './origins';

/** Facts of the imported file; kept in the project because they cannot be had from the saved mesh. */
export interface PatternRecord {
  readonly fileName: string;
  /** Of the file's bytes, lower-case hex. */
  readonly sha256: string;
  readonly format: 'stl-binary' | 'stl-ascii' | 'obj' | '3mf';
  readonly declaredUnit: 'mm' | 'cm' | 'm' | 'in' | null;
  /** Triangles in the file, before anything was dropped. */
  readonly triangles: number;
  /** Key of the saved mesh (hash of its packed form). */
  readonly meshKey: string;
  /** Largest distance between a saved and a read vertex, in file units. */
  readonly packErrorFileUnits: number;
  /** Facets without area that were left out on reading; the saved mesh does not hold them. */
  readonly degenerateFacets: number;
  readonly notes: readonly string[];
}

/** Result of measuring the saved mesh with the part inputs; null while it is being worked out or without a mesh. */
export interface MeasuredPart {
  readonly health: MeshHealth;
  readonly summary: PartSummary;
  /** Ranked patches for the present band and least draft; null while they are being worked out. */
  readonly patches: readonly Patch[] | null;
  /** The unit that the box suggests, whether or not the maker has confirmed one. */
  readonly unitGuess: { readonly unit: LengthUnit; readonly sure: boolean; readonly reason: string };
  /** Size of the whole file's box, in file units. */
  readonly fileBoxSize: Vec3;
}

/** The other half of the same enclosure, worked out in its own project. */
export interface OtherHalf {
  /** Name of its project. */
  readonly name: string;
  /** `finishedRim` of its own context (steps/mold/sizes). */
  readonly rim: FinishedRim;
}

/** Why something is not known, and what to do. */
export interface Missing {
  readonly reason: string;
  readonly fix: string;
}

export interface StepContext {
  readonly inputs: ProjectInputs;
  readonly pattern: PatternRecord | null;
  readonly measured: MeasuredPart | null;
  /** The two stone halves for the present box; null while they are being worked out, or when they cannot be. */
  readonly mold: MoldGeometry | null;
  /** What the pours show beside their volumes; left out or null when it was not looked for. */
  readonly pourFindings?: PourFindings | null;
  /** Why the halves cannot be had, in the maker's words; left out or null while nothing is wrong. */
  readonly moldProblem?: string | null;
  /** Left out or null when there is no other half, or its rim is not known. */
  readonly otherHalf?: OtherHalf | null;
  /** The oven run for the present inputs; left out or null while it is being worked out, or when it cannot be. */
  readonly cure?: CurePrediction | null;
  /** Why the oven run cannot be had, in the maker's words; left out or null while nothing is wrong. */
  readonly cureProblem?: string | null;
  /** Why nothing after Part can be said of this model; left out or null where it can (`held.ts`). */
  readonly held?: Missing | null;
  /** Where the entries come from that were taken from cards of the shelf; left out where none was. */
  readonly origins?: Origins;
  /** Rims, contents and posts; left out or null while nothing is entered for them, or they are not worked out. */
  readonly fit?: FitFindings | null;
  /** What stands in the way of that; left out where nothing does. */
  readonly fitTrouble?: FitTrouble;
  /** Results that are not in; left out where everything is worked out at once. */
  readonly awaited?: readonly AwaitedResult[];
}

/** In the maker's words; null where nothing is wrong. */
export interface FitTrouble {
  /** Why it could not be worked out. */
  readonly asked: string | null;
  /** Why the other half that is kept cannot be compared. */
  readonly mate: string | null;
}

/** What a step has reported, for the steps after it. */
export interface ReportBefore {
  readonly title: string;
  readonly report: StepReport;
}
