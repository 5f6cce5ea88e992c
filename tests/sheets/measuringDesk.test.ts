import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Problem } from '../../src/core/problem';
import type { PourChoices } from '../../src/core/stone/pours/pourChoices';
import type { BenchClient, ImportReply, JobOptions, MeasureChoices } from '../../src/jobs/protocol';
import type { MeasuredShape, MoldReply, RepairedWalls } from '../../src/pipeline/told';
import { createMeasureCache } from '../../src/sheets/measuring/measureCache';
import type { DeskProject } from '../../src/sheets/measuring/deskState';
import { createMeasuringDesk } from '../../src/sheets/measuring/measuringDesk';
import type { PatternRecord, StepContext } from '../../src/steps/context';
import { defaultProjectInputs } from '../../src/steps/inputs';

const pattern: PatternRecord = {
  fileName: 'shell.stl',
  sha256: 'ab'.repeat(32),
  format: 'stl-binary',
  declaredUnit: null,
  triangles: 12,
  degenerateFacets: 0,
  meshKey: 'mesh-a',
  packErrorFileUnits: 0,
  notes: [],
};

/** The desk looks at nothing of a reply but the parts it hands on. */
const replyFor = (name: string) =>
  ({
    health: { name },
    summary: { name },
    maps: {},
    shape: { facetCount: 12, unitGuess: null, fileBoxSize: null },
  }) as unknown as MeasuredShape;

const moldFor = (name: string) => ({ geometry: { name } }) as unknown as MoldReply;

function fakeClient() {
  const asked: string[] = [];
  const cast: string[] = [];
  const choicesAsked: MeasureChoices[] = [];
  const client = {
    openMesh: vi.fn((packed: string) => {
      asked.push(`open ${packed}`);
      return Promise.resolve();
    }),
    measure: vi.fn((choices: MeasureChoices) => {
      asked.push(`measure scale ${choices.scale}`);
      choicesAsked.push(choices);
      return Promise.resolve(replyFor(`scale ${choices.scale}`));
    }),
    findPatches: vi.fn((band: { highMm: number }) => {
      asked.push(`patches up to ${band.highMm.toFixed(2)}`);
      return Promise.resolve([]);
    }),
    importFile: vi.fn((_file: Blob, name: string): Promise<ImportReply> => {
      asked.push(`import ${name}`);
      if (name === 'bad.stl') return Promise.reject(new Problem('mesh.empty', 'The file is empty.'));
      const { fileName: _, meshKey: __, ...facts } = pattern;
      return Promise.resolve(facts);
    }),
    packOpenMesh: vi.fn(() => {
      asked.push('pack');
      return Promise.resolve({ meshKey: 'mesh-b', packed: 'packed-b' });
    }),
    castHalves: vi.fn((choices: PourChoices): Promise<MoldReply> => {
      cast.push(`cover ${choices.coverMm.overShowMm}`);
      return Promise.resolve(moldFor(`cover ${choices.coverMm.overShowMm}`));
    }),
    repairedWalls: vi.fn((repairs: readonly unknown[]): Promise<RepairedWalls> => {
      const closing = { name: `${repairs.length} repaired` } as unknown as RepairedWalls['closing'];
      return Promise.resolve({ closing, wallMm: Float32Array.of(repairs.length) });
    }),
    bestPull: vi.fn(() => Promise.resolve('best')),
    getReady: vi.fn(() => Promise.resolve<MeasuredShape | null>(null)),
    dispose: vi.fn(),
  };
  return { asked, cast, mocks: client, client: client as unknown as BenchClient };
}

function project(
  change: {
    scale?: number;
    goVoidPercent?: number;
    pattern?: PatternRecord | null;
    mold?: Partial<(typeof defaultProjectInputs)['mold']>;
  } = {},
): DeskProject {
  const { part, walls, mold } = defaultProjectInputs;
  return {
    pattern: change.pattern === undefined ? pattern : change.pattern,
    inputs: {
      ...defaultProjectInputs,
      part: { ...part, scale: change.scale ?? 1 },
      walls: { ...walls, goVoidPercent: change.goVoidPercent ?? walls.goVoidPercent },
      mold: { ...mold, ...change.mold },
    },
    packedMesh: () => 'packed-a',
    setMeshAside: () => {},
  };
}

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());
const settle = () => vi.advanceTimersByTimeAsync(1000);

