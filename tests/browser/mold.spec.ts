/** The pour bench in a real browser: volumes to the scale, halves to a file, timers over a reload. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { findHealth } from '../../src/core/mesh/health';
import { integrate } from '../../src/core/mesh/integrals';
import { readMeshFile } from '../../src/core/mesh/read/readMeshFile';
import { weld } from '../../src/core/mesh/weld';
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
  withoutDemo,
} from './support/workbookPage';

const shell = realShell();
const sheet = (page: Page) => page.getByRole('main');
const verdict = (page: Page) => page.getByRole('region', { name: 'Verdict' });
const timer = (page: Page, order: number) => page.getByRole('region', { name: `Timer ${order}` });

/** Waits for both halves, then opens every group of figures so that they can be read. */
async function openMold(page: Page): Promise<void> {
  await goTo(page, 'Stone mold');
  await expect(page.getByRole('button', { name: 'Save negative as STL' })).toBeEnabled({ timeout: 60_000 });
  await measured(page);
  await openGroups(page);
}

async function openGroups(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const group of document.querySelectorAll('main details')) group.setAttribute('open', '');
  });
}

async function number(page: Page, label: string): Promise<number> {
  return Number.parseFloat((await figure(page, label)).replaceAll('−', '-'));
}

/** Type 4 at W/P 0.23, 10 % lost: hemihydrate 2.757 g/mL, water 0.9982 g/mL, 0.18618 g bound per gram. */
const mlPerG = 1 / 2.757 + 0.23 / 0.9982;
const powderG = (volumeMl: number) => (1.1 * volumeMl) / mlPerG;
const dryG = (volumeMl: number) => (1.18618 * volumeMl) / mlPerG;
const slurryGMl = 1.23 / mlPerG;

async function readsTheBench(page: Page): Promise<{ readonly negativeMl: number }> {
  const negativeMl = await number(page, 'Stone of the negative');
  const positiveMl = await number(page, 'Stone of the positive');
  for (const [half, ml] of [
    ['Negative', negativeMl],
    ['Positive', positiveMl],
  ] as const) {
    expect(await number(page, `${half}: powder`)).toBeCloseTo(powderG(ml), -0.5);
    expect(await number(page, `${half}: water`)).toBeCloseTo(0.23 * powderG(ml), -0.5);
    expect(await number(page, `${half}: dry when it weighs`)).toBeCloseTo(dryG(ml), -0.5);
  }
  const liftedG = slurryGMl * (await number(page, 'Outer envelope of the pattern'));
  const patternG = await number(page, 'Pattern');
  expect(await number(page, 'Counterweight')).toBeCloseTo(1.5 * (liftedG - patternG), -0.5);
  return { negativeMl };
}

/** Saves the half, reads the file back as any other reader would, and measures it. */
async function savedHalf(page: Page, half: 'negative' | 'positive') {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: `Save ${half} as STL` }).click(),
  ]);
  const { mesh } = weld(
    readMeshFile(new Uint8Array(readFileSync(await download.path())), download.suggestedFilename()),
  );
  return { fileName: download.suggestedFilename(), mesh, watertight: findHealth(mesh).watertight };
}

async function paperText(page: Page): Promise<string> {
  const pages = await pdfPages(await page.pdf({ preferCSSPageSize: true }));
  return pages
    .map(({ text }) => text)
    .join(' ')
    .replaceAll(/\s+/g, '');
}

test('the demo: mix, counterweight and dry target follow from the volumes, and the negative is saved', async ({
  page,
}) => {
  await openDemo(page);
  await openMold(page);
  await expectFigure(page, 'Mold box inside', /^90\.0×61\.0×32\.4mm/);
  const { negativeMl } = await readsTheBench(page);
  const saved = await savedHalf(page, 'negative');
  expect(saved.fileName).toBe('Wind meter - Upper half negative.stl');
  expect(saved.watertight).toBe(true);
  expect(integrate(saved.mesh).volume / 1000).toBeCloseTo(negativeMl, 0);

  // The lower half is in the workbook too: the two rims meet.
  await expectFigure(page, 'Largest step between the two rims', /^0\.\d\dmm$/);

  await fillField(page, 'Water per powder (W/P), from the bag', '0,3');
  await expect(verdict(page)).toContainText('W/P 0.300');
  await fillField(page, 'Stone cover, over the show face', '20');
  await expectFigure(page, 'Mold box inside', /×42\.4mm/);
  await expect(page.getByRole('slider', { name: /^Pulled apart/ })).toBeVisible();
});

