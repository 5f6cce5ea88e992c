import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Problem } from '../../src/core/problem';
import { createAnswerShelf } from '../../src/pipeline/answerShelf';
import { contextOf } from '../../src/pipeline/evaluate';
import type { Question } from '../../src/pipeline/question';
import type { StageName } from '../../src/pipeline/told';
import { MeasuringDesk } from '../../src/sheets/measuring/measuringDesk';
import { defaultProjectInputs } from '../../src/steps/inputs/project';
import { fakeBench, held, pattern, project, toldOf } from './fakeBench';

/** All that is asked of a project that was never open, in order. */
const everything = [
  'open packed mesh-a as mesh-a',
  'part: scale 1',
  'walls',
  'measurement: scale 1 pull 0 0 1',
  'places: void 1',
  'repaired walls: 0 repairs',
  'halves: cover 10',
  'filled mold',
  'oven run: from 21 °C',
  'fine oven run: from 21 °C',
];
const inputs = defaultProjectInputs;
const canceled = () => new Problem('job.canceled', 'Canceled.');

function openDesk(shelf = createAnswerShelf()) {
  const bench = fakeBench();
  const desk = new MeasuringDesk(bench.client, shelf);
  const state = () => desk.store.getState();
  return {
    ...bench,
    desk,
    state,
    told: (name: StageName) => (state().answers[name]?.told ?? null) as { readonly says: string } | null,
  };
}

/** A desk on the project, with all that is asked of it known and forgotten from the notes. */
async function settledDesk(of = project()) {
  const open = openDesk();
  open.desk.follow(of);
  await settle();
  open.asked.length = 0;
  return open;
}

/** Lets the next question about this stage be answered by the test. */
function hold({ mocks }: Pick<ReturnType<typeof openDesk>, 'mocks'>, stage: StageName) {
  const waiting = held<unknown>();
  const usual = mocks.tell.getMockImplementation()!;
  let isHeld = true;
  mocks.tell.mockImplementation((name, question, options) => {
    if (name !== stage || !isHeld) return usual(name, question, options);
    isHeld = false;
    return waiting.question(options);
  });
  return waiting;
}

/** Makes the next question about this stage fail. */
function fail({ mocks }: Pick<ReturnType<typeof openDesk>, 'mocks'>, stage: StageName, error: Error) {
  const usual = mocks.tell.getMockImplementation()!;
  let isWrong = true;
  mocks.tell.mockImplementation((name, question, options) => {
    if (name !== stage || !isWrong) return usual(name, question, options);
    isWrong = false;
    return Promise.reject(error);
  });
}

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());
const settle = () => vi.advanceTimersByTimeAsync(1000);

