/** Project files made to do harm: each is refused with a sentence, soon, in little memory, and before anything is saved. */
import { sha256 } from '@noble/hashes/sha2.js';
import { deflateSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { canonicalMesh } from '../../src/core/mesh/canonicalMesh';
import { packMesh, preparePack } from '../../src/core/mesh/pack';
import { packPayload, packText, readPackHeader, type PackHeader } from '../../src/core/mesh/packHeader';
import { writeProjectFile } from '../../src/workbook';
import { newProject } from '../../src/workbook/project';
import { mostProjectFileBytes } from '../../src/workbook/projectFile';
import { readProjectFileBytes } from '../../src/workbook/projectFileBytes';
import { readProjectFileAside } from '../../src/workbook/readProjectFileAside';
import { icosphere } from '../support/meshes';
import { createMachine, done, patternOf, reasonOf } from './support';

let packed = '';
let header: PackHeader;
beforeAll(async () => {
  await preparePack();
  packed = packMesh(canonicalMesh(icosphere(20, 2)));
  header = readPackHeader(packed);
});

const empty = newProject({ id: 'a', enclosure: 'Lamp', name: 'Lid', at: '2026-01-05T08:00:00.000Z' });

/** The whole file, key of the mesh and checksum as they should be. */
const fileWith = (mesh: string): Uint8Array =>
  new TextEncoder().encode(writeProjectFile({ ...empty, pattern: patternOf(mesh) }, mesh));

function meshWith(changed: Partial<PackHeader>, payload = packPayload(packed, header)): string {
  const checksum = new DataView(sha256(payload).buffer).getUint32(0);
  return packText({ ...header, ...changed, payloadBytes: payload.length, checksum }, payload);
}

describe('a mesh that is not what it says', () => {
  it.each<[string, () => string]>([
    ['steps of 5e-324', () => meshWith({ grid: { ...header.grid, stepsPerUnit: 5e-324 } })],
    ['steps of 1e300', () => meshWith({ grid: { ...header.grid, stepsPerUnit: 1e300 } })],
    ['an origin of 1e300', () => meshWith({ grid: { ...header.grid, origin: [1e300, 0, 0] } })],
    ['a size of 1e18', () => meshWith({ grid: { stepsPerUnit: 1e-12, origin: [0, 0, 0] } })],
    ['2^26 facets', () => meshWith({ facetCount: 2 ** 26, vertexCount: 2 ** 25 })],
    ['4 million facets in a few bytes', () => meshWith({ facetCount: 4_000_000, vertexCount: 2_000_000 })],
    ['a bomb of 100 MB for 320 facets', () => meshWith({}, deflateSync(new Uint8Array(100e6), { level: 9 }))],
  ])('%s', (_, mesh) => {
    const bytes = fileWith(mesh());
    const before = process.memoryUsage().arrayBuffers;
    const started = performance.now();
    const read = readProjectFileBytes(bytes);
    expect(read).toMatchObject({ outcome: 'damaged' });
    expect('message' in read && read.message).toMatch(/^This project file cannot be used\. The saved model/u);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(80e6);
    expect(performance.now() - started).toBeLessThan(20_000);
  });

  it('saves nothing of it', () => {
    const machine = createMachine();
    const { workbook } = machine.tab();
    const before = new Map(machine.disk);
    const read = readProjectFileBytes(fileWith(meshWith({ facetCount: header.facetCount + 1 })));
    expect(reasonOf(workbook.importProjectFile(read))).toContain('do not fit what it holds');
    expect(machine.disk).toEqual(before);
  });

  it('while a whole one is taken', () => {
    const { workbook } = createMachine().tab();
    done(workbook.importProjectFile(readProjectFileBytes(fileWith(packed))));
    expect(workbook.store.getState().projects).toHaveLength(1);
  });
});

describe('a file of the wrong size', () => {
  it('is refused by its size alone, unread', async () => {
    const file = { size: mostProjectFileBytes + 1 } as Blob;
    expect(await readProjectFileAside(file)).toMatchObject({
      outcome: 'not a project file',
      message: expect.stringContaining('no project file of this workbook has more than 48 MB') as string,
    });
  });

  it('is read where there are no workers too', async () => {
    const read = await readProjectFileAside(new Blob([fileWith(packed) as BlobPart]));
    expect(read.outcome).toBe('ok');
  });

  it('says so when the disk does not give it', async () => {
    const gone = { size: 5, arrayBuffer: () => Promise.reject(new Error('gone')) } as unknown as Blob;
    expect(await readProjectFileAside(gone)).toMatchObject({ outcome: 'damaged' });
  });
});
