/** The planner on small trays: it clears what settings can clear, never does harm, and says what is left. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { evaluate } from '../../src/pipeline/evaluate';
import { stateOf } from '../../src/pipeline/planState';
import type { Question } from '../../src/pipeline/question';
import { planFor } from '../../src/pipeline/remedies';
import type { StageName } from '../../src/pipeline/told';
import { plyAt, trayPattern } from '../steps/contexts';
import { defaultClamp } from '../../src/steps/inputs/clamp';
import { tray } from '../support/meshes';
import { holdsUpThePour } from '../../src/steps/shared/decision';
import { propertySeed } from '../support/propertySeed';
import { ignore, memoryOf, trayQuestion } from './support';

/** What needs no stone cast keeps these tests short. */
const skips: ReadonlySet<StageName> = new Set(['halves', 'filled mold', 'oven run', 'fine oven run']);

async function planned(mesh: IndexedMesh, question: Question, quick = 60) {
  const memory = await memoryOf(mesh);
  const answers = await evaluate(question, (name, asked) => memory.tell(name, asked, ignore), skips);
  const given = { question, answers, memory };
  const options = { pattern: trayPattern, skips, onProgress: ignore, most: { quick, heavy: 0 } };
  const plan = await planFor(given, options);
  const now = stateOf(given, trayPattern);
  const after = stateOf(plan.evaluated, trayPattern);
  return { plan, now, after, again: () => planFor(plan.evaluated, options) };
}

const stackOf = (count: number) => Array.from({ length: count }, (_, at) => plyAt(`ply-${at + 1}`));

describe('a plan', { timeout: 120_000 }, () => {
  it('lays as many plies as the wall wants where the stack is the fault, and says why', async () => {
    const { plan, now, after } = await planned(
      tray([40, 30, 10], 1.57, 4),
      trayQuestion({ plies: { stack: stackOf(3) } }),
    );
    expect(now.verdicts.get('plies.fit')?.word).toBe('stop');
    const lays = plan.changes.find(({ id }) => id === 'plies.stack');
    expect(lays?.what).toBe('Lay 7 plies.');
    expect(lays?.why).toMatch(/air/u);
    const fit = lays?.turns.find(({ id }) => id === 'plies.fit');
    expect(fit?.from).toBe('stop');
    expect(fit?.to).toBe(after.verdicts.get('plies.fit')?.word);
    expect(fit?.says).not.toBe(lays?.why);
    expect(after.verdicts.get('plies.fit')?.word).not.toBe('stop');
    expect(after.stops).toBeLessThan(now.stops);
  });

  it('shows a fix only at a verdict that it turned', async () => {
    const { plan, now } = await planned(tray([40, 30, 10], 1.57, 4), trayQuestion({}));
    expect(plan.fixes.size).toBeGreaterThan(0);
    for (const [id, fixes] of plan.fixes)
      for (const { says } of fixes) expect(says.startsWith(`${now.verdicts.get(id)!.word}:`)).toBe(false);
  });

  it('that may try nothing changes nothing and says what is left', async () => {
    const { plan, now } = await planned(tray([40, 30, 10], 1.57, 4), trayQuestion({}), 0);
    expect(plan.changes).toEqual([]);
    expect(plan.after).toEqual(now.words);
    expect(plan.outcome).toBe('cannot be cleared');
    const open = [...now.verdicts.values()].filter(holdsUpThePour);
    expect(plan.left.length).toBe(open.length);
    expect(plan.stays.size).toBe(now.stops);
  });

  it('tells how far it has got, and ends with what it has when it is stopped', async () => {
    const question = trayQuestion({ plies: { stack: stackOf(3) } });
    const memory = await memoryOf(tray([40, 30, 10], 1.57, 4));
    const answers = await evaluate(question, (name, asked) => memory.tell(name, asked, ignore), skips);
    const shares: number[] = [];
    const plan = await planFor(
      { question, answers, memory },
      {
        pattern: trayPattern,
        skips,
        onProgress: (doing, share) => void (doing === 'trying changes' && shares.push(share)),
        isStopped: () => shares.length >= 3,
      },
    );
    expect(shares).toHaveLength(3);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(plan.left.length).toBeGreaterThan(0);
  });

  it(`never raises the number of stops, and a second one is empty or says what is left (seed ${propertySeed})`, async () => {
    const shells = fc.record({
      wallMm: fc.constantFrom(0.5, 0.9, 1.3, 2.2),
      draftDeg: fc.constantFrom(0, 3),
      heightMm: fc.constantFrom(6, 14),
      plies: fc.integer({ min: 1, max: 8 }),
      clamps: fc.integer({ min: 1, max: 12 }),
      forceN: fc.constantFrom(20, 150, 500),
      resin: fc.constantFrom('free' as const, 'trapped' as const),
      lands: fc.constantFrom('stone on stone' as const, 'none' as const),
      debulk: fc.constantFrom('by hand' as const, 'under vacuum' as const),
      shimMm: fc.constantFrom(-0.3, 0, 0.4),
      landWidthMm: fc.constantFrom(6, 12),
      targetC: fc.constantFrom(60, 120, 150),
    });
    await fc.assert(
      fc.asyncProperty(shells, async (shell) => {
        const { wallMm, draftDeg, heightMm, plies, clamps, forceN, landWidthMm, targetC, ...closing } = shell;
        const question = trayQuestion({
          plies: { stack: stackOf(plies) },
          closing: { clamps: [{ ...defaultClamp, count: clamps, forceN }], ...closing },
          mold: { landWidthMm },
          cure: { stages: [{ targetC, rampKPerMin: 1, dwellHours: 4 }] },
        });
        const { now, after, again } = await planned(tray([40, 30, heightMm], wallMm, draftDeg), question, 30);
        expect(after.stops).toBeLessThanOrEqual(now.stops);
        expect(after.unknown).toBeLessThanOrEqual(now.unknown);
        const second = await again();
        if (second.changes.length === 0 && after.stops > 0) expect(second.left.length).toBeGreaterThan(0);
        expect(stateOf(second.evaluated, trayPattern).stops).toBeLessThanOrEqual(after.stops);
      }),
      { seed: propertySeed, numRuns: 6 },
    );
  });
});
