import type { Page } from '@playwright/test';
import { pdfPages } from './support/pdfText';
import { expect, expectFigure, fillField, goTo, measured, openDemo, test } from './support/workbookPage';

const verdict = (page: Page) => page.getByRole('region', { name: 'Verdict' });
const run = (page: Page) => page.getByRole('region', { name: 'Run', exact: true });

/** An invented prepreg: 16 h at 70 °C or 25 min at 120 °C. */
async function enterCures(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Add a cure' }).click();
  await page.getByRole('button', { name: 'Add a cure' }).click();
  await fillField(page, 'Held for, cure 2', '0,42');
  await fillField(page, 'At, cure 2', '120');
  await measured(page);
}

/** As a logger with decimal commas writes it. */
const fahrenheit = (celsius: number) => (celsius * 1.8 + 32).toFixed(1).replace('.', ',');

async function openCure(page: Page): Promise<void> {
  await openDemo(page);
  await goTo(page, 'Clamp & cure');
  await measured(page);
}

test('a program is judged over the band, its limits stop it, and the checklist carries it', async ({
  page,
}) => {
  await openCure(page);
  await expect(verdict(page)).toContainText("only the supplier's sheet can say");
  await enterCures(page);
  await expect(verdict(page)).toContainText(
    /Cures if the stone keeps its water \(dose [\d.]+\).*does not if the stone lets it go \(dose 0\.\d\d\)/,
  );
  await expect(verdict(page)).toContainText('A thermocouple at the laminate is the test');
  await expectFigure(page, 'Coldest place of the laminate peaks at', /^10\d°Cestimate|10\d°C/);
  await expect(page.getByRole('img', { name: /^Temperature over hours/ }).first()).toBeVisible();
  await expect(page.getByRole('img', { name: /^Cut through the closed mold/ })).toBeVisible();
  await expect(page.getByRole('cell', { name: 'never' }).first()).toBeVisible();

  await fillField(page, 'Stage goes to, stage 2', '140');
  await expect(verdict(page)).toContainText('Stage 2 goes to 140 °C, over the limit of 130 °C for the stone');
  await page.getByRole('button', { name: 'Remove stage 2' }).click();
  await fillField(page, 'Stage goes to, stage 1', '15');
  await expect(verdict(page)).toContainText('The oven program never heats');
  await fillField(page, 'Stage goes to, stage 1', '70');
  await measured(page);
  await expect(verdict(page)).toContainText('Does not cure, whatever the stone does');

  await goTo(page, 'Checklist');
  await measured(page);
  const paper = await page.pdf({ preferCSSPageSize: true });
  const text = (await pdfPages(paper))
    .map((sheet) => sheet.text)
    .join(' ')
    .replaceAll(/\s+/g, ' ');
  expect(text).toContain('GATE: both halves weigh what they weighed as sealed');
  expect(text).toContain('Clamps checked one by one');
  expect(text).toContain('GATE: again');
  expect(text).toContain('GATE: laminate under 50');
  expect(text).toContain('Damp stone bursts: dry by weight first');
});

test('a live run keeps its clock over a reload and a hold', async ({ page }) => {
  await page.clock.install({ time: new Date('2031-05-06T08:00:00') });
  await openCure(page);
  const clock = run(page).getByRole('timer', { name: 'Time since the oven was started' });
  await expect(clock).toHaveText('0:00');
  await run(page).getByRole('button', { name: 'Oven on: start the run' }).click();
  await expect(run(page)).toContainText('Now: Start the ramp to 70 °C, 1 K/min.');
  await page.clock.fastForward('01:00:00');
  await expect(clock).toHaveText(/^1:00:\d\d$/);
  await run(page).getByRole('button', { name: 'Started 5 min earlier' }).click();
  await expect(clock).toHaveText(/^1:05:\d\d$/);
  await run(page).getByRole('textbox', { name: 'Note' }).fill('Clamps tightened');
  await run(page).getByRole('button', { name: 'Add the note' }).click();

  await page.reload();
  await measured(page);
  await expect(clock).toHaveText(/^1:05:\d\d$/);
  await expect(run(page)).toContainText('Clamps tightened');
  await run(page).getByRole('button', { name: 'Hold the program' }).click();
  await page.clock.fastForward('02:00:00');
  await expect(clock).toHaveText(/^3:05:\d\d$/);
  await expect(run(page)).toContainText('Run held');
  await run(page).getByRole('button', { name: 'Go on' }).click();
  // Two hours of hold put the second stage off: the program itself is at 1:05.
  await expect(run(page)).toContainText(
    /Next at (?:1:\d\d: Laminate should be within 5 K of 70 °C|3:49: Start the ramp to 120 °C)/,
  );
  await run(page).getByRole('button', { name: 'End the run' }).click();
  await page.clock.fastForward('05:00:00');
  await expect(clock).toHaveText(/^3:05:\d\d$/);
});

