/** A part in the wrong unit: the command answers soon and says what is too large, as the page does. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { runReport } from '../../src/report/runReport';
import { newProject } from '../../src/workbook/project';
import { demoSeeds } from '../../src/workbook/demoSeeds';
import { writeProjectFile } from '../../src/workbook/projectFile';
import { box } from '../support/meshes';

const folder = mkdtempSync(join(tmpdir(), 'far-too-large-'));
afterAll(() => rmSync(folder, { recursive: true }));

const surroundings = { appVersion: '0', date: '2031-05-06', onProgress: () => {} };

async function demoFile(): Promise<string> {
  const [seed] = await demoSeeds();
  const { enclosure, name, pattern, inputs, packedMesh } = seed!;
  const empty = newProject({ id: 'demo', enclosure, name, at: '2031-05-06T07:08:09Z' });
  const path = join(folder, 'demo.workbook.json');
  writeFileSync(path, writeProjectFile({ ...empty, pattern, inputs }, packedMesh));
  return path;
}

function kilometerBox(): string {
  const path = join(folder, 'box.stl');
  writeFileSync(path, writeStlBinary(box([0, 0, 0], [1e6, 1e6, 1e6])));
  return path;
}

/** Words of a wrapped text, so that a sentence can be looked for. */
const oneLine = (text: string) => text.replaceAll(/\s+/gu, ' ');

test.each([
  ['the demo taken in meters', async () => ['--project', await demoFile(), '--unit', 'm']],
  [
    'a box of a million millimeters',
    async () => ['--stl', kilometerBox(), '--unit', 'mm', '--pull', '0,0,1'],
  ],
])('%s', async (_, words) => {
  const { output } = await runReport([...(await words()), '--json'], surroundings);
  const said = oneLine(output);
  expect(said).toContain('Voxels of 2 mm are too many for a mold of');
  expect(said).toMatch(/This half takes \d+ L of stone, \d+ bowls of it: more than can be poured/u);
  expect(said).toContain('check the unit of the file');
  // One line per bowl would be millions.
  expect(output.length).toBeLessThan(1_000_000);
});
