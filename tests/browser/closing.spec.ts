import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { realShell } from './support/models';
import { pdfPages } from './support/pdfText';
import {
  expect,
  expectFigure,
  figure,
  fillField,
  goTo,
  importModel,
  measured,
  newProject,
  openDemo,
  test,
  withoutDemo,
} from './support/workbookPage';

const verdict = (page: Page) => page.getByRole('region', { name: 'Verdict' });
const bench = (page: Page) => page.getByRole('complementary', { name: 'Bench view' });

/** Number of a figure row, e.g. 1200 for "1200N". */
const numberOf = async (page: Page, label: string) =>
  Number.parseFloat((await figure(page, label)).replace('\u2212', '-'));

async function addPlies(page: Page, count: number): Promise<void> {
  await goTo(page, 'Ply schedule');
  for (let ply = 0; ply < count; ply++) await page.getByRole('button', { name: 'Add ply' }).click();
  await measured(page);
}

async function paperText(page: Page): Promise<string> {
  await goTo(page, 'Checklist');
  const pages = await pdfPages(await page.pdf({ preferCSSPageSize: true }));
  return pages
    .map(({ text }) => text)
    .join(' ')
    .replaceAll(/\s/g, '');
}

test('the demo: three plies stand on their resin, more plies hold it open, clamps to one side tilt, and the checklist says so', async ({
  page,
}) => {
  await openDemo(page);
  await goTo(page, 'Ply schedule');
  await expectFigure(page, 'Stack as laid', /^0\.75mm/);
  await goTo(page, 'Mold closing');
  // As it comes its clamps hardly press.
  await fillField(page, 'Force of clamps A', '150');
  await expect(verdict(page)).toContainText('stands on its resin, as it should');
  await expectFigure(page, 'Voids, over the whole part', /^0\.0%/);
  // Its one thick side makes it lean a little on the lands there.
  expect(await numberOf(page, 'Load on the lands')).toBeLessThan(150);
  expect(await numberOf(page, 'Resin pressure when it gels')).toBeGreaterThan(100);

  await addPlies(page, 3);
  await expectFigure(page, 'Stack as laid', /^1\.50mm/);
  await goTo(page, 'Mold closing');
  await expect(verdict(page)).toContainText('fiber would fill');
  await page.getByRole('combobox', { name: 'Resin', exact: true }).selectOption('free');
  await expect(verdict(page)).toContainText('stands off');
  await expect(verdict(page)).toContainText('What holds it open: show face');
  expect(await numberOf(page, 'Stand-off in the middle')).toBeGreaterThan(0.1);
  expect(await numberOf(page, 'Load on the lands')).toBe(0);
  expect(await numberOf(page, 'Wall that this stack wants')).toBeGreaterThan(1.1);

  // More force closes the mold further, at once.
  const before = await numberOf(page, 'Stand-off in the middle');
  await fillField(page, 'Force of clamps A', '600');
  await expect.poll(() => numberOf(page, 'Stand-off in the middle')).toBeLessThan(before);

  // All clamps on the +x side.
  await page.getByRole('combobox', { name: 'Where clamps A stand' }).selectOption('at a place');
  await fillField(page, 'Place x of clamps A', '8');
  await expect(page.getByText('the clamps act at x 8.0, y 0.0 mm')).toBeVisible();
  await expect(page.getByText(/^the laminate pushes back at x 8\.\d/)).toBeVisible();
  await expect(verdict(page)).toContainText(/The mold tilts by 0\.\d+°/);

  // Every map has its legend.
  for (const [tab, title] of [
    ['Gap', 'Gap, mm; white: what the plies fill'],
    ['Class', 'Laminate in the closed mold'],
    ['Fiber', 'Fiber volume fraction'],
    ['Pressure', 'Fiber-bed pressure, kPa'],
    ['Change', 'Wall change that the stack wants, mm; + is thicker'],
  ] as const) {
    await bench(page).getByRole('button', { name: tab, exact: true }).click();
    await expect(bench(page).getByText(title, { exact: true })).toBeVisible();
  }
  await bench(page).getByRole('button', { name: 'Class', exact: true }).click();
  for (const name of ['too tight', /^\s*pressed/, 'barely pressed', 'loose'])
    await expect(bench(page).getByRole('listitem').filter({ hasText: name })).toBeVisible();

  // The first place of the ranked list, marked on the part.
  const ranked = page.getByRole('table', { name: 'What holds the mold open, most load first' });
  const first = ranked.getByRole('button').first();
  const place = (await first.innerText()).replace(/^1 · /, '');
  await first.click();
  await expect(bench(page)).toContainText(`Marked with dots: ${place}, where it carries.`);

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save wall changes as CSV' }).click(),
  ]);
  const csv = readFileSync(await download.path(), 'utf8')
    .trim()
    .split('\n');
  expect(csv[0]).toBe('x_mm,y_mm,z_mm,wall_mm,wall_change_mm');
  expect(csv.length).toBeGreaterThan(50);

  const text = await paperText(page);
  expect(text).toContain('8×600N');
  expect(text).toContain('Clampsandplaces,seenalongthepull');
  expect(text).toContain('Expectedwarm:');
  expect(text).toContain('neverreachbetweenthehalves');
});

