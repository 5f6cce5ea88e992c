/** The quick step of the oven run against the integration with error control, over laws and temperatures of every kind. */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { advanceCure, degreesOfCure } from '../../../src/core/cure/degreeOfCure';
import { cureSteps } from '../../../src/core/cure/cureSteps';
import { runHeat } from '../../../src/core/cure/heatRun';
import { changeOf } from '../../../src/core/cure/kinetics';
import { curveAtPlace, extremePlaces } from '../../../src/core/cure/laminateRecord';
import { kineticsForLearning } from '../../../src/core/cure/publishedKinetics';
import { options, programEndS, stoneCase } from '../../support/cureCases';
import { propertySeed } from '../../support/propertySeed';

describe.each(kineticsForLearning.map((set) => [set.letter, set.kinetics] as const))(
  'set %s',
  (_, kinetics) => {
    const { advance } = cureSteps(kinetics);

    test(`one step lands within 0.00005 of the careful integration (seed ${propertySeed})`, () => {
      fc.assert(
        fc.property(
          fc.double({ min: 0, max: 1, noNaN: true }),
          fc.double({ min: 20, max: 200, noNaN: true }),
          fc.double({ min: -8, max: 8, noNaN: true }),
          fc.double({ min: 0.05, max: 300, noNaN: true }),
          (share, fromC, risenK, spanS) => {
            const degree = kinetics.startCure + share * (0.999 - kinetics.startCure);
            const careful = advanceCure(kinetics, degree, fromC, fromC + risenK, spanS);
            expect(Math.abs(advance(degree, fromC, fromC + risenK, spanS) - careful)).toBeLessThan(5e-5);
          },
        ),
        { numRuns: 300 },
      );
    });

    test('follows the laminate of a run as the careful integration does', () => {
      const run = runHeat({ ...stoneCase({ voxelMm: 6 }), kinetics }, options(programEndS));
      const { coldest } = extremePlaces(run.laminate);
      const [careful] = degreesOfCure(kinetics, curveAtPlace(run.laminate, coldest), [programEndS]);
      expect(Math.abs(run.degreeOfCure[coldest]! - careful!)).toBeLessThan(2e-3);
    });
  },
);

test('splits the step where a law changes, and steps over nothing outside its table', () => {
  const { kinetics } = kineticsForLearning[0]!;
  const { advance } = cureSteps(kinetics);
  const change = changeOf(kinetics.law);
  expect(advance(change - 1e-4, 150, 150, 60)).toBeCloseTo(
    advanceCure(kinetics, change - 1e-4, 150, 150, 60),
    6,
  );
  expect(advance(0.5, 399, 402, 0.1)).toBeCloseTo(advanceCure(kinetics, 0.5, 399, 402, 0.1), 6);
});

test('is not taken in by two orders that agree by chance while the rate rises and falls', () => {
  for (const [letter, degree, fromC, risenK, spanS] of [
    ['D', 0.01, 199.8640324714432, 0, 12.969359222360891],
    ['D', 0.01, 184.2236457625404, 1.4626780152320862, 288.0691223230213],
    ['E', 0.684, 126.89770028926432, 5.961442027240992, 157.24897991511972],
  ] as const) {
    const { kinetics } = kineticsForLearning.find((set) => set.letter === letter)!;
    const careful = advanceCure(kinetics, degree, fromC, fromC + risenK, spanS);
    const quick = cureSteps(kinetics).advance(degree, fromC, fromC + risenK, spanS);
    expect(Math.abs(quick - careful)).toBeLessThan(5e-5);
  }
});
