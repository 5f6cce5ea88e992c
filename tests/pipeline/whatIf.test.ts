/** A what-if works out only what its patch touches, and the base is as it was. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { evaluate } from '../../src/pipeline/evaluate';
import { stageNames } from '../../src/pipeline/stages';
import { stageWork } from '../../src/pipeline/stageWork';
import type { StageName } from '../../src/pipeline/told';
import { whatIf } from '../../src/pipeline/whatIf';
import { patched } from '../../src/steps/shared/patch';
import { trayMold } from '../steps/contexts';
import { ignore, memoryOf, smallTray, trayQuestion } from './support';

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

const none: ReadonlySet<StageName> = new Set();
const { inputs } = trayQuestion();

describe('a what-if', () => {
  afterEach(() => vi.restoreAllMocks());

  it.each<readonly [string, Record<string, unknown>, readonly StageName[]]>([
    ['nothing that a stage asks for', { 'closing.shimMm': 0.2 }, []],
    ['fewer plies', { 'plies.stack': inputs.plies.stack.slice(1) }, ['places']],
    ['the oven', { 'cure.stages.0.targetC': 80 }, ['oven run', 'fine oven run']],
    ['the box', { 'mold.coverOverShowMm': 20 }, ['halves', 'filled mold', 'oven run', 'fine oven run']],
  ])('runs what it touches, and the base is asked again for nothing: %s', async (_, patch, ran) => {
    const memory = await memoryOf(smallTray);
    const runs = countRuns();
    const question = trayQuestion();
    const answers = await evaluate(question, (name, asked) => memory.tell(name, asked, ignore));
    runs.length = 0;
    const base = { question, answers, memory };
    const tried = await whatIf(base, patch, none, ignore);
    expect(runs).toEqual(ran);
    for (const name of stageNames) expect(tried?.answers[name] === answers[name]).toBe(!ran.includes(name));
    runs.length = 0;
    await evaluate(question, (name, asked) => memory.tell(name, asked, ignore));
    // Nor is a second what-if on top of the first asked for what that one has worked out.
    await whatIf(tried!, { 'mold.bowlMl': 700 }, none, ignore);
    expect(runs).toEqual([]);
  });

  it('leaves out what is skipped', async () => {
    const memory = await memoryOf(smallTray);
    const runs = countRuns();
    const base = { question: trayQuestion(), answers: {}, memory };
    await whatIf(base, {}, new Set(['halves', 'filled mold', 'oven run', 'fine oven run']), ignore);
    expect(runs).toEqual(['part', 'walls', 'measurement', 'places', 'repaired walls']);
  });

  it('takes only what the maker could enter', () => {
    expect(patched(inputs, { 'closing.shimMm': 0.25 })?.closing.shimMm).toBe(0.25);
    for (const patch of [{ 'closing.shimMm': 999 }, { 'closing.nothing': 1 }, { 'cure.stages.x.targetC': 1 }])
      expect(patched(inputs, patch)).toBeNull();
  });
});
