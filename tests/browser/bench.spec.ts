import type { Page } from '@playwright/test';
import { expect, goTo, measured, openDemo, sheetTitle, test } from './support/workbookPage';

/** By the start of what is read: what is typed in. Three of the twelve are far out of band. */
const readings: readonly (readonly [what: string, value: string, isOut: boolean])[] = [
  ['print along x', '69.2', true],
  ['print along y', '41.0', false],
  ['print along z', '12.4', false],
  ['wall at a typical place', '0.67', false],
  ['pattern on the scale', '3.1', false],
  ['warmest in the trial cup', '70', true],
  ['slurry in a cup', '2.07', false],
  ['3 plies, caliper', '0.75', false],
  ['whole stack, pressed', '0.71', false],
  ['finished along x', '68.5', true],
  ['finished wall', '0.67', false],
  ['finished part on the scale', '3.7', false],
];

const row = (page: Page, what: string) => page.locator('.reading', { hasText: what }).first();

/** Word of every verdict, by step, from the Decision's own source: the saved figures. */
async function verdictWords(page: Page): Promise<Map<string, string>> {
  await page.getByRole('button', { name: 'Project file' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save all figures as JSON' }).click(),
  ]);
  const stream = await download.createReadStream();
  const chunks: Buffer[] = [];
  for await (const chunk of stream) chunks.push(chunk as Buffer);
  const saved = JSON.parse(Buffer.concat(chunks).toString('utf8')) as {
    steps: Record<string, { verdicts: { id: string; word: string }[] }>;
  };
  await page.keyboard.press('Escape');
  return new Map(
    Object.entries(saved.steps)
      .filter(([step]) => step !== 'checklist')
      .flatMap(([, { verdicts }]) => verdicts.map(({ id, word }) => [id, word] as const)),
  );
}

async function allIn(page: Page): Promise<void> {
  await measured(page);
  await expect(page.locator('.incomplete-stamp')).toHaveCount(0, { timeout: 90_000 });
}

test('twelve readings typed in, three out of band: exactly what rests on them turns', async ({ page }) => {
  await openDemo(page);
  await goTo(page, 'Bench');
  await allIn(page);
  const before = await verdictWords(page);
  for (const [what, value] of readings) {
    const field = row(page, what).getByRole('textbox');
    await field.fill(value);
    await field.press('Tab');
  }
  await allIn(page);
  for (const [what, , isOut] of readings)
    await expect(row(page, what)).toContainText(isOut ? 'out of band' : 'as expected');
  // The demo's clamps, entered weaker than most, count as put on the scale.
  await expect(page.getByRole('region', { name: 'Readings' })).toContainText('13 of');
  const after = await verdictWords(page);
  const turned = [...after].filter(([id, word]) => before.get(id) !== word).map(([id]) => id);
  expect(turned.toSorted()).toEqual(['mold.heat', 'mold.size']);
  await expect(row(page, 'finished along x')).toContainText('print the next pattern at scale');
  // They are kept, and stand on the paper beside what was planned.
  await page.reload();
  await allIn(page);
  await expect(row(page, 'print along x').getByRole('textbox')).toHaveValue(/69\.2/u);
  await goTo(page, 'Checklist');
  await expect(page.getByRole('region', { name: 'Print and box' })).toContainText('69.20');
});

test('every blank is reached by keyboard in the order of the paper; 320 px wide nothing is cut off', async ({
  page,
}) => {
  await page.setViewportSize({ width: 320, height: 720 });
  await page.goto('/');
  await expect(sheetTitle(page, 'Walls & draft')).toBeVisible();
  await measured(page);
  await page.goto(page.url().replace(/[a-z]+$/u, 'bench'));
  await expect(sheetTitle(page, 'Bench')).toBeVisible();
  await allIn(page);
  const numbers = await page
    .locator('.reading')
    .evaluateAll((rows) => rows.map((one) => one.getAttribute('data-blank')));
  expect(numbers.length).toBeGreaterThan(12);
  await page.locator('.reading input').first().focus();
  const met: (string | null)[] = [];
  for (let press = 0; press < numbers.length + 12 && met.length < numbers.length; press++) {
    const at = await page.evaluate(
      () => document.activeElement?.closest('.reading')?.getAttribute('data-blank') ?? null,
    );
    if (at !== null && met.at(-1) !== at) met.push(at);
    await page.keyboard.press('Tab');
  }
  expect(met).toEqual(numbers);
  const overflow = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overflow).toBeLessThanOrEqual(0);
});

test('what runs is told on its own page, on every page and in the tab’s title, also after a reload', async ({
  page,
}) => {
  await page.clock.install({ time: new Date('2031-05-06T08:00:00') });
  await openDemo(page);
  await goTo(page, 'Live');
  const now = page.getByRole('region', { name: 'Oven now' });
  // The demo's upper half is stopped, and nothing else may be told to be started.
  await expect(now).toContainText('A check says stop: nothing is started');
  for (const place of [1, 2])
    await page
      .getByRole('region', { name: `Timer ${place}` })
      .getByRole('button', { name: 'Start' })
      .click();
  await goTo(page, 'Clamp & cure');
  await page.getByRole('button', { name: 'Oven on: start the run' }).click();
  await page.clock.fastForward('00:20:00');
  await goTo(page, 'Live');
  await expect(now.getByRole('timer')).toHaveText('20 min');
  await expect(now).toContainText('Next: ');
  await expect(page).toHaveTitle(/OVER: Mixing · .*Oven 20 min/u);
  await page.reload();
  await goTo(page, 'Walls & draft');
  await expect(page.getByRole('link', { name: 'Oven on' })).toBeVisible();
  await expect(page).toHaveTitle(/Oven 20 min/u);
});
