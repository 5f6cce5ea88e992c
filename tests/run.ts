/**
 * `npm test`: format, types, lint, build and fuzz side by side, then unit tests, then browser tests, each of them always run.
 * Closes with one plain line `N passed, N failed` that sums all of them; a check without counted tests counts as one. Nothing
 * is ever skipped: a missing browser is a failure. `--choosing` runs only the tests that ask the shared meshes, for a clone
 * without them.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findChromium } from './browser/support/findChromium';
import { choosingTests } from './choosingTests';

interface Tally {
  passed: number;
  failed: number;
}

const onlyChoosing = process.argv.includes('--choosing');
const reports = mkdtempSync(join(tmpdir(), 'workbook-tests-'));
const total: Tally = { passed: 0, failed: 0 };

/** Whether the command ended well. `aside`: it runs beside others, so what it says is printed in one piece at its end. */
function run(
  command: string,
  args: readonly string[],
  {
    aside = false,
    env = {},
  }: { readonly aside?: boolean; readonly env?: Readonly<Record<string, string>> } = {},
): Promise<boolean> {
  const title = `\n> ${command} ${args.join(' ')}\n`;
  if (!aside) process.stdout.write(title);
  return new Promise((resolve) => {
    const said: Buffer[] = [];
    const child = spawn(command, args, {
      stdio: aside ? ['ignore', 'pipe', 'pipe'] : 'inherit',
      env: { ...process.env, ...env },
    });
    for (const stream of [child.stdout, child.stderr])
      stream?.on('data', (piece: Buffer) => said.push(piece));
    child.on('error', (problem) => said.push(Buffer.from(`${problem.message}\n`)));
    child.on('close', (code) => {
      if (aside) process.stdout.write(title + Buffer.concat(said).toString());
      resolve(code === 0);
    });
  });
}

function count(name: string, tally: Tally): void {
  total.passed += tally.passed;
  total.failed += tally.failed;
  console.log(`${name}: ${tally.passed} passed, ${tally.failed} failed`);
}

/** A check that either holds or doesn't. */
async function check(name: string, ...args: readonly string[]): Promise<void> {
  const ok = await run('npm', ['run', '--silent', ...args], { aside: true });
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

/** One after the other on one core, while chance has the other: neither of them uses two for long. */
async function checks(): Promise<void> {
  const oneByOne = async () => {
    await check('format', 'check:format');
    await check('types', 'check:types');
    await check('lint', 'check:lint');
    await check('build', 'build');
  };
  await Promise.all([oneByOne(), check('fuzz', 'fuzz', '--', '--minutes', '1', '--seed', '1')]);
}

async function unitTests(): Promise<void> {
  const report = join(reports, 'unit.json');
  const which = onlyChoosing ? choosingTests() : [];
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const ok = await run('npx', ['vitest', 'run', ...reporters, ...which]);
  tests('unit', ok, report, (told) => {
    const { numPassedTests, numTotalTests } = told as { numPassedTests: number; numTotalTests: number };
    return { passed: numPassedTests, failed: numTotalTests - numPassedTests };
  });
}

async function browserTests(): Promise<void> {
  const report = join(reports, 'browser.json');
  const config = ['--config', 'tests/browser/playwright.config.ts', '--reporter=list,json'];
  const which = onlyChoosing ? ['--grep', '@model'] : [];
  let ok = false;
  try {
    const env = { CHROMIUM_PATH: findChromium(), PLAYWRIGHT_JSON_OUTPUT_NAME: report };
    ok = await run('npx', ['playwright', 'test', ...config, ...which], { env });
  } catch (problem) {
    console.error(problem instanceof Error ? problem.message : problem);
  }
  tests('browser', ok, report, (told) => {
    const { stats } = told as {
      stats: { expected: number; unexpected: number; skipped: number; flaky: number };
    };
    return { passed: stats.expected, failed: stats.unexpected + stats.skipped + stats.flaky };
  });
}

if (onlyChoosing) await check('build', 'build');
else await checks();
await unitTests();
await browserTests();

rmSync(reports, { recursive: true });
console.log(`\n${total.passed} passed, ${total.failed} failed`);
process.exit(total.failed === 0 ? 0 : 1);
