/** The command and the page's desk, asked the same of the same file: every figure, verdict and caution is the same. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { BenchSession } from '../../src/jobs/benchSession';
import { createBench } from '../../src/jobs/client';
import { createAnswerShelf } from '../../src/pipeline/answerShelf';
import { contextOf } from '../../src/pipeline/evaluate';
import { runReport } from '../../src/report/runReport';
import type { DeskProject } from '../../src/sheets/measuring/deskState';
import { MeasuringDesk } from '../../src/sheets/measuring/measuringDesk';
import { stepReports } from '../../src/steps/registry';
import { inputsWith } from '../steps/contexts';
import { tray } from '../support/meshes';

const folder = mkdtempSync(join(tmpdir(), 'like-the-page-'));
afterAll(() => rmSync(folder, { recursive: true }));

const bytes = writeStlBinary(tray([40, 30, 10], 1.5, 3));
const inputs = inputsWith({ part: { unit: 'mm', pull: [0, 0, -1] } });

const startHere = () => ({
  bench: new BenchSession(),
  crashed: new Promise<never>(() => undefined),
  terminate: () => undefined,
});

/** A desk whose bench is on this thread. */
const deskHere = () => new MeasuringDesk(createBench(startHere), createAnswerShelf());

const followed = (pattern: DeskProject['pattern'], packed: string | null): DeskProject => ({
  pattern,
  inputs,
  thermocouple: null,
  packedMesh: () => packed,
  setMeshAside: () => undefined,
});

/** As the page does it: the file is imported and saved, and followed until all is in. */
async function onThePage() {
  const desk = deskHere();
  desk.follow(followed(null, null));
  const imported = await desk.importFile(new File([bytes as BlobPart], 'tray.stl'), inputs);
  if (imported === null) throw new Error(desk.store.getState().importProblem ?? 'not imported');
  desk.follow(followed(imported.pattern, imported.packed));
  return { ...(await reportsOf(desk, imported.pattern)), imported };
}

async function reportsOf(desk: ReturnType<typeof deskHere>, pattern: DeskProject['pattern']) {
  await vi.waitUntil(() => desk.store.getState().answers['fine oven run'] !== undefined, { timeout: 60_000 });
  const { answers, problem, stopped } = desk.store.getState();
  desk.dispose();
  expect({ problem, stopped }).toEqual({ problem: null, stopped: null });
  const reports = stepReports({ inputs, pattern, ...contextOf(answers) });
  return {
    voxelMm: answers['fine oven run']?.told?.voxelMm,
    steps: JSON.parse(JSON.stringify(Object.fromEntries(reports))) as unknown,
  };
}

test('one tray, default inputs, bricks of 2 mm: imported, and opened again as saved', async () => {
  const path = join(folder, 'tray.stl');
  writeFileSync(path, bytes);
  const { output } = await runReport(['--stl', path, '--unit', 'mm', '--pull', '0,0,-1', '--json'], {
    appVersion: '0',
    date: '2031-05-06',
    onProgress: () => {},
  });
  const command = (JSON.parse(output) as { readonly steps: unknown }).steps;
  const { imported, ...page } = await onThePage();
  expect(page.voxelMm).toBe(2);
  expect(command).toEqual(page.steps);

  const later = deskHere();
  later.follow(followed(imported.pattern, imported.packed));
  expect((await reportsOf(later, imported.pattern)).steps).toEqual(command);
});
