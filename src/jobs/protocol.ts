/**
 * The worker boundary: what the page may ask of the bench worker and what comes back. Plain data and flat typed
 * arrays only; arrays in replies are transferred. One bench worker holds one open mesh; cancel means terminate,
 * after which the client starts a new worker and opens the saved mesh again.
 */
import type {
  LengthUnit,
  MeshHealth,
  PartSummary,
  Patch,
  PatchBand,
  PullChoice,
  Section,
  SectionPlane,
  Vec3,
} from '../core/mesh/types';

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

export interface ImportReply {
  readonly sha256: string;
  readonly format: 'stl-binary' | 'stl-ascii' | 'obj' | '3mf';
  readonly declaredUnit: LengthUnit | null;
  readonly triangles: number;
  readonly meshKey: string;
  /** The mesh as it is saved; what is measured afterwards is exactly this. */
  readonly packed: string;
  readonly packErrorFileUnits: number;
  readonly notes: readonly string[];
}

/** How the open mesh becomes the part in mm. */
export interface MeasureChoices {
  /** Confirmed unit, or null to take the declared or guessed one. */
  readonly unit: LengthUnit | null;
  readonly declaredUnit: LengthUnit | null;
  /** 0 = all bodies together, else 1-based body number. */
  readonly body: number;
  readonly scale: number;
  readonly pull: Vec3;
  readonly winding: 'repair' | 'asFile';
  readonly leastDraftDeg: number;
}

/** A piece of the part for drawing: facets `firstFacet` to `firstFacet + corners.length / 9`. */
export interface DisplayChunk {
  readonly firstFacet: number;
  /** 9 numbers per facet, mm. */
  readonly corners: Float32Array;
}

export interface UnitGuess {
  readonly unit: LengthUnit;
  /** False when the box is not plausible as mm and the maker should confirm. */
  readonly sure: boolean;
  readonly reason: string;
}

/** Per-facet arrays that the view colors by; same meaning as in `Measurement`. */
export interface MapArrays {
  readonly rayWallMm: Float32Array;
  readonly ballWallMm: Float32Array;
  readonly draftDeg: Float32Array;
  readonly cornerRadiusMm: Float32Array;
  readonly kind: Uint8Array;
}

export interface MeasureReply {
  readonly unitGuess: UnitGuess;
  /** Size in file units of the whole file, for the unit question. */
  readonly fileBoxSize: Vec3;
  readonly health: MeshHealth;
  readonly summary: PartSummary;
  readonly maps: MapArrays;
  readonly display: readonly DisplayChunk[];
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

/** What the worker offers. `progress` is called at most every 50 ms. */
export interface BenchWorker {
  importFile(bytes: ArrayBuffer, fileName: string, progress: (p: Progress) => void): Promise<ImportReply>;
  openMesh(packed: string): Promise<void>;
  measure(choices: MeasureChoices, progress: (p: Progress) => void): Promise<MeasureReply>;
  findPatches(band: PatchBand): Promise<readonly Patch[]>;
  cut(plane: SectionPlane): Promise<Section>;
  probe(originMm: Vec3, direction: Vec3): Promise<Probe | null>;
  bestPull(progress: (p: Progress) => void): Promise<PullChoice>;
  findSelfTouching(progress: (p: Progress) => void): Promise<Uint32Array>;
}
