/** The demo's lower half is cleared as it is; the upper one is not, and what holds it up is named. */
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/pipeline/evaluate';
import { stateOf } from '../../src/pipeline/planState';
import { planFor } from '../../src/pipeline/remedies';
import type { StageName } from '../../src/pipeline/told';
import { decisionWord, isOfConcern } from '../../src/steps/shared/decision';
import { demoInputs, demoParts } from '../../src/workbook/demo/demoParts';
import { trayPattern } from '../steps/contexts';
import { ignore, memoryOf } from './support';

const skips: ReadonlySet<StageName> = new Set(['oven run', 'fine oven run']);

async function stateOfHalf(name: string, heated: boolean) {
  const half = demoParts().find((one) => one.name === name)!;
  const memory = await memoryOf(half.mesh);
  const inputs = demoInputs({ ...half.inputs, cure: { ...half.inputs.cure, voxelMm: 4 } });
  const question = { mesh: 'the mesh', declaredUnit: null, inputs, thermocouple: null };
  const skipped: ReadonlySet<StageName> = heated ? new Set(['fine oven run']) : skips;
  const answers = await evaluate(question, (stage, asked) => memory.tell(stage, asked, ignore), skipped);
  return { given: { question, answers, memory }, state: stateOf({ question, answers, memory }, trayPattern) };
}

describe('the demo', { timeout: 240_000 }, () => {
  it('has a lower half that is cleared to pour as it is', async () => {
    const { state } = await stateOfHalf('Lower half', true);
    const open = [...state.verdicts.values()].filter(
      (one) => isOfConcern(one) && (one.word === 'stop' || one.word === 'not yet known'),
    );
    expect(open.map(({ id }) => id)).toEqual(['cure.damp']);
    expect(decisionWord([...state.verdicts.values()].filter(isOfConcern))).toBe('go');
  });

  it('has an upper half whose undercut stops it, once, and is proposed to be made anew', async () => {
    const { given, state } = await stateOfHalf('Upper half', false);
    const stops = [...state.verdicts.values()].filter(({ word }) => word === 'stop');
    expect(stops.map(({ id }) => id)).toEqual(['walls.locks']);
    const options = { pattern: trayPattern, skips, onProgress: ignore, most: { quick: 6, heavy: 0 } };
    const plan = await planFor(given, options);
    expect(plan.anew?.mends).toEqual(['walls.locks']);
  });
});
