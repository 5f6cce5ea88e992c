/**
 * Files that are broken on purpose: those that somebody else made (the shared collection, with what each must do beside
 * it), or, where that is not beside the project, the same kinds of damage done to a tray of our own.
 */
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { bytesOf, objText, stlText } from './meshText';
import { box, insideOut, joinMeshes, mapVertices, tray } from './meshes';
import { hasSharedMeshes, sharedJson, sharedMesh } from './sharedMeshes';

export interface BrokenFile {
  readonly name: string;
  /** In words. */
  readonly expected: string;
  readonly bytes: () => Uint8Array;
}

const good = tray([60, 40, 20], 2);
const binary = writeStlBinary(good);

function changed(change: (view: DataView) => void, from: Uint8Array = binary): Uint8Array {
  const copy = from.slice();
  change(new DataView(copy.buffer));
  return copy;
}

const withCount = (count: number) => changed((view) => view.setUint32(80, count, true));
const withText = (change: (text: string) => string) => bytesOf(change(stlText(good)));
const scaled = (factor: number) =>
  mapVertices(good, (vertex) => [factor * vertex[0], factor * vertex[1], factor * vertex[2]]);
const withoutFacet = (mesh: IndexedMesh, facet: number): IndexedMesh => ({
  positions: mesh.positions,
  facets: mesh.facets.filter((_, corner) => Math.floor(corner / 3) !== facet),
});

/** The names are those of the shared collection, and so are the expectations. */
const own: Readonly<Record<string, () => Uint8Array>> = {
  'good_tray_binary.stl': () => binary,
  'good_tray_ascii.stl': () => withText((text) => text),
  'good_tray_draft2.stl': () => writeStlBinary(tray([60, 40, 20], 2, 2)),
  'good_tray.obj': () => bytesOf(objText(good)),
  'truncated_in_header.stl': () => binary.slice(0, 61),
  'header_only_80.stl': () => binary.slice(0, 80),
  'count_too_high.stl': () => withCount(1000),
  'count_too_low.stl': () => withCount(12),
  'count_zero_with_data.stl': () => withCount(0),
  'count_4294967295.stl': () => withCount(4294967295),
  'trailing_junk.stl': () => Uint8Array.from([...binary, ...Array.from({ length: 64 }, () => 0x2a)]),
  'attribute_bytes_set.stl': () =>
    changed((view) => {
      for (let facet = 0; facet < 28; facet++) view.setUint16(84 + 50 * facet + 48, 0xffff, true);
    }),
  'zero_triangles_binary.stl': () => withCount(0).slice(0, 84),
  'huge_1e30.stl': () => writeStlBinary(scaled(1e30)),
  'denormal_1e-40.stl': () => writeStlBinary(scaled(1e-42)),
  'metres_scale.stl': () => writeStlBinary(scaled(1e-3)),
  'inch_scale.stl': () => writeStlBinary(scaled(1 / 25.4)),
  'ascii_crlf.stl': () => bytesOf(stlText(good, '\r\n')),
  'ascii_cr_only.stl': () => bytesOf(stlText(good, '\r')),
  'ascii_uppercase.stl': () => withText((text) => text.toUpperCase()),
  'ascii_no_endsolid.stl': () => withText((text) => text.replace('endsolid part\n', '')),
  'ascii_no_name.stl': () => withText((text) => text.replaceAll('solid part', 'solid')),
  'ascii_zero_triangles.stl': () => bytesOf('solid part\nendsolid part\n'),
  'empty_0_byte.stl': () => new Uint8Array(0),
  'html_error_page.stl': () => bytesOf('<!DOCTYPE html><html><body>Not found</body></html>'),
  'inside_out.stl': () => writeStlBinary(insideOut(good)),
  'two_disjoint_shells.stl': () =>
    writeStlBinary(
      joinMeshes(
        good,
        mapVertices(good, ([x, y, z]) => [x + 100, y, z]),
      ),
    ),
  'nested_cavity.stl': () =>
    writeStlBinary(joinMeshes(box([0, 0, 0], [30, 30, 30]), insideOut(box([2, 2, 2], [28, 28, 28])))),
  'open_one_triangle_missing.stl': () => writeStlBinary(withoutFacet(good, 4)),
  'no_faces.obj': () => bytesOf(objText({ positions: good.positions, facets: new Uint32Array(0) })),
};

const isShared = hasSharedMeshes('nasty');

export const brokenFiles: readonly BrokenFile[] = isShared
  ? Object.entries(sharedJson('nasty/expected.json') as Record<string, { readonly expect: string }>).map(
      ([name, { expect }]) => ({ name, expected: expect, bytes: () => sharedMesh(`nasty/${name}`) }),
    )
  : Object.entries(own).map(([name, bytes]) => ({ name, expected: 'made of our own tray', bytes }));

export const brokenTitle = isShared
  ? `broken files: ${brokenFiles.length} of the shared ones`
  : `broken files: ${brokenFiles.length} of our own (the shared ones are not beside the project)`;
