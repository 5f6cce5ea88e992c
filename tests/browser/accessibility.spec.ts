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
  Decision: 'decision',
  Part: 'part',
  Pattern: 'pattern',
  'Walls & draft': 'walls',
  'Ply schedule': 'plies',
  'Ply cutting': 'cutting',
  'Mold closing': 'closing',
  'Stone mold': 'mold',
  'Clamp & cure': 'cure',
  Fit: 'fit',
  Finish: 'finish',
  Checklist: 'checklist',
  Bench: 'bench',
  Live: 'live',
};
const steps = Object.keys(stepIds) as StepName[];

test('no accessibility violation on any page, light or dark', async ({ page }) => {
  test.setTimeout(480_000);
  await openDemo(page);
  const bothSchemes = async (where: string) => {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await expectNoViolations(page, `${where}, ${colorScheme}`, colorScheme);
    }
  };
  for (const step of steps) {
    await goTo(page, step);
    await bothSchemes(step);
  }
  await goToList(page);
  await bothSchemes('All projects');
  await page.getByRole('button', { name: 'New project' }).click();
  await bothSchemes('New project');
});

/** How far the whole document can be scrolled away, px, once everything that opens on the page is open. */
async function documentScrollsPx(page: Page): Promise<number> {
  return page.evaluate(() => {
    for (const closed of document.querySelectorAll<HTMLDetailsElement>('details:not([open])'))
      closed.open = true;
    window.scrollTo(0, 100_000);
    const scrolled = window.scrollY;
    window.scrollTo(0, 0);
    return Math.max(scrolled, document.documentElement.scrollHeight - window.innerHeight);
  });
}

async function expectNothingSideways(page: Page): Promise<void> {
  const project = page.url().replace(/[a-z]+$/, '');
  for (const step of steps) {
    await page.goto(project + stepIds[step]);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    const overflow = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(overflow, step).toBeLessThanOrEqual(0);
  }
}

async function expectNothingScrolledOut(page: Page): Promise<void> {
  for (const step of steps) {
    await goTo(page, step);
    expect(await documentScrollsPx(page), step).toBe(0);
  }
  await goTo(page, 'Walls & draft');
  for (const map of await page.getByRole('group', { name: 'Map' }).getByRole('button').all()) {
    await map.click();
    expect(await documentScrollsPx(page), `map ${await map.innerText()}`).toBe(0);
  }
}

/** One opening for all sizes: what a window shows does not hang on the size it was opened at. */
test('at every size of the window nothing is cut, runs sideways or is scrolled out of it', async ({
  page,
}) => {
  test.setTimeout(240_000);
  await openDemo(page);
  await test.step('at 1366 x 768 the verdict, the main inputs and the map are visible without scrolling', async () => {
    await expect(page.getByRole('region', { name: 'Verdict' })).toBeInViewport({ ratio: 1 });
    for (const name of ['Print and stone may be off by', 'Least draft I accept'])
      await expect(page.getByRole('textbox', { name })).toBeInViewport({ ratio: 1 });
    await expect(page.getByRole('application', { name: /3-D view/ })).toBeInViewport({ ratio: 0.95 });
  });
  for (const [width, height] of [
    [1366, 768],
    [1920, 1080],
    [800, 1100],
    [390, 844],
  ] as const)
    await test.step(`nothing is cut or runs sideways at ${width} x ${height}`, async () => {
      await page.setViewportSize({ width, height });
      await expectNothingSideways(page);
    });
  for (const [width, height] of [
    [1366, 768],
    [1920, 1080],
  ] as const)
    await test.step(`no sheet of a project can be scrolled out of the window at ${width} x ${height}`, async () => {
      await page.setViewportSize({ width, height });
      await expectNothingScrolledOut(page);
    });
  await test.step('nor can the list of projects', async () => {
    await goToList(page);
    const belowTheList = await page.evaluate(() => {
      const { bottom } = document.querySelector('main')!.getBoundingClientRect();
      return document.documentElement.scrollHeight - Math.max(window.innerHeight, bottom + window.scrollY);
    });
    expect(belowTheList).toBeLessThan(1);
  });
});

test('in forced colors the chosen map is told from the others', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active' });
  await openDemo(page);
  const maps = page.getByRole('group', { name: 'Map' });
  const lookOf = (pressed: boolean) =>
    maps
      .getByRole('button', { pressed })
      .first()
      .evaluate((button) => {
        const { backgroundColor, color } = getComputedStyle(button);
        return { backgroundColor, color };
      });
  await expect(maps.getByRole('button', { pressed: true })).toHaveCount(1);
  const [chosen, other] = [await lookOf(true), await lookOf(false)];
  expect(chosen.backgroundColor).not.toBe(other.backgroundColor);
  expect(chosen.color).not.toBe(other.color);
  expect(chosen.color).not.toBe(chosen.backgroundColor);
});
