/** The walk over the stages: its order, what an edit makes run again, what a refusal leaves undone. */
import * as fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Problem } from '../../src/core/problem';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { createAnswerShelf, type AnswerShelf } from '../../src/pipeline/answerShelf';
import {
  answerOf,
  contextOf,
  evaluate,
  isComing,
  nextStage,
  type Answers,
  type RunStage,
} from '../../src/pipeline/evaluate';
import type { Question } from '../../src/pipeline/question';
import { stageNames, stages } from '../../src/pipeline/stages';
import { stageWork } from '../../src/pipeline/stageWork';
import type { StageName } from '../../src/pipeline/told';
import { defaultProjectInputs } from '../../src/steps/inputs/project';
import { plyAt, trayMold } from '../steps/contexts';
import { asText } from '../support/asText';
import { propertySeed } from '../support/propertySeed';
import { ignore, memoryOf, smallTray, trayQuestion, type InputChanges } from './support';

/** Walks on from what the shelf knows, as the page does. */
async function walk(question: Question, run: RunStage, shelf: AnswerShelf): Promise<Answers> {
  for (;;) {
    const answers = shelf.recall(question);
    const name = nextStage(question, answers, new Set());
    if (name === null) return answers;
    shelf.keep(name, await answerOf(name, question, answers, run));
  }
}

/** A memory with a shelf before it, and which stages were asked of it. */
async function walker(mesh: IndexedMesh = smallTray) {
  const memory = await memoryOf(mesh);
  const shelf = createAnswerShelf();
  const asked: StageName[] = [];
  const run: RunStage = (name, question) => {
    asked.push(name);
    return memory.tell(name, question, ignore);
  };
  return {
    asked,
    memory,
    /** The stages that were asked for these answers. */
    askedFor: async (question: Question) => {
      asked.length = 0;
      const answers = await walk(question, run, shelf);
      return { answers, ran: [...asked] };
    },
  };
}

const ofTheMold: readonly StageName[] = ['halves', 'filled mold', 'oven run', 'fine oven run'];
const ofMoreResin: InputChanges['plies'] = {
  materials: defaultProjectInputs.plies.materials.map((card) => ({
    ...card,
    resinMassFraction: card.resinMassFraction + 0.05,
  })),
};
const repair = (depthMm: number) => ({
  id: 'a',
  half: 'negative' as const,
  kind: 'scraped' as const,
  atMm: [0, 0, 0] as [number, number, number],
  radiusMm: 5,
  depthMm,
  note: '',
});

describe('the walk', { timeout: 60_000 }, () => {
  it('asks each stage once, after all that it needs, and gives from a shelf what it gives at one go', async () => {
    const { askedFor, memory } = await walker();
    const { ran, answers } = await askedFor(trayQuestion());
    expect(ran).toEqual(stageNames);
    for (const [at, name] of ran.entries())
      for (const need of stages[name].needs) expect(ran.indexOf(need)).toBeLessThan(at);
    expect(Object.values(answers).map(({ refused }) => refused)).toEqual(stageNames.map(() => null));
    expect(contextOf(answers)).toMatchObject({ moldProblem: null, cureProblem: null });
    expect(contextOf(answers).cure?.stage).toBe('refined');

    const run: RunStage = (name, question) => memory.tell(name, question, ignore);
    const skipped = await evaluate(trayQuestion(), run, new Set(['oven run']));
    const { 'oven run': _, ...rest } = answers;
    expect(asText(skipped)).toEqual(asText(rest));
    expect(asText(contextOf(skipped))).toEqual(asText(contextOf(answers)));
  });
});

/** What each stage would do takes no time here: only that it is done counts. */
function countRuns(): StageName[] {
  const runs: StageName[] = [];
  for (const name of stageNames) {
    const work = stageWork[name] as { run: () => unknown; tell: (result: unknown) => unknown };
    vi.spyOn(work, 'run').mockImplementation(() => {
      runs.push(name);
      return { of: name, facetCount: 1, maps: { kind: [] }, geometry: trayMold };
    });
    vi.spyOn(work, 'tell').mockImplementation((result) => result);
  }
  return runs;
}