describe('the measuring desk', () => {
  it('opens the saved mesh and walks all stages, the coarse oven run before the fine one', async () => {
    const { asked, desk, state } = openDesk();
    desk.follow(project());
    await settle();
    expect(asked).toEqual(everything);
    expect(state()).toMatchObject({ progress: null, problem: null, stopped: null });
    expect(state().shape).toEqual({ says: 'scale 1', facetCount: 12 });
    expect(state().lastRun).toMatchObject({ says: 'from 21 °C' });
  });

  it('asks nothing where there is no pattern, and forgets what was shown when it goes', async () => {
    const { asked, desk, state } = await settledDesk();
    desk.follow(project({}, null));
    await settle();
    expect(asked).toEqual([]);
    expect(state()).toMatchObject({ question: null, answers: {}, shape: null, reply: null, lastRun: null });
  });

  it('lets typing settle and never shows the answer to an old question', async () => {
    const { asked, desk, state, told } = await settledDesk();
    for (const scale of [1.1, 1.12, 1.125]) desk.follow(project({ part: { scale } }));
    expect(state().answers).toEqual({});
    // What is drawn stays until there is something newer.
    expect(state().reply?.summary).toMatchObject({ says: 'scale 1 pull 0 0 1' });
    await settle();
    expect(asked[0]).toBe('part: scale 1.125');
    expect(asked).toHaveLength(stagesAsked);
    expect(told('measurement')).toMatchObject({ summary: { says: 'scale 1.125 pull 0 0 1' } });
  });

  it('only asks again what has changed, and keeps the rest', async () => {
    const { asked, desk, state } = await settledDesk();
    const changes = [
      [{ walls: { goVoidPercent: 5 } }, ['places: void 5']],
      [{ mold: { bowlMl: 500 } }, []],
      [{ cure: { startC: 25 } }, ['oven run: from 25 °C', 'fine oven run: from 25 °C']],
      [
        { mold: { coverOverShowMm: 15 } },
        ['halves: cover 15', 'filled mold', 'oven run: from 21 °C', 'fine oven run: from 21 °C'],
      ],
    ] as const;
    for (const [change, wanted] of changes) {
      asked.length = 0;
      desk.follow(project(change));
      expect(state().answers.measurement).toBeDefined();
      await settle();
      expect(asked).toEqual(wanted);
      asked.length = 0;
      desk.follow(project());
      expect(Object.keys(state().answers)).toHaveLength(stagesAsked);
      await settle();
      expect(asked).toEqual([]);
    }
  });

  it('never shows places that were looked for in an earlier band', async () => {
    const open = openDesk();
    const early = hold(open, 'places');
    open.desk.follow(project());
    await settle();
    open.desk.follow(project({ walls: { goVoidPercent: 5 } }));
    early.answer([{ says: 'the earlier band' }]);
    await vi.advanceTimersByTimeAsync(1);
    expect(open.told('places')).not.toEqual([{ says: 'the earlier band' }]);
    await settle();
    expect(open.told('places')).toEqual([{ says: 'void 5' }]);
  });

  it('drops the stage in work when it is no longer asked, and goes on when it still is', async () => {
    const open = openDesk();
    const halves = hold(open, 'halves');
    open.desk.follow(project());
    await settle();
    open.desk.follow(project({ walls: { goVoidPercent: 5 } }));
    await vi.advanceTimersByTimeAsync(1);
    halves.answer(toldOf('halves', open.state().question!));
    await settle();
    expect(open.asked.filter((one) => one.startsWith('halves'))).toEqual([]);
    expect(open.told('halves')).toMatchObject({ says: 'cover 10' });
    expect(open.told('places')).toEqual([{ says: 'void 5' }]);

    const again = hold(open, 'halves');
    open.desk.follow(project({ mold: { coverOverShowMm: 12 } }));
    await settle();
    open.desk.follow(project({ mold: { coverOverShowMm: 13 } }));
    again.answer(toldOf('halves', open.state().question!));
    await settle();
    expect(open.asked.filter((one) => one.startsWith('halves'))).toEqual(['halves: cover 13']);
    expect(open.told('halves')).toMatchObject({ says: 'cover 13' });
  });

  it('shows what the session has known before at once, also in another desk', async () => {
    const shelf = createAnswerShelf();
    const first = openDesk(shelf);
    first.desk.follow(project());
    await settle();
    first.desk.follow(project({ part: { scale: 2 } }));
    await settle();
    first.desk.follow(project());
    expect(first.state().reply?.summary).toMatchObject({ says: 'scale 1 pull 0 0 1' });
    expect(first.state().answers['fine oven run']).toBeDefined();

    const second = openDesk(shelf);
    second.desk.follow(project());
    expect(second.state().answers).toEqual(first.state().answers);
    await settle();
    expect(second.asked).toEqual([]);
    // The mesh is opened when something is asked of it.
    expect(await second.desk.ask('cut', { axis: 'x', atMm: 1 })).toBe('the cut');
    expect(second.asked).toEqual(['open packed mesh-a as mesh-a', 'cut']);
  });

  it('shows progress of what takes long, in its own words, under the stage that it is of', async () => {
    const open = openDesk();
    const walls = hold(open, 'walls');
    open.desk.follow(project());
    await settle();
    const [, , options] = open.mocks.tell.mock.calls.find(([name]) => name === 'walls')!;
    options!.onProgress!({ doing: 'measuring walls', share: 0.4 });
    expect(open.state().progress).toEqual({ doing: 'measuring walls', share: 0.4, stage: 'walls' });
    walls.answer(null);
    await settle();
    expect(open.state().progress).toBeNull();
  });

  it('gives the oven run the thermocouple, and asks only for that again', async () => {
    const { asked, desk, mocks } = await settledDesk();
    const thermocouple = { kind: 'show middle' } as const;
    desk.follow({ ...project(), thermocouple });
    await settle();
    expect(asked).toEqual(['oven run: from 21 °C', 'fine oven run: from 21 °C']);
    expect(mocks.tell.mock.lastCall![1].thermocouple).toBe(thermocouple);
  });

  it('asks nothing more once it is disposed of', async () => {
    const { asked, desk, mocks } = openDesk();
    desk.follow(project());
    desk.dispose();
    await settle();
    expect(asked).toEqual([]);
    expect(mocks.dispose).toHaveBeenCalledOnce();
  });
});

