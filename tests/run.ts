/**
 * `npm test`: format, types, lint, unit tests, build, browser tests, in this order, each of them always run.
 * Closes with one plain line `N passed, N failed` that sums all of them; a check without counted tests
 * (format, types, lint, build) counts as one. Nothing is ever skipped: a missing browser is a failure.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findChromium } from './browser/support/findChromium';

interface Tally {
  passed: number;
  failed: number;
}

const reports = mkdtempSync(join(tmpdir(), 'workbook-tests-'));
const total: Tally = { passed: 0, failed: 0 };

function run(command: string, args: readonly string[], env: Record<string, string> = {}): boolean {
  console.log(`\n> ${command} ${args.join(' ')}`);
  return (
    spawnSync(command, args, { stdio: 'inherit', env: { ...process.env, ...env }, shell: false }).status === 0
  );
}

function count(name: string, tally: Tally): void {
  total.passed += tally.passed;
  total.failed += tally.failed;
  console.log(`${name}: ${tally.passed} passed, ${tally.failed} failed`);
}

/** A check that either holds or doesn't. */
function check(name: string, args: readonly string[]): void {
  const ok = run('npm', ['run', '--silent', ...args]);
  count(name, { passed: ok ? 1 : 0, failed: ok ? 0 : 1 });
}

/** A test runner that writes its counts as JSON. A runner that dies without a report counts as one failure. */
function tests(name: string, ok: boolean, reportPath: string, read: (report: unknown) => Tally): void {
  let tally: Tally;
  try {
    tally = read(JSON.parse(readFileSync(reportPath, 'utf8')));
  } catch {
    tally = { passed: 0, failed: 1 };
  }
  if (!ok && tally.failed === 0) tally.failed = 1;
  if (tally.passed + tally.failed === 0) tally.failed = 1;
  count(name, tally);
}

check('format', ['check:format']);
check('types', ['check:types']);
check('lint', ['check:lint']);

const unitReport = join(reports, 'unit.json');
const unitOk = run('npx', [
  'vitest',
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${unitReport}`,
]);
tests('unit', unitOk, unitReport, (report) => {
  const { numPassedTests, numTotalTests } = report as { numPassedTests: number; numTotalTests: number };
  return { passed: numPassedTests, failed: numTotalTests - numPassedTests };
});

check('build', ['build']);

const browserReport = join(reports, 'browser.json');
let browserOk = false;
try {
  const chromium = findChromium();
  browserOk = run(
    'npx',
    ['playwright', 'test', '--config', 'tests/browser/playwright.config.ts', '--reporter=list,json'],
    { CHROMIUM_PATH: chromium, PLAYWRIGHT_JSON_OUTPUT_NAME: browserReport },
  );
} catch (problem) {
  console.error(problem instanceof Error ? problem.message : problem);
}
tests('browser', browserOk, browserReport, (report) => {
  const { stats } = report as {
    stats: { expected: number; unexpected: number; skipped: number; flaky: number };
  };
  return { passed: stats.expected, failed: stats.unexpected + stats.skipped + stats.flaky };
});

rmSync(reports, { recursive: true });
console.log(`\n${total.passed} passed, ${total.failed} failed`);
process.exit(total.failed === 0 ? 0 : 1);
