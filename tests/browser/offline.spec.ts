import {
  expect,
  figure,
  goTo,
  importModel,
  measured,
  newProject,
  openDemo,
  test,
} from './support/workbookPage';
import { realShell } from './support/models';

test.use({ keepsOffline: true });

test('once loaded, the page opens, imports and measures with the network gone @model', async ({
  page,
  context,
}) => {
  await openDemo(page);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await page.reload();
  await measured(page);
  await context.setOffline(true);
  await page.reload();
  await measured(page);
  await newProject(page, 'Pocket case', 'Top');
  await importModel(page, realShell().path);
  await goTo(page, 'Walls & draft');
  await measured(page);
  expect(await figure(page, 'Wall along the normal, median')).toMatch(/^\d+\.\d{3}mm$/);
});
