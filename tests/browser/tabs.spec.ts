import type { Page } from '@playwright/test';
import {
  expect,
  fillField,
  goTo,
  measured,
  newProject,
  openDemo,
  test,
  withoutDemo,
} from './support/workbookPage';

const run = (tab: Page) => tab.getByRole('region', { name: 'Run', exact: true });
const timer = (tab: Page) => tab.getByRole('region', { name: 'Timer 1' });

test('a second tab shows the project read-only, follows the first, and takes over when it closes', async ({
  page,
  context,
}) => {
  await openDemo(page);
  const second = await context.newPage();
  await second.goto(page.url());
  await measured(second);
  await expect(second.getByText(/Another tab has this project open/)).toBeVisible();
  await expect(second.getByRole('textbox', { name: 'Least draft I accept' })).toBeDisabled();

  await fillField(page, 'Least draft I accept', '4');
  await expect(second.getByRole('textbox', { name: 'Least draft I accept' })).toHaveValue('4.0');

  await page.close();
  await expect(second.getByText(/Another tab has this project open/)).toHaveCount(0);
  await fillField(second, 'Least draft I accept', '6');
  await second.reload();
  await expect(second.getByRole('textbox', { name: 'Least draft I accept' })).toHaveValue('6.0');
});

test('a second tab can neither start, note nor overwrite the oven run and the timers of the first', async ({
  page,
  context,
}) => {
  test.setTimeout(240_000);
  // Without demo and pattern: nothing is measured or heated, only the run goes on.
  await withoutDemo(context);
  await newProject(page, 'Lamp', 'Lid');
  await goTo(page, 'Clamp & cure');
  const second = await context.newPage();
  await second.goto(page.url());
  await expect(run(second).getByRole('button', { name: 'Oven on: start the run' })).toBeDisabled();

  await run(page).getByRole('button', { name: 'Oven on: start the run' }).click();
  await run(page).getByRole('textbox', { name: 'Note' }).fill('Clamps tightened');
  await run(page).getByRole('button', { name: 'Add the note' }).click();
  await expect(run(second)).toContainText('Run on, started at');
  await expect(run(second)).toContainText('Clamps tightened');
  await expect(run(second).getByRole('textbox', { name: 'Note' })).toBeDisabled();
  for (const name of ['Add the note', 'Hold the program', 'End the run', 'Read a thermocouple log'])
    await expect(run(second).getByRole('button', { name })).toBeDisabled();

  await goTo(page, 'Stone mold');
  await timer(page).getByRole('button', { name: 'Start' }).click();
  await goTo(second, 'Stone mold');
  await expect(timer(second).getByRole('button', { name: 'Pause' })).toBeDisabled();

  // The first goes; the second has everything and takes over.
  await page.close();
  await timer(second).getByRole('button', { name: 'Pause' }).click();
  await goTo(second, 'Clamp & cure');
  await run(second).getByRole('textbox', { name: 'Note' }).fill('Oven at 70');
  await run(second).getByRole('button', { name: 'Add the note' }).click();
  await second.reload();
  await expect(run(second)).toContainText('Run on, started at');
  await expect(run(second).locator('.run-notes li')).toHaveText([/Clamps tightened/, /Oven at 70/]);
});
