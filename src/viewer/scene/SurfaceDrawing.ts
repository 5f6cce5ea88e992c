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
import type { DisplayChunk } from '../../jobs/protocol';
import type { PartBox } from '../orbitView';

interface DrawnChunk {
  readonly chunk: DisplayChunk;
  readonly geometry: BufferGeometry;
  /** One RGBA word per corner, the same memory as `color`. */
  readonly words: Uint32Array;
  readonly color: BufferAttribute;
}

/** RGBA word of a facet that no map has colored yet. */
const plainColor = new Uint32Array(new Uint8Array([214, 208, 194, 255]).buffer)[0]!;

/** The part's facets in three's scene, flat shaded, one geometry per chunk. */
export class SurfaceDrawing {
  readonly group = new Group();
  private readonly material = new MeshLambertMaterial({
    vertexColors: true,
    flatShading: true,
    side: DoubleSide,
  });
  private drawn: DrawnChunk[] = [];
  private facetColors: Uint32Array | null = null;
  private sphere = new Sphere();

  /** Takes away what was drawn; chunks of another part follow. */
  begin({ boxMinMm, boxMaxMm }: PartBox): void {
    this.clear();
    const low = new Vector3(...boxMinMm);
    const high = new Vector3(...boxMaxMm);
    this.sphere = new Sphere(low.clone().lerp(high, 0.5), low.distanceTo(high) / 2);
    this.facetColors = null;
  }

  add(chunk: DisplayChunk): void {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(chunk.corners, 3));
    const words = new Uint32Array(chunk.corners.length / 3);
    const color = new BufferAttribute(new Uint8Array(words.buffer), 4, true);
    geometry.setAttribute('color', color);
    // The whole part's sphere: measuring each chunk's own would cost a pass over its corners.
    geometry.boundingSphere = this.sphere;
    const drawn = { chunk, geometry, words, color };
    this.paintChunk(drawn);
    this.drawn.push(drawn);
    this.group.add(new Mesh(geometry, this.material));
  }

  /** One RGBA word per facet, or null to draw all facets plain. */
  paint(facetColors: Uint32Array | null): void {
    this.facetColors = facetColors;
    for (const drawn of this.drawn) {
      this.paintChunk(drawn);
      drawn.color.needsUpdate = true;
    }
  }

  /** Planes that keep what lies on their positive side. */
  cut(planes: Plane[]): void {
    this.material.clippingPlanes = planes;
    this.material.needsUpdate = true;
  }

  dispose(): void {
    this.clear();
    this.material.dispose();
  }

  private clear(): void {
    for (const { geometry } of this.drawn) geometry.dispose();
    this.drawn = [];
    this.group.clear();
  }

  private paintChunk({ chunk, words }: DrawnChunk): void {
    const { facetColors } = this;
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
