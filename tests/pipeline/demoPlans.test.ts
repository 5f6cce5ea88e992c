/** The demo: its lower half is cleared as it is; its upper half is stopped by its inputs, and the plan clears it. */
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/pipeline/evaluate';
import { stateOf } from '../../src/pipeline/planState';
import { planFor } from '../../src/pipeline/remedies';
import type { StageName } from '../../src/pipeline/told';
import { decisionWord, holdsUpThePour } from '../../src/steps/shared/decision';
import { demoInputs, demoParts } from '../../src/workbook/demo/demoParts';
import { trayPattern } from '../steps/contexts';
import { ignore, memoryOf } from './support';

const skips: ReadonlySet<StageName> = new Set(['fine oven run']);
const options = { pattern: trayPattern, skips, onProgress: ignore };

async function half(name: string) {
  const { mesh, inputs: changes } = demoParts().find((one) => one.name === name)!;
  const memory = await memoryOf(mesh);
  const inputs = demoInputs({ ...changes, cure: { ...changes.cure, voxelMm: 4 } });
  const question = { mesh: 'the mesh', declaredUnit: null, inputs, thermocouple: null };
  const answers = await evaluate(question, (stage, asked) => memory.tell(stage, asked, ignore), skips);
  const given = { question, answers, memory };
  return { given, verdicts: [...stateOf(given, trayPattern).verdicts.values()] };
}

describe('the demo', { timeout: 240_000 }, () => {
  it('has a lower half that is cleared to pour as it is', async () => {
    const { given, verdicts } = await half('Lower half');
    expect(verdicts.filter(holdsUpThePour)).toEqual([]);
    expect(decisionWord(verdicts)).toBe('go');
    const plan = await planFor(given, options);
    expect(plan).toMatchObject({ outcome: 'cleared', changes: [], left: [], anew: null });
  });

  it('has an upper half whose clamps and oven stop it, and the plan for it clears it', async () => {
    const { given, verdicts } = await half('Upper half');
    const stops = verdicts.filter(({ word }) => word === 'stop').map(({ id }) => id);
    expect(stops).toEqual(['closing.load', 'cure.program']);
    const plan = await planFor(given, options);
    expect(plan.outcome).toBe('cleared by the changes');
    expect(plan.changes.map(({ id }) => id).toSorted()).toEqual([
      'closing.clamps',
      'cure.stages',
      'mold.patternSoftensC',
    ]);
    const turned = plan.changes.flatMap(({ turns }) => turns.filter(({ from }) => from === 'stop'));
    expect(turned.map(({ id }) => id).toSorted()).toEqual(stops);
    expect(plan.left).toEqual([]);
    const applied = [...stateOf(plan.evaluated, trayPattern).verdicts.values()];
    expect(applied.filter(holdsUpThePour)).toEqual([]);
    expect(decisionWord(applied)).toBe('go');
  });
});
