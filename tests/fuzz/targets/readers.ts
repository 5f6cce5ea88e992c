/** Model files: what is read is a mesh of real numbers that the program can go on with, and the rest is refused. */
import { zipSync } from 'fflate';
import { canonicalMesh } from '../../../src/core/mesh/canonicalMesh';
import { findHealth } from '../../../src/core/mesh/health';
import { measureSaved } from '../../support/measureSaved';
import { packMesh, unpackMesh } from '../../../src/core/mesh/pack';
import { readPattern } from '../../../src/core/part/preparePattern';
import { writeStlBinary } from '../../../src/core/mesh/writeStl';
import { bytesOf, objText, stlText } from '../../support/meshText';
import { domeShell, tray } from '../../support/meshes';
import type { Chance } from '../chance';
import { Finding, lostNumber, orRefused, type FuzzTarget } from '../fuzzTarget';
import { mutatedBytes } from '../mutate';

const mesh = tray([60, 40, 12], 1.2, 3);
const dome = domeShell(4, 8);

function model3mf(): Uint8Array {
  const { positions, facets } = mesh;
  const vertices = Array.from(
    { length: positions.length / 3 },
    (_, i) => `<vertex x="${positions[3 * i]}" y="${positions[3 * i + 1]}" z="${positions[3 * i + 2]}"/>`,
  );
  const triangles = Array.from(
    { length: facets.length / 3 },
    (_, i) => `<triangle v1="${facets[3 * i]}" v2="${facets[3 * i + 1]}" v3="${facets[3 * i + 2]}"/>`,
  );
  const model = `<?xml version="1.0"?><model unit="millimeter" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02"><resources><object id="1" type="model"><mesh><vertices>${vertices.join('')}</vertices><triangles>${triangles.join('')}</triangles></mesh></object></resources><build><item objectid="1"/></build></model>`;
  return zipSync({ '3D/3dmodel.model': bytesOf(model) });
}

const seeds: readonly (readonly [name: string, bytes: Uint8Array])[] = [
  ['a.stl', writeStlBinary(mesh)],
  ['b.stl', writeStlBinary(dome)],
  ['c.stl', bytesOf(stlText(mesh))],
  ['d.obj', bytesOf(objText(dome))],
  ['e.3mf', model3mf()],
];

export const readers: FuzzTarget = {
  name: 'readers',
  run(chance: Chance) {
    const [name, bytes] = chance.pick(seeds);
    const read = orRefused(() => readPattern(mutatedBytes(chance, bytes), name));
    if (read === null) return;
    const { mesh: saved } = read.canonical;
    for (const coordinate of saved.positions)
      if (!Number.isFinite(coordinate)) throw new Finding(`a coordinate of ${coordinate}`);
    const packed = packMesh(read.canonical);
    const again = unpackMesh(packed);
    if (packMesh(canonicalMesh(again)).length === 0) throw new Finding('nothing packed');
    const lost = lostNumber(findHealth(saved).bodies);
    if (lost !== null) throw new Finding(`health: ${lost}`);
    if (chance.below(4) > 0) return;
    const measured = orRefused(() =>
      measureSaved(saved, {
        unit: null,
        declaredUnit: read.declaredUnit,
        body: 0,
        scale: 1,
        pull: [chance.share() - 0.5, chance.share() - 0.5, chance.share()],
        winding: chance.pick(['repair', 'asFile'] as const),
      }),
    );
    const lostFigure = measured === null ? null : lostNumber(measured.summary);
    if (lostFigure !== null) throw new Finding(`summary: ${lostFigure}`);
  },
};