const stagesAsked = everything.length - 1;

describe('an imported pattern', () => {
  it('is handed over measured and packed, and is not measured twice', async () => {
    const { asked, desk, state } = openDesk();
    desk.follow(project({}, null));
    const imported = await desk.importFile(new File([], 'new.stl'), inputs);
    expect(imported?.packed).toBe('packed mesh-b');
    expect(imported?.pattern).toEqual({ ...pattern, fileName: 'new.stl', meshKey: 'mesh-b' });
    expect(asked.slice(0, 6)).toEqual([
      'import new.stl',
      'right way up',
      'part: scale 1',
      'walls',
      'measurement: scale 1 pull 0 0 1',
      'pack',
    ]);
    const { mesh } = state().question!;
    expect(mesh).toBe('mesh-b');
    expect(state().reply?.summary).toMatchObject({ says: 'scale 1 pull 0 0 1' });
    desk.follow({ ...project({}, imported!.pattern), inputs });
    await settle();
    expect(asked.slice(6)).toEqual(everything.slice(4));
    expect(state()).toMatchObject({ importing: false, incoming: null, progress: null });
  });

  it('keeps the pull that it was made along, whatever its shape tells', async () => {
    const { asked, desk, mocks } = openDesk();
    const usual = mocks.ask.getMockImplementation()!;
    mocks.ask.mockImplementation((name, ...rest) =>
      name === 'right way up'
        ? Promise.resolve({ pull: [0, 1, 0], toldBy: 'hollow' } as never)
        : usual(name, ...rest),
    );
    const along = { ...inputs, part: { ...inputs.part, pull: [1, 0, 0] as [number, number, number] } };
    const imported = await desk.importFile(new File([], 'lid pattern.stl'), along, 'as given');
    expect(imported?.pull).toEqual([1, 0, 0]);
    expect(asked).toContain('measurement: scale 1 pull 1 0 0');
    expect((await desk.importFile(new File([], 'lid.stl'), along))?.pull).toEqual([0, 1, 0]);
  });

  it('is asked about under the name that the worker has it by, until it is opened as saved', async () => {
    const { asked, desk, mocks } = openDesk();
    const imported = await desk.importFile(new File([], 'new.stl'), inputs);
    const [, , meshName] = mocks.importFile.mock.lastCall!;
    const saved = { ...project({}, imported!.pattern), inputs };
    desk.follow(saved);
    await settle();
    const meshes = () => [...new Set(mocks.tell.mock.calls.map(([, { mesh }]) => mesh))];
    expect(meshes()).toEqual([meshName]);
    await desk.ask('cut', { axis: 'x', atMm: 0 });
    expect((mocks.ask.mock.lastCall![1] as Question).mesh).toBe(meshName);

    // Undone and done again: the worker has the old one by then.
    desk.follow(project());
    await settle();
    desk.follow(saved);
    await settle();
    asked.length = 0;
    mocks.tell.mockClear();
    desk.follow({ ...saved, inputs: { ...inputs, part: { ...inputs.part, scale: 3 } } });
    await settle();
    expect(asked.slice(0, 2)).toEqual(['open packed mesh-b as mesh-b', 'part: scale 3']);
    expect(meshes()).toEqual(['mesh-b']);
  });

  it('that is refused leaves the old one, and says why; nothing is measured again', async () => {
    const { asked, desk, state } = await settledDesk();
    const before = state().answers;
    expect(await desk.importFile(new File([], 'bad.stl'), inputs)).toBeNull();
    await settle();
    expect(state().importProblem).toBe('The file is empty.');
    expect(state()).toMatchObject({ importing: false, progress: null, problem: null, stopped: null });
    expect(state().answers).toEqual(before);
    expect(asked).toEqual(['import bad.stl']);
  });

  it('that cannot be measured leaves the old one too', async () => {
    const open = await settledDesk();
    fail(open, 'measurement', new Problem('pull.zero', 'The pull has no direction.'));
    expect(await open.desk.importFile(new File([], 'new.stl'), inputs)).toBeNull();
    await settle();
    expect(open.state().importProblem).toBe('The pull has no direction.');
    expect(open.state().question?.mesh).toBe('mesh-a');
    expect(open.told('measurement')).toMatchObject({ summary: { says: 'scale 1 pull 0 0 1' } });
    open.asked.length = 0;
    await open.desk.ask('cut', { axis: 'x', atMm: 0 });
    expect(open.asked).toEqual(['open packed mesh-a as mesh-a', 'cut']);
  });

  it('that is canceled leaves the old one without a word', async () => {
    const { desk, mocks, state } = await settledDesk();
    const before = state().answers;
    const reading = held<never>();
    mocks.importFile.mockImplementationOnce((_file, _name, _mesh, options) => reading.question(options));
    const imported = desk.importFile(new File([], 'new.stl'), inputs);
    await vi.advanceTimersByTimeAsync(10);
    expect(state().progress).toMatchObject({ doing: 'reading new.stl', stage: null });
    desk.cancel();
    expect(await imported).toBeNull();
    await settle();
    expect(state()).toMatchObject({ importing: false, importProblem: null, problem: null, progress: null });
    expect(state().answers).toEqual(before);
  });

  it('takes the place of the stage in work', async () => {
    const open = openDesk();
    hold(open, 'halves');
    open.desk.follow(project());
    await settle();
    expect(open.state().progress?.stage).toBe('halves');
    expect(await open.desk.importFile(new File([], 'new.stl'), inputs)).not.toBeNull();
    expect(open.state()).toMatchObject({ stopped: null, problem: null });
  });

  it('is the second of two, though the first one ends while that is read', async () => {
    const { asked, desk, mocks, state } = await settledDesk();
    const { fileName: _, meshKey: __, ...facts } = pattern;
    const slowly: typeof mocks.importFile = vi.fn(
      (_file, _name, _mesh, options) =>
        new Promise((resolve, reject) => {
          setTimeout(() => resolve(facts), 800);
          options?.signal?.addEventListener('abort', () => reject(canceled()));
        }),
    );
    mocks.importFile.mockImplementation(slowly);
    const first = desk.importFile(new File([], 'first.stl'), inputs);
    await vi.advanceTimersByTimeAsync(100);
    const second = desk.importFile(new File([], 'second.stl'), inputs);
    await vi.advanceTimersByTimeAsync(3000);
    expect(await first).toBeNull();
    expect((await second)?.pattern.fileName).toBe('second.stl');
    expect(asked.slice(0, 5)).toEqual([
      'right way up',
      'part: scale 1',
      'walls',
      'measurement: scale 1 pull 0 0 1',
      'pack',
    ]);
    expect(state()).toMatchObject({ importProblem: null, importing: false });
    expect(state().question?.mesh).toBe('mesh-b');
  });

  it('has no complaint about what was asked of the old one while it was read', async () => {
    const { desk, mocks, state } = await settledDesk();
    const probed = held<unknown>();
    const usual = mocks.ask.getMockImplementation()!;
    mocks.ask.mockImplementation((name, ...rest) =>
      name === 'probe' ? probed.question().then(() => Promise.reject(noMesh)) : usual(name, ...rest),
    );
    const noMesh = new Problem('job.noMesh', 'Import the pattern file of this project first.');
    const imported = desk.importFile(new File([], 'new.stl'), inputs);
    const probe = desk.ask('probe', { originMm: [0, 0, 0], direction: [0, 0, 1] });
    expect(await imported).not.toBeNull();
    probed.answer(null);
    expect(await probe).toBeNull();
    expect(state().problem).toBeNull();
  });
});

