import { expect, fillField, measured, openDemo, test } from './support/workbookPage';

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
