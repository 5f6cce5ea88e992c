/** What the page tells the scene, and what the scene tells the page; plain data, so that the scene may be a worker. */
import type { Section, SectionPlane, Vec3 } from '../../core/mesh/types';
import type { DisplayChunk } from '../../pipeline/told';
import type { DrawnHeat } from '../heatSheet';
import type { Paint } from '../mapColors';
import type { OrbitView, PartBox } from '../orbitView';
import type { ViewTheme } from '../viewTheme';

/** What is drawn over the part. */
export interface SceneMarks {
  readonly pull: Vec3;
  readonly theme: ViewTheme;
  readonly placeMm: Vec3 | null;
  /** 3 numbers per dot, mm. */
  readonly dotsMm: Float32Array | null;
  readonly plane: SectionPlane | null;
  readonly section: Section | null;
}

/** Both stone halves where they stand when the mold is closed, in the part's own axes. */
export interface DrawnHalves {
  readonly negative: readonly DisplayChunk[];
  readonly positive: readonly DisplayChunk[];
}

/** A made pattern beside the part that it was made of. */
export interface PaintedPattern {
  readonly display: readonly DisplayChunk[];
  readonly paint: Paint;
}

/** What of pattern and stone is shown, and how far each half is pulled off the pattern along the pull. */
export interface StoneView {
  readonly apartMm: number;
  readonly shows: { readonly negative: boolean; readonly pattern: boolean; readonly positive: boolean };
}

export type ToScene =
  | {
      readonly kind: 'size';
      readonly widthPx: number;
      readonly heightPx: number;
      readonly pixelRatio: number;
    }
  /** Another part: what was drawn is taken away, its chunks follow. */
  | { readonly kind: 'part'; readonly box: PartBox }
  /** `last` asks for a picture: none is drawn for the chunks before it. */
  | { readonly kind: 'chunk'; readonly chunk: DisplayChunk; readonly last: boolean }
  /** Null draws all facets plain. */
  | { readonly kind: 'paint'; readonly paint: Paint | null }
  /** Null takes the stone away. */
  | { readonly kind: 'halves'; readonly halves: DrawnHalves | null }
  | { readonly kind: 'stone'; readonly stone: StoneView }
  /** Null takes the cut away. */
  | { readonly kind: 'heat'; readonly heat: DrawnHeat | null }
  /** Null takes the made pattern away. */
  | { readonly kind: 'made'; readonly made: PaintedPattern | null }
  /** Where the made pattern ends and the part begins. */
  | { readonly kind: 'split'; readonly split: SectionPlane | null }
  | { readonly kind: 'view'; readonly view: OrbitView }
  | { readonly kind: 'marks'; readonly marks: SceneMarks };

/** The first message to a scene worker. */
export interface SceneStart {
  readonly kind: 'canvas';
  readonly canvas: OffscreenCanvas;
}

/** The scene cannot draw: it never could (no WebGL), its program could not be loaded, or its context was taken away. */
export interface FromScene {
  readonly kind: 'failed' | 'missing' | 'lost';
}
