import type { Page } from '@playwright/test';
import { realShell } from './support/models';
import { expect, expectFigure, measured, openDemo, sheetTitle, test } from './support/workbookPage';

/** Presses Tab (or Shift+Tab) until the focused control has this accessible name; fails when it never comes. */
async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  for (let press = 0; press < 150; press++) {
    await page.keyboard.press('Tab');
    const focused = page.locator(':focus');
    if ((await focused.count()) === 0) continue;
    const label = await focused.evaluate((element) => {
      const labels = (element as HTMLInputElement).labels;
      return (
        element.getAttribute('aria-label') ??
        (labels?.length ? labels[0]?.textContent : element.textContent) ??
        ''
      ).trim();
    });
    if (typeof name === 'string' ? label === name : name.test(label)) return;
  }
  throw new Error(`no control named ${String(name)} can be reached with Tab`);
}

test('the main job by keyboard alone @model', async ({ page }) => {
  // Listened for from the start: on a busy machine a listener set up beside the key press comes too late now and then.
  const choosing = page.waitForEvent('filechooser', { timeout: 0 });
  await openDemo(page);
  await tabTo(page, 'All projects');
  await page.keyboard.press('Enter');
  await tabTo(page, 'New project');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toBeVisible();
  await tabTo(page, 'Enclosure');
  await page.keyboard.type('Pocket case');
  await page.keyboard.press('Tab');
  await page.keyboard.type('Top');
  await page.keyboard.press('Enter');
  await expect(sheetTitle(page, 'Part')).toBeVisible();

  await tabTo(page, /^(?:Choose|Import|Pick)/);
  await page.keyboard.press('Enter');
  const chooser = await choosing;
  await chooser.setFiles(realShell().path);
  await expect(page.getByText(/triangles · sha256/)).toBeVisible();
  await measured(page);

  await tabTo(page, /Ply schedule/);
  await page.keyboard.press('Enter');
  await expect(sheetTitle(page, 'Ply schedule')).toBeVisible();
  await tabTo(page, 'Add ply');
  await page.keyboard.press('Enter');
  await expectFigure(page, 'Stack as laid', /^1\.00mm/);

  await tabTo(page, /Walls & draft/);
  await page.keyboard.press('Enter');
  await expect(sheetTitle(page, 'Walls & draft')).toBeVisible();
  await expect(page.getByRole('region', { name: 'Verdict' })).toContainText(/of the show face|undercut/);
  await tabTo(page, /^Working of/);
  await page.keyboard.press('Enter');
  await expect(page.locator(':focus')).toHaveAttribute('aria-expanded', 'true');

  await tabTo(page, /Checklist/);
  await page.keyboard.press('Enter');
  await expect(sheetTitle(page, 'Checklist')).toBeVisible();
  await tabTo(page, /^Data sheets of/);
  await page.keyboard.press('Space');
  await expect(page.locator(':focus')).toBeChecked();
});
