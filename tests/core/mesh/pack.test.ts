/** The saved form: bit for bit back, small, and refused with its own words when it is not what it says. */
import { sha256 } from '@noble/hashes/sha2.js';
import { deflateSync } from 'fflate';
import * as fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { canonicalMesh, turnToSmallestFirst } from '../../../src/core/mesh/canonicalMesh';
import { meshKey } from '../../../src/core/mesh/meshKey';
import { packMesh, preparePack, unpackMesh } from '../../../src/core/mesh/pack';
import { packPayload, packText, readPackHeader } from '../../../src/core/mesh/packHeader';
import type { PackHeader } from '../../../src/core/mesh/packHeader';
import type { IndexedMesh } from '../../../src/core/mesh/types';
import { Problem } from '../../../src/core/problem';
import { icosphere, shellOfTriangles, tray } from '../../support/meshes';

beforeAll(preparePack);

/** Any facets over any vertices: open, crowded, duplicate, doubled corners, unused vertices, far from zero. */
const anyMesh: fc.Arbitrary<IndexedMesh> = fc
  .record({
    size: fc.constantFrom(1e-3, 0.07, 1, 33.3, 100, 2500),
    offset: fc.constantFrom(0, -17.25, 1e5),
    unitPoints: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 9, maxLength: 120 }),
    corners: fc.array(fc.nat(1000), { minLength: 3, maxLength: 300 }),
  })
  .map(({ size, offset, unitPoints, corners }) => {
    const vertexCount = Math.floor(unitPoints.length / 3);
    const positions = Float64Array.from(unitPoints.slice(0, 3 * vertexCount), (part) => offset + size * part);
    // Two far corners, so that the box has a size.
    positions.set([offset, offset, offset, offset + size, offset, offset]);
    const whole = corners.slice(0, corners.length - (corners.length % 3));
    return { positions, facets: Uint32Array.from(whole, (corner) => corner % vertexCount) };
  });

/** Facets of a mesh by their corners' places, as a sorted list, each turned to its least corner. */
function facetPlaces(
  { positions, facets }: IndexedMesh,
  snap: (value: number, axis: number) => number,
): string[] {
  const names: string[] = [];
  for (let f = 0; f < facets.length; f += 3) {
    const corners = [0, 1, 2].map((corner) => {
      const at = 3 * (facets[f + corner] as number);
      return [0, 1, 2].map((axis) => snap(positions[at + axis] as number, axis)).join(' ');
    });
    const turns = [0, 1, 2].map((first) => [0, 1, 2].map((i) => corners[(first + i) % 3]).join(' | '));
    names.push(turns.sort()[0] as string);
  }
  return names.sort();
}

describe('round trip', () => {
  test('any mesh comes back bit for bit, and its text holds 15-bit units only', () => {
    fc.assert(
      fc.property(anyMesh, (mesh) => {
        const canonical = canonicalMesh(mesh);
        const packed = packMesh(canonical);
        expect(unpackMesh(packed)).toEqual(canonical.mesh);
        expect(packed).toMatch(/^packed-mesh 1\n[\u0100-\u80ff]+$/);
      }),
    );
  });

  test('the saved form holds the same facets with the same winding', () => {
    fc.assert(
      fc.property(anyMesh, (mesh) => {
        const { mesh: saved, grid } = canonicalMesh(mesh);
        const onGrid = (value: number) => Math.round(value * grid.stepsPerUnit);
        expect(facetPlaces(saved, onGrid)).toEqual(facetPlaces(mesh, onGrid));
      }),
    );
  });

  test('the same mesh always packs to the same text', () => {
    for (const mesh of [icosphere(20, 3), tray([70, 41, 12], 0.9, 3), shellOfTriangles(4000)]) {
      expect(packMesh(canonicalMesh(mesh))).toBe(packMesh(canonicalMesh(mesh)));
    }
  });

  test('the header tells counts and error without unpacking', () => {
    const canonical = canonicalMesh(icosphere(20, 3));
    const header = readPackHeader(packMesh(canonical));
    expect(header.facetCount).toBe(1280);
    expect(header.vertexCount).toBe(642);
    expect(header.errorFileUnits).toBe(canonical.errorFileUnits);
    expect(header.grid).toEqual(canonical.grid);
  });

  test('a mesh off its grid is a defect of ours, not saved changed', () => {
    const canonical = canonicalMesh(icosphere(20, 1));
    const positions = canonical.mesh.positions.map((value) => value + canonical.grid.stepsPerUnit ** -1 / 3);
    expect(() => packMesh({ ...canonical, mesh: { ...canonical.mesh, positions } })).toThrow(
      'canonical mesh only',
    );
  });
});

