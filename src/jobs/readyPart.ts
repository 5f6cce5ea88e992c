import { drawnBasis, type DrawnBasis } from '../core/mesh/drawnFacets';
import { facetBox } from '../core/mesh/integrals';
import type { PartInMm } from '../core/mesh/measureSaved';
import { refineForMeasuring, type MeasuringMesh } from '../core/mesh/refineForMeasuring';
import { displayChunks } from './displayChunks';
import type { PartShape } from './protocol';
import type { WallsHelper } from './startWallsHelper';
import { WallsBench } from './wallsBench';

/** What of a part does not depend on its pull, made ready for measuring. */
export interface ReadyPart {
  /** What is measured and drawn: the part with its long edges split. */
  readonly measuring: MeasuringMesh;
  /** Null when nothing was split. */
  readonly basis: DrawnBasis | null;
  /** Of `measuring.mesh`. */
  readonly bench: WallsBench;
  /** Has been handed the part. */
  readonly helper: WallsHelper | null;
}

/**
 * Hands the part to the helper, tells its shape, and builds its index here meanwhile.
 * @param helperFor the helper, if one is worth its while for so many facets
 */
export function makeReady(
  part: Omit<PartInMm, 'health'>,
  helperFor: (facetCount: number) => WallsHelper | null,
  onShape: (shape: PartShape) => void,
): ReadyPart {
  const { partMesh, unitGuess, unit, fileBoxSize } = part;
  const measuring = refineForMeasuring(partMesh);
  const { mesh, split } = measuring;
  const facetCount = mesh.facets.length / 3;
  const helper = helperFor(facetCount);
  // A helper that can't take the part fails when it is asked for walls, and they are measured here.
  helper?.load(mesh).catch(() => undefined);
  const { min, max } = facetBox(partMesh);
  onShape({
    unitGuess,
    unit,
    fileBoxSize,
    facetCount,
    boxMinMm: min,
    boxMaxMm: max,
    display: displayChunks(mesh),
  });
  return {
    measuring,
    basis: split && drawnBasis(partMesh, mesh, split),
    bench: new WallsBench(mesh),
    helper,
  };
}
