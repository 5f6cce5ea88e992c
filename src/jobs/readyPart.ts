import { drawnBasis, type DrawnBasis } from '../core/mesh/drawnFacets';
import { facetBox } from '../core/mesh/integrals';
import type { PartInMm } from '../core/mesh/measureSaved';
import { refineForMeasuring, type MeasuringMesh } from '../core/mesh/refineForMeasuring';
import { displayChunks } from './displayChunks';
import type { PartShape } from './protocol';
import type { WallsHelper } from './startWallsHelper';
import { WallsBench } from './wallsBench';
import type { SliceHelper } from './measureTogether';
import { buildSurfaceIndex } from '../core/mesh/surfaceIndex';

/** What of a part does not depend on its pull, made ready for measuring. */
export interface ReadyPart {
  /** What is measured and drawn: the part with its long edges split. */
  readonly measuring: MeasuringMesh;
  /** Null when nothing was split. */
  readonly basis: DrawnBasis | null;
  /** Of `measuring.mesh`. */
  readonly bench: WallsBench;
  /** Null when a second thread is not worth it. */
  readonly helper: ReadyHelper | null;
}

/** Measures slices of the part on a second thread. */
export interface ReadyHelper {
  readonly slices: SliceHelper;
  /** Resolves when it has the part, or can't take it; it gets on with that only while this thread is free. */
  readonly loaded: Promise<void>;
}

/** Parts that were handed to helpers so far, by any session of this thread. */
let partsLoaded = 0;

function loadedWith(helper: WallsHelper, bench: WallsBench): ReadyHelper {
  const part = ++partsLoaded;
  const loading = helper.load(part, bench.index);
  // A helper that can't take the part fails when it is asked for walls, and they are measured here.
  const loaded = loading.catch(() => undefined);
  return {
    loaded,
    slices: async (from, to, pull, withWalls) => {
      await loading;
      return helper.measure(part, from, to, pull, withWalls);
    },
  };
}

/**
 * Builds the part's index, hands it to the helper, and tells its shape.
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
  const bench = new WallsBench(buildSurfaceIndex(mesh));
  const helper = helperFor(facetCount);
  const readyHelper = helper && loadedWith(helper, bench);
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
    bench,
    helper: readyHelper,
  };
}
