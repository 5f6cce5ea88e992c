import { describe, expect, it, vi } from 'vitest';
import { Problem } from '../../src/core/problem';
import { BenchSession } from '../../src/jobs/benchSession';
import { createBench, outdatedReason, wasDropped } from '../../src/jobs/client';
import type { BenchWorker, JobOptions } from '../../src/jobs/protocol';
import type { StartedBench } from '../../src/jobs/startBench';
import type { OnProgress, StageName } from '../../src/pipeline/told';
import { questionWith, smallTray, trayQuestion } from '../pipeline/support';
import { asText } from '../support/asText';
import { ignore, meshName, stlBlob } from './support';
import { overMessages } from './wireSupport';

interface Call {
  readonly worker: number;
  readonly name: keyof BenchWorker;
  readonly given: readonly unknown[];
  readonly answer: (value?: unknown) => void;
  readonly fail: (error: unknown) => void;
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
const question = questionWith();
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
  /** A question by what is asked, not by how it is carried. */
  const nameOf = ({ name, given }: Call) => (name === 'tell' || name === 'ask' ? String(given[0]) : name);
  const names = () => calls.map((call) => `${call.worker} ${nameOf(call)}`);
  return { start, calls, ended, crashes, last, names, started: () => started };
}

/** A client whose first worker has a mesh open. */
async function readyClient(silenceMs?: number) {
  const workers = fakeWorkers();
  const client = createBench(workers.start, silenceMs);
  const opened = client.openMesh('packed mesh', 'the mesh');
  await settled();
  workers.last().answer();
  await opened;
  workers.calls.length = 0;
  const cut = (atMm: number, options?: JobOptions) => client.ask('cut', question, x(atMm), options);
  const tell = (name: StageName, options?: JobOptions) => client.tell(name, question, options);
  return { ...workers, client, cut, tell };
}

const codeOf = (promise: Promise<unknown>) =>
  promise.then(
    () => 'answered',
    (error: unknown) => (error instanceof Problem ? error.code : 'not a problem'),
  );

describe('bench client', () => {
  it('runs one job at a time, in order', async () => {
    const { cut, tell, last, names } = await readyClient();
    const places = tell('places');
    const section = cut(1);
    await settled();
    expect(names()).toEqual(['1 places']);
    last().answer([]);
    expect(await places).toEqual([]);
    await settled();
    expect(names()).toEqual(['1 places', '1 cut']);
    expect(last().given.slice(0, 3)).toEqual(['cut', question, x(1)]);
    last().answer('a cut');
    expect(await section).toBe('a cut');
  });

  it('answers only the newest of several questions of one name', async () => {
    const { cut, last, names, ended } = await readyClient();
    const codes = [codeOf(cut(1)), codeOf(cut(2))];
    await settled();
    const newest = cut(3);
    last().answer('the first cut');
    await settled();
    expect(await Promise.all(codes)).toEqual(['job.outdated', 'job.outdated']);
    expect(last().given[2]).toEqual(x(3));
    last().answer('the third cut');
    expect(await newest).toBe('the third cut');
    expect(names()).toEqual(['1 cut', '1 cut']);
    expect(ended).toEqual([]);
  });

  it('saves both halves, one after the other, and answers about two stages', async () => {
    const { client, tell, last } = await readyClient();
    const answers = [
      client.ask('saved half', question, 'negative'),
      client.ask('saved half', question, 'positive'),
      tell('part'),
      tell('places'),
    ];
    for (const answer of ['one half', 'the other', 'a part', 'its places']) {
      await settled();
      last().answer(answer);
    }
    expect(await Promise.all(answers)).toEqual(['one half', 'the other', 'a part', 'its places']);
  });

  it('lets a new mesh outdate every question about the old one', async () => {
    const { client, cut, tell, last } = await readyClient();
    const old = [codeOf(cut(1)), codeOf(tell('measurement')), codeOf(client.packOpenMesh())];
    const opened = client.openMesh('another mesh', 'another');
    expect(await Promise.all(old)).toEqual(['job.outdated', 'job.outdated', 'job.outdated']);
    await settled();
    last().answer('an old cut that nobody waits for');
    await settled();
    expect(last().given).toEqual(['another mesh', 'another']);
    last().answer();
    await opened;
  });

  it('tells a worker of its own accord nothing: the first job starts it', async () => {
    const workers = fakeWorkers();
    const client = createBench(workers.start);
    await settled();
    expect(workers.started()).toBe(0);
    const rim = client.ask('rim', null, {} as never);
    await settled();
    expect(workers.started()).toBe(1);
    workers.last().answer('a rim');
    expect(await rim).toBe('a rim');
  });

  it('passes a failure on with its code and its words', async () => {
    const { cut, last } = await readyClient();
    const section = cut(1);
    await settled();
    last().fail(new Problem('some.code', 'What the maker can do.'));
    await expect(section).rejects.toMatchObject({ code: 'some.code', message: 'What the maker can do.' });
  });

  it('does not trust a worker that ran out of memory with the next job', async () => {
    const { cut, tell, last, ended, names } = await readyClient();
    const memory = codeOf(cut(2));
    await settled();
    last().fail(new RangeError('Array buffer allocation failed'));
    expect(await memory).toBe('job.memory');
    expect(ended).toEqual([1]);
    void tell('part').catch(ignore);
    await settled();
    expect(names()).toEqual(['1 cut', '2 openMesh']);
  });

  it('tells progress while the job runs, and none once it has settled', async () => {
    const { tell, last } = await readyClient();
    const onProgress = vi.fn();
    const walls = tell('walls', { onProgress });
    await settled();
    const progress = last().given[2] as OnProgress;
    progress('measuring walls', 0.5);
    last().answer(null);
    await walls;
    progress('measuring walls', 0.9);
    expect(onProgress.mock.calls).toEqual([[{ doing: 'measuring walls', share: 0.5 }]]);
  });

  it('drops everything when it is disposed of', async () => {
    const { client, cut, tell, ended } = await readyClient();
    const left = [cut(1), tell('walls')].map((job) => job.catch((error: unknown) => wasDropped(error)));
    await settled();
    client.dispose();
    expect(await Promise.all(left)).toEqual([true, true]);
    expect(ended).toEqual([1]);
    expect(await codeOf(cut(2))).toBe('job.canceled');
  });
});

