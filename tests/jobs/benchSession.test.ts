import { describe, expect, it } from 'vitest';
import { preparePack } from '../../src/core/mesh/pack';
import { preparePattern } from '../../src/core/part/preparePattern';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { BenchSession } from '../../src/jobs/benchSession';
import type { BenchWorker } from '../../src/jobs/protocol';
import { stageNames } from '../../src/pipeline/stages';
import { smallTray, trayQuestion } from '../pipeline/support';
import { asText } from '../support/asText';
import { domeShell, tray } from '../support/meshes';
import { ignore, measuredBy, meshName, sessionWith, stlBlob } from './support';
import { overMessages } from './wireSupport';

const dome = domeShell(24, 48);

describe('bench session', () => {
  it('tells the facts of an imported file as the headless command does', async () => {
    await preparePack();
    const { canonical, ...facts } = preparePattern(writeStlBinary(dome), 'part.stl');
    const reply = await new BenchSession().importFile(stlBlob(dome), 'part.stl', meshName, ignore);
    expect(reply).toEqual({ ...facts, packErrorFileUnits: canonical.errorFileUnits });
  });

  it('measures and packs the same after saving and opening again', async () => {
    const session = await sessionWith(dome);
    const { packed, meshKey } = await session.packOpenMesh();
    const later = new BenchSession();
    await later.openMesh(packed, meshName);
    expect(asText(await measuredBy(later))).toEqual(asText(await measuredBy(session)));
    expect(await later.packOpenMesh()).toEqual({ packed, meshKey });
  });

  it('packs the mesh that is open, not one that was imported before', async () => {
    const session = await sessionWith(dome);
    const other = await (await sessionWith(tray([60, 40, 12], 1))).packOpenMesh();
    await session.openMesh(other.packed, meshName);
    expect(await session.packOpenMesh()).toEqual(other);
  });

  it('says what is missing instead of guessing', async () => {
    const session = new BenchSession();
    await expect(session.packOpenMesh()).rejects.toMatchObject({ code: 'job.noMesh' });
    await expect(session.tell('part', trayQuestion(), ignore)).rejects.toMatchObject({ code: 'job.noMesh' });
    await expect(session.ask('cut', trayQuestion(), { axis: 'x', atMm: 0 }, ignore)).rejects.toMatchObject({
      code: 'job.noMesh',
    });
  });

  it('keeps the open mesh when an import or a saved mesh is refused', async () => {
    const session = await sessionWith(dome);
    const before = asText(await measuredBy(session));
    const packed = await session.packOpenMesh();
    await expect(
      session.importFile(new Blob([]), 'nothing.stl', 'another mesh', ignore),
    ).rejects.toMatchObject({ name: 'Problem' });
    await expect(session.openMesh('no mesh at all', 'another mesh')).rejects.toMatchObject({
      code: expect.stringMatching(/^pack\./u) as string,
    });
    expect(asText(await measuredBy(session))).toEqual(before);
    expect(await session.packOpenMesh()).toEqual(packed);
  });
});

describe('bench session over messages', { timeout: 60_000 }, () => {
  const question = trayQuestion();
  /** Everything that a page asks of an open part. */
  async function everything(bench: BenchWorker) {
    const told = [];
    for (const name of stageNames) told.push(await bench.tell(name, question, ignore));
    const run = { run: 'fine oven run', treatment: 'none' } as const;
    return {
      told,
      cut: await bench.ask('cut', question, { axis: 'x', atMm: 3 }, ignore),
      probe: await bench.ask('probe', question, { originMm: [0, 0, -50], direction: [0, 0, 1] }, ignore),
      touching: await bench.ask('self touching', question, null, ignore),
      half: await bench.ask('saved half', question, 'negative', ignore),
      heatCut: await bench.ask('heat cut', question, { ...run, axis: 1, atMm: null, timeS: 3600 }, ignore),
      heatAt: await bench.ask('heat at', question, { ...run, pointMm: [0, 0, 1] }, ignore),
      packed: await bench.packOpenMesh(),
    };
  }

  it('gives the same values as on the own thread, and again when asked again, though arrays move', async () => {
    const wanted = asText(await everything(await sessionWith(smallTray)));
    const { bench, end } = overMessages(new BenchSession());
    await bench.importFile(stlBlob(smallTray), 'part.stl', meshName, ignore);
    expect(asText(await everything(bench))).toEqual(wanted);
    expect(asText(await everything(bench))).toEqual(wanted);
    end();
  });
});
