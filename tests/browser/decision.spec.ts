/** The Decision page on the demo: the word, a plan that was tried, one change applied and taken back; the half that is cleared. */
import { expect, goTo, goToList, measured, openDemo, test } from './support/workbookPage';

test('Decision says whether to pour, finds a plan, applies a change whose marks turn, and undo takes it back', async ({
  page,
}) => {
  test.setTimeout(240_000);
  await openDemo(page);
  const nav = page.getByRole('navigation', { name: 'Steps' });
  await goTo(page, 'Decision');
  await expect(nav.getByRole('link', { name: /^Decision stop$/ })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Do not pour yet' })).toBeVisible();
  const stops = page.getByRole('region', { name: 'What stops it' });
  await expect(stops.getByRole('link', { name: 'Mold closing' })).toBeVisible();
  await expect(nav.getByRole('link', { name: /Clamp & cure (?!not yet known)/ })).toBeVisible({
    timeout: 90_000,
  });
  await measured(page);
  await expect(page.getByRole('region', { name: 'The job' })).toContainText(
    /3 plies.*\d\sg.*\d\sg.*\d\sh.*\d\smm/s,
  );
  await expect(page.getByRole('img', { name: /the negative above the positive/ })).toBeVisible();
  const stoneMold = nav.getByRole('link', { name: /Stone mold/ });
  await expect(stoneMold).toHaveAccessibleName(/look again$/);

  await page.getByRole('button', { name: 'Look for a plan' }).click();
  await expect(page.getByRole('progressbar')).toBeVisible();
  const changes = page.getByRole('list', { name: 'Changes' });
  await expect(changes).toBeVisible({ timeout: 120_000 });
  const pattern = changes.getByRole('listitem').filter({ hasText: 'Print the pattern in' });
  await expect(pattern.getByRole('img', { name: 'look again' })).toBeVisible();
  await expect(pattern.getByRole('img', { name: 'go' })).toBeVisible();
  await pattern.getByRole('button', { name: /^Apply:/ }).click();
  await expect(stoneMold).toHaveAccessibleName(/go$/);
  await expect(pattern.getByText('Applied')).toBeVisible();

  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(stoneMold).toHaveAccessibleName(/look again$/);
  await expect(pattern.getByRole('button', { name: /^Apply:/ })).toBeVisible();

  await page.getByRole('button', { name: 'Apply all' }).click();
  await expect(page.getByRole('heading', { name: 'Cleared to pour' })).toBeVisible({ timeout: 90_000 });
  await expect(stops).toHaveCount(0);

  // The other half is cleared as it is, and a project that has a pattern opens on this page.
  await goToList(page);
  await page.getByRole('link', { name: /Lower half/ }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Decision' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Cleared to pour' })).toBeVisible({ timeout: 90_000 });
});