test('a log with gaps and in Fahrenheit is read, judged by its dose, and fitted', async ({ page }) => {
  test.setTimeout(240_000);
  await openCure(page);
  await enterCures(page);
  await run(page)
    .getByLabel('Thermocouple log')
    .setInputFiles({
      name: 'picture.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from('<svg>no log at all</svg>'),
    });
  await expect(run(page)).toContainText('This is not a log that can be read');

  const lines = Array.from(
    { length: 270 },
    (_, minute) =>
      `${minute};${fahrenheit(70 - 50 * Math.exp(-minute / 25))};${fahrenheit(71 - 50 * Math.exp(-minute / 4))}`,
  ).filter((_, minute) => minute < 60 || minute > 95);
  await run(page)
    .getByLabel('Thermocouple log')
    .setInputFiles({
      name: 'laminate.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(['Time (min);Laminate (F);Oven air (F)', ...lines].join('\n')),
    });
  await expect(run(page)).toContainText('1 gap');
  await expect(run(page)).toContainText('Log: Laminate (F)');
  await expect(run(page)).toContainText(
    /Measured dose 0\.2\d; 0\.0\d of it across gaps that nobody measured/,
  );
  await expect(run(page)).toContainText('cure the part again, free-standing and slowly');

  await run(page).getByRole('button', { name: 'Fit air film and dampness to it' }).click();
  await expect(run(page)).toContainText(/The log fits best if .*air film \d+\.\d W/, { timeout: 60_000 });
  await run(page).getByText('How the fit was made').click();
  await expect(run(page)).toContainText('with the prediction at the coldest place of the laminate');
  await expect(run(page)).toContainText(
    /Air: as logged in “Oven air \(F\)”, whose sensor reads \d\.\d K too/,
  );
  await expect(run(page)).toContainText('Prediction, fitted to the log');
  await run(page).getByRole('combobox', { name: 'Where it sits' }).selectOption('middle of the show face');
  await expect(run(page)).toContainText('The predicted curves are those at the middle of the show face.', {
    timeout: 60_000,
  });
  await expect(run(page)).not.toContainText('Prediction, fitted to the log');
  await run(page).getByRole('button', { name: 'Fit air film and dampness to it' }).click();
  await expect(run(page)).toContainText('Prediction, fitted to the log', { timeout: 60_000 });
  await run(page).getByRole('button', { name: 'Take both over and predict again' }).click();
  await expect(page.getByRole('combobox', { name: 'Air in the oven' })).toHaveValue('own');
});

test('programs and molds stand side by side, and one is taken over', async ({ page }) => {
  await openCure(page);
  await enterCures(page);
  const beside = page.getByRole('region', { name: 'Programs side by side' });
  await beside.getByRole('button', { name: 'Compare programs and molds' }).click();
  await expect(beside.getByRole('row', { name: /5 mm less stone/ })).toBeVisible({ timeout: 90_000 });
  await expect(beside.getByRole('row', { name: /70 °C for 3 h, then 120 °C/ })).toBeVisible();
  await expect(beside).toContainText('the demolded part can be cured on, free-standing');
  await beside.getByRole('button', { name: 'Take over: hold at 85 °C' }).click();
  await measured(page);
  await expect(page.getByRole('textbox', { name: 'Stage goes to, stage 1' })).toHaveValue('85');
  await expect(verdict(page)).toContainText('Cures whatever the stone does');
});

