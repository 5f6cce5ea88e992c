import { realShell } from './support/models';
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

test('without WebGL the view says so and every figure, place and cut is there as text @model', async ({
  page,
}) => {
  await page.addInitScript(() => {
    Reflect.deleteProperty(globalThis, 'WebGL2RenderingContext');
    HTMLCanvasElement.prototype.getContext = () => null;
  });
  await openDemo(page);
  await expect(page.getByRole('complementary', { name: 'Bench view' })).toContainText(/WebGL/);
  await expect(page.getByRole('table', { name: /Places/ })).toContainText('show face, +y side');
  await page.getByRole('button', { name: 'Cut', exact: true }).click();
  await expect(page.getByRole('complementary', { name: 'Bench view' })).toContainText(/mm/);

  await newProject(page, 'Pocket case', 'Top');
  await importModel(page, realShell().path);
  await goTo(page, 'Walls & draft');
  await measured(page);
  expect(await figure(page, 'Wall along the normal, median')).toMatch(/^\d+\.\d{3}mm$/);
});
