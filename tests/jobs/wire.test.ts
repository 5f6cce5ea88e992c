import { describe, expect, it, vi } from 'vitest';
import { Problem } from '../../src/core/problem';
import { failureOf } from '../../src/jobs/failureOf';
import type { BenchWorker } from '../../src/jobs/protocol';
import { buffersIn } from '../../src/jobs/transferred';
import { thinned } from '../../src/jobs/wire';
import { ignore } from './support';
import { overMessages } from './wireSupport';

describe('the wire between page and worker', () => {
  it('keeps the code of a problem, which a plain thrown error would lose', async () => {
    const failing = {
      openMesh: () => Promise.reject(new Problem('pack.damaged', 'The saved model is damaged.')),
    } as unknown as BenchWorker;
    const { bench, end } = overMessages(failing);
    await expect(bench.openMesh('x')).rejects.toMatchObject({
      name: 'Problem',
      code: 'pack.damaged',
      message: 'The saved model is damaged.',
    });
    end();
  });

  it('moves flat arrays instead of copying them', async () => {
    const facets = Uint32Array.from([1, 2, 3]);
    const { bench, end } = overMessages({
      findSelfTouching: () => Promise.resolve({ facetCount: 3, facets }),
    } as unknown as BenchWorker);
    expect((await bench.findSelfTouching(() => undefined)).facets).toEqual(Uint32Array.from([1, 2, 3]));
    expect(facets.length).toBe(0);
    end();
  });

  it('brings the shape before the measurement, moved, and the measurement that has none', async () => {
    const corners = new Float32Array(9);
    const order: unknown[] = [];
    const measured = { summary: 'measured' };
    const { bench, end } = overMessages({
      measure: async (choices: string, _: unknown, onShape: (shape: unknown) => void) => {
        if (choices === 'failing') throw new Problem('pull.zero', 'The pull has no direction.');
        if (choices === 'another part') onShape({ display: [{ firstFacet: 0, corners }] });
        return measured;
      },
    } as unknown as BenchWorker);
    const measure = async (choices: string) => {
      const reply = await bench.measure(choices as never, ignore, (shape) => order.push(shape));
      order.push(reply);
    };
    await measure('another part');
    expect(corners).toHaveLength(0);
    await measure('the same part');
    const shape = { display: [{ firstFacet: 0, corners: new Float32Array(9) }] };
    expect(order).toEqual([shape, measured, measured]);
    await expect(measure('failing')).rejects.toMatchObject({ code: 'pull.zero' });
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
    const progress = thinned(({ doing, share }) => told.push(`${doing} ${share}`), 50);
    for (let step = 0; step <= 10; step++) {
      progress({ doing: 'walls', share: step / 10 });
      vi.advanceTimersByTime(20);
    }
    progress({ doing: 'summing up', share: 0.5 });
    vi.useRealTimers();
    expect(told).toEqual(['walls 0', 'walls 0.3', 'walls 0.6', 'walls 0.9', 'walls 1', 'summing up 0.5']);
  });

  it('tells a lack of memory from a fault of ours', () => {
    expect(failureOf(new RangeError('Array buffer allocation failed')).code).toBe('job.memory');
    expect(failureOf(new RangeError('Maximum call stack size exceeded')).code).toBe('job.failed');
    expect(failureOf('odd').message).toContain('odd');
  });
});