const shell = realShell();

test(`${shell.what}: both steps, what the clamps do, the paper, and the headless command agree @model`, async ({
  page,
  context,
}) => {
  await withoutDemo(context);
  await newProject(page, 'Pocket case', 'Top');
  await importModel(page, shell.path);
  await page.getByRole('combobox', { name: 'Unit of the file' }).selectOption('mm');
  await measured(page);

  await addPlies(page, 3);
  await expectFigure(page, 'Stack as laid', /^1\.50mm/);
  await expect(verdict(page)).toBeVisible();
  expect(await verdict(page).innerText()).toMatch(/Go|Look again|Stop/);

  await goTo(page, 'Mold closing');
  const [clamps, laminate, lands] = [
    await numberOf(page, 'Clamp force'),
    await numberOf(page, 'Load in the laminate'),
    await numberOf(page, 'Load on the lands'),
  ];
  // Each is shown to whole newtons.
  expect(Math.abs(clamps - laminate - lands)).toBeLessThanOrEqual(1.5);
  expect(await verdict(page).innerText()).toMatch(/of the show face is|the laminate|lands/);
  await expect(bench(page).getByText('Gap, mm; white: what the plies fill')).toBeVisible();
  await expect(page.getByRole('img', { name: /^Show face: In the closed mold: / })).toBeVisible();
  await expect(page.getByRole('table', { name: 'Ends between which the mold will lie' })).toContainText(
    'Resin held in',
  );
  const standOff = await numberOf(page, 'Stand-off in the middle');
  const loose = await numberOf(page, 'Loose: more air than you accept');

  const text = await paperText(page);
  expect(text).toContain('8×150N');
  expect(text).toContain('tightenedalittleatatimeintheorderofthecard');

  await page.getByRole('button', { name: 'Project file' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save this project as a file' }).click(),
  ]);
  const run = spawnSync(
    process.execPath,
    ['src/startReport.mjs', '--project', await download.path(), '--json'],
    {
      cwd: join(import.meta.dirname, '../..'),
      encoding: 'utf8',
    },
  );
  expect(run.stderr).toBe('');
  const report = JSON.parse(run.stdout) as {
    steps: Record<string, { figures: { id: string; value: number }[] }>;
  };
  const headless = (id: string) =>
    report.steps['closing']?.figures.find((one) => one.id === `closing.${id}`)?.value as number;
  expect(headless('clampForceN')).toBeCloseTo(clamps, 0);
  expect(headless('standOffMm').toFixed(2)).toBe(standOff.toFixed(2));
  // Shown to the whole percent where its uncertainty is that wide, to a tenth of one elsewhere.
  expect(Math.abs(headless('looseShare') - loose)).toBeLessThanOrEqual(0.0051);
});

test('a mold without clamps is told what is missing', async ({ page }) => {
  await openDemo(page);
  await goTo(page, 'Mold closing');
  await page.getByRole('button', { name: 'Remove clamps A' }).click();
  await expect(verdict(page)).toContainText(
    'No clamp presses on the mold: give at least one clamp with a force.',
  );
  await expect(bench(page)).toContainText('No clamp presses on the mold');
});
