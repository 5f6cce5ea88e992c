import type { Page } from '@playwright/test';
import { domeShell } from '../support/meshes';
import { writeModel } from './support/models';
import { pdfPages } from './support/pdfText';
import { expect, fillField, goTo, openDemo, test } from './support/workbookPage';

declare global {
  interface Window {
    /** What the page showed each time it was printed. */
    printed: string[];
  }
}

test.beforeEach(async ({ page }) => {
  await page.addInitScript(() => {
    window.printed = [];
    window.print = () => {
      window.printed.push(document.querySelector('main')!.innerText);
    };
  });
});

const printed = (page: Page) => page.evaluate(() => window.printed);
const verdicts = (page: Page) => page.getByRole('region', { name: 'Verdicts' });
const allIsIn = (page: Page) =>
  expect(page.getByText('Do not work from this sheet')).toHaveCount(0, { timeout: 90_000 });

test('pressed during an import, Print checklist waits with progress and prints what stays', async ({
  page,
}) => {
  const fileName = 'dome of 46000 facets.stl';
  const path = writeModel(fileName, domeShell(80, 144));
  await openDemo(page);
  await goTo(page, 'Part');
  await page.getByLabel('Model file').setInputFiles(path);
  await page.getByRole('button', { name: 'Print checklist' }).click();
  const waiting = page.getByRole('region', { name: 'Printing' });
  await expect(waiting).toContainText('printed as soon as everything is worked out');
  await expect(page.getByRole('progressbar')).toBeVisible();
  await expect(verdicts(page)).toContainText('All steps: not yet known');
  expect(await printed(page)).toEqual([]);

  await expect.poll(() => printed(page), { timeout: 100_000 }).toHaveLength(1);
  await expect(waiting).toHaveCount(0);
  const [paper] = await printed(page);
  expect(paper).toContain(fileName);
  expect(paper).not.toContain('Incomplete');
  // Nothing that came later would have changed it.
  await expect(page.getByRole('progressbar')).toHaveCount(0);
  expect(paper).toContain(await verdicts(page).innerText());
});

test('paper is stamped INCOMPLETE on every page while results are not in, however it is printed', async ({
  page,
}) => {
  await openDemo(page);
  await goTo(page, 'Checklist');
  await allIsIn(page);
  for (const sheet of await pdfPages(await page.pdf())) expect(sheet.text).not.toContain('INCOMPLETE');

  // An oven run that was canceled does not come by itself: the browser's own print command can be given in peace.
  await goTo(page, 'Clamp & cure');
  await fillField(page, 'Stage goes to, stage 1', '65');
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(page.getByRole('button', { name: 'Work it out' })).toBeVisible();
  for (const sheet of await pdfPages(await page.pdf())) expect(sheet.text).toContain('INCOMPLETE');
  await goTo(page, 'Checklist');
  const pages = await pdfPages(await page.pdf());
  expect(pages.length).toBeGreaterThan(2);
  for (const sheet of pages) expect(sheet.text).toContain('INCOMPLETE');
  expect(pages[0]!.text).toMatch(/Do not work from this sheet\. The oven run .*canceled\./);

  // Nothing is under way, so the button does not wait for ever.
  await page.getByRole('button', { name: 'Print checklist' }).click();
  await expect.poll(() => printed(page)).toHaveLength(1);
  expect((await printed(page))[0]).toContain('Incomplete. Do not work from this sheet.');
});
