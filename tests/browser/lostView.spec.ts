import { readdirSync, readFileSync } from 'node:fs';
import { expect, openDemo, test } from './support/workbookPage';

/** Ends the graphics process of the browser under test, as a driver that crashes does. Other browsers are left alone. */
function crashGraphics(): number {
  const ours = readdirSync('/proc').filter((name) => {
    if (!/^\d+$/.test(name)) return false;
    try {
      const command = readFileSync(`/proc/${name}/cmdline`, 'utf8');
      return command.includes('--type=gpu-process') && command.includes('playwright_chromiumdev_profile');
    } catch {
      return false; // it ended while it was looked at
    }
  });
  for (const pid of ours) process.kill(Number(pid), 'SIGKILL');
  return ours.length;
}

/** More than a canvas of one color takes. */
const leastPictureBytes = 5000;

for (const [where, keepsCanvas] of [
  ['in its worker', false],
  ['on the page’s thread', true],
] as const) {
  test(`a 3-D view that the graphics driver has closed is shown again, the same as before: drawn ${where}`, async ({
    page,
  }) => {
    if (keepsCanvas) {
      await page.addInitScript(() =>
        Reflect.deleteProperty(HTMLCanvasElement.prototype, 'transferControlToOffscreen'),
      );
    }
    await openDemo(page);
    const view = page.getByRole('complementary', { name: 'Bench view' });
    const canvas = view.locator('canvas');
    await expect(canvas).toBeVisible();
    const picture = () => canvas.screenshot();
    let before = await picture();
    // Until it has been drawn and draws nothing more.
    await expect
      .poll(async () => {
        const last = before;
        before = await picture();
        return before.equals(last) && before.length > leastPictureBytes;
      })
      .toBe(true);

    expect(crashGraphics()).toBeGreaterThan(0);
    await expect(view).toContainText('closed by the browser or the graphics driver');
    await view.getByRole('button', { name: 'Show it again' }).click();
    await expect(canvas).toBeVisible();
    await expect.poll(async () => (await picture()).equals(before)).toBe(true);
  });
}
