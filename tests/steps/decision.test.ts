/** Whether the stone may be poured: the worst of what decides, and nothing else. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StepReport, Verdict, VerdictWord } from '../../src/core/figure';
import { decide, decisionWord } from '../../src/steps/shared/decision';
import { propertySeed } from '../support/propertySeed';

const verdict = (id: string, word: VerdictWord, reason = `${id} says so.`): Verdict => ({
  id,
  word,
  reason,
  fix: '',
});

const reportsOf = (...verdicts: readonly Verdict[]): ReadonlyMap<string, StepReport> => {
  const reports = new Map<string, StepReport>();
  for (const one of verdicts) {
    const step = one.id.split('.')[0]!;
    const before = reports.get(step)?.verdicts ?? [];
    reports.set(step, { figures: [], verdicts: [...before, one], cautions: [] });
  }
  return reports;
};

describe('the decision', () => {
  it.each<[VerdictWord[], VerdictWord]>([
    [[], 'not yet known'],
    [['go', 'go'], 'go'],
    [['go', 'look again'], 'go'],
    [['look again', 'not yet known'], 'not yet known'],
    [['not yet known', 'stop', 'go'], 'stop'],
  ])('of %j is %s', (words, wanted) => {
    expect(decisionWord(words.map((word, at) => verdict(`walls.${at}`, word)))).toBe(wanted);
  });

  it('does not wait for what only weighing the poured halves tells, and lists it apart', () => {
    const found = decide(reportsOf(verdict('walls.band', 'go'), verdict('cure.damp', 'not yet known')));
    expect(found.word).toBe('go');
    expect(found.unknown).toEqual([]);
    expect(found.later.map(({ verdict: { id } }) => id)).toEqual(['cure.damp']);
  });

  it('takes a stop after the pour for a stop', () => {
    expect(decide(reportsOf(verdict('cure.damp', 'stop'))).word).toBe('stop');
  });

  it('leaves out the checklist, which repeats the others', () => {
    const found = decide(reportsOf(verdict('walls.band', 'go'), verdict('checklist.ready', 'stop')));
    expect(found).toMatchObject({ word: 'go', stops: [] });
  });

  it('says once, in the longest wording, what two steps say', () => {
    const { lookAgain } = decide(
      reportsOf(
        verdict('plies.fit', 'look again', 'The wall is 0.67 mm.'),
        verdict('walls.band', 'look again', 'The wall is 0.67 mm. Worst: 1.02 mm.'),
      ),
    );
    expect(lookAgain).toEqual([
      {
        verdict: verdict('walls.band', 'look again', 'The wall is 0.67 mm. Worst: 1.02 mm.'),
        stepIds: ['plies', 'walls'],
      },
    ]);
  });

  it(`is never milder than its stops and never harsher than its verdicts (seed ${propertySeed})`, () => {
    const words = fc.array(fc.constantFrom<VerdictWord>('go', 'look again', 'stop', 'not yet known'));
    fc.assert(
      fc.property(words, (some) => {
        const word = decisionWord(some.map((one, at) => verdict(`mold.${at}`, one)));
        expect(word === 'stop').toBe(some.includes('stop'));
        if (word === 'go') expect(some).not.toContain('not yet known');
        if (some.length > 0 && word === 'not yet known') expect(some).toContain('not yet known');
      }),
      { seed: propertySeed },
    );
  });
});
