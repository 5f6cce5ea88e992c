/** Time to cast both stone halves, against reading and indexing the same pattern; memory at the largest size. */
import { findHealth } from '../../src/core/mesh/health';
import { buildSurfaceIndex } from '../../src/core/mesh/surfaceIndex';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { castHalves } from '../../src/core/stone/pours/castHalves';
import { usualPours } from '../../src/core/stone/pours/pourChoices';
import { prepareSolids } from '../../src/core/stone/pours/solids';
import { shellOfTriangles } from '../support/meshes';

/** Lines to print: shells of three sizes by solid booleans, then one with a hole by integration. */
export async function benchPours(): Promise<string[]> {
  await prepareSolids();
  // The first cast also compiles.
  castHalves(shellOfTriangles(20_000), { ...usualPours, pull: [0, 0, 1] });
  const shells = [50_000, 300_000, 1_000_000].map((triangles) => lineFor(shellOfTriangles(triangles)));
  const { positions, facets } = shellOfTriangles(300_000);
  return [...shells, lineFor({ positions, facets: facets.slice(3) })];
}

function lineFor(mesh: IndexedMesh): string {
  const plainMs = timed(() => {
    findHealth(mesh);
    buildSurfaceIndex(mesh);
  });
  const marks = new Map<string, number>();
  let last = performance.now();
  let doing = '';
  const note = () => {
    const now = performance.now();
    marks.set(doing, (marks.get(doing) ?? 0) + now - last);
    last = now;
  };
  const cpuBefore = process.cpuUsage();
  const started = performance.now();
  const { geometry } = castHalves(mesh, { ...usualPours, pull: [0, 0, 1] }, (next) => {
    if (doing !== '') note();
    doing = next;
  });
  note();
  const castMs = performance.now() - started;
  const cpuMs = process.cpuUsage(cpuBefore).user / 1000;
  const steps = [...marks].map(([step, ms]) => `${step} ${ms.toFixed(0)} ms`).join(', ');
  return [
    `pours ${mesh.facets.length / 3} triangles, ${geometry.method}: ${castMs.toFixed(0)} ms`,
    `${(castMs / plainMs).toFixed(1)} x health and index`,
    `processor ${cpuMs.toFixed(0)} ms`,
    steps,
    `sum of volumes ${geometry.volumeCheck.toFixed(6)} of the box`,
    `memory ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB`,
  ].join(', ');
}

function timed(work: () => void): number {
  const started = performance.now();
  work();
  return performance.now() - started;
}