describe('a saved mesh', () => {
  it('that is gone is said to be, with what to do', async () => {
    const { desk, state, asked } = openDesk();
    desk.follow({ ...project(), packedMesh: () => null });
    await settle();
    expect(state().problem).toMatch(/Import the pattern file again/u);
    expect(state()).toMatchObject({ answers: {}, stopped: 'part', progress: null });
    expect(asked).toEqual([]);
  });

  it('that is damaged is kept aside, and the page says so', async () => {
    const { desk, mocks, state } = openDesk();
    mocks.openMesh.mockRejectedValueOnce(new Problem('pack.damaged', 'The saved model is damaged.'));
    const setMeshAside = vi.fn();
    desk.follow({ ...project(), setMeshAside });
    await settle();
    expect(setMeshAside).toHaveBeenCalledOnce();
    expect(state().problem).toBe('The saved model is damaged.');
  });

  it('is opened again when the opening of another one was given up', async () => {
    const { asked, desk, mocks, state } = await settledDesk();
    const opening = held<void>();
    mocks.openMesh.mockImplementationOnce((_packed, _name, options) => opening.question(options));
    desk.follow(project({}, { ...pattern, meshKey: 'mesh-c' }));
    await settle();
    // The worker ends what it is at, and has the other mesh by then.
    desk.follow(project({ part: { scale: 2 } }));
    await settle();
    expect(asked.slice(0, 2)).toEqual(['open packed mesh-a as mesh-a', 'part: scale 2']);
    expect(state().problem).toBeNull();
  });
});

