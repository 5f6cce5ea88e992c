/**
 * What the stages and questions answer: plain data and flat typed arrays, so that it can cross to another thread. The full
 * results, meshes and fields, stay with the stages (`results.ts`).
 */
import type { ClosingHistogram, ClosingSamples } from '../core/closing/closingTypes';
import type { DehydrationTreatment } from '../core/cure/dehydration';
import type { HeatCut } from '../core/cure/heatFields';
import type { CurePrediction } from '../core/cure/predictCure';
import type { MeshFormat, MeshHealth, Patch, Vec3 } from '../core/mesh/types';
import type { PartSummary } from '../core/part/partSummary';
import type { LengthUnit } from '../core/units/length';
import type { UnitGuess } from '../core/mesh/unitGuess';
import type { MoldGeometry } from '../core/stone/moldGeometry';
import type { PourFindings } from '../core/stone/pours/castHalves';
import type { PullFrame } from '../core/stone/pours/pullFrame';

/** Facts of an imported file. What is measured afterwards is exactly what is saved. */
export interface FileFacts {
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
  /** The pull that it was measured along, a unit vector. */
  readonly pull: Vec3;
  readonly maps: MapArrays;
}

/** A measurement with the shape that it was taken on. */
export interface MeasuredShape extends MeasureReply {
  readonly shape: PartShape;
}

/** The closing walls of the measured part as the repaired stone leaves them. */
export interface RepairedWalls {
  readonly closing: ClosingHistogram;
  /** Per facet, in place of `MapArrays.closing.wallMm`. */
  readonly wallMm: ClosingSamples['wallMm'];
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

/** What each stage tells. */
export interface Told {
  readonly part: PartShape;
  /** Walls are told with the measurement that they belong to. */
  readonly walls: null;
  readonly measurement: MeasureReply;
  readonly places: readonly Patch[];
  /** null: nothing was repaired. */
  readonly 'repaired walls': RepairedWalls | null;
  readonly halves: MoldReply;
  readonly 'filled mold': null;
  readonly 'oven run': CurePrediction;
  readonly 'fine oven run': CurePrediction;
}

export type StageName = keyof Told;

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

/** What is being done, in the maker's words, e.g. "measuring walls", and the share of it done, 0 to 1. */
export type OnProgress = (doing: string, share: number) => void;
