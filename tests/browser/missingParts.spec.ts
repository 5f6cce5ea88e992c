/** What a browser or a server may withhold; what is said of it, and what there is to do. */
import { test, type Page } from '@playwright/test';
import { startedKey } from '../../src/workbook/keys';
import { domeShell } from '../support/meshes';
import { writeModel } from './support/models';
import { expect, newProject } from './support/workbookPage';

// A server that has lost a part, without the copy that the app keeps of itself.
test.use({ serviceWorkers: 'block' });

const alert = (page: Page) => page.getByRole('alert').first();
const view = (page: Page) => page.getByRole('complementary', { name: 'Bench view' });

/** Not the first start: no demo that the page would be led away to. */
const startedBefore = (page: Page) =>
  page.addInitScript((key) => localStorage.setItem(key, '2026-01-01'), startedKey);

async function importSmallShell(page: Page): Promise<void> {
  await newProject(page, 'Pocket case', 'Top');
  await page.getByLabel('Model file').setInputFiles(writeModel('small dome.stl', domeShell(8, 16)));
}

test('a bench worker that is no longer on the server: load the page again', async ({ page, context }) => {
  await startedBefore(page);
  await page.goto('/');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  // Its name has a hash; the scene's worker has another.
  await context.route(/\/assets\/(entry|mountScene|demoSeeds)-.*\.js/u, (route) =>
    route.fulfill({ status: 404 }),
  );
  await importSmallShell(page);
  await expect(alert(page)).toContainText('could not be started. A part of the workbook could not be loaded');
  await expect(alert(page)).toContainText('Load the page again.');
  await expect(alert(page)).not.toContainText(/memory|triangles|another export/);
});

test('the demo’s part and the scene’s are missing: load the page again', async ({ page, context }) => {
  await context.route(/\/assets\/demoSeeds-.*\.js/u, (route) => route.fulfill({ status: 404 }));
  await page.goto('/');
  await expect(alert(page)).toContainText('The demo could not be made: A part of the workbook');
  await context.unrouteAll();
  await startedBefore(page);
  // The scene’s worker is told from the bench’s by its name alone.
  await page.addInitScript(() => {
    const Usual = Worker;
    window.Worker = class extends Usual {
      constructor(url: string | URL, options?: WorkerOptions) {
        super(options?.name === 'scene' ? '/assets/no-longer-here.js' : url, options);
      }
    };
  });
  await context.route('**/no-longer-here.js', (route) => route.fulfill({ status: 404 }));
  await page.reload();
  await importSmallShell(page);
  await expect(view(page)).toContainText(
    'The 3-D view is not here. A part of the workbook could not be loaded',
  );
  await expect(view(page).getByRole('button', { name: 'Load the page again' })).toBeVisible();
  await expect(view(page)).not.toContainText('WebGL');
});

test('workers that are blocked are named, not the model', async ({ page }) => {
  await startedBefore(page);
  await page.addInitScript(() => {
    window.Worker = new Proxy(Worker, {
      construct(_target, [, options]: [string, WorkerOptions?]) {
        // The options are read before anything is refused.
        if (options?.type === 'module') throw new DOMException('blocked', 'SecurityError');
        return {};
      },
    });
  });
  await page.goto('/');
  await importSmallShell(page);
  await expect(alert(page)).toContainText('web workers are blocked or missing (blocked)');
  await expect(alert(page)).toContainText('The model is not at fault');
  await expect(alert(page)).not.toContainText('another export');
});

test('a bench worker that has ended without a word can be started anew, and the import goes on', async ({
  page,
}) => {
  await startedBefore(page);
  await page.clock.install();
  await page.addInitScript(() => {
    let benches = 0;
    window.Worker = new Proxy(Worker, {
      construct(Usual, [url, options]: [string, WorkerOptions?]) {
        const worker = new Usual(url, options);
        // The first is ended behind the page's back, as `close()` in it or a tidy browser does.
        if (options?.name === 'bench' && ++benches === 1) worker.terminate();
        return worker;
      },
    });
  });
  await importSmallShell(page);
  const startAnew = page.getByRole('button', { name: 'Start it anew' });
  await expect(page.getByRole('progressbar')).toBeVisible();
  await expect(startAnew).toHaveCount(0);
  await page.clock.fastForward(21_000);
  await expect(page.getByRole('main')).toContainText(
    'Nothing has been heard of the measuring for 20 seconds.',
  );
  await page.clock.resume();
  await startAnew.click();
  await expect(page.getByText('small dome.stl', { exact: true })).toBeVisible();
  await expect(page.getByRole('navigation', { name: 'Steps' })).toContainText('Part');
  await expect(startAnew).toHaveCount(0);
  await expect(page.getByRole('progressbar', { name: /Reading/ })).toHaveCount(0);
  await expect(page.getByRole('application', { name: /3-D view/ })).toBeVisible();
});

test('where no worker is let draw, the page draws the part itself', async ({ page }) => {
  await startedBefore(page);
  await page.addInitScript(() => {
    window.Worker = new Proxy(Worker, {
      construct(Usual, [url, options]: [string, WorkerOptions?]) {
        if (options?.name === 'scene') throw new DOMException('blocked', 'SecurityError');
        return new Usual(url, options);
      },
    });
  });
  await importSmallShell(page);
  await expect(view(page).locator('canvas')).toBeVisible();
  await expect(view(page)).not.toContainText('WebGL');
});

for (const [what, takeAway] of [
  ['WebAssembly', () => Reflect.deleteProperty(globalThis, 'WebAssembly')],
  [
    '128-bit vectors of WebAssembly (SIMD)',
    () => {
      // As one that stops at the prefix of all vector instructions.
      const usual = WebAssembly.validate.bind(WebAssembly) as (bytes: Uint8Array) => boolean;
      WebAssembly.validate = (bytes: unknown) =>
        usual(bytes as Uint8Array) && !(bytes as Uint8Array).includes(253);
    },
  ],
  ['web workers', () => Reflect.deleteProperty(globalThis, 'Worker')],
  [
    'module workers',
    () => {
      window.Worker = new Proxy(Worker, {
        construct: (Usual, [url]: [string]) => new Usual(url),
      });
    },
  ],
  ['Array.prototype.at', () => Reflect.deleteProperty(Array.prototype, 'at')],
] as const) {
  test(`without ${what} the page says so and asks for a current browser`, async ({ page }) => {
    await page.addInitScript(takeAway);
    await page.goto('/');
    await expect(page.getByRole('listitem')).toContainText(what);
    await expect(page.getByRole('main')).toContainText('Open the workbook in a current browser.');
    expect(await page.evaluate(() => window.localStorage.length)).toBe(0);
  });
}
