import { useThree } from '@react-three/fiber';
import { useEffect, useRef, useState } from 'react';
import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  Mesh,
  MeshLambertMaterial,
  Plane,
  Sphere,
  Vector3,
} from 'three';
import type { Group } from 'three';
import type { Vec3 } from '../core/mesh/types';
import type { DisplayChunk } from '../jobs/protocol';
import type { PartBox } from './orbitView';

/** Half of the part that a cut takes away: everything past `atMm` along `normal`. */
export interface CutAway {
  readonly normal: Vec3;
  readonly atMm: number;
}

export interface PartSurfaceProps extends PartBox {
  readonly display: readonly DisplayChunk[];
  /** One RGBA word per facet, see `colorFacets`; null draws the part in `plainColor`. */
  readonly facetColors: Uint32Array | null;
  /** RGBA word. */
  readonly plainColor: number;
  readonly cutAway: CutAway | null;
}

/** A word per corner from a word per facet. */
function paint(
  words: Uint32Array,
  chunk: DisplayChunk,
  facetColors: Uint32Array | null,
  plain: number,
): void {
  if (facetColors === null) {
    words.fill(plain);
    return;
  }
  for (let corner = 0, facet = chunk.firstFacet; corner < words.length; corner += 3, facet++) {
    const word = facetColors[facet] ?? plain;
    words[corner] = word;
    words[corner + 1] = word;
    words[corner + 2] = word;
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

/**
 * The part's facets, flat shaded, one geometry per chunk. Chunks are handed to the graphics card one per frame, and
 * repainted one per frame when the colors change: the page stays usable at a million facets.
 */
export function PartSurface({
  display,
  facetColors,
  plainColor,
  boxMinMm,
  boxMaxMm,
  cutAway,
}: PartSurfaceProps) {
  const group = useRef<Group>(null);
  const invalidate = useThree((state) => state.invalidate);
  const colors = useRef({ facetColors, plainColor });
  colors.current = { facetColors, plainColor };
  const [material] = useState(
    () => new MeshLambertMaterial({ vertexColors: true, flatShading: true, side: DoubleSide }),
  );

  useEffect(() => {
    const parent = group.current;
    if (parent === null) return undefined;
    const low = new Vector3(...boxMinMm);
    const high = new Vector3(...boxMaxMm);
    const sphere = new Sphere(low.clone().lerp(high, 0.5), low.distanceTo(high) / 2);
    const stop = onePerFrame(display.length, (i) => {
      const chunk = display[i]!;
      const geometry = new BufferGeometry();
      geometry.setAttribute('position', new BufferAttribute(chunk.corners, 3));
      const words = new Uint32Array(chunk.corners.length / 3);
      paint(words, chunk, colors.current.facetColors, colors.current.plainColor);
      geometry.setAttribute('color', new BufferAttribute(new Uint8Array(words.buffer), 4, true));
      // The whole part's sphere: measuring each chunk's own would cost a pass over its corners.
      geometry.boundingSphere = sphere;
      parent.add(new Mesh(geometry, material));
      invalidate();
    });
    return () => {
      stop();
      for (const child of [...parent.children]) {
        parent.remove(child);
        if (child instanceof Mesh) (child.geometry as BufferGeometry).dispose();
      }
    };
  }, [display, boxMinMm, boxMaxMm, material, invalidate]);

  useEffect(() => {
    const parent = group.current;
    if (parent === null) return undefined;
    return onePerFrame(parent.children.length, (i) => {
      const child = parent.children[i];
      const chunk = display[i];
      if (!(child instanceof Mesh) || chunk === undefined) return;
      const color = (child.geometry as BufferGeometry).getAttribute('color');
      if (!(color instanceof BufferAttribute)) return;
      paint(new Uint32Array(color.array.buffer as ArrayBuffer), chunk, facetColors, plainColor);
      color.needsUpdate = true;
      invalidate();
    });
  }, [display, facetColors, plainColor, invalidate]);

  useEffect(() => {
    material.clippingPlanes =
      cutAway === null ? [] : [new Plane(new Vector3(...cutAway.normal).negate(), cutAway.atMm)];
    material.needsUpdate = true;
    invalidate();
  }, [cutAway, material, invalidate]);

  useEffect(() => () => material.dispose(), [material]);

  return <group ref={group} />;
}
