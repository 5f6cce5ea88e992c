/**
 * `npm run fuzz -- --minutes N --seed S`: chance against the readers, what is saved, logs, `--set` and the reports, until the
 * time is over. Each finding is printed with what it takes to see it again: `--seed S --target NAME --case N`.
 * Exit code 1 when anything was found.
 */
import { parseArgs } from 'node:util';
import { chanceFrom, seedOfCase } from './chance';
import type { FuzzTarget } from './fuzzTarget';
import { logs } from './targets/logs';
import { moreClamps, moreCover, morePlies } from './targets/monotone';
import { readers } from './targets/readers';
import { reports } from './targets/reports';
import { projectFiles, records } from './targets/saved';
import { setInputs } from './targets/setInputs';

const targets: readonly FuzzTarget[] = [
  readers,
  projectFiles,
  records,
  logs,
  setInputs,
  reports,
  morePlies,
  moreClamps,
  moreCover,
];
/** Of one target, after which it is left alone: the rest would mostly be the same again. */
const mostFindings = 5;
/** A case that takes longer is a finding: nobody waits for a file that means nothing. */
const longestCaseMs = 60_000;

const { values } = parseArgs({
  options: {
    minutes: { type: 'string', default: '1' },
    seed: { type: 'string', default: String(Date.now() % 2 ** 31) },
    target: { type: 'string' },
    case: { type: 'string' },
  },
});
const seed = Number(values.seed);
const untilMs = performance.now() + 60_000 * Number(values.minutes);
const chosen = targets.filter(({ name }) => values.target === undefined || name === values.target);
const tally = new Map(chosen.map(({ name }) => [name, { cases: 0, findings: 0, ms: 0 }]));

async function tryCase(target: FuzzTarget, number: number): Promise<void> {
  const count = tally.get(target.name)!;
  const startedMs = performance.now();
  let found: string | null = null;
  try {
    await target.run(chanceFrom(seedOfCase(seed, target.name, number)));
  } catch (error) {
    found =
      error instanceof Error
        ? ((error.constructor === Error || error.name !== 'Error' ? error.stack : error.message) ??
          error.message)
        : String(error);
  }
  const tookMs = performance.now() - startedMs;
  if (found === null && tookMs > longestCaseMs) found = `took ${(tookMs / 1000).toFixed(0)} s`;
  count.cases++;
  count.ms += tookMs;
  if (found === null) return;
  count.findings++;
  console.log(`FOUND: --seed ${seed} --target "${target.name}" --case ${number}\n  ${found}`);
}

if (values.case !== undefined) for (const target of chosen) await tryCase(target, Number(values.case));
else
  // Whoever has had least time is next, so that slow targets don't crowd out the quick ones.
  for (;;) {
    const open = chosen.filter(({ name }) => tally.get(name)!.findings < mostFindings);
    const next = open.toSorted((a, b) => tally.get(a.name)!.ms - tally.get(b.name)!.ms)[0];
    if (next === undefined || performance.now() > untilMs) break;
    await tryCase(next, tally.get(next.name)!.cases);
  }

const all = [...tally.values()];
for (const [name, { cases, findings }] of tally) console.log(`${name}: ${cases} cases, ${findings} findings`);
const findings = all.reduce((sum, one) => sum + one.findings, 0);
console.log(
  `fuzz, seed ${seed}: ${all.reduce((sum, one) => sum + one.cases, 0)} cases, ${findings} findings`,
);
process.exitCode = findings === 0 ? 0 : 1;
