import { expect, figure, goTo, goToList, openDemo, test } from './support/workbookPage';

test('the first start opens on the demo, measured, with something to say on every step', async ({ page }) => {
  await openDemo(page);
  await expect(page.getByRole('banner')).toContainText('Wind meter · Upper half');
  await expect(page.getByRole('heading', { level: 2, name: 'Look again' })).toBeVisible();
  await expect(page.getByRole('region', { name: 'Verdict' })).toContainText(
    /of the show face is right.*thicker\. Worst: 1\.02 mm at show face, \+y side/,
  );
  const decision = page.getByRole('navigation', { name: 'Steps' }).getByRole('link', { name: /^Decision/ });
  await expect(decision).toHaveAccessibleName(/stop$/);
  expect(await figure(page, 'Wall along the normal, median')).toBe('0.670mm');

  await goTo(page, 'Part');
  expect(await figure(page, 'Triangles in the file')).toBe('19276');
  await goTo(page, 'Ply schedule');
  expect(await figure(page, 'Stack as laid')).toContain('0.75mm');
  await goTo(page, 'Checklist');
  await expect(page.getByRole('region', { name: 'Layup and clamp' })).toBeVisible();
});

test('the list shows both halves under their enclosure; deleting can be undone, and the demo put back', async ({
  page,
}) => {
  await openDemo(page);
  await goToList(page);
  const group = page.getByRole('region', { name: 'Wind meter' });
  await expect(group.getByRole('listitem')).toHaveCount(2);

  const lower = group.getByRole('listitem').filter({ hasText: 'Lower half' });
  await lower.getByRole('button', { name: 'Delete' }).click();
  await expect(group.getByRole('listitem')).toHaveCount(1);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(group.getByRole('listitem')).toHaveCount(2);

  await lower.getByRole('button', { name: 'Duplicate' }).click();
  await expect(group.getByRole('listitem')).toHaveCount(3);
  await lower.first().getByRole('link').click();
  await expect(page.getByRole('banner')).toContainText('Lower half');
});
