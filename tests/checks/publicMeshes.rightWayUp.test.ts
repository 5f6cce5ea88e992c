/** Shells by other people: the side that each is open to stands in the column "opening faces" of the collection's MANIFEST.md. */
import { describe, expect, it } from 'vitest';
import { readMeshFile } from '../../src/core/mesh/read/readMeshFile';
import { rightWayUp } from '../../src/core/mesh/rightWayUp';
import { weld } from '../../src/core/mesh/weld';
import { hasSharedMeshes, sharedMesh } from '../support/sharedMeshes';
import { tray } from '../support/meshes';
import { writeStlBinary } from '../../src/core/mesh/writeStl';

/** z of the pull; null: closed all round, so it is asked. */
const files: readonly (readonly [string, number | null])[] = [
  ['remote_control_back.stl', -1],
  ['handheld_top_ascii.stl', 1],
  ['slate_main_case.stl', -1],
  ['mini_player_top_snap.stl', 1],
  ['calculator_front_nonmanifold.stl', -1],
  ['switch_box_halves.3mf', -1],
  ['adapter_box_snap.stl', -1],
  ['panel_box_inches.stl', null],
];
const hasShared = hasSharedMeshes('public');
const ownTray = () => new Uint8Array(writeStlBinary(tray([60, 40, 12], 1, 3)));

describe('the right way up of real enclosures', { timeout: 60_000 }, () => {
  it.each(hasShared ? files : [['own tray', -1] as const])('of %s', (name, z) => {
    const bytes = hasShared ? sharedMesh(`public/${name}`) : ownTray();
    const { mesh } = weld(readMeshFile(bytes, hasShared ? name : 'tray.stl'));
    const { pull, toldBy } = rightWayUp(mesh);
    expect(toldBy).toBe(z === null ? null : 'hollow');
    if (z !== null) expect(pull[2]).toBeCloseTo(z, 2);
  });
});
