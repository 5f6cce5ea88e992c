/** What the Pattern sheet may ask for, and what has come of it in this session. */
import type { PatternChoices, PatternSummary } from '../../core/pattern/makePattern';
import type { Asks } from '../../pipeline/asks';

export interface MadeHere {
  readonly choices: PatternChoices;
  readonly summary: PatternSummary;
  /** Binary STL in mm, in the axes of the import. */
  readonly stl: Uint8Array;
  /** The same to draw, and what each facet adds to the import; see `Asks.pattern`. */
  readonly display: Asks['pattern']['reply']['display'];
  readonly changeMm: Float32Array;
}

/** A made pattern that has taken the place of the import, as the project keeps it. */
export interface UsedPattern {
  /** Name of the import. */
  readonly madeOf: string;
  readonly choices: PatternChoices;
  readonly summary: PatternSummary;
  /** What both models take where storage is full, in the maker's words; '' while all is saved. */
  readonly whyUnsaved: string;
}

export interface PatternControl {
  /** What it would be made with now; null while that is not known. */
  readonly choices: PatternChoices | null;
  /** Why the choices are not known, or nothing can be made with them; '' while neither is so. */
  readonly why: string;
  /** Of the present model and inputs; null when none is. */
  readonly made: MadeHere | null;
  /** One was made with other inputs, or of another model. */
  readonly isOutdated: boolean;
  /** The present model is this one. */
  readonly used: UsedPattern | null;
  /** A file is being imported, or a pattern is being made. */
  readonly isBusy: boolean;
  readonly make: () => void;
  readonly save: () => void;
  /** Saved as it is printed: on its rim, at the print scale. */
  readonly saveToPrint: (format: 'stl' | '3mf') => void;
  /** The sheet at true size of where holes are cut. */
  readonly saveTemplate: (made: PatternSummary) => void;
  readonly use: () => void;
  readonly goBack: () => void;
}
