/** What a maker does in the browser, in a few verbs, and what must hold in every test. */
import { basename } from 'node:path';
import { expect, test as base, type BrowserContext, type Locator, type Page } from '@playwright/test';

export type StepName =
  | 'Decision'
  | 'Part'
  | 'Pattern'
  | 'Walls & draft'
  | 'Ply schedule'
  | 'Ply cutting'
  | 'Mold closing'
  | 'Stone mold'
  | 'Clamp & cure'
  | 'Fit'
  | 'Finish'
  | 'Checklist'
  | 'Bench'
  | 'Live';

/** Sheet of a step, by its title. */
export const sheetTitle = (page: Page, title: StepName): Locator =>
  page.getByRole('heading', { level: 1, name: title });

/** The workbook as on a machine that has seen it before: no demo is put in. Call before the first page is opened. */
export async function withoutDemo(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    // A blank page has no storage.
    if (location.protocol === 'http:') localStorage.setItem('mold-layup/started', 'before');
  });
}

/** First start: the demo opens by itself and has been measured. */
export async function openDemo(page: Page): Promise<void> {
  await page.goto('/');
  await expect(sheetTitle(page, 'Walls & draft')).toBeVisible();
  await measured(page);
}

export async function goTo(page: Page, step: StepName): Promise<void> {
  await page.getByRole('navigation', { name: 'Steps' }).getByRole('link', { name: step }).click();
  await expect(sheetTitle(page, step)).toBeVisible();
}

/** Leaves the project for the list, and waits for it: a project's page has file inputs of the same names. */
export async function goToList(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'All projects' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Mold & Layup Workbook' })).toBeVisible();
}

/** Waits until the part is measured: nothing in progress, and Part, Pattern, Walls & draft and Ply schedule have a verdict. */
export async function measured(page: Page): Promise<void> {
  await expect(page.getByRole('progressbar')).toHaveCount(0, { timeout: 60_000 });
  const steps = page.getByRole('navigation', { name: 'Steps' });
  await expect(steps.getByRole('link', { name: /^[1234]\D.*not yet known/ })).toHaveCount(0, {
    timeout: 60_000,
  });
}

export async function newProject(page: Page, enclosure: string, part: string): Promise<void> {
  await page.goto('/#/');
  await page.getByRole('button', { name: 'New project' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Enclosure').fill(enclosure);
  await dialog.getByRole('textbox', { name: 'Part, usually a half' }).fill(part);
  await dialog.getByRole('button', { name: 'Create' }).click();
  await expect(sheetTitle(page, 'Part')).toBeVisible();
}

export async function importModel(page: Page, path: string): Promise<void> {
  await page.getByLabel('Model file').setInputFiles(path);
  await expect(page.getByText(basename(path), { exact: true })).toBeVisible({ timeout: 60_000 });
  await measured(page);
}

/** Value of a figure row on the open sheet, as shown, e.g. "0.90mm". */
export async function figure(page: Page, label: string): Promise<string> {
  const row = page.getByRole('button', { name: `Working of "${label}"`, exact: true }).locator('xpath=..');
  return (await row.locator('.row-value').innerText()).replaceAll(/[\s\u2009\u202f]/g, '');
}

/** Waits until a figure reads as expected: figures follow the inputs a moment later. */
export async function expectFigure(page: Page, label: string, expected: string | RegExp): Promise<void> {
  const reading = expect.poll(() => figure(page, label));
  await (typeof expected === 'string' ? reading.toBe(expected) : reading.toMatch(expected));
}

/** Fills a field and leaves it, as typing and pressing Tab would. */
export async function fillField(page: Page, label: string, value: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  await field.fill(value);
  await field.press('Tab');
}

/**
 * Every browser test also proves: no error on the console, no exception, nothing blocked by the content security
 * policy, and no request to anywhere but the page's own server.
 */
export const test = base.extend<{ keepsOffline: boolean; quiet: void }>({
  /** Whether the app keeps itself for offline use, which takes an eighth of every opening: only where a test is about it. */
  keepsOffline: [false, { option: true }],
  quiet: [
    async ({ context, baseURL, keepsOffline }, use) => {
      if (!keepsOffline)
        await context.addInitScript(() => {
          Reflect.deleteProperty(Navigator.prototype, 'serviceWorker');
        });
      const complaints: string[] = [];
      const watch = (page: Page) => {
        page.on('console', (message) => {
          if (message.type() === 'error') complaints.push(message.text());
        });
        page.on('pageerror', (error) => complaints.push(String(error)));
      };
      context.pages().forEach(watch);
      context.on('page', watch);
      context.on('request', (request) => {
        if (!/^(?:data|blob):/.test(request.url()) && !request.url().startsWith(baseURL as string))
          complaints.push(`request to ${request.url()}`);
      });
      await use();
      expect(complaints).toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };
