import { defineConfig } from '@playwright/test';
import { chromiumArguments, findChromium } from './support/findChromium';

/** Another checkout on the same machine can test at the same time on a port of its own. */
const port = Number(process.env.BROWSER_TEST_PORT ?? 4179);

/** Two files at a time, one for each core of the slow machine; real Chromium, software WebGL, no calls to the outside. */
export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.ts',
  fullyParallel: false,
  workers: 2,
  retries: 0,
  forbidOnly: true,
  timeout: 240_000,
  expect: { timeout: 20_000 },
  reporter: 'list',
  outputDir: '../../test-results',
  use: {
    baseURL: `http://127.0.0.1:${port}`,
    viewport: { width: 1366, height: 768 },
    acceptDownloads: true,
    launchOptions: {
      executablePath: findChromium(),
      args: [...chromiumArguments],
    },
  },
  webServer: {
    command: `npx vite preview --host 127.0.0.1 --port ${port} --strictPort`,
    cwd: '../..',
    url: `http://127.0.0.1:${port}`,
    reuseExistingServer: false,
  },
});