describe('when only this changes', () => {
  afterEach(() => vi.restoreAllMocks());

  const cases: readonly (readonly [string, InputChanges, readonly StageName[]])[] = [
    ['nothing', {}, []],
    ['what no stage asks for', { mold: { bowlMl: 750 } }, []],
    ['a tolerance', { walls: { goVoidPercent: 5 } }, ['places']],
    ['the repairs', { mold: { repairs: [repair(0.2)] } }, ['repaired walls']],
    // The laminate is heated by its share of resin, which fewer plies of one card do not change.
    ['the number of plies', { plies: { stack: [plyAt('a'), plyAt('b')] } }, ['places']],
    ['the material of the plies', { plies: ofMoreResin }, ['places', 'oven run', 'fine oven run']],
    ['the oven program', { cure: { startC: 25 } }, ['oven run', 'fine oven run']],
    ['the bricks', { cure: { voxelMm: 7 } }, ['oven run', 'fine oven run']],
    ['the box', { mold: { coverOverShowMm: 12 } }, ofTheMold],
    ['the pull', { part: { pull: [0, 0.1, -1] } }, ['measurement', 'places', 'repaired walls', ...ofTheMold]],
    ['the scale', { part: { scale: 1.1 } }, stageNames],
  ];

  it.each(cases)('only what it touches runs again: %s', async (_, changes, ran) => {
    const { askedFor } = await walker();
    const runs = countRuns();
    await askedFor(trayQuestion());
    expect(runs).toEqual(stageNames);
    runs.length = 0;
    expect((await askedFor(trayQuestion(changes))).ran).toEqual(ran);
    expect(runs).toEqual(ran);
    // Taken back, everything is known.
    expect((await askedFor(trayQuestion())).ran).toEqual([]);
  });

  it.each(cases)(
    'a memory that is asked for everything runs only what is new: %s',
    async (_, changes, ran) => {
      const { memory } = await walker();
      const runs = countRuns();
      const run: RunStage = (name, question) => memory.tell(name, question, ignore);
      await evaluate(trayQuestion(), run);
      runs.length = 0;
      await evaluate(trayQuestion(changes), run);
      expect(runs).toEqual(ran);
    },
  );

  it('a thermocouple has its curve from the oven runs alone', async () => {
    const { askedFor } = await walker();
    countRuns();
    await askedFor(trayQuestion());
    const thermocouple = { kind: 'show middle' } as const;
    expect((await askedFor({ ...trayQuestion(), thermocouple })).ran).toEqual(['oven run', 'fine oven run']);
  });

  it('a question about another mesh asks for everything', async () => {
    const { askedFor, memory } = await walker();
    countRuns();
    await askedFor(trayQuestion());
    memory.openMesh('another mesh', smallTray);
    expect((await askedFor({ ...trayQuestion(), mesh: 'another mesh' })).ran).toEqual(stageNames);
  });
});

const refuses = (error: unknown): RunStage => {
  const run = (name: StageName) => (name === 'halves' ? Promise.reject(error) : Promise.resolve({ name }));
  return run as unknown as RunStage;
};

const ofNoScale = () => Promise.reject(new Problem('part.scale', 'The scale is 0.'));

describe('a stage that refuses', () => {
  // Keys larger than the land that they stand on.
  const impossible = trayQuestion({ mold: { coverXLowMm: 0, keyCount: 4, keyDiameterMm: 40 } });

  it('gives its sentence as a result, and what needs it is not asked', async () => {
    const { askedFor } = await walker();
    const { answers, ran } = await askedFor(impossible);
    expect(answers.halves).toMatchObject({ told: null, refused: expect.stringMatching(/\.$/u) as string });
    expect(ran).not.toContain('oven run');
    expect(ran).not.toContain('fine oven run');
    const { moldProblem, cureProblem, mold, cure } = contextOf(answers);
    expect({ mold, cure }).toEqual({ mold: null, cure: null });
    expect(moldProblem).toBe(answers.halves?.refused);
    expect(cureProblem).not.toBeNull();
    expect((await askedFor(impossible)).ran).toEqual([]);
  });

  it('is told apart from one that has failed', async () => {
    const box = new Problem('pours.keys', 'The keys do not fit.');
    const refused = await evaluate(trayQuestion(), refuses(box));
    expect(refused.halves).toMatchObject({ told: null, refused: 'The keys do not fit.' });
    for (const error of [new Problem('job.canceled', 'Canceled.'), new RangeError('a fault')])
      await expect(evaluate(trayQuestion(), refuses(error))).rejects.toBe(error);
  });

  it('may only be one whose refusal the step reports can tell', async () => {
    await expect(evaluate(trayQuestion(), ofNoScale)).rejects.toMatchObject({ code: 'part.scale' });
  });
});

