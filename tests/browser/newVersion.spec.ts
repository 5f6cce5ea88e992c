import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, test, withoutDemo } from './support/workbookPage';

const offlineScript = join(import.meta.dirname, '../../dist/sw.js');
const note = (page: Page) => page.getByText('A newer version of the workbook is ready');
const mark = (page: Page) => page.evaluate(() => (document.body.dataset['before'] = 'yes'));
const marked = (page: Page) => page.evaluate(() => document.body.dataset['before'] === 'yes');

test.use({ keepsOffline: true });

test('"Load it now" reloads its own tab only; the other goes on and says that a new version waits', async ({
  page,
  context,
}) => {
  await withoutDemo(context);
  await page.goto('/');
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await page.reload();
  const second = await context.newPage();
  await second.goto('/');
  await expect(second.getByRole('button', { name: 'New project' })).toBeVisible();
  await mark(page);
  await mark(second);
  const script = readFileSync(offlineScript, 'utf8');
  try {
    // A deploy, as the browser sees it.
    writeFileSync(offlineScript, `${script}\n// a newer build`);
    await page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()));
    await expect(note(page)).toBeVisible();
    await expect(note(second)).toBeVisible();

    await page.getByRole('button', { name: 'Load it now' }).click();
    await expect.poll(() => marked(page).catch(() => true)).toBe(false);
    await expect(page.getByRole('button', { name: 'New project' })).toBeVisible();
    await expect(note(page)).toHaveCount(0);
    await page.waitForTimeout(1500);
    expect(await marked(second)).toBe(true);
    await expect(note(second)).toBeVisible();

    // Nothing waits any more: the second takes the newer one by a plain reload.
    await second.getByRole('button', { name: 'Load it now' }).click();
    await expect.poll(() => marked(second).catch(() => true)).toBe(false);
    await expect(note(second)).toHaveCount(0);
  } finally {
    writeFileSync(offlineScript, script);
  }
});
