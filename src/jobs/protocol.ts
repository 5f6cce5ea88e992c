/**
 * The worker boundary: what the page may ask of the bench worker and what comes back. Plain data and flat typed
 * arrays only; arrays in replies are transferred.
 *
 * Order of a session, as the page drives it through `BenchClient` (client.ts, `createBench()`):
 *   importFile(file) -> facts of the file, the mesh is open but not packed yet
 *   measure(choices) -> `onShape` first (draw it), then health, summary and maps
 *   packOpenMesh()   -> the text that is saved and its key; asked for last, so that encoding never delays the maps
 *   openMesh(packed) -> instead of importFile, for a saved project
 *   findPatches, cut, probe, findSelfTouching, castHalves, saveHalf, repairedWalls -> need `measure` first; bestPull needs a
 *   `measure` too; rimOf needs nothing
 *   predictCure      -> the oven run, whose fields stay here; heatCut and heatAt read them
 *
 * One bench worker holds one open mesh, its last measurement and its last oven run. Cancel means terminate; the client then
 * starts a new worker and, before the next job that needs them, opens the mesh, measures it and heats it again by itself.
 */
import type { ClosingHistogram, ClosingSamples } from '../core/closing/closingTypes';
import type { CureComparison } from '../core/cure/compareCure';
import type { DehydrationTreatment } from '../core/cure/dehydration';
import type { LogFit, LogToFit } from '../core/cure/fitToLog';
import type { HeatAtPoint, HeatCut } from '../core/cure/heatFields';
import type { CureChoices, CurePrediction } from '../core/cure/predictCure';
import type { SavedMeshChoices } from '../core/part/measureSaved';
import type {
  MeshFormat,
  MeshHealth,
  Patch,
  PatchBand,
  PullChoice,
  Section,
  SectionPlane,
  Vec3,
} from '../core/mesh/types';
import type { LengthUnit } from '../core/units/length';
import type { PartSummary } from '../core/part/partSummary';
import type { UnitGuess } from '../core/mesh/unitGuess';
import type { MoldGeometry } from '../core/stone/moldGeometry';
import type { PourFindings } from '../core/stone/pours/castHalves';
import type { PourChoices } from '../core/stone/pours/pourChoices';
import type { PullFrame } from '../core/stone/pours/pullFrame';
import type { Repair } from '../core/stone/repairs';

export type { CureComparison } from '../core/cure/compareCure';
export type { LogFit, LogToFit } from '../core/cure/fitToLog';
export type { CureChoices, CurePrediction } from '../core/cure/predictCure';
export type { UnitGuess } from '../core/mesh/unitGuess';
export type { MoldGeometry } from '../core/stone/moldGeometry';
export type { PourFindings } from '../core/stone/pours/castHalves';
export type { PourChoices } from '../core/stone/pours/pourChoices';
export type { PatchBand, PullChoice, Section, SectionPlane } from '../core/mesh/types';

export interface Progress {
  /** What is being done, in the maker's words, e.g. "measuring walls". */
  readonly doing: string;
  /** 0 to 1. */
  readonly share: number;
}

/** A thrown `Problem` or an unexpected error, as plain data. */
export interface JobFailure {
  readonly code: string;
  readonly message: string;
}

/** Facts of an imported file. What is measured afterwards is exactly what `packOpenMesh` saves. */
export interface ImportReply {
  /** Of the file's bytes, lower-case hex. */
  readonly sha256: string;
  readonly format: MeshFormat;
  readonly declaredUnit: LengthUnit | null;
  /** Triangles in the file, before anything was dropped. */
  readonly triangles: number;
  readonly packErrorFileUnits: number;
  /** Facets without area that were left out on reading; the saved mesh does not hold them. */
  readonly degenerateFacets: number;
  readonly notes: readonly string[];
}

/** The open mesh as it is saved. */
export interface PackReply {
  readonly meshKey: string;
  readonly packed: string;
}

/** How the open mesh becomes the part in mm. */
export type MeasureChoices = SavedMeshChoices;

/** A piece of the part for drawing: facets `firstFacet` to `firstFacet + corners.length / 9`. */
export interface DisplayChunk {
  readonly firstFacet: number;
  /** 9 numbers per facet, mm. */
  readonly corners: Float32Array;
}

/**
 * The part in mm as the view draws it, with its long edges split: the facets that maps, probes, places and finding
 * facets speak of. Known long before the walls are measured.
 */
