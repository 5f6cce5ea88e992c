import type { Page } from '@playwright/test';
import { expect, goTo, goToList, openDemo, test, type StepName } from './support/workbookPage';

const steps: readonly StepName[] = [
  'Part',
  'Walls & draft',
  'Ply schedule',
  'Mold closing',
  'Stone mold',
  'Clamp & cure',
  'Checklist',
];

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

for (const [width, height] of [
  [1366, 768],
  [1920, 1080],
] as const) {
  test(`no sheet of a project can be scrolled out of the window at ${width} x ${height}`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height });
    await openDemo(page);
    for (const step of steps) {
      await goTo(page, step);
      expect(await documentScrollsPx(page), step).toBe(0);
    }
    await goTo(page, 'Walls & draft');
    for (const map of await page.getByRole('group', { name: 'Map' }).getByRole('button').all()) {
      await map.click();
      expect(await documentScrollsPx(page), `map ${await map.innerText()}`).toBe(0);
    }
    await goToList(page);
    const belowTheList = await page.evaluate(() => {
      const { bottom } = document.querySelector('main')!.getBoundingClientRect();
      return document.documentElement.scrollHeight - Math.max(window.innerHeight, bottom + window.scrollY);
    });
    expect(belowTheList, 'All projects').toBeLessThan(1);
  });
}
