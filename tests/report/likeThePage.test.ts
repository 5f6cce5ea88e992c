/** The command and the page's bench, asked the same of the same file: every figure, verdict and caution is the same. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { BenchSession } from '../../src/jobs/benchSession';
import type { PartShape } from '../../src/pipeline/told';
import { runReport } from '../../src/report/runReport';
import { patchBand } from '../../src/steps/band';
import { cureChoicesOf } from '../../src/steps/cure/cureChoicesOf';
import { pourChoicesOf } from '../../src/steps/mold/pourChoicesOf';
import { stepReports } from '../../src/steps/registry';
import { inputsWith } from '../steps/contexts';
import { tray } from '../support/meshes';

const folder = mkdtempSync(join(tmpdir(), 'like-the-page-'));
afterAll(() => rmSync(folder, { recursive: true }));

const bytes = writeStlBinary(tray([40, 30, 10], 1.5, 3));
const inputs = inputsWith({ part: { unit: 'mm', pull: [0, 0, -1] } });

const nothing = () => undefined;

/** As the page does it: import, measure, places, halves, then the refined oven run. */
async function reportsOfThePage() {
  let shape: PartShape | null = null as PartShape | null;
  const bench = new BenchSession();
  const facts = await bench.importFile(new Blob([bytes as BlobPart]), 'tray.stl', nothing);
  const { part } = inputs;
  const { health, summary } = await bench.measure(
    { unit: 'mm', declaredUnit: null, body: 0, scale: 1, pull: part.pull, winding: part.winding },
    nothing,
    (told) => (shape = told),
  );
  const patches = await bench.findPatches(patchBand(inputs));
  const { geometry, findings } = await bench.castHalves(pourChoicesOf(inputs), nothing);
  const choices = cureChoicesOf(inputs);
  if (!choices.known) throw new Error(choices.why);
  const cure = await bench.predictCure(choices.value, 'refined', nothing);
  const { unitGuess, fileBoxSize } = shape!;
  return {
    voxelMm: cure.voxelMm,
    reports: stepReports({
      inputs,
      pattern: { ...facts, fileName: 'tray.stl', meshKey: '' },
      measured: { health, summary, patches, unitGuess, fileBoxSize },
      mold: geometry,
      pourFindings: findings,
      cure,
    }),
  };
}
test('one tray, default inputs, bricks of 2 mm', async () => {
  const path = join(folder, 'tray.stl');
  writeFileSync(path, bytes);
  const { output } = await runReport(['--stl', path, '--unit', 'mm', '--pull', '0,0,-1', '--json'], {
    appVersion: '0',
    date: '2031-05-06',
    onProgress: () => {},
  });
  const page = await reportsOfThePage();
  expect(page.voxelMm).toBe(2);
  const steps = JSON.parse(JSON.stringify(Object.fromEntries(page.reports))) as unknown;
  expect((JSON.parse(output) as { readonly steps: unknown }).steps).toEqual(steps);
});
