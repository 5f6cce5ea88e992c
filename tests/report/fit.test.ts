/** The headless command with a mate and contents, and what it refuses. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { contentsIn } from '../../src/report/contentsFile';
import { runReport } from '../../src/report/runReport';
import { boxShell } from '../core/fit/shells';
import { bytesOf, objText } from '../support/meshText';

const folder = mkdtempSync(join(tmpdir(), 'fit-'));
afterAll(() => rmSync(folder, { recursive: true }));
const surroundings = { appVersion: '0', date: '2026-01-05', onProgress: () => undefined };
const path = (name: string, text: string): string => {
  writeFileSync(join(folder, name), bytesOf(text));
  return join(folder, name);
};
const upper = path('upper.obj', objText(boxShell(60, 40, 16, 1)));
const lower = path('lower.obj', objText(boxShell(59.88, 39.92, 10, 1)));
const inside = path(
  'inside.json',
  '[{"name": "Board", "lengthMm": 40, "widthMm": 20, "heightMm": 3, "xMm": 1, "yMm": 0, "zMm": 8}]',
);

describe('--mate and --contents', () => {
  it('give clearance, scale, gap and step, and files of figures and calendar', async () => {
    const out = join(folder, 'out');
    const words = [
      '--stl',
      upper,
      '--unit',
      'mm',
      '--mate',
      lower,
      '--contents',
      inside,
      '--json',
      '--out',
      out,
    ];
    const settings = [
      'cure.voxelMm=8',
      'finish.startDate="2026-05-04"',
      'pattern.gridMm=0.5',
      'pattern.insideRadiusMm=1.5',
    ];
    const { output } = await runReport(
      [...words, ...settings.flatMap((one) => ['--set', one])],
      surroundings,
    );
    const report = JSON.parse(output) as {
      readonly steps: Readonly<
        Record<string, { readonly figures: readonly { id: string; value: number }[] }>
      >;
    };
    const value = (id: string) => report.steps['fit']!.figures.find((one) => one.id === `fit.${id}`)!.value;
    // Roof 15 mm over the rim, board up to 9.5; sides 29 - 21 and more.
    expect(value('leastClearanceMm')).toBeCloseTo(5.5, 1);
    expect(value('scaleThatFits')).toBeLessThan(1);
    expect(value('mateScale')).toBeCloseTo(1 / 0.998, 3);
    expect(value('rimStepMaxMm')).toBeCloseTo(0.06, 2);
    expect(value('rimGapMaxMm')).toBeCloseTo(0, 6);
    expect(readFileSync(join(out, 'calendar.ics'), 'utf8')).toMatch(/^BEGIN:VCALENDAR\r\n/u);
    expect(readFileSync(join(out, 'figures.csv'), 'utf8')).toMatch(/\r\nfit\.leastClearanceMm,/u);
  }, 120_000);
});

const refusal = (text: string): string => {
  try {
    contentsIn('inside.json', bytesOf(text));
  } catch (error) {
    return error instanceof Error ? error.message : '';
  }
  return 'taken';
};

const bad = (text: string) =>
  runReport(['--stl', upper, '--contents', path('bad.json', text)], surroundings).then(
    () => 'taken',
    (error: unknown) => (error instanceof Error ? error.message : ''),
  );

describe('a contents file', () => {
  it.each([
    ['{', 'this is not JSON'],
    ['{"name": 1}', 'this is no list'],
    ['[1]', 'entry 1 is no entry'],
    ['[[]]', 'entry 1 is no entry'],
    [`"${'a'.repeat(1_000_001)}"`, 'it is larger than 1 MB'],
  ])('%.20s is refused with a sentence', (text, why) => {
    expect(refusal(text)).toContain(`--contents inside.json: ${why}`);
  });

  it('with a field that there is not, or a value out of range: the sentence names it', async () => {
    expect(await bad('[{"lengthMm": -4}]')).toContain('fit.contents.0.lengthMm must be a number from 0.1');
    expect(await bad('[{"lenghtMm": 4}]')).toContain('there is no input fit.contents.0.lenghtMm');
  });
});
