/**
 * Solid booleans of manifold-3d on our own meshes. `prepareSolids()` is awaited once; everything after it is
 * synchronous. Its solids live outside the garbage collector, so each job keeps them in a `SolidBin` and empties it.
 */
import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import type { IndexedMesh } from '../../mesh/types';
import { Problem } from '../../problem';

export type Solid = Manifold;

let library: ManifoldToplevel | null = null;

/** @param wasmUrl where the browser finds manifold.wasm; Node finds it beside the package */
export async function prepareSolids(wasmUrl?: string): Promise<void> {
  if (library !== null) return;
  const { default: start } = await import('manifold-3d');
  const started = await start(wasmUrl === undefined ? undefined : { locateFile: () => wasmUrl });
  started.setup();
  library = started;
}

function ready(): ManifoldToplevel {
  if (library === null) throw new Error('prepareSolids() has to be awaited before solids are cut');
  return library;
}

/** Facets of a result, by the solid they came from. */
export interface SolidMesh {
  readonly mesh: IndexedMesh;
  /** Per facet: the `original` of the mesh that the facet lay on. */
  readonly cameFrom: Uint32Array;
}

/** Keeps the solids of one job and gives their memory back. */
export class SolidBin {
  private readonly solids: Solid[] = [];

  keep(solid: Solid): Solid {
    this.solids.push(solid);
    return solid;
  }

  /**
   * The solid that closed meshes enclose together, and per mesh the number that its facets carry in results. The meshes
   * must not touch one another; one that is inside out and lies within another is a void in it.
   * @throws Problem `pours.notSolid` when the library refuses them
   */
  of(...meshes: readonly IndexedMesh[]): { readonly solid: Solid; readonly originals: readonly number[] } {
    const { Manifold: Solids, Mesh } = ready();
    const first = Solids.reserveIDs(meshes.length);
    const originals = meshes.map((_, number) => first + number);
    const total = (lengthOf: (mesh: IndexedMesh) => number) =>
      meshes.reduce((sum, mesh) => sum + lengthOf(mesh), 0);
    const vertProperties = new Float32Array(total(({ positions }) => positions.length));
    const triVerts = new Uint32Array(total(({ facets }) => facets.length));
    const runIndex = new Uint32Array(meshes.length + 1);
    let vertexEnd = 0;
    let cornerEnd = 0;
    meshes.forEach(({ positions, facets }, number) => {
      vertProperties.set(positions, 3 * vertexEnd);
      for (let corner = 0; corner < facets.length; corner++) {
        triVerts[cornerEnd + corner] = vertexEnd + facets[corner]!;
      }
      vertexEnd += positions.length / 3;
      cornerEnd += facets.length;
      runIndex[number + 1] = cornerEnd;
    });
    const mesh = new Mesh({
      numProp: 3,
      vertProperties,
      triVerts,
      runIndex,
      runOriginalID: Uint32Array.from(originals),
    });
    try {
      return { solid: this.keep(Solids.ofMesh(mesh)), originals };
    } catch {
      throw new Problem('pours.notSolid', 'The mesh does not enclose a solid: its facets do not close.');
    }
  }

  minus(solid: Solid, cutter: Solid): Solid {
    return this.keep(solid.subtract(cutter));
  }

  joined(solids: readonly Solid[]): Solid {
    return solids.length === 1 ? solids[0]! : this.keep(ready().Manifold.union(solids));
  }

  /** What of `solid` lies inside `cutter`, and what outside. */
  split(solid: Solid, cutter: Solid): readonly [Solid, Solid] {
    const [inside, outside] = solid.split(cutter);
    return [this.keep(inside), this.keep(outside)];
  }

  /** What of `solid` lies beyond a plane along its unit normal, and what before it. */
  splitAcross(
    solid: Solid,
    normal: readonly [number, number, number],
    offsetMm: number,
  ): readonly [Solid, Solid] {
    const [beyond, before] = solid.splitByPlane([...normal], offsetMm);
    return [this.keep(beyond), this.keep(before)];
  }

  /** Parts that hang together over their surface; the surface of a void comes as a part of its own, volume below 0. */
  parts(solid: Solid): Solid[] {
    return solid.decompose().map((part) => this.keep(part));
  }

  /** Parts laid together again; they must not overlap. */
  together(parts: readonly Solid[]): Solid {
    return parts.length === 1 ? parts[0]! : this.keep(ready().Manifold.compose(parts));
  }

  empty(): void {
    for (const solid of this.solids) solid.delete();
    this.solids.length = 0;
  }
}

export function meshOfSolid(solid: Solid): SolidMesh {
  const { vertProperties, numProp, triVerts, runIndex, runOriginalID } = solid.getMesh();
  const vertexCount = vertProperties.length / numProp;
  const positions = new Float64Array(3 * vertexCount);
  for (let vertex = 0; vertex < vertexCount; vertex++) {
    for (let axis = 0; axis < 3; axis++) {
      positions[3 * vertex + axis] = vertProperties[numProp * vertex + axis]!;
    }
  }
  const cameFrom = new Uint32Array(triVerts.length / 3);
  runOriginalID.forEach((original, run) => {
    cameFrom.fill(original, runIndex[run]! / 3, (runIndex[run + 1] ?? triVerts.length) / 3);
  });
  return { mesh: { positions, facets: triVerts.slice() }, cameFrom };
}
