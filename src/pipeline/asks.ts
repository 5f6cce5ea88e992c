/** What the maker may ask of the results: cuts, probes, files to save. What answers it stands in `askWork.ts`. */
import type { CureComparison } from '../core/cure/compareCure';
import type { FitChoices, FitFindings } from '../core/fit/findings';
import type { DehydrationTreatment } from '../core/cure/dehydration';
import type { LogFit, LogToFit } from '../core/cure/fitToLog';
import type { HeatAtPoint } from '../core/cure/heatFields';
import type { CureChoices } from '../core/cure/predictCure';
import type { SavedMeshChoices } from '../core/mesh/partFromSaved';
import type { BestPull } from '../core/mesh/bestPull';
import type { FacePicture } from '../core/mesh/facePictures';
import type { Section, SectionPlane, Vec3 } from '../core/mesh/types';
import type { RightWayUp } from '../core/mesh/rightWayUp';
import type { MoldGeometry } from '../core/stone/moldGeometry';
import type { PatternChoices, PatternSummary } from '../core/pattern/makePattern';
import type { CutPlies, CuttingChoices } from '../core/drape/cutPlies';
import type { PourChoices } from '../core/stone/pours/pourChoices';
import type { FabricNest, FabricRoll, NestChoices } from '../core/templates/nest';
import type { PlyPiece } from '../core/templates/piece';
import type { PaperChoice } from '../core/templates/templatePages';
import type { TemplateFiles } from '../paper/templateFiles';
import type { PatternRecord } from '../steps/shared/context';
import type { PlanFound, PlanGiven } from './plan';
import type { DisplayChunk, HeatCutQuestion, HeatCutReply, Probe, SelfTouching, StoneHalf } from './told';

/** The oven run that is shown. */
export type RunShown = 'oven run' | 'fine oven run';

export interface Asks {
  readonly cut: { readonly given: SectionPlane; readonly reply: Section };
  readonly probe: {
    readonly given: { readonly originMm: Vec3; readonly direction: Vec3 };
    /** null when the line of sight misses the part. */
    readonly reply: Probe | null;
  };
  /** Along the rim's normal, with what leaning off it would gain. */
  readonly 'best pull': { readonly given: null; readonly reply: BestPull };
  readonly 'right way up': { readonly given: null; readonly reply: RightWayUp };
  /** Both sides along the likeliest pull, for the maker to choose from. */
  readonly 'face pictures': { readonly given: null; readonly reply: readonly FacePicture[] };
  readonly 'self touching': { readonly given: null; readonly reply: SelfTouching };
  /** Binary STL in mm, in the part's own axes. */
  readonly 'saved half': { readonly given: StoneHalf; readonly reply: Uint8Array };
  readonly 'heat cut': {
    readonly given: HeatCutQuestion & { readonly run: RunShown };
    readonly reply: HeatCutReply | null;
  };
  /** Temperature over the run at a point of the part's own axes. */
  readonly 'heat at': {
    readonly given: {
      readonly run: RunShown;
      readonly treatment: DehydrationTreatment;
      readonly pointMm: Vec3;
    };
    /** `heat` is null outside the mold. */
    readonly reply: { readonly heat: HeatAtPoint | null };
  };
  /** Air film and dampness that make the prediction follow a log. */
  readonly fit: {
    readonly given: { readonly choices: CureChoices; readonly log: LogToFit };
    readonly reply: LogFit;
  };
  /** Programs up to `mostC` and other molds side by side. */
  readonly comparison: {
    readonly given: { readonly choices: CureChoices; readonly mostC: number };
    readonly reply: CureComparison;
  };
  /** The shell to print, from the outside of the part. */
  readonly pattern: {
    readonly given: PatternChoices;
    readonly reply: {
      readonly summary: PatternSummary;
      /** Binary STL in mm, in the part's own axes. */
      readonly stl: Uint8Array;
      /** The same facets to draw. */
      readonly display: readonly DisplayChunk[];
      /** Per facet, mm: what it adds to the import, less than 0 where it takes off; NaN for core face and rim. */
      readonly changeMm: Float32Array;
    };
  };
  /** A made pattern as it is printed: on its rim, in mm, larger by the print scale. */
  readonly 'print file': {
    readonly given: {
      /** What `pattern` replied. */
      readonly stl: Uint8Array;
      readonly pull: Vec3;
      readonly printScale: number;
      readonly format: 'stl' | '3mf';
    };
    readonly reply: Uint8Array;
  };
  /** Each ply of the stack laid on its own face, and the flat pieces. */
  readonly cutting: {
    readonly given: {
      readonly choices: CuttingChoices;
      /** What `pattern` replied, to lay on that and not on the part; null for the part. */
      readonly stl: Uint8Array | null;
    };
    readonly reply: CutPlies;
  };
  /** Where each flat piece is cut from remnants and rolls. */
  readonly nest: {
    readonly given: {
      readonly pieces: readonly PlyPiece[];
      readonly rolls: readonly FabricRoll[];
      readonly choices: NestChoices;
    };
    readonly reply: readonly FabricNest[];
  };
  /** Paper at true size, and drawings for a knife plotter. */
  readonly templates: {
    readonly given: { readonly nests: readonly FabricNest[]; readonly paper: PaperChoice };
    readonly reply: TemplateFiles;
  };
  /** Changes that were tried and help; everything that the question asks is worked out first. */
  readonly plan: { readonly given: PlanGiven; readonly reply: PlanFound };
  /** Rims, contents and posts; `mate` is the other half as saved, null for none. */
  readonly contents: {
    readonly given: {
      readonly choices: FitChoices;
      readonly mate: { readonly packed: string; readonly part: SavedMeshChoices } | null;
    };
    readonly reply: FitFindings;
  };
  /** A closed solid of the whole enclosure as its two halves, parted across the pull. */
  readonly split: {
    readonly given: {
      readonly heightMm: number;
      readonly fileNames: readonly [along: string, against: string];
    };
    readonly reply: { readonly along: SplitHalf; readonly against: SplitHalf };
  };
  /** Outer outline along the pull of another saved part. */
  readonly rim: {
    readonly given: {
      readonly packed: string;
      readonly part: SavedMeshChoices;
      readonly pours: PourChoices;
    };
    readonly reply: MoldGeometry['rimOutlineMm'];
  };
}
export type AskName = keyof Asks;

/** A half that was split off, as a pattern to be kept, in mm and in the axes of the solid. */
export interface SplitHalf {
  readonly pattern: PatternRecord;
  readonly packed: string;
  readonly stl: Uint8Array;
  readonly volumeMm3: number;
}

/** These take seconds: worth a new worker when nobody wants the answer any longer. */
export const longAsks: ReadonlySet<AskName> = new Set([
  'best pull',
  'self touching',
  'saved half',
  'fit',
  'comparison',
  'pattern',
  'print file',
  'cutting',
  'nest',
  'templates',
  'plan',
  'contents',
  'split',
]);