test(`${shell.what}: both pours to the checklist, and the saved half measures the same @model`, async ({
  page,
  context,
}) => {
  await withoutDemo(context);
  await newProject(page, 'Pocket case', 'Top');
  await importModel(page, shell.path);
  await page.getByRole('combobox', { name: 'Unit of the file' }).selectOption('mm');
  await measured(page);
  await openMold(page);
  const { negativeMl } = await readsTheBench(page);
  const saved = await savedHalf(page, 'negative');
  expect(saved.watertight).toBe(true);
  expect(Math.abs(integrate(saved.mesh).volume / 1000 / negativeMl - 1)).toBeLessThan(1e-3);

  const powder = await figure(page, 'Negative: powder');
  const weight = await figure(page, 'Counterweight');
  await page.getByRole('button', { name: 'Add a weighing' }).click();
  await fillField(page, 'Weight of the negative, weighing 1', '512,5');
  // The half's own fresh weight now tells when it is dry: 512.5 g (1 + 0.18618) / (1 + 0.23).
  await expectFigure(page, 'Negative: dry when it weighs', /^494g/);
  await goTo(page, 'Checklist');
  const text = await paperText(page);
  for (const line of ['Boxcut:', 'Onarackbeforeafan', 'GATE:again4hlater']) expect(text).toContain(line);
  // The print locks, so nothing stands there to be mixed.
  expect(text).not.toContain(`${Number.parseFloat(powder)}gofpowder`);
  expect(text).not.toContain(`${weight.replace('commonpractice', '')}spreadovertherim`);
  expect(text).toContain('fittedparticlerespirator');
  expect(text).toContain('Noslurryintoadrain');
});

test('a repair is noted where the view was asked, and closing sees it @model', async ({ page, context }) => {
  await withoutDemo(context);
  await newProject(page, 'Pocket case', 'Top');
  await importModel(page, shell.path);
  await page.getByRole('combobox', { name: 'Unit of the file' }).selectOption('mm');
  await measured(page);
  await goTo(page, 'Mold closing');
  await openGroups(page);
  // Filler on the stone takes its part of the cavity, whatever wall the case has.
  const cavity = 'Cavity of the closed mold';
  const before = await number(page, cavity);
  await openMold(page);
  await page.getByRole('button', { name: 'Add a repair by its place on the view' }).click();
  // The middle of this case is an opening; its side is not.
  await page.getByRole('button', { name: 'Look from +x' }).click();
  await page.getByRole('application', { name: /3-D view/ }).press('Enter');
  const repair = page.getByRole('listitem', { name: 'Repair 1' });
  await repair.getByRole('combobox', { name: 'What was done' }).selectOption('filled');
  await fillField(page, 'Off the cast surface by', '0,6');
  await fillField(page, 'Radius of the place', '30');
  await expect(verdict(page)).toContainText('1 repair: the wall changes by −0.60');
  await goTo(page, 'Mold closing');
  await measured(page);
  await openGroups(page);
  await expect.poll(() => number(page, cavity)).toBeLessThan(before);
});

test('two timers run at once, ring on every sheet and survive a reload', async ({ page }) => {
  await page.clock.install({ time: new Date('2031-05-06T08:00:00') });
  await openDemo(page);
  await goTo(page, 'Stone mold');
  await expect(timer(page, 1).getByRole('timer')).toHaveText('1:00');
  await timer(page, 1).getByRole('button', { name: 'Start' }).click();
  await timer(page, 2).getByRole('combobox').selectOption('working');
  await timer(page, 2).getByRole('button', { name: 'Start' }).click();
  await page.clock.fastForward('00:30');
  await expect(timer(page, 1).getByRole('timer')).toHaveText(/^0:(?:2\d|30)$/);
  await page.reload();
  await expect(timer(page, 2).getByRole('timer')).toHaveText(/^3:(?:1\d|2\d|30)$/);
  await page.clock.fastForward('00:31');
  await expect(timer(page, 1).getByRole('status')).toHaveText('Mixing: the time is over.');
  await goTo(page, 'Checklist');
  await expect(sheet(page).getByRole('link', { name: 'Mixing' })).toBeVisible();
  await sheet(page).getByRole('button', { name: 'Stop the sound' }).click();
  await expect(sheet(page).getByRole('link', { name: 'Mixing' })).toHaveCount(0);
  await expect(sheet(page).getByRole('link', { name: /Working time/ })).toBeVisible();
});

test('words for what cannot be: slots through the land', async ({ page }) => {
  await openDemo(page);
  await openMold(page);
  await fillField(page, 'Pry slot depth', '40');
  await expect(verdict(page)).toContainText('The pry slots would reach through the land');
  await fillField(page, 'Pry slot depth', '3');
  await expectFigure(page, 'Mold box inside', /^90\.0/);
});
