import { describe, expect, it } from 'vitest';
import { worstWord } from '../../src/core/figure';
import type { AwaitedResult, Stage } from '../../src/steps/kit/awaited';
import { stepReports, steps } from '../../src/steps/registry';
import { trayContext, walls } from './contexts';

const stages: readonly Stage[] = [
  'import',
  'measurement',
  'places',
  'repaired walls',
  'halves',
  'other half',
  'oven run',
  'fine oven run',
  'fit',
];
const wordsOf = (awaited: readonly AwaitedResult[], context = trayContext()) =>
  Object.fromEntries(
    [...stepReports({ ...context, awaited })].map(([id, { verdicts }]) => [id, worstWord(verdicts)]),
  );
const before = wordsOf([]);
const first = (isUnderWay: boolean) =>
  stepReports({ ...trayContext(), awaited: [{ stage: 'halves', isUnderWay }] }).get('mold')?.verdicts[0];

describe('a step whose results are not in', () => {
  it.each(stages)('reads "not yet known" unless it says stop already: %s', (stage) => {
    for (const isUnderWay of [true, false]) {
      const words = wordsOf([{ stage, isUnderWay }]);
      for (const { id, needs } of steps) {
        if (id === 'checklist') continue;
        const waits = needs.includes(stage) && before[id] !== 'stop';
        expect(words[id], `${id} without ${stage}`).toBe(waits ? 'not yet known' : before[id]);
      }
    }
  });

  it('does not read "look again", which may become "stop"', () => {
    expect(before['mold']).toBe('look again');
    expect(wordsOf([{ stage: 'halves', isUnderWay: true }])['mold']).toBe('not yet known');
  });

  it('still reads stop where that is certain', () => {
    const thick = trayContext({ summary: { showWall: walls([0.8, 8800], [1.6, 1200]) } });
    expect(wordsOf([], thick)['walls']).toBe('stop');
    expect(wordsOf([{ stage: 'places', isUnderWay: true }], thick)['walls']).toBe('stop');
  });

  it('says first what it waits for, and what to do where that does not come by itself', () => {
    expect(first(true)).toMatchObject({
      id: 'mold.awaited',
      reason: 'The two stone halves are still being cast.',
      fix: 'Wait until it is done; this follows by itself.',
    });
    expect(first(false)?.fix).toBe('Press “Cast them” on the Stone mold sheet.');
  });

  it('changes nothing where all is worked out at once', () => {
    expect(wordsOf([], trayContext())).toEqual(before);
  });
});