const told = (name: StageName) => ({ key: name, told: {}, refused: null }) as never;

describe('what is coming', () => {
  const question = trayQuestion();
  const coming = (answers: Answers, asked = question) =>
    stageNames.filter((name) => isComing(name, asked, answers));
  const refused = { key: 'halves', told: null, refused: 'It is a sheet.' };

  it('is all of it at the start, and the rest from then on', () => {
    expect(coming({})).toEqual(stageNames);
    expect(coming({ part: told('part'), walls: told('walls') })).toEqual(stageNames.slice(2));
  });

  it('is nothing that needs what was refused', () => {
    const answers = { part: told('part'), halves: refused };
    expect(coming(answers)).toEqual(['walls', 'measurement', 'places', 'repaired walls', 'filled mold']);
  });

  it('is nothing that the inputs do not ask', () => {
    const noProgram = trayQuestion({ cure: { stages: [] } });
    expect(coming({}, noProgram)).toEqual(
      stageNames.filter((name) => name !== 'oven run' && name !== 'fine oven run'),
    );
  });
});

/** Edits that a maker may make in any order; each sets what another may have set before. */
const edits: fc.Arbitrary<InputChanges> = fc.oneof(
  fc.constantFrom<InputChanges[]>(
    { part: { pull: [0, 0, -1] } },
    { part: { pull: [0, 0, 1] } },
    { part: { pull: [0.05, 0, -1] } },
    { part: { scale: 1 } },
    { part: { scale: 1.2 } },
    { part: { unit: 'unconfirmed' } },
    { part: { winding: 'asFile' } },
    { part: { body: 1 } },
  ),
  fc.constantFrom<InputChanges[]>(
    { mold: { repairs: [] } },
    { mold: { repairs: [repair(0.3)] } },
    { mold: { coverOverShowMm: 14 } },
    { mold: { coverOverShowMm: 10 } },
    { mold: { boxShape: 'rounded rectangle' } },
    { mold: { keyCount: 4, keyDiameterMm: 40 } },
    { mold: { keyCount: 0 } },
  ),
  fc.constantFrom<InputChanges[]>(
    { plies: { stack: [plyAt('a'), plyAt('b')] } },
    { plies: { stack: [] } },
    { walls: { goVoidPercent: 5 } },
    { cure: { startC: 30 } },
    { cure: { freeWaterLeftPercent: 50 } },
    { cure: { stages: [] } },
    { cure: { stages: [{ targetC: 60, rampKPerMin: 1, dwellHours: 1 }] } },
  ),
);

const edited = (before: InputChanges, change: InputChanges): InputChanges => ({
  ...before,
  ...Object.fromEntries(
    Object.entries(change).map(([step, fields]) => [
      step,
      { ...before[step as keyof InputChanges], ...fields },
    ]),
  ),
});

/** From a memory that has never been asked anything. */
async function fresh(question: Question): Promise<Answers> {
  const memory = await memoryOf(smallTray);
  return evaluate(question, (name, asked) => memory.tell(name, asked, ignore));
}

describe(
  `answers do not depend on what was asked before (seed ${propertySeed})`,
  { timeout: 300_000 },
  () => {
    it('a memory and a shelf that lived through all edits tell what fresh ones tell', async () => {
      const property = fc.asyncProperty(fc.array(edits, { minLength: 2, maxLength: 5 }), async (changes) => {
        const { askedFor } = await walker();
        let all: InputChanges = {};
        for (const change of changes) {
          all = edited(all, change);
          const question = trayQuestion(all);
          const { answers } = await askedFor(question);
          if (change === changes.at(-1)) expect(asText(answers)).toEqual(asText(await fresh(question)));
        }
      });
      await fc.assert(property, { numRuns: 4 });
    });
  },
);