export interface PartShape {
  readonly unitGuess: UnitGuess;
  /** Unit that the part was taken in. */
  readonly unit: LengthUnit;
  /** Size in file units of the whole file, for the unit question. */
  readonly fileBoxSize: Vec3;
  readonly facetCount: number;
  readonly boxMinMm: Vec3;
  readonly boxMaxMm: Vec3;
  /** In facet order, at most `chunkFacets` facets each, so that the page can upload one per frame. */
  readonly display: readonly DisplayChunk[];
}

/** Per-facet arrays that the view colors by; same meaning as in `Measurement`. */
export interface MapArrays {
  readonly rayWallMm: Float32Array;
  readonly ballWallMm: Float32Array;
  readonly draftDeg: Float32Array;
  readonly cornerRadiusMm: Float32Array;
  readonly kind: Uint8Array;
  /** What the balance of the closed mold knows of each facet. */
  readonly closing: ClosingSamples;
}

/** Facets on the view that show a health finding; `MeshHealth.show` counts the facets of the whole file. */
export type FindingFacets = { readonly [Finding in keyof MeshHealth['show']]: Uint32Array };

export interface MeasureReply {
  /** Of the whole file as saved. */
  readonly health: MeshHealth;
  readonly findingFacets: FindingFacets;
  readonly summary: PartSummary;
  readonly maps: MapArrays;
}

/** Facets that cut or touch others. */
export interface SelfTouching {
  /** As the file counts them. */
  readonly facetCount: number;
  /** As the view counts them. */
  readonly facets: Uint32Array;
}

export interface Probe {
  readonly facet: number;
  readonly pointMm: Vec3;
  readonly normal: Vec3;
  readonly rayWallMm: number | null;
  readonly ballWallMm: number | null;
  readonly draftDeg: number;
  readonly cornerRadiusMm: number | null;
  readonly kind: number;
  /** Same words as a patch's place. */
  readonly place: string;
}

/** A stone half for drawing: facets in the part's own axes, in chunks as in `PartShape.display`. */
export interface HalfShape {
  readonly facetCount: number;
  readonly boxMinMm: Vec3;
  readonly boxMaxMm: Vec3;
  readonly display: readonly DisplayChunk[];
}

/** The two pours around the measured part. */
export interface MoldReply {
  readonly geometry: MoldGeometry;
  readonly findings: PourFindings;
  /** null when the volumes were integrated along the pull: then there is nothing to draw or save. */
  readonly halves: { readonly negative: HalfShape; readonly positive: HalfShape } | null;
}

export type StoneHalf = 'negative' | 'positive';

/** The closing walls of the measured part as the repaired stone leaves them. */
export interface RepairedWalls {
  readonly closing: ClosingHistogram;
  /** Per facet, in place of `MapArrays.closing.wallMm`. */
  readonly wallMm: ClosingSamples['wallMm'];
}

/** A cut through the mold in the oven; `atMm` along the axis of the pull frame, null for the middle. */
export interface HeatCutQuestion {
  readonly treatment: DehydrationTreatment;
  readonly axis: 0 | 1 | 2;
  readonly atMm: number | null;
  readonly timeS: number;
}

export interface HeatCutReply {
  readonly cut: HeatCut;
  /** Ends of the mold along each axis, pull frame. */
  readonly lowMm: Vec3;
  readonly highMm: Vec3;
  /** Where the pull frame lies in the part's own axes. */
  readonly frame: PullFrame;
}

export type OnProgress = (progress: Progress) => void;

/** What the worker offers; `BenchSession` is the one implementation, in the worker or on the caller's own thread. */
export interface BenchWorker {
  /**
   * For a moment when nothing is asked: makes the first measurement faster. Changes nothing that is open. Replies with a
   * made-up part as measured, for rehearsing what follows; null when there was no time for that.
   */
  getReady(): Promise<MeasuredShape | null>;
  importFile(file: Blob, fileName: string, progress: OnProgress): Promise<ImportReply>;
  packOpenMesh(): Promise<PackReply>;
  openMesh(packed: string): Promise<void>;
  measure(
    choices: MeasureChoices,
    progress: OnProgress,
    onShape: (shape: PartShape) => void,
  ): Promise<MeasureReply>;
  findPatches(band: PatchBand): Promise<readonly Patch[]>;
  cut(plane: SectionPlane): Promise<Section>;
  probe(originMm: Vec3, direction: Vec3): Promise<Probe | null>;
  bestPull(progress: OnProgress): Promise<PullChoice>;
  findSelfTouching(progress: OnProgress): Promise<SelfTouching>;
  castHalves(choices: PourChoices, progress: OnProgress): Promise<MoldReply>;
  /** The oven run through the mold around the measured part; coarse at once, refined when the page asks again. */
  predictCure(
    choices: CureChoices,
    stage: CurePrediction['stage'],
    progress: OnProgress,
  ): Promise<CurePrediction>;
  /** The mold of the last prediction, cut at a time of the run; null when nothing was predicted. */
  heatCut(question: HeatCutQuestion): Promise<HeatCutReply | null>;
  /** Temperature over the run at a point of the part's own axes; null outside the mold, or when nothing was predicted. */
  heatAt(treatment: DehydrationTreatment, pointMm: Vec3): Promise<HeatAtPoint | null>;
  /** Air film and dampness that make the prediction follow a log. */
  fitCure(choices: CureChoices, log: LogToFit, progress: OnProgress): Promise<LogFit>;
  /** Programs up to `mostC` and other molds side by side. */
  compareCure(choices: CureChoices, mostC: number, progress: OnProgress): Promise<CureComparison>;
  /** Binary STL of one half in mm, in the part's own axes. Casts again only for other choices than last time. */
  saveHalf(half: StoneHalf, choices: PourChoices, progress: OnProgress): Promise<Uint8Array>;
  repairedWalls(repairs: readonly Repair[]): Promise<RepairedWalls>;
  /** Outer outline along the pull of another saved part; what is on the bench stays there. */
  rimOf(packed: string, part: MeasureChoices, pours: PourChoices): Promise<MoldGeometry['rimOutlineMm']>;
}

