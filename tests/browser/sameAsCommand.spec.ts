import { execFile } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { demoSeeds } from '../../src/workbook/demoSeeds';
import { writeProjectFile } from '../../src/workbook/projectFile';
import { publicMeshFiles, publicMeshes } from '../support/publicMeshes';
import { expect, measured, test, withoutDemo } from './support/workbookPage';

/** Given to the page, and to the command with these words. */
interface Compared {
  readonly what: string;
  readonly path: (folder: (name: string) => string) => Promise<string>;
  readonly words: readonly string[];
}

const demo: Compared = {
  what: 'the lower half of the demo',
  words: ['--project'],
  async path(folder) {
    const seed = (await demoSeeds()).at(-1);
    if (seed?.pattern == null) throw new Error('the demo has no pattern');
    const { packedMesh, pattern, enclosure, name, inputs } = seed;
    const at = '2031-05-06T07:08:09.000Z';
    const project = {
      id: 'lower',
      enclosure,
      name,
      pattern,
      inputs,
      cards: [],
      madeOf: null,
      record: {},
      createdAt: at,
      changedAt: at,
    };
    const path = folder('lower.workbook.json');
    writeFileSync(path, writeProjectFile(project, packedMesh));
    return path;
  },
};

/** Three that are done soon; of our own where the shared meshes are absent. */
const chosen = ['mini_player_top_snap.stl', 'handheld_top_ascii.stl', 'adapter_box_snap.stl'];
const files = publicMeshFiles();
test.afterAll(() => files.remove());
const meshes = publicMeshes
  .map(([name]) => name)
  .filter((name, _, { length }) => length < 4 || chosen.some((one) => name.endsWith(one)))
  .map((name): Compared => ({
    what: name,
    words: ['--stl'],
    path: () => Promise.resolve(files.pathOf(name)),
  }));

/** Browser and Node take their exponentials from different versions of the same engine: the last digits may differ. */
const mostApart = 1e-9;

/** Where two values differ, by their paths. */
function differences(a: unknown, b: unknown, at = ''): string[] {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= mostApart * Math.max(1, Math.abs(a)) ? [] : [`${at}: ${a} and ${b}`];
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null)
    return a === b ? [] : [`${at}: ${String(a)} and ${String(b)}`];
  const [ofA, ofB] = [a as Readonly<Record<string, unknown>>, b as Readonly<Record<string, unknown>>];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].flatMap((key) =>
    differences(ofA[key], ofB[key], `${at}/${key}`),
  );
}

for (const { what, path: pathIn, words } of [demo, ...meshes])
  test(`page and command say the same of ${what} @model`, async ({ page, context }, info) => {
    await withoutDemo(context);
    await page.goto('/');
    const path = await pathIn((name) => info.outputPath(name));
    await page.getByLabel('Project file').setInputFiles(path);
    await page.getByRole('navigation', { name: 'Steps' }).getByRole('link', { name: 'Part' }).click();
    await expect(page.getByText(/triangles · sha256/)).toBeVisible({ timeout: 60_000 });
    await measured(page);
    // Everything is in once nothing is left that paper would wait for.
    const steps = page.getByRole('navigation', { name: 'Steps' });
    await steps.getByRole('link', { name: 'Checklist' }).click();
    await expect(page.locator('.incomplete-stamp')).toHaveCount(0, { timeout: 90_000 });
    await page.getByRole('button', { name: 'Project file' }).click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save all figures as JSON' }).click(),
    ]);
    const { stdout } = await promisify(execFile)(
      process.execPath,
      ['src/startReport.mjs', ...words, path, '--json'],
      {
        cwd: join(import.meta.dirname, '../..'),
        maxBuffer: 1e9,
      },
    ).catch((refused: { readonly code?: unknown; readonly stdout: string }) => {
      // 1: a verdict says stop.
      if (refused.code !== 1) throw refused;
      return refused;
    });
    const [ofPage, ofCommand] = [readFileSync(await download.path(), 'utf8'), stdout].map(
      (text) => JSON.parse(text) as Readonly<Record<string, unknown>>,
    );
    expect(differences(ofPage, ofCommand)).toEqual([]);
  });
