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
  importModel,
  newProject,
  openDemo,
  test,
  withoutDemo,
} from './support/workbookPage';

const field = (page: Page, label: string, value: string) => fillField(page, label, value);
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

test('the demo’s halves: rims, a board and a cell, the seam, coats and the calendar', async ({
  page,
}, info) => {
  await openDemo(page);
  await goTo(page, 'Fit');
  await page.getByLabel('Other half').selectOption('Lower half');
  await expect(verdict(page)).toContainText('The rims step by', { timeout: 60_000 });

  await page.getByRole('button', { name: 'Add to the contents' }).click();
  await page.locator('summary', { hasText: 'Board' }).click();
  for (const [label, value] of [
    ['Length', '40'],
    ['Width', '25'],
    ['Height', '3'],
    ['Place x', '0'],
    ['Place z', '5'],
  ] as const)
    await field(page, label, value);
  await page.locator('summary', { hasText: 'Board' }).click();
  await page.getByRole('button', { name: 'Add to the contents' }).click();
  await page
    .locator('summary', { hasText: /^Board/u })
    .nth(1)
    .click();
  const entry = page.locator('details[open]').filter({ has: page.getByLabel('Name') });
  await entry.getByLabel('Name').fill('Cell');
  await entry.getByLabel('Name').press('Tab');
  await page.getByLabel('What', { exact: true }).locator('visible=true').selectOption('cell');
  for (const [label, value] of [
    ['Length', '30'],
    ['Width', '20'],
    ['Height', '4'],
    ['Place z', '-4'],
  ] as const)
    await page.getByRole('textbox', { name: label, exact: true }).locator('visible=true').fill(value);
  await page.keyboard.press('Tab');
  await expect(verdict(page)).toContainText('has the least clearance to the core face', { timeout: 60_000 });
  await expect(page.getByText(/Lithium cells burn/u).first()).toBeVisible();
  const clearance = Number.parseFloat(await figure(page, 'Least clearance of the contents'));
  expect(clearance).toBeGreaterThan(0);
  const scale = Number.parseFloat(await figure(page, 'Least scale at which all fits'));
  expect(scale).toBeGreaterThan(0.2);
  expect(scale).toBeLessThan(1);

  await page.locator('summary', { hasText: /^Seam/u }).click();
  await page.getByLabel('Seam', { exact: true }).locator('visible=true').selectOption('bead');
  await expect.poll(() => figure(page, 'Bead or cord along the seam')).toMatch(/^\d/u);
  await page.getByRole('region', { name: 'Worked out' }).scrollIntoViewIfNeeded();
  await bothSchemes(page, 'fit', (file) => info.outputPath(file));

  await goTo(page, 'Finish');
  await page.getByRole('button', { name: 'Add a coat' }).click();
  await field(page, 'Start of the job', '2026-05-04');
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
  await importModel(page, writeModel('whole.stl', joined(outside, { ...inside, facets: inward })));
  await goTo(page, 'Fit');
  await page.locator('summary', { hasText: 'Split one closed model' }).click();
  await field(page, 'Parting plane at', '12');
  await page.getByRole('button', { name: 'Split into two projects' }).click();
  await expect(page.getByText(/Remote · (Upper|Lower|First) half/u).first()).toBeVisible({ timeout: 30_000 });
  await expect(verdict(page)).toContainText('The rims step by 0.00 mm at most', { timeout: 60_000 });
  await page.screenshot({ path: info.outputPath('split-light.png') });
});
