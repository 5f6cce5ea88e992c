import { buildAdjacency, type Adjacency } from '../core/mesh/adjacency';
import { facetBox } from '../core/mesh/integrals';
import type { PartInMm } from '../core/mesh/measureSaved';
import { displayChunks } from './displayChunks';
import type { PartShape } from './protocol';
import type { WallsHelper } from './startWallsHelper';
import { WallsBench } from './wallsBench';

/** What of a part does not depend on its pull, made ready for measuring. */
export interface ReadyPart {
  readonly bench: WallsBench;
  readonly adjacency: Adjacency;
  /** Resolves when the helper has the part too. */
  readonly helper: Promise<WallsHelper> | null;
}

/** Hands the part to the helper, tells its shape, and builds its index here meanwhile. */
export function makeReady(
  part: Omit<PartInMm, 'health'>,
  helper: WallsHelper | null,
  onShape: (shape: PartShape) => void,
): ReadyPart {
  const { partMesh, unitGuess, unit, fileBoxSize } = part;
  const loaded = helper === null ? null : helper.load(partMesh).then(() => helper);
  // Told again where it is awaited; here only so that it never counts as unheard.
  loaded?.catch(() => undefined);
  const { min, max } = facetBox(partMesh);
  onShape({
    unitGuess,
    unit,
    fileBoxSize,
    facetCount: partMesh.facets.length / 3,
    boxMinMm: min,
    boxMaxMm: max,
    display: displayChunks(partMesh),
  });
  return { bench: new WallsBench(partMesh), adjacency: buildAdjacency(partMesh), helper: loaded };
}
