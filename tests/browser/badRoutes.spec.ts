import { expect, test, withoutDemo } from './support/workbookPage';

test('an address that names nothing leads to a page that says where one is', async ({ page, context }) => {
  await withoutDemo(context);
  const list = page.getByRole('heading', { level: 1, name: 'Mold & Layup Workbook' });
  const wayBack = page.getByRole('main').getByRole('link', { name: 'All projects' });
  for (const hash of ['#/p/%', '#/p/%E0%A4%A', '#/%%%', '#/p/nothing-of-this-name', '#//////']) {
    // Followed as a link, then loaded anew.
    await page.goto(`/${hash}`);
    await expect(list.or(wayBack), hash).toBeVisible();
    await page.reload();
    await expect(list.or(wayBack), `${hash}, loaded anew`).toBeVisible();
  }
});
