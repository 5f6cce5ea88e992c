import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, goTo, goToList, openDemo, test, type StepName } from './support/workbookPage';

type ColorScheme = 'light' | 'dark';

/** In the dark only what has to do with color: everything else of the page is the same as in the light. */
async function expectNoViolations(page: Page, where: string, scheme: ColorScheme): Promise<void> {
  const axe = new AxeBuilder({ page });
  const { violations } = await (
    scheme === 'dark' ? axe.withRules(['color-contrast', 'link-in-text-block']) : axe
  ).analyze();
  const found = violations.map(
    ({ id, nodes }) => `${where}: ${id}: ${nodes.map((node) => node.html).join(' | ')}`,
  );
  expect(found).toEqual([]);
}

const stepIds: Readonly<Record<StepName, string>> = {
  Part: 'part',
  'Walls & draft': 'walls',
  'Ply schedule': 'plies',
  'Mold closing': 'closing',
  'Stone mold': 'mold',
  'Clamp & cure': 'cure',
  Checklist: 'checklist',
};
const steps = Object.keys(stepIds) as StepName[];

for (const colorScheme of ['light', 'dark'] as const) {
  test(`no accessibility violation on any page, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await openDemo(page);
    for (const step of steps) {
      await goTo(page, step);
      await expectNoViolations(page, step, colorScheme);
    }
    await goToList(page);
    await expectNoViolations(page, 'All projects', colorScheme);
    await page.getByRole('button', { name: 'New project' }).click();
    await expectNoViolations(page, 'New project', colorScheme);
  });
}

for (const [width, height] of [
  [1366, 768],
  [1920, 1080],
  [800, 1100],
  [390, 844],
] as const) {
  test(`nothing is cut or runs sideways at ${width} x ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await openDemo(page);
    for (const step of steps) {
      await page.goto(page.url().replace(/[a-z]+$/, stepIds[step]));
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
      const overflow = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(overflow, step).toBeLessThanOrEqual(0);
    }
  });
}

test('at 1366 x 768 the verdict, the main inputs and the map are visible without scrolling', async ({
  page,
}) => {
  await openDemo(page);
  await expect(page.getByRole('region', { name: 'Verdict' })).toBeInViewport({ ratio: 1 });
  await expect(page.getByRole('textbox', { name: 'Print and stone may be off by' })).toBeInViewport({
    ratio: 1,
  });
  await expect(page.getByRole('textbox', { name: 'Least draft I accept' })).toBeInViewport({ ratio: 1 });
  await expect(page.getByRole('application', { name: /3-D view/ })).toBeInViewport({ ratio: 0.95 });
});
