/**
 * The headless command: the same checklist and figures as the page, without a browser.
 * Exit code 0; 1 when a verdict says stop; 2 on bad input, with one line on stderr and nothing on stdout.
 */
import packageFacts from '../package.json' with { type: 'json' };
import { Problem } from './core/problem';
import { runReport } from './report/runReport';

/** Progress in one line that overwrites itself; silent unless a person is watching. */
function progressLine(): { show: (doing: string, share: number) => void; clear: () => void } {
  if (!process.stderr.isTTY) return { show: () => {}, clear: () => {} };
  return {
    show: (doing, share) => process.stderr.write(`\r\u001b[K${doing} ${Math.round(100 * share)} %`),
    clear: () => process.stderr.write('\r\u001b[K'),
  };
}

const progress = progressLine();
try {
  const run = await runReport(process.argv.slice(2), {
    appVersion: packageFacts.version,
    date: new Date().toLocaleDateString('en-CA'),
    onProgress: progress.show,
  });
  progress.clear();
  process.stdout.write(`${run.output}\n`);
  process.exitCode = run.exitCode;
} catch (error) {
  progress.clear();
  const text = error instanceof Error ? error.message : String(error);
  process.stderr.write(
    error instanceof Problem
      ? `${text}\n`
      : `The report could not be worked out; this is a defect: ${text}\n`,
  );
  process.exitCode = 2;
}
