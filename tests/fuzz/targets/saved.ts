/** What is loaded: project files, saved records, the shelf. Loading never throws; what it takes can be worked with. */
import * as fc from 'fast-check';
import { canonicalMesh } from '../../../src/core/mesh/canonicalMesh';
import { meshKey } from '../../../src/core/mesh/meshKey';
import { packMesh, preparePack, unpackMesh } from '../../../src/core/mesh/pack';
import { decodeProject, encodeProject } from '../../../src/workbook/envelope';
import { newProject } from '../../../src/workbook/project';
import { writeProjectFile } from '../../../src/workbook/projectFile';
import { readProjectFileBytes } from '../../../src/workbook/projectFileBytes';
import { decodeShelf, encodeShelf } from '../../../src/workbook/shelfText';
import { arbitraryCard, arbitraryProject } from '../../workbook/arbitraryProject';
import { patternOf } from '../../workbook/support';
import { tray } from '../../support/meshes';
import type { Chance } from '../chance';
import { Finding, lostNumber, type FuzzTarget } from '../fuzzTarget';
import { mutatedBytes, mutatedJson, mutatedText } from '../mutate';

export const sampleOf = <Value>(chance: Chance, from: fc.Arbitrary<Value>): Value =>
  fc.sample(from, { seed: chance.seed(), numRuns: 1 })[0]!;

await preparePack();
const packed = packMesh(canonicalMesh(tray([60, 40, 12], 1.2, 3)));
const empty = newProject({ id: 'a', enclosure: 'Lamp', name: 'Lid', at: '2026-01-05T08:00:00.000Z' });
const file = JSON.parse(writeProjectFile({ ...empty, pattern: patternOf(packed) }, packed)) as unknown;

/** A mesh hurt behind its readable first line, with the key that makes the file look whole. */
function hurtMesh(chance: Chance): unknown {
  const at = 14 + chance.below(chance.pick([40, packed.length - 14]));
  const unit = String.fromCharCode(0x0100 + chance.below(0x8000));
  const mesh = packed.slice(0, at) + unit + packed.slice(at + 1);
  return JSON.parse(writeProjectFile({ ...empty, pattern: patternOf(mesh) }, mesh));
}

const sentence = /[.?!]$/u;

export const projectFiles: FuzzTarget = {
  name: 'project files',
  run(chance) {
    const kind = chance.below(3);
    const changed = kind === 0 ? hurtMesh(chance) : kind === 1 ? mutatedJson(chance, file) : file;
    const text = new TextEncoder().encode(JSON.stringify(changed));
    const read = readProjectFileBytes(kind === 2 ? mutatedBytes(chance, text) : text);
    if (!('project' in read)) {
      if (!sentence.test(read.message)) throw new Finding(`refused without a sentence: ${read.message}`);
      return;
    }
    const lost = lostNumber(read.project);
    if (lost !== null) throw new Finding(lost);
    if (read.packedMesh === null) return;
    if (meshKey(read.packedMesh) !== read.project.pattern?.meshKey)
      throw new Finding('a mesh of another key');
    for (const coordinate of unpackMesh(read.packedMesh).positions)
      if (!Number.isFinite(coordinate)) throw new Finding(`a coordinate of ${coordinate}`);
  },
};

export const records: FuzzTarget = {
  name: 'records',
  run(chance) {
    const isShelf = chance.below(4) === 0;
    const text = isShelf
      ? encodeShelf([sampleOf(chance, arbitraryCard)])
      : encodeProject(sampleOf(chance, arbitraryProject));
    const changed =
      chance.below(2) === 0
        ? mutatedText(chance, text)
        : JSON.stringify(mutatedJson(chance, JSON.parse(text) as unknown));
    const read = isShelf ? decodeShelf(changed) : decodeProject(changed);
    const lost = lostNumber(read);
    if (lost !== null) throw new Finding(lost);
  },
};
