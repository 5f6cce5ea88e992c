/**
 * `npm run bench [part ...]`: what the code costs, as ratios within this one run where there is something to compare
 * with. Absolute times depend on the machine and are never asserted anywhere.
 */
import { execSync } from 'node:child_process';
import { preparePack } from '../../src/core/mesh/pack';

interface BenchPart {
  readonly title: string;
  readonly run: () => Promise<readonly string[]>;
}

const parts: Record<string, BenchPart> = {
  reading: {
    title: 'Reading, welding and judging a mesh',
    run: async () => (await import('./reading.bench')).benchReading(),
  },
  walls: {
    title: 'Ray and ball wall against three-mesh-bvh on the same rays and points',
    run: async () => (await import('./walls.bench')).benchWalls(),
  },
  closing: {
    title: 'Mold closing after a change',
    run: async () => (await import('./closing.bench')).benchClosing(),
  },
  pours: {
    title: 'Casting both stone halves',
    run: async () => (await import('./pours.bench')).benchPours(),
  },
  cure: {
    title: 'The closed mold in the oven',
    run: async () => (await import('./cure.bench')).benchCure(),
  },
  fit: {
    title: 'Rims laid on each other, and the least scale for contents',
    run: async () => (await import('./fit.bench')).benchFit(),
  },
  pattern: {
    title: 'Making a pattern',
    run: async () => (await import('./pattern.bench')).benchPattern(),
  },
  pack: {
    title: 'Packing for the saved workbook',
    run: async () => (await import('./pack.bench')).benchPack(),
  },
  nesting: {
    title: 'Nesting flat pieces on the roll',
    run: async () => (await import('./nesting.bench')).benchNesting(),
  },
  draping: {
    title: 'Laying six plies on made patterns, and nesting what comes of them',
    run: async () => (await import('./draping.bench')).benchDraping(),
  },
  browser: {
    title: 'Import to finished maps in Chromium',
    run: async () => {
      execSync('npx vite build', { stdio: 'ignore' });
      return await (await import('./browserImport.bench')).benchBrowserImport();
    },
  },
};

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !(name in parts));
if (unknown.length > 0) {
  console.error(
    `No bench part is called ${unknown.join(', ')}. There are: ${Object.keys(parts).join(', ')}.`,
  );
  process.exit(2);
}

await preparePack();
for (const [name, { title, run }] of Object.entries(parts)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  console.log(`\n${title}`);
  for (const line of await run()) console.log(`  ${line}`);
}
