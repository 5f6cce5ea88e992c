/** Other ways: changes that were tried and mend what the plan mends, and that are not in it. */
import { expect, it } from 'vitest';
import type { PlanFound } from '../../src/pipeline/plan';
import { otherWays } from '../../src/sheets/decision/OtherWays';

const fix = (what: string) => ({ what, patch: { 'mold.printScale': 1 }, says: 'go: all is well.' });
const plan: PlanFound = {
  outcome: 'cleared by the changes',
  now: {},
  after: {},
  changes: [
    {
      id: 'plies.stack',
      what: 'Lay 3 plies.',
      why: 'air',
      turns: [
        { id: 'plies.fit', from: 'stop', to: 'go', says: 'filled' },
        { id: 'closing.load', from: 'stop', to: 'go', says: 'filled' },
      ],
      patch: {},
      step: 'plies',
    },
  ],
  anew: null,
  left: [],
  stays: new Map(),
  fixes: new Map([
    ['plies.fit', [fix('Lay 3 plies.'), fix('Lay 4 plies.')]],
    ['closing.load', [fix('Lay 4 plies.'), fix('Lay shims.'), fix('A'), fix('B')]],
    ['cure.cures', [fix('Hold longer.')]],
  ]),
};

it('names each once, none of the plan, none of another verdict, and three at most', () => {
  expect(otherWays(plan).map(({ what }) => what)).toEqual(['Lay 4 plies.', 'Lay shims.', 'A']);
});
