import { partMesh } from '../../mesh/partMesh';
import { findHealth } from '../../mesh/health';
import type { IndexedMesh } from '../../mesh/types';

/** The closed bodies of a sound pattern, or what keeps it from being one. */
export type Soundness =
  | { readonly sound: true; readonly bodies: readonly IndexedMesh[] }
  | { readonly sound: false; readonly why: string };

/** More bodies than this are a heap of scraps, not a pattern. */
const mostBodies = 60;

const counted = (count: number, one: string, more: string) => `${count} ${count === 1 ? one : more}`;

/**
 * Whether solid booleans may be trusted with a mesh: they refuse one that is not closed. Bodies that run
 * through one another are sound, since they are joined first; whether a body runs through itself shows only against its
 * columns (`castHalves`).
 * @param mesh in the frame that it is to be cut in
 */
export function soundBodies(mesh: IndexedMesh): Soundness {
  const health = findHealth(mesh);
  if (health.openEdges > 0) {
    return {
      sound: false,
      why: `The mesh is not closed: ${counted(health.openEdges, 'edge is', 'edges are')} open.`,
    };
  }
  if (health.crowdedEdges > 0) {
    return {
      sound: false,
      why: `${counted(health.crowdedEdges, 'edge of the mesh has', 'edges of the mesh have')} more than two facets.`,
    };
  }
  if (!health.watertight) {
    return { sound: false, why: 'Facets of the mesh are turned the wrong way round.' };
  }
  if (health.bodies.length > mostBodies) {
    return { sound: false, why: `The mesh falls into ${health.bodies.length} bodies.` };
  }
  const bodies =
    health.bodies.length === 1
      ? [mesh]
      : health.bodies.map((_, body) =>
          partMesh(mesh, health, { body: body + 1, unit: 'mm', scale: 1, winding: 'asFile' }),
        );
  if (health.bodies.every(({ volume }) => volume === null || volume <= 0)) {
    return { sound: false, why: 'The mesh is inside out: it encloses no material.' };
  }
  return { sound: true, bodies };
}
