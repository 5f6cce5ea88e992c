import { extend } from '@react-three/fiber';
import { BufferAttribute, BufferGeometry, Sphere, Vector3 } from 'three';
import type { DisplayChunk } from '../../pipeline/told';
import type { PartBox } from '../orbitView';

/** RGBA word of a facet that no map has colored yet. */
const plainColor = new Uint32Array(new Uint8Array([214, 208, 194, 255]).buffer)[0]!;

/** A chunk of the scene's own: its corners may be let go of. */
export type OwnChunk = { -readonly [Key in keyof DisplayChunk]: DisplayChunk[Key] };

const none = new Float32Array(0);

/** Corners and colors of one chunk; the corners are the chunk's own array, the colors change in place. */
class FacetGeometry extends BufferGeometry {
  private readonly firstFacet: number;
  private readonly color: BufferAttribute;
  /** One RGBA word per corner, the same memory as `color`. */
  private readonly words: Uint32Array;

  /** @param letsGo to let go of the chunk's corners once the graphics card has them; the chunk must be the scene's own */
  constructor(chunk: OwnChunk, { boxMinMm, boxMaxMm }: PartBox, letsGo = false) {
    super();
    this.firstFacet = chunk.firstFacet;
    this.words = new Uint32Array(chunk.corners.length / 3);
    this.color = new BufferAttribute(new Uint8Array(this.words.buffer), 4, true);
    const position = new BufferAttribute(chunk.corners, 3);
    if (letsGo) {
      position.onUpload(() => {
        position.array = none;
        chunk.corners = none;
      });
    }
    this.setAttribute('position', position);
    this.setAttribute('color', this.color);
    // The whole part's sphere: measuring each chunk's own would cost a pass over its corners.
    const low = new Vector3(...boxMinMm);
    const high = new Vector3(...boxMaxMm);
    this.boundingSphere = new Sphere(low.clone().lerp(high, 0.5), low.distanceTo(high) / 2);
  }

  /** One RGBA word per facet of the part, or null to draw all facets plain. Set as a prop of the element. */
  set facetColors(facetColors: Uint32Array | null) {
    const { words } = this;
    if (facetColors === null) words.fill(plainColor);
    else {
      for (let corner = 0, facet = this.firstFacet; corner < words.length; corner += 3, facet++) {
        const word = facetColors[facet] ?? plainColor;
        words[corner] = word;
        words[corner + 1] = word;
        words[corner + 2] = word;
      }
    }
    this.color.needsUpdate = true;
  }
}

/** The geometry as an element of the scene. */
export const ChunkGeometry = extend(FacetGeometry);
