import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMeshFile } from '../../../../src/core/mesh/read/readMeshFile';
import type { FileMesh } from '../../../../src/core/mesh/types';
import { writeStlBinary } from '../../../../src/core/mesh/writeStl';
import { bytesOf, objText, stlText } from '../../../support/meshText';
import { cornersOf } from '../../../support/meshes';
import { propertySeed } from '../../../support/propertySeed';
import { triangleSoup } from '../../../support/randomMeshes';

/** File coordinates, whatever origin the reader chose; exact, since the shift is by a coordinate of the file. */
const fileCoordinates = ({ corners, origin }: FileMesh) =>
  Array.from(corners, (value, at) => value + origin[at % 3]! + 0);

/** -0 and 0 are the same place. */
const plain = (values: Float64Array) => Array.from(values, (value) => value + 0);

describe(`what is written is read back (seed ${propertySeed})`, () => {
  it('binary STL, corner for corner', () => {
    fc.assert(
      fc.property(triangleSoup, (mesh) => {
        const read = readMeshFile(writeStlBinary(mesh), 'part.stl');
        expect(read.format).toBe('stl-binary');
        expect(fileCoordinates(read)).toEqual(plain(cornersOf(mesh)));
      }),
    );
  });

  it('text STL, corner for corner, with any line end', () => {
    fc.assert(
      fc.property(triangleSoup, fc.constantFrom('\n', '\r\n', '\r', ' '), (mesh, lineEnd) => {
        const read = readMeshFile(bytesOf(stlText(mesh, lineEnd)), 'part.stl');
        expect(read.format).toBe('stl-ascii');
        expect(read.notes.filter((note) => !note.includes('origin'))).toEqual([]);
        expect(fileCoordinates(read)).toEqual(plain(cornersOf(mesh)));
      }),
    );
  });

  it('OBJ, corner for corner', () => {
    fc.assert(
      fc.property(triangleSoup, (mesh) => {
        const read = readMeshFile(bytesOf(objText(mesh)), 'part.obj');
        expect(read.format).toBe('obj');
        expect(fileCoordinates(read)).toEqual(plain(cornersOf(mesh)));
      }),
    );
  });

  it('any bytes at all give a mesh or a told reason, never another error', () => {
    const anyFile = fc.tuple(
      fc.constantFrom('', 'solid x\n', 'solid\nfacet', 'v 1 2 3\nf', 'PK\u0003\u0004', '<'),
      fc.uint8Array({ maxLength: 600 }),
      fc.constantFrom('a.stl', 'a.obj', 'a.3mf', 'a'),
    );
    fc.assert(
      fc.property(anyFile, ([start, rest, name]) => {
        const bytes = Uint8Array.from([...bytesOf(start), ...rest]);
        try {
          expect(readMeshFile(bytes, name).corners.every(Number.isFinite)).toBe(true);
        } catch (error) {
          expect(error).toMatchObject({ name: 'Problem' });
        }
      }),
      { numRuns: 500 },
    );
  });
});
