/** The shop's shelf: from one project onto it, into another, and with a project file into somebody else's browser. */
import { AxeBuilder } from '@axe-core/playwright';
import {
  expect,
  fillField,
  goTo,
  goToList,
  newProject,
  openDemo,
  sheetTitle,
  test,
  withoutDemo,
} from './support/workbookPage';

test('a roll goes from one project over the shelf into another, which stays as it is when the card changes', async ({
  page,
  context,
  browser,
}) => {
  await withoutDemo(context);
  await newProject(page, 'Lamp', 'Lid');
  await goTo(page, 'Ply schedule');
  const cards = page.getByRole('region', { name: 'Material cards' });
  await cards.getByRole('button', { name: 'Edit' }).click();
  await fillField(page, 'Fiber areal weight', '245');
  await cards.getByText('From my shelf: roll').click();
  await cards.getByRole('button', { name: 'Put on my shelf: Twill prepreg 200 g/m²' }).click();
  await expect(cards.getByText('Twill prepreg 200 g/m² is on your shelf.')).toBeVisible();

  // The shelf stands beside the projects; its card is edited, and the hours are counted over all of them.
  await page.getByRole('link', { name: 'My shelf' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'My shelf' })).toBeVisible();
  const rolls = page.getByRole('region', { name: 'Rolls of prepreg' });
  await rolls.getByRole('button', { name: 'Edit Twill prepreg 200 g/m²' }).click();
  await fillField(page, 'Name, as on the roll', 'Roll 7');
  await fillField(page, 'Out-time allowed', '720');
  await fillField(page, 'Hours out this time', '6');
  await rolls.getByRole('combobox', { name: 'For' }).selectOption('Lamp, Lid');
  await rolls.getByRole('button', { name: 'Write it down' }).click();
  await expect(
    rolls.getByText('6.0 h out in all, 714.0 h left of its out-life', { exact: true }),
  ).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);

  // Another project takes it.
  await page.getByRole('link', { name: 'All projects' }).click();
  await newProject(page, 'Meter', 'Upper half');
  await goTo(page, 'Ply schedule');
  await cards.getByText('From my shelf: roll').click();
  await cards.getByRole('button', { name: 'Add to this project' }).click();
  await expect(cards.getByRole('region', { name: 'Roll 7' })).toContainText('245 g/m² woven');
  await page.getByRole('combobox', { name: 'Material of ply 1' }).selectOption('Roll 7');
  // 720 h allowed, 6 h of the log, 6 h of layup.
  await expect(page.getByRole('main')).toContainText(
    'Roll 7: 720.0 h allowed − 6.0 h out − 6.0 h of layup = 708.0 h',
  );

  // The card changes; the project that took it does not, and says so.
  await page.getByRole('link', { name: 'My shelf' }).click();
  await rolls.getByRole('button', { name: 'Edit Roll 7' }).click();
  await fillField(page, 'Fiber areal weight', '300');
  await page.getByRole('link', { name: 'All projects' }).click();
  await page.getByRole('link', { name: 'Upper half' }).click();
  await goTo(page, 'Ply schedule');
  await expect(cards.getByRole('region', { name: 'Roll 7' })).toContainText('245 g/m² woven');
  await cards.getByText('From my shelf: roll').click();
  await expect(cards.getByRole('button', { name: 'Card changed: take over Roll 7' })).toBeVisible();

  // Its file goes to somebody else, with what it took.
  await page.getByRole('button', { name: 'Project file' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save this project as a file' }).click(),
  ]);
  const path = await download.path();
  await cards.getByRole('button', { name: 'Card changed: take over Roll 7' }).click();
  await expect(cards.getByRole('region', { name: 'Roll 7' })).toContainText('300 g/m² woven');

  const other = await browser.newContext({ viewport: { width: 1366, height: 768 } });
  const theirs = await other.newPage();
  await openDemo(theirs);
  await goToList(theirs);
  await theirs.getByLabel('Project file').setInputFiles(path);
  await expect(sheetTitle(theirs, 'Part')).toBeVisible();
  await expect(
    theirs.getByText(/This file brings a card that your shelf does not have: Roll 7/),
  ).toBeVisible();
  await theirs.getByRole('button', { name: 'Put on my shelf' }).click();
  await expect(theirs.getByText(/This file brings/)).toHaveCount(0);
  await goTo(theirs, 'Ply schedule');
  await expect(theirs.getByRole('region', { name: 'Roll 7' })).toContainText('245 g/m² woven');
  await theirs.getByRole('link', { name: 'My shelf' }).click();
  await expect(theirs.getByRole('button', { name: 'Edit Roll 7' })).toBeVisible();
  await other.close();
});

test('a second tab follows the shelf, and a deleted card comes back', async ({ page, context }) => {
  await withoutDemo(context);
  await page.goto('/#/shelf');
  const other = await context.newPage();
  await other.goto('/#/shelf');
  await page.getByRole('button', { name: 'Add oven' }).click();
  await fillField(page, 'Which oven', 'Small oven');
  await expect(other.getByRole('button', { name: 'Edit Small oven' })).toBeVisible();
  await other.getByRole('button', { name: 'Delete Small oven' }).click();
  await expect(page.getByRole('button', { name: 'Close Small oven' })).toHaveCount(0);
  await other.getByRole('button', { name: 'Undo deleting Small oven' }).click();
  await expect(page.getByRole('button', { name: /(Edit|Close) Small oven/ })).toBeVisible();
});

test('the shelf is reached by keys and breaks no accessibility rule, light or dark', async ({
  page,
  context,
}) => {
  await withoutDemo(context);
  await page.goto('/');
  await page.getByRole('link', { name: 'My shelf' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Add roll' }).focus();
  await page.keyboard.press('Enter');
  await fillField(page, 'Fiber areal weight', '245');
  await fillField(page, 'Hours out this time', '2');
  await page.getByRole('button', { name: 'Write it down' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /^Take out: 2.0 h/ })).toBeVisible();
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${colorScheme} ${id}: ${nodes[0]?.html}`)).toEqual([]);
  }
});
