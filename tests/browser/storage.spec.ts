import { existsSync, writeFileSync } from 'node:fs';
import { brokenFile, realShell } from './support/models';
import {
  expect,
  figure,
  fillField,
  goTo,
  goToList,
  importModel,
  measured,
  newProject,
  openDemo,
  test,
  withoutDemo,
} from './support/workbookPage';

const limitUnits = 5_242_880;

test('a full storage is said plainly, loses nothing saved, and saving goes on once there is room', async ({
  page,
}) => {
  await openDemo(page);
  await fillField(page, 'Least draft I accept', '3');
  await page.waitForTimeout(600);
  await page.evaluate((limit) => {
    const used = Object.keys(localStorage).reduce(
      (sum, key) => sum + key.length + (localStorage.getItem(key)?.length ?? 0),
      0,
    );
    localStorage.setItem('filler', 'x'.repeat(limit - used - 'filler'.length - 200));
  }, limitUnits);
  await fillField(page, 'Least draft I accept', '5');
  await expect(page.getByText(/storage is full/)).toBeVisible();

  // Another look at what is saved: the last good record.
  const second = await page.context().newPage();
  await second.goto(page.url());
  await expect(second.getByRole('textbox', { name: 'Least draft I accept' })).toHaveValue('3.0');
  await second.close();

  await page.evaluate(() => localStorage.removeItem('filler'));
  await fillField(page, 'Least draft I accept', '6');
  await expect(page.getByText(/storage is full/)).toHaveCount(0);
  await page.reload();
  await expect(page.getByRole('textbox', { name: 'Least draft I accept' })).toHaveValue('6.0');
});

test('a damaged record falls back to the last good one, and its bytes are kept aside for download', async ({
  page,
}) => {
  await openDemo(page);
  await fillField(page, 'Least draft I accept', '3');
  await page.waitForTimeout(600);
  await fillField(page, 'Least draft I accept', '7');
  await page.waitForTimeout(600);
  const id = /#\/p\/([^/]+)/.exec(page.url())?.[1] as string;
  await page.evaluate((project) => {
    const slots = Object.keys(localStorage)
      .filter((key) => key.startsWith(`mold-layup/record/${project}/`))
      .sort((a, b) => Number(a.split('/').pop()) - Number(b.split('/').pop()));
    const newest = slots.at(-1) as string;
    localStorage.setItem(newest, (localStorage.getItem(newest) as string).slice(0, 200));
  }, id);
  await page.reload();
  await expect(page.getByRole('textbox', { name: 'Least draft I accept' })).toHaveValue('3.0');
  await goToList(page);
  const kept = page.getByRole('region', { name: 'Damaged data kept aside' });
  await expect(kept.getByRole('listitem')).toHaveCount(1);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    kept.getByRole('button', { name: 'Download' }).click(),
  ]);
  expect(await download.path()).toBeTruthy();
});

test('undo takes back inputs and the import itself @model', async ({ page }) => {
  await openDemo(page);
  await fillField(page, 'Least draft I accept', '5');
  await goTo(page, 'Part');
  await importModel(page, realShell().path);
  await expect(page.getByText(realShell().fileName, { exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('wind-meter-upper.stl', { exact: true })).toBeVisible();
  await measured(page);
  expect(await figure(page, 'Triangles in the file')).toBe('19276');
  await goTo(page, 'Walls & draft');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('textbox', { name: 'Least draft I accept' })).toHaveValue('2.0');
  await page.getByRole('button', { name: 'Redo' }).click();
  await expect(page.getByRole('textbox', { name: 'Least draft I accept' })).toHaveValue('5.0');
});

test('a file that can’t be read says what is wrong and leaves the project as it was @model', async ({
  page,
  context,
}, info) => {
  await withoutDemo(context);
  await newProject(page, 'Broken', 'Half');
  const path = brokenFile('truncated_in_header.stl') ?? info.outputPath('short.stl');
  if (!existsSync(path)) writeFileSync(path, new Uint8Array(61));
  await page.getByLabel('Model file').setInputFiles(path);
  await expect(page.getByRole('main').getByRole('alert')).toContainText('The file is only 61 bytes long');
  await expect(page.getByRole('progressbar')).toHaveCount(0);
});
