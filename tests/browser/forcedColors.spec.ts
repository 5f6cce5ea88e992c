import { expect, openDemo, test } from './support/workbookPage';

test('in forced colors the chosen map is told from the others', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active' });
  await openDemo(page);
  const maps = page.getByRole('group', { name: 'Map' });
  const lookOf = (pressed: boolean) =>
    maps
      .getByRole('button', { pressed })
      .first()
      .evaluate((button) => {
        const { backgroundColor, color } = getComputedStyle(button);
        return { backgroundColor, color };
      });
  await expect(maps.getByRole('button', { pressed: true })).toHaveCount(1);
  const [chosen, other] = [await lookOf(true), await lookOf(false)];
  expect(chosen.backgroundColor).not.toBe(other.backgroundColor);
  expect(chosen.color).not.toBe(other.color);
  expect(chosen.color).not.toBe(chosen.backgroundColor);
});
