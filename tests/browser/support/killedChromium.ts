/** A Chromium on a profile of its own that can be killed like a power cut, and opened again. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { chromium, type Page } from '@playwright/test';
import { chromiumArguments, findChromium } from './findChromium';

export interface KilledChromium {
  readonly page: Page;
  /** The whole process tree, at once. */
  kill(): Promise<void>;
}

export async function startChromium(profileFolder: string): Promise<KilledChromium> {
  const child = spawn(
    findChromium(),
    [
      ...chromiumArguments,
      '--headless=new',
      '--remote-debugging-port=0',
      `--user-data-dir=${profileFolder}`,
      'about:blank',
    ],
    // A process group of its own: what is killed is this browser and nothing else.
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const ended = once(child, 'exit');
  let endpoint: string | undefined;
  for await (const line of createInterface(child.stderr)) {
    endpoint = /DevTools listening on (ws:\S+)/.exec(line)?.[1];
    if (endpoint !== undefined) break;
  }
  if (endpoint === undefined || child.pid === undefined) throw new Error('Chromium did not start.');
  // Nobody reads on; a full pipe would stop the browser.
  child.stderr.resume();
  const group = -child.pid;
  const browser = await chromium.connectOverCDP(endpoint);
  const [context] = browser.contexts();
  const page = context?.pages()[0] ?? (await context?.newPage());
  if (page === undefined) throw new Error('Chromium has no page.');
  return {
    page,
    async kill() {
      process.kill(group, 'SIGKILL');
      await ended;
      await browser.close().catch(() => {});
    },
  };
}
