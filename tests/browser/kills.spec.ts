import { expect, test } from '@playwright/test';
import { killRounds } from './kills';

test('a browser killed during saves, with an import going on, leaves no damaged state', async ({
  baseURL,
}) => {
  test.setTimeout(600_000);
  const seed = Number(process.env['RUN_SEED'] ?? Date.now() % 1e6);
  const rounds = await killRounds({ times: 3, seed, baseUrl: baseURL ?? '' });
  for (const { damage } of rounds) expect(damage, `seed ${seed}`).toEqual([]);
  expect(rounds.at(-1)?.projects).toBeGreaterThan(0);
});
