/** From a tray to the pieces of its plies and the files to cut them by, on the page. */
import { readFileSync } from 'node:fs';
import { tray } from '../support/meshes';
import { writeModel } from './support/models';
import { expect, goTo, importModel, newProject, test, withoutDemo } from './support/workbookPage';

test('plies of a tray are laid, started elsewhere, nested and saved at true size', async ({
  page,
  context,
}, info) => {
  await page.setViewportSize({ width: 1366, height: 768 });
  await withoutDemo(context);
  await newProject(page, 'Bench lamp', 'Tray');
  await importModel(page, writeModel('cut-tray.stl', tray([60, 40, 12], 0.7, 3)));
  await goTo(page, 'Ply cutting');
  const workOut = page.getByRole('button', { name: 'Work out the pieces' });
  await workOut.click();
  const pieces = page.getByRole('region', { name: 'The pieces' });
  await expect(pieces).toBeVisible({ timeout: 30_000 });
  const roll = page.getByRole('region', { name: 'On the roll' });
  await expect(roll.getByRole('img', { name: /3 pieces on \d+ × 1000 mm/u })).toBeVisible({
    timeout: 30_000,
  });
  const first = pieces.getByRole('img', { name: /^Piece 1A, flat/u }).locator('.flat-cloth');
  const outline = await first.getAttribute('d');
  // The closed line of the figures: length of roll, mass of cloth.
  await expect(pieces).toContainText(/Cloth and roll\s*\d+\smm · [\d.]+\sg/u);
  await pieces.screenshot({ path: info.outputPath('pieces-light.png') });

  // The start is dragged 8 mm off: the pieces belong to another start until they are worked out again.
  const plan = pieces.getByRole('img', { name: /^Threads of ply 1/u });
  await plan.scrollIntoViewIfNeeded();
  const box = (await plan.boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.62, box.y + box.height * 0.56, { steps: 4 });
  await page.mouse.up();
  await expect(page.getByText(/belong to other inputs/u)).toBeVisible();
  await expect(page.getByRole('textbox', { name: 'Start, along the length' })).not.toHaveValue('');
  await workOut.click();
  await expect(pieces).toBeVisible({ timeout: 30_000 });
  await expect(roll.getByRole('img', { name: /piece 1A picked out$/u })).toBeVisible({ timeout: 30_000 });
  expect(await first.getAttribute('d')).not.toBe(outline);

  await pieces.getByRole('button', { name: '2A', exact: true }).click();
  await expect(roll.getByRole('img', { name: /piece 2A picked out$/u })).toBeVisible();
  await roll.getByText('3A', { exact: true }).click();
  await expect(pieces.getByRole('button', { name: '3A', exact: true })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await expect(page.getByRole('region', { name: 'Cautions' })).toContainText('gloves');

  const templates = page.getByRole('region', { name: 'Templates' });
  await templates.getByRole('combobox', { name: 'Paper of the templates' }).selectOption('letter');
  for (const [name, kind, begins] of [
    ['Save PDF to print', 'pdf', '%PDF-'],
    ['Save SVG', 'svg', '<svg'],
    ['Save DXF', 'dxf', '0\n'],
  ] as const) {
    const saving = page.waitForEvent('download');
    await templates.getByRole('button', { name }).click();
    const download = await saving;
    expect(download.suggestedFilename()).toBe(`Bench lamp - Tray templates.${kind}`);
    const bytes = readFileSync(await download.path());
    await download.saveAs(info.outputPath(`templates.${kind}`));
    expect(bytes.toString('latin1').trimStart().replaceAll('\r', '').slice(0, 200)).toContain(begins);
  }
  await page.screenshot({ path: info.outputPath('cutting-light.png'), fullPage: true });
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.screenshot({ path: info.outputPath('cutting-dark.png'), fullPage: true });
  await pieces.screenshot({ path: info.outputPath('pieces-dark.png') });
  await roll.screenshot({ path: info.outputPath('roll-dark.png') });
});
