import { describe, expect, it, vi } from 'vitest';
import { Problem } from '../../src/core/problem';
import { failureOf } from '../../src/jobs/failureOf';
import type { BenchWorker } from '../../src/jobs/protocol';
import { buffersIn } from '../../src/jobs/transferred';
import { thinned } from '../../src/jobs/wire';
import type { OnProgress } from '../../src/pipeline/told';
import { questionWith } from '../pipeline/support';
import { ignore } from './support';
import { overMessages } from './wireSupport';

describe('the wire between page and worker', () => {
  it('keeps the code of a problem, which a plain thrown error would lose', async () => {
    const failing = {
      openMesh: () => Promise.reject(new Problem('pack.damaged', 'The saved model is damaged.')),
    } as unknown as BenchWorker;
    const { bench, end } = overMessages(failing);
    await expect(bench.openMesh('x', 'the mesh')).rejects.toMatchObject({
      name: 'Problem',
      code: 'pack.damaged',
      message: 'The saved model is damaged.',
    });
    end();
  });

  it('moves flat arrays instead of copying them', async () => {
    const facets = Uint32Array.from([1, 2, 3]);
    const { bench, end } = overMessages({
      ask: () => Promise.resolve({ facetCount: 3, facets }),
    } as unknown as BenchWorker);
    const { facets: moved } = await bench.ask('self touching', null, null, ignore);
    expect(moved).toEqual(Uint32Array.from([1, 2, 3]));
    expect(facets.length).toBe(0);
    end();
  });

  it('calls every method with what it was given, and only those that take time with progress', async () => {
    const calls: unknown[] = [];
    const called =
      (name: string) =>
      (...given: unknown[]) => {
        calls.push([name, ...given.filter((one) => typeof one !== 'function')]);
        for (const one of given) if (typeof one === 'function') (one as OnProgress)(name, 1);
        return Promise.resolve(name);
      };
    const names = ['importFile', 'packOpenMesh', 'openMesh', 'tell', 'ask'] as const;
    const worker = Object.fromEntries(names.map((name) => [name, called(name)])) as unknown as BenchWorker;
    const { bench, end } = overMessages(worker);
    const told: string[] = [];
    const progress = (doing: string) => void told.push(doing);
    const question = questionWith();
    const file = new Blob(['solid']);
    await bench.importFile(file, 'a.stl', 'the mesh', progress);
    await bench.packOpenMesh();
    await bench.openMesh('packed', 'the mesh');
    expect(await bench.tell('part', question, progress)).toBe('tell');
    await bench.ask('rim', null, { packed: 'b' } as never, progress);
    expect(calls.slice(1)).toEqual([
      ['packOpenMesh'],
      ['openMesh', 'packed', 'the mesh'],
      ['tell', 'part', question],
      ['ask', 'rim', null, { packed: 'b' }],
    ]);
    expect(calls[0]).toEqual(['importFile', expect.any(Blob), 'a.stl', 'the mesh']);
    await vi.waitFor(() => expect(told).toEqual(['importFile', 'tell', 'ask']));
    end();
  });

  it('finds every buffer once', () => {
    const shared = new Float32Array(4);
    const own = new Uint8Array(2);
    const found = buffersIn({ a: shared, b: [shared.subarray(1), { c: own }], d: 'text', e: null });
    expect(found).toEqual([shared.buffer, own.buffer]);
  });

  it('thins progress out, but tells every new doing and the end', () => {
    vi.useFakeTimers({ toFake: ['performance'] });
    const told: string[] = [];
    const progress = thinned((doing, share) => told.push(`${doing} ${share}`), 50);
    for (let step = 0; step <= 10; step++) {
      progress('walls', step / 10);
      vi.advanceTimersByTime(20);
    }
    progress('summing up', 0.5);
    vi.useRealTimers();
    expect(told).toEqual(['walls 0', 'walls 0.3', 'walls 0.6', 'walls 0.9', 'walls 1', 'summing up 0.5']);
  });

  it('tells a lack of memory from a fault of ours', () => {
    expect(failureOf(new RangeError('Array buffer allocation failed')).code).toBe('job.memory');
    expect(failureOf(new RangeError('Maximum call stack size exceeded')).code).toBe('job.failed');
    expect(failureOf('odd').message).toContain('odd');
  });
});
