/**
 * Starts the headless command. Loading and compiling its several hundred modules anew took longer than most of its work, so
 * they are bundled into one file once, and again when a source has changed since.
 */
import { existsSync, readdirSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const root = join(import.meta.dirname, '..');
// Within node_modules, so that the libraries that are left out of it are found from there; named after the checkout, since two may
// share one folder of libraries.
const bundle = join(root, 'node_modules/.cache', `report-${Buffer.from(root).toString('base64url')}.mjs`);

/** @param {string} folder */
const newestMs = (folder) =>
  Math.max(
    ...readdirSync(folder, { withFileTypes: true }).map((entry) => {
      const path = join(folder, entry.name);
      return entry.isDirectory() ? newestMs(path) : statSync(path).mtimeMs;
    }),
  );

const isFresh =
  existsSync(bundle) &&
  statSync(bundle).mtimeMs >
    Math.max(newestMs(join(root, 'src')), statSync(join(root, 'package.json')).mtimeMs);
if (!isFresh) {
  const { build } = await import('esbuild');
  // Another start at the same time never reads half of it.
  const ownFile = `${bundle}.${process.pid}`;
  await build({
    entryPoints: [join(root, 'src/report.ts')],
    outfile: ownFile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    logLevel: 'error',
  });
  renameSync(ownFile, bundle);
}
await import(pathToFileURL(bundle).href);