describe('a job that nobody waits for any longer', () => {
  it('ends its worker when it is long and canceled; the mesh is opened again before the next', async () => {
    const { client, cut, last, names, ended } = await readyClient();
    const abort = new AbortController();
    const pull = codeOf(client.ask('best pull', question, null, { signal: abort.signal }));
    await settled();
    abort.abort();
    expect(await pull).toBe('job.canceled');
    expect(ended).toEqual([1]);
    const section = cut(1);
    await settled();
    expect(last().given).toEqual(['packed mesh', 'the mesh']);
    last().answer();
    await settled();
    last().answer('a cut');
    expect(await section).toBe('a cut');
    expect(names()).toEqual(['1 best pull', '2 openMesh', '2 cut']);
  });

  it.each([
    ['walls', 'ended'],
    ['halves', 'ended'],
    // Sooner at its end than a new worker has measured the part again.
    ['oven run', 'left'],
    ['fine oven run', 'left'],
    ['places', 'left'],
  ] as const)('is outdated: the worker of the %s is %s', async (name, fate) => {
    const { tell, last, names, ended } = await readyClient();
    const abort = new AbortController();
    const outdated = codeOf(tell(name, { signal: abort.signal }));
    await settled();
    abort.abort(outdatedReason);
    expect(await outdated).toBe('job.outdated');
    expect(ended).toEqual(fate === 'ended' ? [1] : []);
    const newer = tell('part');
    await settled();
    if (fate === 'left') {
      expect(names()).toEqual([`1 ${name}`]);
      last().answer('what nobody waits for');
      await settled();
      last().answer('a part');
      expect(await newer).toBe('a part');
    } else {
      last().answer();
      await settled();
      last().answer('a part');
      expect(await newer).toBe('a part');
      expect(names()).toEqual([`1 ${name}`, '2 openMesh', '2 part']);
    }
  });

  it.each(['oven run', 'fine oven run'] as const)(
    'ends its worker when the maker cancels the %s',
    async (name) => {
      const { tell, ended } = await readyClient();
      const abort = new AbortController();
      const canceled = codeOf(tell(name, { signal: abort.signal }));
      await settled();
      abort.abort();
      expect(await canceled).toBe('job.canceled');
      expect(ended).toEqual([1]);
    },
  );

  it('does not end the worker when it is short, nor when it still waits', async () => {
    const { client, cut, last, ended } = await readyClient();
    const abort = new AbortController();
    const { signal } = abort;
    const running = codeOf(cut(1, { signal }));
    const waiting = codeOf(client.ask('best pull', question, null, { signal }));
    await settled();
    abort.abort();
    expect(await Promise.all([running, waiting])).toEqual(['job.canceled', 'job.canceled']);
    last().answer('too late');
    await settled();
    expect(ended).toEqual([]);
    expect(await codeOf(cut(2, { signal }))).toBe('job.canceled');
  });
});