describe('what is canceled', () => {
  it.each<readonly [StageName, readonly string[]]>([
    ['part', everything.slice(1)],
    ['walls', everything.slice(2)],
    ['measurement', everything.slice(3)],
    ['halves', everything.slice(6)],
    ['oven run', everything.slice(8)],
    ['fine oven run', everything.slice(9)],
  ])('stays so, and so does what comes after it, until the maker goes on: %s', async (stage, rest) => {
    const open = openDesk();
    hold(open, stage);
    open.desk.follow(project());
    await settle();
    expect(open.state().progress?.stage).toBe(stage);
    open.desk.cancel();
    await settle();
    expect(open.state()).toMatchObject({ stopped: stage, problem: null, progress: null });
    expect(open.asked).toEqual(everything.slice(0, everything.length - rest.length));
    open.asked.length = 0;
    open.desk.goOn();
    expect(open.state().stopped).toBeNull();
    await settle();
    expect(open.asked).toEqual(rest);
    expect(open.state()).toMatchObject({ stopped: null, progress: null });
  });

  it('stays so while something else changes, which is worked out', async () => {
    const open = openDesk();
    fail(open, 'halves', canceled());
    open.desk.follow(project());
    await settle();
    open.asked.length = 0;
    open.desk.follow(project({ walls: { goVoidPercent: 5 } }));
    await settle();
    expect(open.asked).toEqual(['places: void 5']);
    expect(open.state().stopped).toBe('halves');
  });

  it('is asked anew when the question is another', async () => {
    const open = openDesk();
    fail(open, 'halves', canceled());
    open.desk.follow(project());
    await settle();
    open.desk.follow(project({ mold: { coverOverShowMm: 15 } }));
    expect(open.state().stopped).toBeNull();
    await settle();
    expect(open.told('halves')).toMatchObject({ says: 'cover 15' });
  });

  it('is not what has failed: that is said, and waits for the maker too', async () => {
    const open = openDesk();
    fail(open, 'measurement', new Problem('job.memory', 'This model needs more memory.'));
    open.desk.follow(project());
    await settle();
    expect(open.state()).toMatchObject({
      stopped: 'measurement',
      problem: 'This model needs more memory.',
      progress: null,
    });
    open.desk.goOn();
    await settle();
    expect(open.state()).toMatchObject({ stopped: null, problem: null });
    expect(open.told('fine oven run')).not.toBeNull();
  });
});

