import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { realShell } from './support/models';
import { pdfPages } from './support/pdfText';
import {
  expect,
  expectFigure,
  figure,
  fillField,
  goTo,
  importModel,
  measured,
  newProject,
  openDemo,
  test,
} from './support/workbookPage';

const shell = realShell();

test(`import ${shell.what}, set the plies, read the verdict, print, reload, and ask the headless command @model`, async ({
  page,
}) => {
  await openDemo(page);
  await newProject(page, 'Pocket case', 'Top');
  await importModel(page, shell.path);
  await expect(page.getByText(new RegExp(`${shell.triangles} triangles`))).toBeVisible();
  // Its open side looks down, so the negative leaves upward.
  await page.getByRole('combobox', { name: 'Unit of the file' }).selectOption('mm');
  await measured(page);

  await goTo(page, 'Ply schedule');
  await page.getByRole('button', { name: 'Add ply' }).click();
  await page.getByRole('button', { name: 'Add ply' }).click();
  await measured(page);
  await expectFigure(page, 'Stack as laid', /^1\.25mm/);

  await goTo(page, 'Walls & draft');
  await fillField(page, 'Print and stone may be off by', '0,08');
  await measured(page);
  const thickest = await figure(page, 'Thickest wall that is right');
  // The worst place joins the verdict when the patches are found.
  await expect(page.getByRole('region', { name: 'Verdict' })).toContainText('Worst');
  const verdict = await page.getByRole('region', { name: 'Verdict' }).innerText();
  expect(verdict).toMatch(/of the show face|undercut/);
  const median = await figure(page, 'Wall along the normal, median');
  await expectFigure(page, 'Thickest wall that is right', /^1\.18mm/);

  await goTo(page, 'Checklist');
  const paper = await page.pdf({ preferCSSPageSize: true });
  const pages = await pdfPages(paper);
  const text = pages.map((sheet) => sheet.text).join(' ');
  expect(text).toContain('Pocket case');
  expect(text).toContain(shell.fileName);
  expect(text.replaceAll(' ', '')).toContain('5pliescut');
  expect(text.replaceAll(' ', '')).toContain(`wallasdrawn(${median.replace('mm', '')}mm)`);

  await page.getByRole('checkbox').first().check();
  await page.reload();
  await measured(page);
  await expect(page.getByRole('checkbox').first()).toBeChecked();
  await goTo(page, 'Walls & draft');
  await measured(page);
  expect(await figure(page, 'Wall along the normal, median')).toBe(median);
  expect(await figure(page, 'Thickest wall that is right')).toBe(thickest);
  await expect.poll(() => page.getByRole('region', { name: 'Verdict' }).innerText()).toBe(verdict);

  // The headless command on the saved project gives the same figures.
  await page.getByRole('button', { name: 'Project file' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save this project as a file' }).click(),
  ]);
  const projectFile = await download.path();
  const run = spawnSync(process.execPath, ['src/startReport.mjs', '--project', projectFile, '--json'], {
    cwd: join(import.meta.dirname, '../..'),
    encoding: 'utf8',
  });
  expect(run.stderr).toBe('');
  const report = JSON.parse(run.stdout) as {
    steps: Record<string, { figures: { id: string; value: number }[] }>;
  };
  const headless = (step: string, id: string) =>
    report.steps[step]?.figures.find((one) => one.id === id)?.value as number;
  expect(`${headless('walls', 'walls.rayMedianMm').toFixed(3)}mm`).toBe(median);
  expect(headless('plies', 'plies.laidThicknessMm')).toBeCloseTo(1.25, 10);
  expect(JSON.parse(readFileSync(projectFile, 'utf8'))).toBeTruthy();
});

/** What stands on each page of the paper. */
const phasePages = [
  ['Read back, write here'],
  ['Print and box'],
  ['Pour'],
  ['Layup and clamp'],
  ['Oven and opening', 'Finish'],
];
/** A heading is followed by the caution of its phase, or by a stop before it. */
const phasesOn = (text: string) =>
  phasePages.flat().filter((title) => new RegExp(`${title} (?:STOP|CAUTION|m\\d)`, 'u').test(text));

/** No page ends in a heading, a caution or the head of a table; no page begins in the middle of a line. */
function expectUnsplit(texts: readonly string[]): void {
  for (const text of texts) {
    const body = text.replace(/ page \d+ of \d+.*$/u, '').trim();
    expect(body).not.toMatch(/(?:CAUTION|STOP|Pieces|each, g)$/u);
  }
  for (const text of texts.slice(1))
    expect(text).toMatch(
      /Mold & Layup Workbook (?:INCOMPLETE )?(?:Print and box|Pour|Layup and clamp|Oven and opening)/u,
    );
}

test('the checklist prints whole on A4 and Letter: same lines, page numbers, nothing wider than the page', async ({
  page,
}) => {
  await openDemo(page);
  await goTo(page, 'Checklist');
  // The pours and the oven are worked out after the walls; until then paper would be stamped.
  await expect(page.locator('.incomplete-stamp')).toHaveCount(0, { timeout: 90_000 });
  const bodies: string[] = [];
  for (const format of ['A4', 'Letter'] as const) {
    const pages = await pdfPages(await page.pdf({ format }));
    expect(pages[0]?.width).toBeGreaterThan(format === 'A4' ? 594 : 611);
    expect(pages[0]?.width).toBeLessThan(format === 'A4' ? 597 : 613);
    expect(pages).toHaveLength(5);
    expect(pages.map((sheet) => phasesOn(sheet.text))).toEqual(phasePages);
    expectUnsplit(pages.map((sheet) => sheet.text));
    pages.forEach((sheet, index) =>
      expect(sheet.text).toMatch(new RegExp(`${index + 1} (?:of|/) ${pages.length}`)),
    );
    bodies.push(
      pages
        .map((sheet) => sheet.text.replaceAll(/\d+ (?:of|\/) \d+/g, ''))
        .join(' ')
        .replaceAll(' ', ''),
    );
  }
  const screen = (await page.getByRole('main').innerText()).match(/\d+\.\d+ mm/g) ?? [];
  expect(screen.length).toBeGreaterThan(5);
  for (const value of screen) for (const body of bodies) expect(body).toContain(value.replaceAll(/\s/g, ''));
  // Chromium shrinks a page silently when something is too wide for it.
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: 680, height: 900 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(680);
});
