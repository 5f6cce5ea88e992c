import { drawnBasis, type DrawnBasis } from '../core/mesh/drawnFacets';
import { facetBox } from '../core/mesh/integrals';
import type { PartInMm } from '../core/part/measureSaved';
import { refineForMeasuring, type MeasuringMesh } from '../core/mesh/refineForMeasuring';
import { displayChunks } from './displayChunks';
import type { PartShape } from './protocol';
import { answeredWithin } from './silenceWatch';
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
  /**
   * Measures slices of the part on a second thread, once that has it, which goes on only while this thread is free. Null
   * when a second thread is not worth it or can't take the part.
   */
  readonly helper: Promise<SliceHelper | null>;
}

/** Parts that were handed to helpers so far, by any session of this thread. */
let partsLoaded = 0;

async function loadedWith(
  helper: WallsHelper,
  bench: WallsBench,
  silenceMs: number,
): Promise<SliceHelper | null> {
  const part = ++partsLoaded;
  try {
    await answeredWithin(helper.load(part, bench.index), silenceMs);
  } catch {
    return null;
  }
  return (from, to, pull, withWalls) => helper.measure(part, from, to, pull, withWalls);
}

/**
 * Builds the part's index, hands it to the helper, and tells its shape.
 * @param helperFor the helper, if one is worth its while for so many facets
 * @param silenceMs a helper that has not taken the part by then is done without
 */
export function makeReady(
  part: Omit<PartInMm, 'health'>,
  helperFor: (facetCount: number) => WallsHelper | null,
  onShape: (shape: PartShape) => void,
  silenceMs: number,
): ReadyPart {
  const { partMesh, unitGuess, unit, fileBoxSize } = part;
  const measuring = refineForMeasuring(partMesh);
  const { mesh, split } = measuring;
  const facetCount = mesh.facets.length / 3;
  const bench = new WallsBench(buildSurfaceIndex(mesh));
  const helper = helperFor(facetCount);
  const loaded = helper === null ? Promise.resolve(null) : loadedWith(helper, bench, silenceMs);
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
    helper: loaded,
  };
}