test('the heated mold is cut in the bench view at any time, and one point is told over the run', async ({
  page,
}) => {
  await openCure(page);
  const view = page.getByRole('complementary', { name: 'Bench view' });
  await expect(view.getByRole('button', { name: 'Heat', exact: true })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  const cut = view.getByRole('region', { name: 'Cut of the heated mold' });
  const read = async (what: string) =>
    (await cut.locator('dl > div').filter({ hasText: what }).locator('dd').innerText()).replaceAll(
      /\s/g,
      ' ',
    );
  await expect.poll(() => read('Laminate in this cut')).toMatch(/^\d+ to \d+ °C$/);
  const early = await read('Laminate in this cut');

  // At the end of the second dwell the laminate is near what its peak says; at the start it is at room temperature.
  const time = cut.getByRole('slider', { name: /from the start$/ });
  await time.press('Home');
  await expect.poll(() => read('Laminate in this cut')).toBe('21 to 21 °C');
  await time.fill('21600');
  await expect.poll(() => read('Air in the oven')).toBe('120 °C');
  await expect.poll(() => read('Laminate in this cut')).toMatch(/^10\d to 10\d °C$/);
  expect(await read('Laminate in this cut')).not.toBe(early);
  // The drawing on the sheet is of the same moment.
  const onSheet = page.getByRole('region', { name: 'Cut through the mold' });
  await expect(onSheet).toContainText(/Time of the cut: 5 h 5[789] min/);

  await cut.getByRole('button', { name: 'across the pull' }).click();
  await cut.getByRole('slider', { name: /from the middle$/ }).press('Home');
  await expect.poll(() => read('Laminate in this cut')).toBe('none in this cut');
  await cut.getByRole('button', { name: 'across length' }).click();
  await expect.poll(() => read('Laminate in this cut')).toMatch(/^10\d to 10\d °C$/);
  await view.getByRole('application').focus();
  await page.keyboard.press('Enter');
  await expect(cut).toContainText(/At [−\d., ]+ mm, in .*: \d+ °C now, 10\d °C at most/);
  await expect(cut.getByRole('img', { name: /^Temperature over hours/ })).toBeVisible();

  await cut.getByRole('combobox', { name: 'Heat shown for' }).selectOption('the stone lets it go');
  await expect.poll(() => read('Laminate in this cut')).toMatch(/^[89]\d to [89]\d °C$/);
  await expect(onSheet.getByRole('combobox', { name: 'Cut shown for' })).toHaveValue('open air');

  // By its coordinates too: the run of another point, and of the same point in the run that is shown.
  await cut.getByRole('button', { name: 'coldest place' }).click();
  await expect(cut).toContainText(/in laminate: [89]\d °C now, [89]\d °C at most/);
  await cut.getByRole('combobox', { name: 'Heat shown for' }).selectOption('the stone keeps its water');
  await expect(cut).toContainText(/in laminate: 1[012]\d °C now, 1[012]\d °C at most/);
  const across = cut.getByRole('textbox', { name: 'Point at x' });
  await across.fill('999');
  await across.press('Tab');
  await expect(cut.getByRole('alert')).toContainText('Too large');
  const before = await cut.locator('figcaption').innerText();
  await across.fill('12.5');
  await across.press('Tab');
  await expect(cut.locator('figcaption')).not.toHaveText(before);
  await expect(cut.locator('figcaption')).toContainText('At 12.5, ');
});

test('the oven program is dragged and moved by keys on its chart; table, verdict and undo follow', async ({
  page,
}) => {
  await openCure(page);
  const first = page.getByRole('slider', { name: 'End of dwell 1' });
  const target = page.getByRole('textbox', { name: 'Stage goes to, stage 1' });
  const dwell = page.getByRole('textbox', { name: 'Dwell, stage 1' });
  await first.scrollIntoViewIfNeeded();
  const box = (await first.boundingBox())!;
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];

  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x - 20, y - 10);
  await page.mouse.move(x - 60, y - 30, { steps: 4 });
  // Chart and table go along before the handle is let go.
  await expect(target).not.toHaveValue('70');
  const hotter = await target.inputValue();
  const shorter = await dwell.inputValue();
  expect(Number(hotter)).toBeGreaterThan(75);
  expect(Number(shorter)).toBeLessThan(2.8);
  await page.mouse.up();
  await expect(target).toHaveValue(hotter);
  await expect(dwell).toHaveValue(shorter);
  await expect(first).toHaveAttribute('aria-valuetext', new RegExp(`^Dwell 1: ${hotter} °C for`));
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(target).toHaveValue('70');
  await expect(dwell).toHaveValue('3.00');
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();

  // Far past the edge of the chart the handle stays on it, and the sheet stays where it is.
  const sheetOverflowPx = () =>
    page.locator('.sheet-pane').evaluate((sheet) => sheet.scrollWidth - sheet.clientWidth);
  const before = await sheetOverflowPx();
  await first.hover();
  await page.mouse.down();
  await page.mouse.move(x + 100, y, { steps: 4 });
  await page.mouse.move(x + 700, y, { steps: 4 });
  await expect(first).toHaveAttribute('aria-valuetext', /the chart ends here, let go and drag on/);
  await expect(first).toBeInViewport({ ratio: 1 });
  expect(await sheetOverflowPx()).toBe(before);
  await first.press('Escape');
  await page.mouse.up();
  await expect(dwell).toHaveValue('3.00');
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();

  const second = page.getByRole('slider', { name: 'End of dwell 2' });
  await second.focus();
  await second.press('PageUp');
  await second.press('PageUp');
  await second.press('ArrowUp');
  await second.press('Shift+ArrowRight');
  await expect(page.getByRole('textbox', { name: 'Stage goes to, stage 2' })).toHaveValue('141');
  await expect(second).toHaveAttribute(
    'aria-valuetext',
    /^Dwell 2: 141 °C for 2 h 00 min, ends at 7 h 00 min$/,
  );
  await expect(second).toBeFocused();
  await expect(verdict(page)).toContainText('Stage 2 goes to 141 °C, over the limit of 130 °C for the stone');
});
