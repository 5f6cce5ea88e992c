/** Cost of the saved form: room in localStorage, error, and time against plain base64 of the raw arrays. */
import { canonicalMesh } from '../../src/core/mesh/canonicalMesh';
import { packMesh, preparePack, unpackMesh } from '../../src/core/mesh/pack';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { mapVertices, shellOfTriangles } from '../support/meshes';

const runs = 3;
/** As rough as a scanned surface. */
const roughnessMm = 0.02;

/** Lines to print: smooth shells of three sizes, then a rough one, which no guess can foresee. */
export async function benchPack(): Promise<string[]> {
  await preparePack();
  const smooth = [50_000, 300_000, 1_000_000].map((triangles) =>
    lineFor('smooth', shellOfTriangles(triangles)),
  );
  return [...smooth, lineFor('rough', roughened(shellOfTriangles(300_000)))];
}

function lineFor(kind: string, mesh: IndexedMesh): string {
  const facetCount = mesh.facets.length / 3;
  const [canonical, canonicalMs] = fastest(() => canonicalMesh(mesh));
  const [packed, packMs] = fastest(() => packMesh(canonical));
  const [, unpackMs] = fastest(() => unpackMesh(packed));
  const [base64, encodeMs] = fastest(() => toBase64(mesh));
  const [, decodeMs] = fastest(() => fromBase64(base64));
  const errorOn100Mm = (100_000 * canonical.errorFileUnits) / longestSide(mesh);
  return [
    `pack ${kind} shell, ${facetCount} triangles: ${packed.length} units`,
    `${(packed.length / facetCount).toFixed(2)} per triangle`,
    `${(packed.length / base64.length).toFixed(3)} of base64`,
    `${canonical.bits} bits, error ${errorOn100Mm.toFixed(3)} micrometers on 100 mm`,
    `saved form ${canonicalMs.toFixed(0)} ms`,
    `pack ${packMs.toFixed(0)} ms (${(packMs / encodeMs).toFixed(1)} x base64)`,
    `unpack ${unpackMs.toFixed(0)} ms (${(unpackMs / decodeMs).toFixed(1)} x base64)`,
  ].join(', ');
}

/** Every vertex moved by up to `roughnessMm` by a fixed pseudo-random row (linear congruential). */
function roughened(mesh: IndexedMesh): IndexedMesh {
  let state = 1;
  const next = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state / 2 ** 31 - 1) * roughnessMm;
  };
  return mapVertices(mesh, ([x, y, z]) => [x + next(), y + next(), z + next()]);
}

function longestSide({ positions }: IndexedMesh): number {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  positions.forEach((value, i) => {
    low[i % 3] = Math.min(low[i % 3] as number, value);
    high[i % 3] = Math.max(high[i % 3] as number, value);
  });
  return Math.max(...high.map((value, axis) => value - (low[axis] as number)));
}

function fastest<Result>(work: () => Result): [Result, number] {
  let best = Infinity;
  let result = work();
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    result = work();
    best = Math.min(best, performance.now() - start);
  }
  return [result, best];
}

/** What a store without a codec of its own would keep: 32-bit floats and vertex numbers. */
function toBase64({ positions, facets }: IndexedMesh): string {
  const floats = Float32Array.from(positions);
  const bytes = Buffer.concat([
    Buffer.from(floats.buffer),
    Buffer.from(facets.buffer, facets.byteOffset, facets.byteLength),
  ]);
  return bytes.toString('base64');
}

function fromBase64(text: string): Uint8Array {
  return new Uint8Array(Buffer.from(text, 'base64'));
}