describe('the measuring desk', () => {
  it('opens the saved mesh, measures, and looks for places with the present band', async () => {
    const { asked, client } = fakeClient();
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project());
    await settle();
    expect(asked).toEqual(['open packed-a', 'measure scale 1', 'patches up to 0.71']);
    expect(desk.store.getState().measured?.patches).toEqual([]);
    expect(desk.store.getState().progress).toBeNull();
  });

  it('gets the worker ready once where there is no pattern yet', async () => {
    const { client, mocks } = fakeClient();
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project({ pattern: null }));
    desk.follow(project({ pattern: null, scale: 2 }));
    await settle();
    expect(mocks.getReady).toHaveBeenCalledTimes(1);
    const measuring = createMeasuringDesk(fakeClient().client, createMeasureCache());
    measuring.follow(project());
    await settle();
    expect(mocks.getReady).toHaveBeenCalledTimes(1);
  });

  it('lets typing settle and never shows the answer to an old question', async () => {
    const { asked, client } = fakeClient();
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project());
    await settle();
    for (const scale of [1.1, 1.12, 1.125]) desk.follow(project({ scale }));
    expect(desk.store.getState().measured).toBeNull();
    await settle();
    expect(asked.filter((one) => one.startsWith('measure'))).toEqual([
      'measure scale 1',
      'measure scale 1.125',
    ]);
  });

  it('only looks for places again when a tolerance changes', async () => {
    const { asked, client } = fakeClient();
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project());
    await settle();
    desk.follow(project({ goVoidPercent: 5 }));
    expect(desk.store.getState().measured).not.toBeNull();
    await settle();
    expect(asked.slice(3)).toEqual(['patches up to 0.74']);
  });

  it('never shows places that were looked for in an earlier band', async () => {
    const { client, mocks } = fakeClient();
    const desk = createMeasuringDesk(client, createMeasureCache());
    const [early, late] = [[{ facetCount: 1 }], [{ facetCount: 2 }]];
    const found: ((patches: never[]) => void)[] = [];
    mocks.findPatches.mockImplementationOnce(() => new Promise((resolve) => found.push(resolve)));
    mocks.findPatches.mockResolvedValueOnce(late as never[]);
    desk.follow(project());
    await settle();
    desk.follow(project({ goVoidPercent: 5 }));
    // The first search ends while the typing settles and the second has not begun.
    found[0]?.(early as never[]);
    await vi.advanceTimersByTimeAsync(1);
    expect(desk.store.getState().measured?.patches).toBeNull();
    await settle();
    expect(desk.store.getState().measured?.patches).toEqual(late);
  });

  it('shows what the session has measured before at once', async () => {
    const { client } = fakeClient();
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project());
    await settle();
    desk.follow(project({ scale: 2 }));
    await settle();
    desk.follow(project());
    expect(desk.store.getState().measured?.summary).toEqual({ name: 'scale 1' });
  });

  it('hands over an imported pattern measured and packed, and does not measure it twice', async () => {
    const { asked, client } = fakeClient();
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project({ pattern: null }));
    const imported = await desk.importFile(new File([], 'new.stl'), defaultProjectInputs);
    expect(imported?.packed).toBe('packed-b');
    expect(imported?.pattern).toEqual({ ...pattern, fileName: 'new.stl', meshKey: 'mesh-b' });
    desk.follow(project({ pattern: imported?.pattern ?? null }));
    await settle();
    expect(asked).toEqual(['import new.stl', 'measure scale 1', 'pack', 'patches up to 0.71']);
  });

  it('keeps the old pattern when a file is refused, and says why', async () => {
    const { asked, client } = fakeClient();
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project());
    await settle();
    expect(await desk.importFile(new File([], 'bad.stl'), defaultProjectInputs)).toBeNull();
    await settle();
    expect(desk.store.getState().importProblem).toBe('The file is empty.');
    expect(desk.store.getState().measured?.summary).toEqual({ name: 'scale 1' });
    expect(asked.slice(3)).toEqual([
      'import bad.stl',
      'open packed-a',
      'measure scale 1',
      'patches up to 0.71',
    ]);
  });

  it('says what to do when the saved mesh is gone', async () => {
    const { client } = fakeClient();
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow({ ...project(), packedMesh: () => null });
    await settle();
    expect(desk.store.getState().problem).toMatch(/Import the pattern file again/);
    expect(desk.store.getState().measured).toBeNull();
  });
});