describe('what cannot be had', () => {
  it('there can be no halves, and why, until the box is another', async () => {
    const open = openDesk();
    fail(open, 'halves', new Problem('pours.keys', 'The keys do not fit.'));
    open.desk.follow(project());
    await settle();
    expect(contextOf(open.state().answers)).toMatchObject({
      mold: null,
      moldProblem: 'The keys do not fit.',
      cureProblem: 'The keys do not fit.',
    });
    expect(open.state()).toMatchObject({ problem: null, stopped: null, progress: null });
    expect(open.asked).not.toContain('oven run: from 21 °C');
    open.desk.follow(project({ mold: { keyCount: 0 } }));
    await settle();
    expect(contextOf(open.state().answers).moldProblem).toBeNull();
    expect(open.told('halves')).toMatchObject({ says: 'cover 10' });
    open.desk.follow(project());
    expect(contextOf(open.state().answers).moldProblem).toBe('The keys do not fit.');
  });

  it('there can be no oven run, and why', async () => {
    const open = openDesk();
    for (const stage of ['oven run', 'fine oven run'] as const)
      fail(open, stage, new Problem('cure.kineticsBlowUp', 'The rate blows up.'));
    open.desk.follow(project());
    await settle();
    expect(contextOf(open.state().answers)).toMatchObject({ cure: null, cureProblem: 'The rate blows up.' });
    expect(open.state()).toMatchObject({ problem: null, stopped: null });
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
    const { desk, state, asked } = await settledDesk();
    const plain = state().reply;
    desk.follow(project({ mold: { repairs: [repair('a'), repair('b')] } }));
    // Drawn as before until the new walls are in.
    expect(state().reply).toBe(plain);
    await settle();
    expect(asked).toEqual(['repaired walls: 2 repairs']);
    expect(contextOf(state().answers).measured?.summary.closing).toEqual({ says: '2 repairs' });
    expect(state().reply?.maps.closing.wallMm).toEqual(Float32Array.of(2));
    expect(state().reply?.summary.closing).toEqual({ says: '2 repairs' });
    desk.follow(project({ mold: { repairs: [] } }));
    await settle();
    expect(state().reply).toEqual(plain);
    expect(asked).toHaveLength(1);
  });
});

describe('what the maker asks', () => {
  it('is under the progress bar while it takes long, and answered', async () => {
    const { desk, mocks, state } = await settledDesk();
    const pull = held<unknown>();
    mocks.ask.mockImplementationOnce((_name, _question, _given, options) => pull.question(options));
    const run = desk.run('trying pulls', 'best pull', null);
    expect(state().progress).toEqual({ doing: 'trying pulls', share: 0, stage: null });
    await vi.advanceTimersByTimeAsync(1);
    mocks.ask.mock.lastCall![3]!.onProgress!({ doing: 'trying pulls', share: 0.5 });
    expect(state().progress?.share).toBe(0.5);
    pull.answer('a pull');
    expect(await run).toBe('a pull');
    expect(state().progress).toBeNull();
  });

  it('is canceled alone: the stages go on', async () => {
    const open = openDesk();
    const halves = hold(open, 'halves');
    open.desk.follow(project());
    await settle();
    const pull = held<unknown>();
    // Queued behind the stage in work.
    open.mocks.ask.mockImplementationOnce((_name, _question, _given, options) => pull.question(options));
    const run = open.desk.run('trying pulls', 'best pull', null);
    await vi.advanceTimersByTimeAsync(1);
    const [, , options] = open.mocks.tell.mock.lastCall!;
    options!.onProgress!({ doing: 'casting the two halves', share: 0.9 });
    expect(open.state().progress?.doing).toBe('trying pulls');
    open.desk.cancel();
    expect(await run).toBeNull();
    expect(open.state()).toMatchObject({ progress: null, problem: null, stopped: null });
    halves.answer(toldOf('halves', open.state().question!));
    await settle();
    expect(open.told('fine oven run')).not.toBeNull();
  });

  it('that fails is said in a sentence, for a long question and for a short one', async () => {
    const { desk, mocks, state } = await settledDesk();
    mocks.ask.mockRejectedValueOnce(new Problem('pours.noHalves', 'There is no half to save.'));
    expect(await desk.run('writing the half', 'saved half', 'negative')).toBeNull();
    expect(state()).toMatchObject({ problem: 'There is no half to save.', progress: null });
    mocks.ask.mockRejectedValueOnce(new Problem('job.crashed', 'The worker ended.'));
    expect(await desk.ask('cut', { axis: 'x', atMm: 0 })).toBeNull();
    expect(state().problem).toBe('The worker ended.');
  });

  it('that was outdated by a newer question is nobody’s business', async () => {
    const { desk, mocks, state } = await settledDesk();
    mocks.ask.mockRejectedValueOnce(new Problem('job.outdated', 'A newer question has taken its place.'));
    expect(await desk.ask('cut', { axis: 'x', atMm: 0 })).toBeNull();
    expect(state().problem).toBeNull();
  });
});