test('a shell of 300,000 triangles takes less than 0.6 million units', () => {
  const mesh = shellOfTriangles(300_000);
  const canonical = canonicalMesh(mesh);
  expect(canonical.mesh.facets.length).toBe(mesh.facets.length);
  expect(packMesh(canonical).length).toBeLessThan(600_000);
});

describe('turning to the smallest corner', () => {
  test.each([
    [
      [3, 1, 2],
      [1, 2, 3],
    ],
    [
      [3, 2, 1],
      [1, 3, 2],
    ],
    [
      [1, 2, 3],
      [1, 2, 3],
    ],
    [
      [4, 7, 4],
      [4, 4, 7],
    ],
    [
      [7, 4, 4],
      [4, 4, 7],
    ],
    [
      [5, 5, 5],
      [5, 5, 5],
    ],
  ])('%j becomes %j', (corners, turned) => {
    const facets = Uint32Array.from(corners);
    turnToSmallestFirst(facets);
    expect([...facets]).toEqual(turned);
  });
});

/** Code of the problem that the text is refused with. */
function codeOf(text: string): string {
  try {
    unpackMesh(text);
  } catch (error) {
    if (error instanceof Problem) return error.code;
    throw error;
  }
  return 'taken';
}

describe('what is refused', () => {
  let packed = '';
  let header: PackHeader;
  beforeAll(async () => {
    await preparePack();
    packed = packMesh(canonicalMesh(icosphere(20, 2)));
    header = readPackHeader(packed);
  });

  test('text that is no packed mesh', () => {
    for (const text of ['', 'solid part', '{}', 'packed-mesh', 'packed-mesh x\n']) {
      expect(codeOf(text)).toBe('pack.notAMesh');
    }
  });

  test('a newer format', () => {
    expect(codeOf(packed.replace('packed-mesh 1', 'packed-mesh 2'))).toBe('pack.newer');
  });

  test('a text cut anywhere', () => {
    for (let length = 14; length < packed.length; length += 7) {
      expect(codeOf(packed.slice(0, length))).toBe('pack.truncated');
    }
  });

  test('a text with something behind it, or with a character that does not belong', () => {
    expect(codeOf(`${packed}\u0100`)).toBe('pack.damaged');
    expect(codeOf(`${packed.slice(0, 300)}?${packed.slice(301)}`)).toBe('pack.damaged');
  });

  test('one changed unit anywhere behind the header', () => {
    const headerUnits = 14 + 35;
    for (let at = headerUnits; at < packed.length - 1; at += 5) {
      const other = String.fromCharCode(0x0100 + ((packed.charCodeAt(at) - 0x0100) ^ 0x0155));
      expect(codeOf(packed.slice(0, at) + other + packed.slice(at + 1))).toBe('pack.damaged');
    }
  });

  test('counts that do not fit', () => {
    const payload = packPayload(packed, header);
    for (const changed of [
      { facetCount: 0 },
      { facetCount: header.facetCount + 1 },
      { facetCount: 2 ** 31 },
      { vertexCount: header.vertexCount - 1 },
      { vertexCount: header.vertexCount + 1 },
      { vertexCount: 2 ** 31 },
      { grid: { ...header.grid, stepsPerUnit: 0 } },
      { grid: { ...header.grid, stepsPerUnit: NaN } },
    ]) {
      expect(codeOf(packText({ ...header, ...changed }, payload))).toBe('pack.counts');
    }
  });

  test('a payload of the right checksum that holds nothing', () => {
    const payload = deflateSync(new Uint8Array(3));
    const checksum = new DataView(sha256(payload).buffer).getUint32(0);
    expect(codeOf(packText({ ...header, payloadBytes: payload.length, checksum }, payload))).toBe(
      'pack.counts',
    );
  });
});

test('the key follows the content', () => {
  const sphere = packMesh(canonicalMesh(icosphere(20, 2)));
  expect(meshKey(sphere)).toMatch(/^[0-9a-f]{32}$/);
  expect(meshKey(sphere)).toBe(meshKey(packMesh(canonicalMesh(icosphere(20, 2)))));
  expect(meshKey(sphere)).not.toBe(meshKey(packMesh(canonicalMesh(icosphere(20.01, 2)))));
});
