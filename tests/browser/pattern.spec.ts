/** From an imported shell to the pattern that fits the stack, on the page. */
import { readFileSync } from 'node:fs';
import { box, domeShell } from '../support/meshes';
import { publicMeshesAreHere, realShell, writeModel } from './support/models';
import {
  expect,
  expectFigure,
  figure,
  goTo,
  importModel,
  measured,
  newProject,
  test,
  withoutDemo,
} from './support/workbookPage';

/** The real shell where it is; else a dome of 40 mm, since our own of 100 mm has more points than a fine grid may have. */
function handHeldShell(): { readonly path: string; readonly fileName: string } {
  if (publicMeshesAreHere) return realShell();
  const { positions, facets } = domeShell(24, 48, () => 3);
  const small = { positions: positions.map((one) => 0.4 * one), facets };
  return { path: writeModel('small-dome.stl', small), fileName: 'small-dome.stl' };
}

test('a pattern is made from an imported shell, saved, used, measured and taken back @model', async ({
  page,
  context,
}, info) => {
  test.setTimeout(240_000);
  await withoutDemo(context);
  await newProject(page, 'Pocket device', 'Top half');
  const { path, fileName } = handHeldShell();
  await importModel(page, path);
  const made = fileName.replace('.stl', ' pattern.stl');

  await goTo(page, 'Pattern');
  await expect(page.getByRole('region', { name: 'Verdict' })).toContainText(`${fileName} is what you print`);
  const section = page.getByRole('region', { name: 'The made pattern' });
  const make = page.getByRole('button', { name: 'Make the pattern' });
  await make.click();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(make).toBeEnabled();
  await expect(section).toHaveCount(0);
  await make.click();
  await expect(section).toBeVisible({ timeout: 120_000 });
  const asked = Number(/wall ([\d.]+)/.exec(await section.innerText())![1]);
  const wall = Number.parseFloat(await figure(page, 'Wall, half of the show face'));
  expect(Math.abs(wall - asked)).toBeLessThanOrEqual(0.02);
  await expect(page.getByRole('slider', { name: /Pattern up to . = .* mm, import past it/u })).toBeVisible();
  await page.screenshot({ path: info.outputPath('made-light.png') });
  await page.emulateMedia({ colorScheme: 'dark' });
  await section.getByRole('button', { name: 'Use as pattern' }).scrollIntoViewIfNeeded();
  await page.screenshot({ path: info.outputPath('made-dark.png') });
  await page.emulateMedia({ colorScheme: 'light' });

  const saving = page.waitForEvent('download');
  await section.getByRole('button', { name: 'Save pattern as STL' }).click();
  const download = await saving;
  expect(download.suggestedFilename()).toBe('Pocket device - Top half pattern.stl');
  const triangles = readFileSync(await download.path()).readUInt32LE(80);
  await section.getByText('All figures').click();
  await expectFigure(page, 'Triangles of the pattern', String(triangles));

  await section.getByRole('button', { name: 'Use as pattern' }).click();
  await expect(page.getByRole('region', { name: 'The pattern in use' })).toContainText(
    `made from ${fileName}`,
    { timeout: 120_000 },
  );
  await measured(page);
  await expect(page.getByRole('region', { name: 'Verdict' })).toContainText(`${made} is what you print`);
  await page.screenshot({ path: info.outputPath('used-light.png') });

  await goTo(page, 'Walls & draft');
  const walls = Number.parseFloat(await figure(page, 'Wall along the normal, median'));
  expect(Math.abs(walls - asked)).toBeLessThanOrEqual(0.02);
  await expect(page.getByRole('region', { name: 'Verdict' })).not.toContainText('Stop');
  await page.screenshot({ path: info.outputPath('walls-light.png') });

  await page.reload();
  await measured(page);
  await goTo(page, 'Pattern');
  const inUse = page.getByRole('region', { name: 'The pattern in use' });
  await expect(inUse).toContainText(`made from ${fileName}`);
  await inUse.getByRole('button', { name: 'Go back to the import' }).click();
  await measured(page);
  await expect(inUse).toHaveCount(0);
  await goTo(page, 'Part');
  await expect(page.getByText(fileName, { exact: true })).toBeVisible();
});

test('what no pattern can be made from says why, and the model stays', async ({ page, context }) => {
  await withoutDemo(context);
  await newProject(page, 'Pocket device', 'Sheet');
  await page.getByLabel('Model file').setInputFiles(writeModel('sheet.stl', box([0, 0, 0], [40, 30, 1])));
  // Both sides of a sheet are alike: which one people see is asked, and the other steps wait for it.
  const asked = page.getByRole('region', { name: 'Right way up' });
  const walls = page.getByRole('navigation', { name: 'Steps' }).getByRole('link', { name: /Walls & draft/ });
  await expect(asked.getByRole('button')).toHaveCount(2, { timeout: 60_000 });
  await expect(walls).toHaveAccessibleName(/not yet known$/);
  await asked.getByRole('button', { name: /first picture/ }).click();
  await expect(asked).toHaveCount(0);
  await measured(page);
  await goTo(page, 'Pattern');
  await page.getByRole('button', { name: 'Make the pattern' }).click();
  await expect(page.getByRole('main').getByRole('article').getByRole('alert')).toContainText(
    'it is a flat sheet along this pull',
  );
  await expect(page.getByRole('button', { name: 'Make the pattern' })).toBeEnabled();
  await expect(page.getByRole('region', { name: 'Verdict' })).toContainText('sheet.stl is what you print');
});
