/**
 * The two pours around real enclosure meshes of other people: closed halves for every sound mesh, volumes and a plain
 * reason for the rest. The pattern's volume is held against the collection's own figure.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { findHealth } from '../../src/core/mesh/health';
import { integrate } from '../../src/core/mesh/integrals';
import { readMeshFile } from '../../src/core/mesh/read/readMeshFile';
import { weld } from '../../src/core/mesh/weld';
import { castHalves } from '../../src/core/stone/pours/castHalves';
import { usualPours } from '../../src/core/stone/pours/pourChoices';
import { prepareSolids } from '../../src/core/stone/pours/solids';
import { publicMesh, publicMeshes, publicTitle } from '../support/publicMeshes';

beforeAll(() => prepareSolids());

describe(publicTitle('two pours around public meshes'), () => {
  it.each(publicMeshes)('%s', { timeout: 60_000 }, (path, given) => {
    const { mesh } = weld(readMeshFile(publicMesh(path), path));
    const inMm = {
      positions: mesh.positions.map((coordinate) => coordinate * given.mm_per_unit),
      facets: mesh.facets,
    };
    const pull = given.opening_faces === '+z' ? ([0, 0, -1] as const) : ([0, 0, 1] as const);
    const { geometry, halves } = castHalves(inMm, { ...usualPours, pull });
    expect(Math.abs(geometry.volumeCheck - 1)).toBeLessThanOrEqual(1e-3);
    if (!findHealth(inMm).watertight) {
      expect(geometry.method).toBe('integration along the pull');
      expect(geometry.why.length).toBeGreaterThan(20);
      return;
    }
    expect(geometry.method).toBe('solid booleans');
    for (const [half, volumeMm3] of [
      [halves!.negative, geometry.negativeMm3],
      [halves!.positive, geometry.positiveMm3],
    ] as const) {
      const health = findHealth(half);
      expect(health.watertight).toBe(true);
      expect(health.bodies).toHaveLength(1);
      expect(integrate(half).volume / volumeMm3).toBeCloseTo(1, 5);
    }
    // Bodies that overlap count once here and twice there.
    const published = given.volume! * given.mm_per_unit ** 3;
    expect(Math.abs(geometry.patternMm3 / published - 1)).toBeLessThan(1e-3);
  });
});