describe('a canceled measurement', () => {
  it('can be started again', async () => {
    const { asked, client, mocks } = fakeClient();
    mocks.measure.mockRejectedValueOnce(new Problem('job.canceled', 'Canceled.'));
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project());
    await settle();
    expect(desk.store.getState()).toMatchObject({ stopped: true, problem: null, measured: null });
    desk.measureAgain();
    expect(desk.store.getState().stopped).toBe(false);
    await settle();
    expect(asked).toEqual(['open packed-a', 'measure scale 1', 'patches up to 0.71']);
    expect(desk.store.getState().measured).not.toBeNull();
  });
});

describe('casting the halves', () => {
  it('follows the measurement, and only what the box is made of', async () => {
    const { cast, client } = fakeClient();
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project());
    expect(desk.store.getState().mold).toBeNull();
    await settle();
    expect(desk.store.getState().mold).toEqual(moldFor('cover 10'));
    desk.follow(project({ mold: { bowlMl: 500 } }));
    await settle();
    expect(cast).toEqual(['cover 10']);
    desk.follow(project({ mold: { coverOverShowMm: 15 } }));
    expect(desk.store.getState().mold).toBeNull();
    await settle();
    expect(cast).toEqual(['cover 10', 'cover 15']);
    expect(desk.store.getState()).toMatchObject({ mold: moldFor('cover 15'), progress: null });
  });

  it('says why there can be no halves, until the box is another', async () => {
    const { client, mocks } = fakeClient();
    mocks.castHalves.mockRejectedValueOnce(new Problem('pours.keys', 'The keys do not fit.'));
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project());
    await settle();
    expect(desk.store.getState()).toMatchObject({ mold: null, moldProblem: 'The keys do not fit.' });
    desk.follow(project({ mold: { keyCount: 0 } }));
    await settle();
    expect(desk.store.getState()).toMatchObject({ mold: moldFor('cover 10'), moldProblem: null });
  });

  it('stays canceled until the maker asks again', async () => {
    const { client, mocks } = fakeClient();
    mocks.castHalves.mockRejectedValueOnce(new Problem('job.canceled', 'Canceled.'));
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project());
    await settle();
    expect(desk.store.getState()).toMatchObject({ mold: null, castStopped: true, moldProblem: null });
    desk.follow(project({ goVoidPercent: 0.2 }));
    await settle();
    expect(mocks.castHalves).toHaveBeenCalledOnce();
    desk.castAgain();
    await settle();
    expect(desk.store.getState()).toMatchObject({ mold: moldFor('cover 10'), castStopped: false });
  });

  it('gives way to what the maker asks for, and goes on afterwards', async () => {
    const { client, mocks } = fakeClient();
    mocks.castHalves.mockImplementationOnce(
      (_choices: PourChoices, options?: JobOptions) =>
        new Promise((_resolve, reject) => {
          options?.signal?.addEventListener('abort', () => reject(new Problem('job.canceled', 'Canceled.')));
        }),
    );
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project());
    await settle();
    expect(desk.store.getState().progress?.doing).toBe('casting the two halves');
    expect(await desk.run('trying pulls', () => client.bestPull())).toBe('best');
    await settle();
    expect(desk.store.getState()).toMatchObject({ mold: moldFor('cover 10'), castStopped: false });
  });
});

const repair = (id: string) => ({
  id,
  half: 'negative' as const,
  kind: 'scraped' as const,
  atMm: [0, 0, 0] as [number, number, number],
  radiusMm: 5,
  depthMm: 0.2,
  note: '',
});

describe('repairs of the stone', () => {
  it('change the walls that closing sees, and give them back when they are taken out', async () => {
    const { client, asked } = fakeClient();
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project());
    await settle();
    desk.follow(project({ mold: { repairs: [repair('a'), repair('b')] } }));
    await settle();
    expect(desk.store.getState().measured?.summary).toMatchObject({ closing: { name: '2 repaired' } });
    expect(desk.store.getState().reply?.maps.closing.wallMm).toEqual(Float32Array.of(2));
    desk.follow(project({ mold: { repairs: [] } }));
    await settle();
    expect(desk.store.getState().measured?.summary).toEqual({ name: 'scale 1' });
    expect(asked.filter((one) => one.startsWith('measure'))).toHaveLength(1);
  });
});

