import type { Page } from '@playwright/test';
import { startedKey } from '../../src/workbook/keys';
import { domeShell } from '../support/meshes';
import { writeModel } from './support/models';
import { pdfPages } from './support/pdfText';
import { expect, newProject, test } from './support/workbookPage';

declare global {
  interface Window {
    /** What the page showed each time it was printed. */
    printed: string[];
  }
}

test.beforeEach(async ({ page }) => {
  await page.addInitScript((key) => {
    // Not the first start: no demo that the page would be led away to.
    localStorage.setItem(key, '2026-01-01');
    window.printed = [];
    window.print = () => {
      window.printed.push(document.querySelector('main')!.innerText);
    };
  }, startedKey);
});

const printed = (page: Page) => page.evaluate(() => window.printed);
const card = (page: Page) => page.getByRole('region', { name: 'Bench card' });

/** As the browser's own print command puts it on paper. */
async function expectStamped(page: Page): Promise<void> {
  const pages = await pdfPages(await page.pdf());
  expect(pages.length).toBeGreaterThan(2);
  for (const sheet of pages) expect(sheet.text).toContain('INCOMPLETE');
  // Text under the sheet's own ground would be found as well: the stamp must lie over it.
  await page.emulateMedia({ media: 'print' });
  const inTheMiddle = await page.evaluate(
    () => document.elementFromPoint(window.innerWidth / 2, window.innerHeight / 2)?.textContent,
  );
  expect(inTheMiddle).toBe('INCOMPLETE');
  await page.emulateMedia({ media: 'screen' });
}

test('pressed during an import, Print checklist waits with progress and prints what stays', async ({
  page,
}) => {
  const fileName = 'dome.stl';
  // 40 mm across: its mold is soon heated.
  const dome = domeShell(24, 48);
  const path = writeModel(fileName, { ...dome, positions: dome.positions.map((mm) => 0.4 * mm) });
  // The worker's program is held back, so that the import lasts until the test lets it go on.
  let goOn!: () => void;
  const held = new Promise<void>((resolve) => (goOn = resolve));
  await page.route(/\/assets\/entry-.*\.js/u, async (route) => {
    await held;
    await route.continue();
  });
  await newProject(page, 'Pocket case', 'Top');
  await page.getByLabel('Model file').setInputFiles(path);
  await page.getByRole('button', { name: 'Print checklist' }).click();
  const waiting = page.getByRole('region', { name: 'Printing' });
  await expect(waiting).toContainText('printed as soon as everything is worked out');
  await expect(page.getByRole('progressbar')).toBeVisible();
  await expect(card(page)).toContainText('NOT YET KNOWN');
  await expectStamped(page);
  expect(await printed(page)).toEqual([]);
  goOn();

  await expect.poll(() => printed(page), { timeout: 200_000 }).toHaveLength(1);
  await expect(waiting).toHaveCount(0);
  const [paper] = await printed(page);
  expect(paper).toContain(fileName);
  expect(paper).not.toContain('Incomplete');
  // Nothing that came later would have changed it.
  await expect(page.getByRole('progressbar')).toHaveCount(0);
  expect(paper).toContain(
    await card(page)
      .getByText(/says? stop|say go|Nothing says stop/u)
      .first()
      .innerText(),
  );
});

test('a project without a pattern is stamped too, and its print does not wait for ever', async ({ page }) => {
  await newProject(page, 'Pocket case', 'Top');
  await page.getByRole('button', { name: 'Print checklist' }).click();
  await expect.poll(() => printed(page)).toHaveLength(1);
  expect((await printed(page))[0]).toContain('Do not work from this sheet. No pattern is imported.');
  await expectStamped(page);
});
