import { describe, expect, test } from 'vitest';
import { coatBears, releaseCards, sealerCards } from '../../../src/core/stone/coatCards';
import { dryFilmUm, spreadingRateM2PerL } from '../../../src/core/stone/coatPlan';
import { Problem } from '../../../src/core/problem';

describe('what a coat bears', () => {
  test.each([
    [75, 'bears it'],
    [76, 'some bear it'],
    [120, 'some bear it'],
    [121, 'too hot'],
  ] as const)('paste wax at %i °C: %s', (hottestC, answer) => {
    expect(coatBears(releaseCards.wax, hottestC)).toBe(answer);
  });

  test('a limit of the sheet leaves nothing between', () => {
    expect(coatBears({ bearsC: [100, 100] }, 100)).toBe('bears it');
    expect(coatBears({ bearsC: [100, 100] }, 100.1)).toBe('too hot');
  });

  test('a temperature that is none is refused, on every card', () => {
    for (const card of [...Object.values(sealerCards), ...Object.values(releaseCards)]) {
      expect(() => coatBears(card, Number.NaN)).toThrow(Problem);
      expect(card.bearsC[0]).toBeLessThan(card.bearsC[1]);
    }
  });
});

test('film and coverage are each other the other way round', () => {
  for (const solids of [5, 40, 100])
    for (const coverage of [2, 8, 15]) {
      const film = dryFilmUm(solids, coverage);
      expect(spreadingRateM2PerL(solids, film)).toBeCloseTo(coverage, 12);
    }
});
