import { describe, expect, it, vi } from 'vitest';
import { Problem } from '../../src/core/problem';
import { createBench, wasDropped } from '../../src/jobs/client';
import type { CureChoices } from '../../src/core/cure/predictCure';
import type { BenchWorker } from '../../src/jobs/protocol';
import type { MeasureReply, PartShape } from '../../src/pipeline/told';
import type { StartedBench } from '../../src/jobs/startBench';
import { alongZ, ignore } from './support';

interface Call {
  readonly worker: number;
  readonly name: keyof BenchWorker;
  readonly given: readonly unknown[];
  readonly answer: (value?: unknown) => void;
  readonly fail: (error: unknown) => void;
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
const shape = { facetCount: 1 } as PartShape;
const reply = { summary: { facetCount: 1 } } as MeasureReply;
const x = (atMm: number) => ({ axis: 'x', atMm }) as const;

/** Workers that answer only when told to. */
function fakeWorkers() {
  const calls: Call[] = [];
  const ended: number[] = [];
  const crashes: ((problem: Problem) => void)[] = [];
  let started = 0;
  const start = (): StartedBench => {
    const worker = ++started;
    const bench = new Proxy({} as BenchWorker, {
      get:
        (_, name: keyof BenchWorker) =>
        (...given: unknown[]) =>
          new Promise((answer, fail) => calls.push({ worker, name, given, answer, fail })),
    });
    const crashed = new Promise<Problem>((resolve) => crashes.push(resolve));
    return { bench, crashed, terminate: () => void ended.push(worker) };
  };
  const last = () => {
    const call = calls.at(-1);
    if (call === undefined) throw new Error('nothing was asked of the worker');
    return call;
  };
  const names = () => calls.map(({ worker, name }) => `${worker} ${name}`);
  return { start, calls, ended, crashes, last, names };
}

/** A client whose first worker holds a measured mesh. */
async function readyClient() {
  const workers = fakeWorkers();
  const client = createBench(workers.start);
  const opened = client.openMesh('packed mesh');
  await settled();
  workers.last().answer();
  await opened;
  const measured = client.measure(alongZ);
  await settled();
  const [, , onShape] = workers.last().given as [unknown, unknown, (told: PartShape) => void];
  onShape(shape);
  workers.last().answer(reply);
  expect(await measured).toEqual({ ...reply, shape });
  workers.calls.length = 0;
  return { ...workers, client };
}

const codeOf = (promise: Promise<unknown>) =>
  promise.then(
    () => 'answered',
    (error: unknown) => (error instanceof Problem ? error.code : 'not a problem'),
  );

describe('bench client', () => {
  it('runs one job at a time, in order', async () => {
    const { client, last, names } = await readyClient();
    const patches = client.findPatches({
      measure: 'ray',
      lowMm: 0,
      highMm: 1,
      leastDraftDeg: 1,
      leastCornerRadiusMm: null,
      leastOuterEdgeRadiusMm: null,
    });
    const cut = client.cut(x(1));
    await settled();
    expect(names()).toEqual(['1 findPatches']);
    last().answer([]);
    expect(await patches).toEqual([]);
    await settled();
    expect(names()).toEqual(['1 findPatches', '1 cut']);
    last().answer('a cut');
    expect(await cut).toBe('a cut');
  });

  it('answers only the newest of several questions of one kind', async () => {
    const { client, last, names, ended } = await readyClient();
    const codes = [codeOf(client.cut(x(1))), codeOf(client.cut(x(2)))];
    await settled();
    const newest = client.cut(x(3));
    last().answer('the first cut');
    await settled();
    expect(await Promise.all(codes)).toEqual(['job.outdated', 'job.outdated']);
    expect(last().given).toEqual([x(3)]);
    last().answer('the third cut');
    expect(await newest).toBe('the third cut');
    expect(names()).toEqual(['1 cut', '1 cut']);
    expect(ended).toEqual([]);
  });

  it('lets an import through while the worker rehearses, in the same worker', async () => {
    const { start, calls, names, ended } = fakeWorkers();
    const client = createBench(start);
    const rehearsed = codeOf(client.getReady());
    await settled();
    const imported = client.importFile(new Blob([]), 'shell.stl');
    expect(await rehearsed).toBe('job.outdated');
    await settled();
    expect(names()).toEqual(['1 getReady', '1 importFile']);
    calls[1]!.answer('facts');
    expect(await imported).toBe('facts');
    calls[0]!.answer(null);
    await settled();
    const measured = client.measure(alongZ);
    await settled();
    expect(names()).toEqual(['1 getReady', '1 importFile', '1 measure']);
    calls[2]!.answer(reply);
    await measured.catch(ignore);
    expect(ended).toEqual([]);
  });

  it('lets a new mesh outdate every question about the old one', async () => {
    const { client, last } = await readyClient();
    const old = [
      codeOf(client.cut(x(1))),
      codeOf(client.probe([0, 0, 0], [0, 0, 1])),
      codeOf(client.packOpenMesh()),
    ];
    const opened = client.openMesh('another mesh');
    expect(await Promise.all(old)).toEqual(['job.outdated', 'job.outdated', 'job.outdated']);
    await settled();
    last().answer('an old cut that nobody waits for');
    await settled();
    last().answer();
    await opened;
  });

  it('cancels a long job by ending its worker, and puts mesh and measurement back before the next', async () => {
    const { client, last, names, ended } = await readyClient();
    const abort = new AbortController();
    const pull = codeOf(client.bestPull({ signal: abort.signal }));
    await settled();
    abort.abort();
    expect(await pull).toBe('job.canceled');
    expect(ended).toEqual([1]);
    const cut = client.cut(x(1));
    await settled();
    expect(last().given).toEqual(['packed mesh']);
    last().answer();
    await settled();
    last().answer(reply);
    await settled();
    last().answer('a cut');
    expect(await cut).toBe('a cut');
    expect(names()).toEqual(['1 bestPull', '2 openMesh', '2 measure', '2 cut']);
  });

  it('heats the mold again after a cancel, so that it can still be cut', async () => {
    const { client, last, names } = await readyClient();
    const choices = { voxelMm: 2 } as CureChoices;
    const predicted = client.predictCure(choices, 'refined');
    await settled();
    last().answer('a prediction');
    expect(await predicted).toBe('a prediction');
    await settled();
    const abort = new AbortController();
    const canceled = codeOf(client.compareCure(choices, 130, { signal: abort.signal }));
    await settled();
    abort.abort();
    expect(await canceled).toBe('job.canceled');
    const question = { treatment: 'none', axis: 1, atMm: null, timeS: 60 } as const;
    const cut = client.heatCut(question);
    await settled();
    last().answer();
    await settled();
    last().answer(reply);
    await settled();
    expect(last().given.slice(0, 2)).toEqual([choices, 'refined']);
    last().answer('the same prediction');
    await settled();
    expect(last().given).toEqual([question]);
    last().answer('a heated cut');
    expect(await cut).toBe('a heated cut');
    const heat = client.heatAt('none', [1, 2, 3]);
    await settled();
    last().answer('heat at a point');
    expect(await heat).toBe('heat at a point');
    expect(names()).toEqual([
      '1 predictCure',
      '1 compareCure',
      '2 openMesh',
      '2 measure',
      '2 predictCure',
      '2 heatCut',
      '2 heatAt',
    ]);
  });

  it('imports the file again after a cancel when it was not packed yet', async () => {
    const { client, last, names } = await readyClient();
    const file = new Blob(['solid']);
    const imported = client.importFile(file, 'a.stl');
    await settled();
    last().answer({ triangles: 1 });
    await imported;
    const abort = new AbortController();
    const first = codeOf(client.measure(alongZ, { signal: abort.signal }));
    await settled();
    abort.abort();
    expect(await first).toBe('job.canceled');
    void client.measure(alongZ).catch(ignore);
    await settled();
    expect(last().given.slice(0, 2)).toEqual([file, 'a.stl']);
    last().answer({ triangles: 1 });
    await settled();
    expect(names()).toEqual(['1 importFile', '1 measure', '2 importFile', '2 measure']);
  });

  it('keeps the old mesh when an import is canceled', async () => {
    const { client, last, names } = await readyClient();
    const abort = new AbortController();
    const imported = codeOf(client.importFile(new Blob(['x']), 'b.stl', { signal: abort.signal }));
    await settled();
    abort.abort();
    expect(await imported).toBe('job.canceled');
    void client.cut(x(1)).catch(ignore);
    await settled();
    expect(last().given).toEqual(['packed mesh']);
    expect(names()).toEqual(['1 importFile', '2 openMesh']);
  });

  it('does not end the worker for a short job, nor for one that waits', async () => {
    const { client, last, ended } = await readyClient();
    const abort = new AbortController();
    const running = codeOf(client.cut(x(1), { signal: abort.signal }));
    const waiting = codeOf(client.bestPull({ signal: abort.signal }));
    await settled();
    abort.abort();
    expect(await Promise.all([running, waiting])).toEqual(['job.canceled', 'job.canceled']);
    last().answer('too late');
    await settled();
    expect(ended).toEqual([]);
    expect(await codeOf(client.cut(x(2), { signal: abort.signal }))).toBe('job.canceled');
  });

  it('passes a failure on with its code and its words', async () => {
    const { client, last } = await readyClient();
    const cut = client.cut(x(1));
    await settled();
    last().fail(new Problem('some.code', 'What the maker can do.'));
    await expect(cut).rejects.toMatchObject({ code: 'some.code', message: 'What the maker can do.' });
    const memory = codeOf(client.cut(x(2)));
    await settled();
    last().fail(new RangeError('Array buffer allocation failed'));
    expect(await memory).toBe('job.memory');
  });

  it('tells a crash to the job that ran, and goes on with a new worker', async () => {
    const { client, last, crashes, names } = await readyClient();
    const pull = codeOf(client.bestPull());
    const touching = client.findSelfTouching();
    await settled();
    crashes[0]?.(new Problem('job.crashed', 'stopped'));
    expect(await pull).toBe('job.crashed');
    await settled();
    last().answer();
    await settled();
    last().answer(reply);
    await settled();
    last().answer(new Uint32Array(0));
    expect(await touching).toEqual(new Uint32Array(0));
    expect(names()).toEqual(['1 bestPull', '2 openMesh', '2 measure', '2 findSelfTouching']);
  });

  it('tells no progress once the job has settled', async () => {
    const { client, last } = await readyClient();
    const onProgress = vi.fn();
    const pull = client.bestPull({ onProgress });
    await settled();
    const [progress] = last().given as [(step: { doing: string; share: number }) => void];
    progress({ doing: 'trying pulls', share: 0.5 });
    last().answer('a pull');
    await pull;
    progress({ doing: 'trying pulls', share: 0.9 });
    expect(onProgress.mock.calls).toEqual([[{ doing: 'trying pulls', share: 0.5 }]]);
  });

  it('tells when nothing is heard of a job, and begins it again in a new worker', async () => {
    const workers = fakeWorkers();
    const client = createBench(workers.start, 30);
    const told: boolean[] = [];
    client.onSilence(() => told.push(client.isSilent()));
    const opened = client.openMesh('packed mesh');
    await settled();
    workers.last().answer();
    await opened;
    const measured = client.measure(alongZ);
    await settled();
    const [, progress] = workers.last().given as [unknown, (step: object) => void];
    progress({ doing: 'measuring walls', share: 0.78 });
    expect(told).toEqual([]);
    await vi.waitUntil(() => client.isSilent());
    progress({ doing: 'measuring walls', share: 0.79 });
    expect(client.isSilent()).toBe(false);
    await vi.waitUntil(() => client.isSilent());

    client.startAnew();
    expect(client.isSilent()).toBe(false);
    await settled();
    expect(workers.last().given).toEqual(['packed mesh']);
    workers.last().answer();
    await settled();
    const [, , onShape] = workers.last().given as [unknown, unknown, (told: PartShape) => void];
    onShape(shape);
    workers.last().answer(reply);
    expect(await measured).toEqual({ ...reply, shape });
    expect(workers.names()).toEqual(['1 openMesh', '1 measure', '2 openMesh', '2 measure']);
    expect(workers.ended).toEqual([1]);
    // Nobody waits for anything any more.
    await new Promise((resolve) => setTimeout(resolve, 60));
    expect(client.isSilent()).toBe(false);
    expect(told).toEqual([true, false, true, false]);
  });

  it('drops everything when it is disposed of', async () => {
    const { client, ended } = await readyClient();
    const left = [client.cut(x(1)), client.bestPull()].map((job) =>
      job.catch((error: unknown) => wasDropped(error)),
    );
    await settled();
    client.dispose();
    expect(await Promise.all(left)).toEqual([true, true]);
    expect(ended).toEqual([1]);
    expect(await codeOf(client.cut(x(2)))).toBe('job.canceled');
  });
});
