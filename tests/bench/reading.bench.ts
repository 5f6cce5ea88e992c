/** Cost of getting from file bytes to a judged mesh, against a general STL reader and vertex merge on the same bytes. */
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { mergeVertices } from 'three/examples/jsm/utils/BufferGeometryUtils.js';
import { findHealth } from '../../src/core/mesh/health';
import { integrate } from '../../src/core/mesh/integrals';
import { readMeshFile } from '../../src/core/mesh/read/readMeshFile';
import { weld } from '../../src/core/mesh/weld';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { shellOfTriangles } from '../support/meshes';

const runs = 3;

/** Lines to print, for shells of three sizes. */
export function benchReading(): string[] {
  return [50_000, 300_000, 1_000_000].map((triangles) =>
    lineFor(writeStlBinary(shellOfTriangles(triangles))),
  );
}

function lineFor(bytes: Uint8Array): string {
  const [file, readMs] = fastest(() => readMeshFile(bytes, 'shell.stl'));
  const [{ mesh }, weldMs] = fastest(() => weld(file));
  const [health, healthMs] = fastest(() => findHealth(mesh));
  const [, integrateMs] = fastest(() => integrate(mesh));
  const [geometry, otherReadMs] = fastest(() => new STLLoader().parse(bytes.slice().buffer));
  const [, otherWeldMs] = fastest(() => mergeVertices(geometry.deleteAttribute('normal'), 1e-12));
  return [
    `read binary STL, ${health.facetCount} triangles: ${readMs.toFixed(0)} ms (${(readMs / otherReadMs).toFixed(2)} of a general reader)`,
    `weld ${weldMs.toFixed(0)} ms (${(weldMs / otherWeldMs).toFixed(2)} of a general vertex merge)`,
    `health ${healthMs.toFixed(0)} ms`,
    `integrals ${integrateMs.toFixed(0)} ms`,
  ].join(', ');
}

function fastest<T>(work: () => T): [T, number] {
  let least = Infinity;
  let result = work();
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    result = work();
    least = Math.min(least, performance.now() - start);
  }
  return [result, least];
}
