import { spawnSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Software WebGL, and no calls to the outside. */
export const chromiumArguments = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  // Pages are put together without WebGL, which in software takes a third of all the time; the view is drawn with it all the same.
  '--disable-gpu-compositing',
  // Each test starts with nothing compiled, and ends before what the last compiler makes of it has paid: without it, another
  // third. With two tests at a time the helping threads of the engine only wait for each other.
  '--js-flags=--no-turbofan --single-threaded',
] as const;

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function onPath(): string | undefined {
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  return folders.flatMap((folder) => names.map((name) => join(folder, name))).find(isProgram);
}

/**
 * Path of a Chromium to test in: CHROMIUM_PATH, then the PATH, then (as root on Debian) installed with apt-get.
 * Throws with a sentence that says what to do when there is none; browser tests are never skipped.
 */
export function findChromium(): string {
  const named = process.env['CHROMIUM_PATH'];
  if (named) {
    if (isProgram(named)) return named;
    throw new Error(`CHROMIUM_PATH names ${named}, which is not a program that can be started.`);
  }
  const found = onPath();
  if (found) return found;
  if (process.getuid?.() === 0 && isProgram('/usr/bin/apt-get')) {
    console.log('Installing Chromium for the browser tests (apt-get install chromium) ...');
    const quiet = { stdio: 'ignore' as const, env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
    spawnSync('apt-get', ['update'], quiet);
    spawnSync('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], quiet);
    const installed = onPath();
    if (installed) return installed;
  }
  throw new Error(
    'The browser tests need Chromium. Install it (on Debian: apt-get install chromium) or set CHROMIUM_PATH to its program.',
  );
}