describe('a damaged saved mesh', () => {
  it('is kept aside, and the page says so', async () => {
    const { client, mocks } = fakeClient();
    mocks.openMesh.mockRejectedValueOnce(new Problem('pack.damaged', 'The saved model is damaged.'));
    const setMeshAside = vi.fn();
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow({ ...project(), setMeshAside });
    await settle();
    expect(setMeshAside).toHaveBeenCalledOnce();
    expect(desk.store.getState().problem).toBe('The saved model is damaged.');
  });
});

describe('the session cache', () => {
  it('lets the oldest measurements go when they hold too many facets', () => {
    const cache = createMeasureCache();
    const large = { ...replyFor('large'), shape: { facetCount: 700_000 } } as unknown as MeasuredShape;
    cache.put('first', large);
    cache.put('second', large);
    expect(cache.get('first')).toBeNull();
    expect(cache.get('second')).toBe(large);
    const huge = { ...large, shape: { facetCount: 5_000_000 } } as unknown as MeasuredShape;
    cache.put('third', huge);
    expect(cache.get('third')).toBe(huge);
  });
});

describe('two files, one soon after the other', () => {
  const inputs = defaultProjectInputs;

  it('takes the second, though the first one ends while that is read', async () => {
    const { asked, client, mocks } = fakeClient();
    const desk = createMeasuringDesk(client, createMeasureCache());
    desk.follow(project());
    await settle();
    const { fileName: _, meshKey: __, ...facts } = pattern;
    const slowly = (_file: unknown, _name: unknown, options: JobOptions) =>
      new Promise<typeof facts>((resolve, reject) => {
        setTimeout(() => resolve(facts), 800);
        options.signal?.addEventListener('abort', () => reject(new Problem('job.canceled', 'Canceled.')));
      });
    mocks.importFile.mockImplementationOnce(slowly as never).mockImplementationOnce(slowly as never);
    asked.length = 0;
    const first = desk.importFile(new File([], 'first.stl'), inputs);
    await vi.advanceTimersByTimeAsync(100);
    const second = desk.importFile(new File([], 'second.stl'), inputs);
    await vi.advanceTimersByTimeAsync(3000);
    expect(await first).toBeNull();
    expect((await second)?.pattern.fileName).toBe('second.stl');
    expect(asked).toEqual(['measure scale 1', 'pack']);
    expect(desk.store.getState().importProblem).toBeNull();
  });
});

describe('work ahead', () => {
  it('is done on what was measured before anyone is told of it', async () => {
    const { client } = fakeClient();
    const told: unknown[] = [];
    const desk = createMeasuringDesk(client, createMeasureCache(), function* ({ measured }) {
      told.push(measured?.summary);
      yield;
      told.push(desk.store.getState().measured);
    });
    desk.follow(project());
    await settle();
    expect(told).toEqual([{ name: 'scale 1' }, null]);
    expect(desk.store.getState().measured?.summary).toBe(told[0]);
  });

  it('is rehearsed on the made-up part while nothing else is done', async () => {
    const { client, mocks } = fakeClient();
    const told: unknown[] = [];
    const workAhead = function* ({ measured }: StepContext) {
      told.push(measured?.summary);
      yield;
    };
    mocks.getReady.mockResolvedValueOnce(replyFor('made up'));
    const desk = createMeasuringDesk(client, createMeasureCache(), workAhead);
    desk.follow(project({ pattern: null }));
    await settle();
    expect(told).toEqual([{ name: 'made up' }]);
    expect(desk.store.getState()).toMatchObject({ measured: null, progress: null, problem: null });

    mocks.getReady.mockResolvedValueOnce(replyFor('too late'));
    const busy = createMeasuringDesk(client, createMeasureCache(), workAhead);
    busy.follow(project({ pattern: null }));
    busy.follow(project());
    await settle();
    expect(told).toEqual([{ name: 'made up' }, { name: 'scale 1' }]);
  });

  it('keeps quiet about a rehearsal that failed', async () => {
    const { client, mocks } = fakeClient();
    mocks.getReady.mockRejectedValueOnce(new Problem('job.crashed', 'The worker ended.'));
    const desk = createMeasuringDesk(client, createMeasureCache(), function* () {});
    desk.follow(project({ pattern: null }));
    await settle();
    expect(desk.store.getState().problem).toBeNull();
  });
});