export interface JobOptions {
  /** Aborting cancels the job, whether it waits or runs. */
  readonly signal?: AbortSignal;
  /** Called at most every 100 ms, and not after the job has settled. */
  readonly onProgress?: OnProgress;
}

/** The measure reply with the shape that `onShape` has already told. */
export interface MeasuredShape extends MeasureReply {
  readonly shape: PartShape;
}

/**
 * What the page uses. One job runs at a time, the others wait in order. A newer question of the same kind makes an
 * older one outdated: its promise rejects and its reply never arrives. Every rejection is a `Problem`; codes:
 * `job.canceled` (signal or `dispose`), `job.outdated`, `job.memory`, `job.crashed`, or whatever core threw.
 * `wasDropped(error)` (client.ts) tells the first two apart from real failures.
 */
export interface BenchClient {
  getReady(options?: JobOptions): Promise<MeasuredShape | null>;
  importFile(file: Blob, fileName: string, options?: JobOptions): Promise<ImportReply>;
  packOpenMesh(options?: JobOptions): Promise<PackReply>;
  openMesh(packed: string, options?: JobOptions): Promise<void>;
  measure(
    choices: MeasureChoices,
    options?: JobOptions & { readonly onShape?: (shape: PartShape) => void },
  ): Promise<MeasuredShape>;
  findPatches(band: PatchBand, options?: JobOptions): Promise<readonly Patch[]>;
  cut(plane: SectionPlane, options?: JobOptions): Promise<Section>;
  probe(originMm: Vec3, direction: Vec3, options?: JobOptions): Promise<Probe | null>;
  bestPull(options?: JobOptions): Promise<PullChoice>;
  findSelfTouching(options?: JobOptions): Promise<SelfTouching>;
  castHalves(choices: PourChoices, options?: JobOptions): Promise<MoldReply>;
  predictCure(
    choices: CureChoices,
    stage: CurePrediction['stage'],
    options?: JobOptions,
  ): Promise<CurePrediction>;
  heatCut(question: HeatCutQuestion, options?: JobOptions): Promise<HeatCutReply | null>;
  heatAt(treatment: DehydrationTreatment, pointMm: Vec3, options?: JobOptions): Promise<HeatAtPoint | null>;
  fitCure(choices: CureChoices, log: LogToFit, options?: JobOptions): Promise<LogFit>;
  compareCure(choices: CureChoices, mostC: number, options?: JobOptions): Promise<CureComparison>;
  saveHalf(half: StoneHalf, choices: PourChoices, options?: JobOptions): Promise<Uint8Array>;
  repairedWalls(repairs: readonly Repair[], options?: JobOptions): Promise<RepairedWalls>;
  rimOf(
    packed: string,
    part: MeasureChoices,
    pours: PourChoices,
    options?: JobOptions,
  ): Promise<MoldGeometry['rimOutlineMm']>;
  /** Nothing has been heard of the running job for long: it may be at a long step, or its worker may have ended. */
  readonly isSilent: () => boolean;
  /** Called when `isSilent` has changed; returns how to stop listening. */
  readonly onSilence: (listener: () => void) => () => void;
  /** Ends the worker and begins the running job again in a new one. */
  startAnew(): void;
  /** Ends the worker; waiting and running jobs are canceled. The client is of no use afterwards. */
  dispose(): void;
}