describe('an import', () => {
  it('is read again by a new worker while it is not packed', async () => {
    const { client, tell, last, names } = await readyClient();
    const file = new Blob(['solid']);
    const imported = client.importFile(file, 'a.stl', 'import 1');
    await settled();
    last().answer({ triangles: 1 });
    expect(await imported).toEqual({ triangles: 1 });
    const abort = new AbortController();
    const first = codeOf(tell('measurement', { signal: abort.signal }));
    await settled();
    abort.abort();
    expect(await first).toBe('job.canceled');
    void tell('measurement').catch(ignore);
    await settled();
    expect(last().given.slice(0, 3)).toEqual([file, 'a.stl', 'import 1']);
    last().answer({ triangles: 1 });
    await settled();
    expect(names()).toEqual(['1 importFile', '1 measurement', '2 importFile', '2 measurement']);
  });

  it('that is canceled leaves the old mesh', async () => {
    const { client, cut, last, names } = await readyClient();
    const abort = new AbortController();
    const imported = codeOf(
      client.importFile(new Blob(['x']), 'b.stl', 'import 1', { signal: abort.signal }),
    );
    await settled();
    abort.abort();
    expect(await imported).toBe('job.canceled');
    void cut(1).catch(ignore);
    await settled();
    expect(last().given).toEqual(['packed mesh', 'the mesh']);
    expect(names()).toEqual(['1 importFile', '2 openMesh']);
  });

  it('that is refused leaves the old mesh, in the same worker', async () => {
    const { client, cut, last, names } = await readyClient();
    const imported = codeOf(client.importFile(new Blob([]), 'b.stl', 'import 1'));
    await settled();
    last().fail(new Problem('mesh.empty', 'The file is empty.'));
    expect(await imported).toBe('mesh.empty');
    void cut(1).catch(ignore);
    await settled();
    expect(names()).toEqual(['1 importFile', '1 cut']);
  });

  it('is packed where it is open', async () => {
    const { client, last, names } = await readyClient();
    const packed = client.packOpenMesh();
    await settled();
    last().answer({ meshKey: 'b', packed: 'packed b' });
    expect(await packed).toEqual({ meshKey: 'b', packed: 'packed b' });
    expect(names()).toEqual(['1 packOpenMesh']);
  });
});

describe('a worker that', () => {
  it('crashes is told of to the job that ran, and the next goes on in a new one', async () => {
    const { client, tell, last, crashes, names } = await readyClient();
    const pull = codeOf(client.ask('best pull', question, null));
    const places = tell('places');
    await settled();
    crashes[0]?.(new Problem('job.crashed', 'stopped'));
    expect(await pull).toBe('job.crashed');
    await settled();
    last().answer();
    await settled();
    last().answer([]);
    expect(await places).toEqual([]);
    expect(names()).toEqual(['1 best pull', '2 openMesh', '2 places']);
  });

  it('cannot be started is told of, with the sentence of the one who tried', async () => {
    const client = createBench(() => {
      throw new Problem('job.noWorker', 'This browser does not let the workbook start its measuring.');
    });
    await expect(client.openMesh('packed', 'the mesh')).rejects.toMatchObject({ code: 'job.noWorker' });
  });

  it('falls silent is told of, and its job begins again in a new one when the maker asks for it', async () => {
    const { client, tell, last, names, ended } = await readyClient(30);
    const told: boolean[] = [];
    client.onSilence(() => told.push(client.isSilent()));
    const walls = tell('walls');
    await settled();
    const progress = last().given[2] as OnProgress;
    progress('measuring walls', 0.78);
    expect(told).toEqual([]);
    await vi.waitUntil(() => client.isSilent());
    progress('measuring walls', 0.79);
    expect(client.isSilent()).toBe(false);
    await vi.waitUntil(() => client.isSilent());

    client.startAnew();
    expect(client.isSilent()).toBe(false);
    await settled();
    expect(last().given).toEqual(['packed mesh', 'the mesh']);
    last().answer();
    await settled();
    last().answer('the walls');
    expect(await walls).toBe('the walls');
    expect(names()).toEqual(['1 walls', '2 openMesh', '2 walls']);
    expect(ended).toEqual([1]);
    // Nobody waits for anything any more.
    await new Promise((resolve) => setTimeout(resolve, 60));
    expect(client.isSilent()).toBe(false);
    expect(told).toEqual([true, false, true, false]);
  });
});

describe('a client over real benches', { timeout: 30_000 }, () => {
  it('has after a cancel the same answers as before, from a new worker', async () => {
    let started = 0;
    const client = createBench(() => {
      started++;
      const { bench, end } = overMessages(new BenchSession());
      return { bench, crashed: new Promise(() => undefined), terminate: end };
    });
    await client.importFile(stlBlob(smallTray), 'tray.stl', meshName);
    const before = asText(await client.tell('measurement', trayQuestion()));
    const abort = new AbortController();
    const pull = codeOf(client.ask('best pull', trayQuestion(), null, { signal: abort.signal }));
    await settled();
    abort.abort();
    expect(await pull).toBe('job.canceled');
    const given = { run: 'oven run', treatment: 'none', axis: 1, atMm: null, timeS: 60 } as const;
    expect(await client.ask('heat cut', trayQuestion(), given)).not.toBeNull();
    expect(asText(await client.tell('measurement', trayQuestion()))).toEqual(before);
    expect(started).toBe(2);
    client.dispose();
  });
});
