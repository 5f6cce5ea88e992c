import { writeFileSync } from 'node:fs';
import { realShell } from './support/models';
import {
  expect,
  expectFigure,
  figure,
  fillField,
  goTo,
  goToList,
  measured,
  openDemo,
  sheetTitle,
  test,
  withoutDemo,
} from './support/workbookPage';

test('a project goes out as one file and comes back with its mesh, inputs and figures', async ({
  page,
  browser,
}) => {
  await openDemo(page);
  await fillField(page, 'Least draft I accept', '4');
  // The demo's walls are drawn with less than 4 degrees of draft in places.
  await expectFigure(page, 'Show and core face that drags', /^[1-9]\d\.\d%/);
  const drags = await figure(page, 'Show and core face that drags');
  await page.getByRole('button', { name: 'Project file' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save this project as a file' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.workbook\.json$/);
  const path = await download.path();

  // Somebody else's browser.
  const other = await browser.newContext({ viewport: { width: 1366, height: 768 } });
  const theirs = await other.newPage();
  await openDemo(theirs);
  await goToList(theirs);
  await theirs.getByLabel('Project file').setInputFiles(path);
  await expect(theirs.getByRole('heading', { level: 1, name: 'Decision' })).toBeVisible();
  await expect(theirs.getByRole('banner')).toContainText('Upper half');
  await goTo(theirs, 'Walls & draft');
  await measured(theirs);
  await expectFigure(theirs, 'Show and core face that drags', drags);
  await expect(theirs.getByRole('textbox', { name: 'Least draft I accept' })).toHaveValue('4.0');
  await other.close();
});

test('a file that is no project is refused with what to do, and nothing changes', async ({ page }, info) => {
  await openDemo(page);
  await goToList(page);
  const path = info.outputPath('shopping.json');
  writeFileSync(path, '{"milk": 2}');
  await page.getByLabel('Project file').setInputFiles(path);
  await expect(page.getByRole('main')).toContainText(/not a project file/i);
  await expect(page.getByRole('region', { name: 'Wind meter' }).getByRole('listitem')).toHaveCount(2);
});

test('a model given to "Open project file" becomes the pattern of a new project @model', async ({
  page,
  context,
}) => {
  await withoutDemo(context);
  await page.goto('/');
  const { path, fileName } = realShell();
  await page.getByLabel('Project file').setInputFiles(path);
  await expect(sheetTitle(page, 'Part')).toBeVisible();
  await expect(page.getByRole('banner')).toContainText(fileName.replace(/\.stl$/, ''));
  await expect(page.getByText(fileName, { exact: true })).toBeVisible({ timeout: 60_000 });
});

test('a link to a project that is not here says so, and an unseen name is refused with a sentence', async ({
  page,
  context,
}) => {
  await withoutDemo(context);
  await page.goto('/#/p/nowhere/walls');
  await expect(page.getByRole('main')).toContainText('This project is not in this browser');
  await expect(page.getByRole('main')).not.toContainText(/damaged/i);
  await page.getByRole('link', { name: 'All projects' }).click();
  await page.getByRole('button', { name: 'New project' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Create' }).click();
  await expect(dialog.getByRole('alert')).toHaveText('Give the enclosure a name that can be seen.');
  await dialog.getByLabel('Enclosure').fill('Lamp');
  await dialog.getByRole('textbox', { name: 'Part, usually a half' }).fill('\u200b');
  await dialog.getByLabel('Enclosure').press('Enter');
  await expect(dialog.getByRole('alert')).toHaveText('Give the part a name that can be seen.');
});
