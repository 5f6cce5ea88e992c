import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  Group,
  Mesh,
  MeshLambertMaterial,
  Plane,
  Sphere,
  Vector3,
} from 'three';
import type { Vec3 } from '../core/mesh/types';
import type { DisplayChunk } from '../jobs/protocol';
import type { PartBox } from './orbitView';

/** Half of the part that a cut takes away: everything past `atMm` along `normal`. */
export interface CutAway {
  readonly normal: Vec3;
  readonly atMm: number;
}

interface DrawnChunk {
  readonly chunk: DisplayChunk;
  readonly geometry: BufferGeometry;
  /** One RGBA word per corner, the same memory as `color`. */
  readonly words: Uint32Array;
  readonly color: BufferAttribute;
}

/**
 * The part's facets in three's scene, flat shaded, one geometry per chunk. Chunks are handed to the graphics card one
 * per frame, and repainted one per frame when the colors change: the page stays usable at a million facets.
 */
export class SurfaceDrawing {
  readonly group = new Group();
  private readonly material = new MeshLambertMaterial({
    vertexColors: true,
    flatShading: true,
    side: DoubleSide,
  });
  private readonly invalidate: () => void;
  private drawn: DrawnChunk[] = [];
  private facetColors: Uint32Array | null = null;
  private plainColor = 0;

  /** `invalidate` asks for a frame. */
  constructor(invalidate: () => void) {
    this.invalidate = invalidate;
  }

  /** Draws other facets from now on. Returns a stop that also takes them away. */
  show(display: readonly DisplayChunk[], { boxMinMm, boxMaxMm }: PartBox): () => void {
    const low = new Vector3(...boxMinMm);
    const high = new Vector3(...boxMaxMm);
    const sphere = new Sphere(low.clone().lerp(high, 0.5), low.distanceTo(high) / 2);
    const stop = onePerFrame(display.length, (i) => this.add(display[i]!, sphere));
    return () => {
      stop();
      for (const { geometry } of this.drawn) geometry.dispose();
      this.drawn = [];
      this.group.clear();
      this.invalidate();
    };
  }

  /** One RGBA word per facet, or null to draw all in `plainColor`. Returns a stop. */
  paint(facetColors: Uint32Array | null, plainColor: number): () => void {
    this.facetColors = facetColors;
    this.plainColor = plainColor;
    const before = [...this.drawn];
    return onePerFrame(before.length, (i) => {
      this.paintChunk(before[i]!);
      before[i]!.color.needsUpdate = true;
      this.invalidate();
    });
  }

  cut(away: CutAway | null): void {
    this.material.clippingPlanes =
      away === null ? [] : [new Plane(new Vector3(...away.normal).negate(), away.atMm)];
    this.material.needsUpdate = true;
    this.invalidate();
  }

  dispose(): void {
    this.material.dispose();
  }

  private add(chunk: DisplayChunk, sphere: Sphere): void {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(chunk.corners, 3));
    const words = new Uint32Array(chunk.corners.length / 3);
    const color = new BufferAttribute(new Uint8Array(words.buffer), 4, true);
    geometry.setAttribute('color', color);
    // The whole part's sphere: measuring each chunk's own would cost a pass over its corners.
    geometry.boundingSphere = sphere;
    const drawn = { chunk, geometry, words, color };
    this.paintChunk(drawn);
    this.drawn.push(drawn);
    this.group.add(new Mesh(geometry, this.material));
    this.invalidate();
  }

  private paintChunk({ chunk, words }: DrawnChunk): void {
    const { facetColors, plainColor } = this;
    if (facetColors === null) {
      words.fill(plainColor);
      return;
    }
    for (let corner = 0, facet = chunk.firstFacet; corner < words.length; corner += 3, facet++) {
      const word = facetColors[facet] ?? plainColor;
      words[corner] = word;
      words[corner + 1] = word;
      words[corner + 2] = word;
    }
  }
}

/** Runs `step(i)` for 0 to count - 1, one per animation frame, so that no frame gets long. Returns a stop. */
function onePerFrame(count: number, step: (i: number) => void): () => void {
  let next = 0;
  let frame = 0;
  const run = () => {
    if (next >= count) return;
    step(next++);
    frame = requestAnimationFrame(run);
  };
  run();
  return () => cancelAnimationFrame(frame);
}
