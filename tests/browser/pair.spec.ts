/** Two halves of one enclosure on the page: do they meet, does what goes inside fit, and when is the job done? */
import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { joined } from '../../src/core/fit/cavity';
import { box } from '../support/meshes';
import { writeModel } from './support/models';
import {
  expect,
  figure,
  fillField,
  goTo,
  newProject,
  openDemo,
  test,
  withoutDemo,
} from './support/workbookPage';

const verdict = (page: Page) => page.getByRole('region', { name: 'Verdict' });

async function bothSchemes(page: Page, name: string, outputPath: (file: string) => string) {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await page.screenshot({ path: outputPath(`${name}-${colorScheme}.png`) });
  }
  await page.emulateMedia({ colorScheme: 'light' });
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`)).toEqual(
    [],
  );
}

const choose = (page: Page, label: string, value: string) =>
  page.getByRole('combobox', { name: label, exact: true }).selectOption(value);
const fold = (page: Page, title: string) => page.locator('summary', { hasText: title });

/** Adds a box to the contents, its entry folded again. */
async function addContents(page: Page, name: string, what: string, sizes: Readonly<Record<string, string>>) {
  await page.getByRole('button', { name: 'Add to the contents' }).click();
  await fold(page, 'board, 40 × 25').last().click();
  await fillField(page, 'Name', name);
  await choose(page, 'What', what);
  for (const [label, value] of Object.entries(sizes)) await fillField(page, label, value);
  await fold(page, `${what}, `).last().click();
}

test('the demo’s halves: rims, a board and a cell, the seam, coats and the calendar', async ({
  page,
}, info) => {
  await openDemo(page);
  await goTo(page, 'Fit');
  await choose(page, 'Other half', 'Lower half');
  await expect(verdict(page)).toContainText('The rims step by', { timeout: 60_000 });
  await addContents(page, 'Main board', 'board', { Height: '3', Length: '38', 'Place z': '5' });
  await addContents(page, 'Battery', 'cell', { Height: '4', Length: '30', Width: '20', 'Place z': '-4' });
  await expect(page.getByText(/Lithium cells burn/u).first()).toBeVisible();
  await expect
    .poll(() => figure(page, 'Least clearance of the contents'), { timeout: 60_000 })
    .toMatch(/^\d\.\d\dmm$/u);
  const scale = Number.parseFloat(await figure(page, 'Least scale at which all fits'));
  expect(scale).toBeGreaterThan(0.2);
  expect(scale).toBeLessThan(1);

  await fold(page, 'nothing chosen').click();
  await choose(page, 'Seam', 'bead');
  await expect(fold(page, 'mL')).toContainText(/Seam0\.\d\d/u);
  await bothSchemes(page, 'fit', (file) => info.outputPath(file));

  await goTo(page, 'Finish');
  await page.getByRole('button', { name: 'Add a coat' }).click();
  await fillField(page, 'Start of the job', '2026-05-04');
  await expect(page.getByRole('img', { name: /^Calendar of the job/u })).toBeVisible();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the calendar' }).click();
  const saved = await saving;
  expect(saved.suggestedFilename()).toBe('Wind meter - Upper half calendar.ics');
  expect(readFileSync(await saved.path(), 'utf8')).toContain('DTSTART:20260504T090000');
  await bothSchemes(page, 'finish', (file) => info.outputPath(file));
});

test('one closed solid becomes two projects that are mates and meet', async ({ page, context }, info) => {
  await withoutDemo(context);
  await newProject(page, 'Remote', 'Whole');
  const [outside, inside] = [box([0, 0, 0], [60, 40, 20]), box([2, 2, 2], [58, 38, 18])];
  const inward = inside.facets.map((_, corner, all) => all[corner - (corner % 3) + 2 - (corner % 3)]!);
  const model = writeModel('whole.stl', joined(outside, { ...inside, facets: inward }));
  await page.getByLabel('Model file').setInputFiles(model);
  await expect(page.getByText('whole.stl', { exact: true })).toBeVisible({ timeout: 60_000 });
  await goTo(page, 'Fit');
  await fold(page, 'Split one closed model').click();
  await fillField(page, 'Parting plane at', '12');
  await page.getByRole('button', { name: 'Split into two projects' }).click();
  await expect(verdict(page)).toContainText('The rims step by 0.00 mm at most', { timeout: 60_000 });
  await page.screenshot({ path: info.outputPath('split-light.png') });
});
