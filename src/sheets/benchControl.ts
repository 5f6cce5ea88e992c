/** What a sheet may ask of the bench view beside it. */
import type { Vec3 } from '../core/mesh/types';
import type { Probe } from '../pipeline/told';

/** Facets to be marked on the view, with the words that say what they are. */
export interface Marked {
  readonly label: string;
  readonly facets: Uint32Array;
}

export interface BenchControl {
  readonly marked: Marked | null;
  /** Marks facets; null takes the marks off. */
  readonly mark: (marked: Marked | null) => void;
  /** The next click on the part gives a direction to the sheet. */
  readonly picking: boolean;
  /** Starts picking: the callback gets the outward normal of the facet clicked. Calling with null ends it. */
  readonly pickNormal: (onPick: ((normal: Vec3) => void) | null) => void;
  /** The next click on the part is a place for the sheet. */
  readonly pickingPlace: boolean;
  /** Starts picking a place: the callback gets what the click met. Calling with null ends it. */
  readonly pickPlace: (onPick: ((met: Probe) => void) | null) => void;
}
