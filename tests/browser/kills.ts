/**
 * Kills Chromium while the workbook saves and an import goes on, opens the same profile again and looks for damage:
 * `npm run kills -- --times 200 --seed 7`, after a build. Closes with one line that says how many states were damaged.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Page } from '@playwright/test';
import { preview } from 'vite';
import { meshKey } from '../../src/core/mesh/meshKey';
import { createWorkbook } from '../../src/workbook';
import { entryPrefix } from '../../src/workbook/keys';
import { noLocks } from '../../src/workbook/lockPort';
import { memoryStorage } from '../../src/workbook/storagePort';
import { domeShell } from '../support/meshes';
import { startChromium } from './support/killedChromium';
import { writeModel } from './support/models';

export interface KillsOptions {
  readonly times: number;
  readonly seed: number;
  /** Where the built page is served, without a slash at the end. */
  readonly baseUrl: string;
  readonly onRound?: (round: number, found: Found) => void;
}

/** What was found in storage after one kill. */
export interface Found {
  /** Plain sentences; none when nothing is wrong. */
  readonly damage: readonly string[];
  readonly projects: number;
  /** ISO 8601, UTC; of the last save that survived. */
  readonly lastSavedAt: string;
}

/** Edits go on for at most this long before the kill; the browser writes its storage to disk every few seconds. */
const longestMs = 12_000;

/** Rounds of opening, working, killing and looking, all on one profile. */
export async function killRounds({ times, seed, baseUrl, onRound }: KillsOptions): Promise<readonly Found[]> {
  const profile = mkdtempSync(join(tmpdir(), 'workbook-kills-'));
  const random = randomFrom(seed);
  const models = [8, 12].map((rings) => writeModel(`kills-${rings}.stl`, domeShell(rings, 2 * rings)));
  const rounds: Found[] = [];
  try {
    for (let round = 0; round < times; round += 1) {
      const working = await startChromium(profile);
      const model = models[round % models.length] ?? '';
      await openAndImport(working.page, baseUrl, model);
      // Ends with an error when the browser goes.
      const work = keepEditing(working.page).catch(() => {});
      await new Promise((resolve) => setTimeout(resolve, random() * longestMs));
      await working.kill();
      await work;

      const looking = await startChromium(profile);
      const found = look(await storedTexts(looking.page, baseUrl), rounds.at(-1)?.lastSavedAt ?? '');
      await looking.kill();
      rounds.push(found);
      onRound?.(round, found);
    }
  } finally {
    rmSync(profile, { recursive: true, force: true });
  }
  return rounds;
}

const draft = (page: Page) => page.getByRole('textbox', { name: 'Least draft I accept', exact: true });

/** Opens the project that is there (the demo at first) and starts an import. */
async function openAndImport(page: Page, baseUrl: string, model: string): Promise<void> {
  await page.goto(baseUrl);
  const first = page.locator('.project-link').first();
  await first.or(draft(page)).first().waitFor({ timeout: 60_000 });
  if (await first.isVisible()) await first.click();
  const steps = page.getByRole('navigation', { name: 'Steps' });
  await steps.getByRole('link', { name: 'Part' }).click();
  await page.getByLabel('Model file').setInputFiles(model);
  await steps.getByRole('link', { name: 'Walls & draft' }).click();
  await draft(page).waitFor();
}

async function keepEditing(page: Page): Promise<void> {
  for (let edit = 0; ; edit += 1) {
    await draft(page).fill(String(1 + (edit % 80) / 10));
    await draft(page).press('Tab');
    // Now faster than the pause before a save, now slower.
    await page.waitForTimeout(edit % 3 === 0 ? 400 : 50);
  }
}

/** Everything in storage, read from a page of the same origin that runs nothing. */
async function storedTexts(page: Page, baseUrl: string): Promise<Record<string, string>> {
  await page.goto(`${baseUrl}/icon.svg`);
  return page.evaluate(() => Object.fromEntries(Object.entries(localStorage)) as Record<string, string>);
}

/** What the workbook makes of these texts, and whether each is as it was written. */
function look(texts: Record<string, string>, formerlySavedAt: string): Found {
  const storage = memoryStorage();
  for (const [key, text] of Object.entries(texts)) storage.setItem(key, text);
  const workbook = createWorkbook({
    storage,
    locks: noLocks,
    nowMs: () => Date.now(),
    pageMs: () => performance.now(),
    newId: () => 'none',
    demoSeeds: () => Promise.resolve([]),
    onHidden: () => () => {},
    onOtherTabWrote: () => () => {},
  });
  const { projects, notes, keptAside } = workbook.store.getState();
  const damage = [...notes, ...keptAside.map(({ foundAt }) => `kept aside: ${foundAt}`)];
  for (const { id, name, condition, meshKey: wanted } of projects) {
    if (condition !== 'ok') damage.push(`"${name}" is ${condition}`);
    const packed = workbook.packedMeshOf(id);
    if (wanted !== null && (packed === null || meshKey(packed) !== wanted))
      damage.push(`the mesh of "${name}" is not the one that was saved`);
  }
  const entries = Object.keys(texts).filter((key) => key.startsWith(entryPrefix)).length;
  if (entries !== projects.length) damage.push(`${entries} entries, ${projects.length} projects`);
  const lastSavedAt = projects.map(({ changedAt }) => changedAt).reduce((a, b) => (a > b ? a : b), '');
  if (lastSavedAt < formerlySavedAt)
    damage.push(`the save of ${formerlySavedAt} was there before and is not now`);
  return { damage, projects: projects.length, lastSavedAt };
}

/** Numbers from 0 to 1, the same for the same seed (the minimal standard generator of Park and Miller, 1988). */
function randomFrom(seed: number): () => number {
  let state = (Math.abs(Math.trunc(seed)) % 2_147_483_646) + 1;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

if (process.argv[1] === import.meta.filename) {
  const { values } = parseArgs({
    options: { times: { type: 'string', default: '200' }, seed: { type: 'string' } },
  });
  const seed = Number(values.seed ?? Date.now() % 1e6);
  const server = await preview({ preview: { host: '127.0.0.1', port: 4190 } });
  const baseUrl = (server.resolvedUrls?.local[0] ?? '').replace(/\/$/, '');
  console.log(`seed ${seed}`);
  const rounds = await killRounds({
    times: Number(values.times),
    seed,
    baseUrl,
    onRound: (round, { projects, lastSavedAt, damage }) =>
      console.log(
        `${round + 1}: ${projects} projects, last save ${lastSavedAt || 'none'}`,
        damage.join('; ') || 'whole',
      ),
  });
  await server.close();
  const damaged = rounds.filter(({ damage }) => damage.length > 0).length;
  const saves = new Set(rounds.map(({ lastSavedAt }) => lastSavedAt)).size;
  console.log(`${rounds.length} kills, ${damaged} damaged states, ${saves} different last saves found`);
  process.exit(damaged === 0 ? 0 : 1);
}
