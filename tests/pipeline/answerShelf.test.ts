import { describe, expect, it } from 'vitest';
import { createAnswerShelf, type AnswerShelf } from '../../src/pipeline/answerShelf';
import { askedOf, type Answers } from '../../src/pipeline/evaluate';
import { stageNames, stages } from '../../src/pipeline/stages';
import type { StageName } from '../../src/pipeline/told';
import { trayMold } from '../steps/contexts';
import { trayQuestion } from './support';

/** Answers to everything that is asked about the tray at this scale; they tell only their scale. */
function answersAt(scale: number, facetCount = 12): Answers {
  const question = trayQuestion({ part: { scale } });
  return stageNames.reduce<Answers>((known, name) => {
    const maps = { kind: { length: facetCount } };
    const told = { scale, facetCount, maps, geometry: trayMold } as never;
    return { ...known, [name]: { key: askedOf(name, question, known)!, told, refused: null } };
  }, {});
}
function keepAll(shelf: AnswerShelf, answers: Answers): void {
  for (const name of stageNames) {
    const answer = answers[name];
    if (answer !== undefined) shelf.keep<StageName>(name, answer);
  }
}
const shelfWith = (...all: readonly Answers[]) => {
  const shelf = createAnswerShelf();
  for (const answers of all) keepAll(shelf, answers);
  return shelf;
};
const pulledAlong = (x: number) => trayQuestion({ part: { scale: 1, pull: [x, 0, -1] } });
const at = (scale: number) => trayQuestion({ part: { scale } });

describe('the answers of a session', () => {
  it('are there at once after an undo', () => {
    const [one, two] = [answersAt(1), answersAt(2)];
    const shelf = shelfWith(one, two);
    expect(shelf.recall(at(1))).toEqual(one);
    expect(shelf.recall(at(2))).toEqual(two);
    expect(shelf.recall(at(3))).toEqual({});
  });

  it('are those to the present question only: what is asked otherwise is not answered', () => {
    const shelf = shelfWith(answersAt(1));
    const known = shelf.recall(trayQuestion({ cure: { startC: 30 } }));
    expect(Object.keys(known)).toEqual(
      stageNames.filter((name) => name !== 'oven run' && name !== 'fine oven run'),
    );
    const { mesh: _, ...rest } = at(1);
    expect(shelf.recall({ ...rest, mesh: 'another mesh' })).toEqual({});
  });

  it('hold a refusal, and nothing that needs what was refused', () => {
    const { halves, ...rest } = answersAt(1);
    const shelf = shelfWith(rest);
    shelf.keep('halves', { ...halves!, told: null, refused: 'It is a sheet.' });
    const known = shelf.recall(at(1));
    expect(known.halves?.refused).toBe('It is a sheet.');
    for (const name of stageNames) expect(name in known).toBe(!stages[name].needs.includes('halves'));
  });

  it('take the place of an older answer to the same question', () => {
    const shelf = shelfWith(answersAt(1));
    const { places } = answersAt(1);
    shelf.keep('places', { ...places!, told: [] });
    expect(shelf.recall(at(1)).places?.told).toEqual([]);
  });

  it('let the oldest go when they hold too many facets, but never the newest', () => {
    const shelf = shelfWith(answersAt(1, 700_000), answersAt(2, 700_000));
    expect(shelf.recall(at(1))).toEqual({});
    expect(shelf.recall(at(2))).toEqual(answersAt(2, 700_000));
    const huge = answersAt(3, 5_000_000);
    keepAll(shelf, huge);
    expect(shelf.recall(at(3))).toEqual(huge);
    expect(shelf.recall(at(2))).toEqual({});
  });

  it('let the oldest go when one large part was measured along many pulls', () => {
    const { part, walls, measurement } = answersAt(1, 700_000);
    const shelf = shelfWith({ part, walls } as Answers);
    const pulls = [1, 2, 3, 4].map(pulledAlong);
    for (const pull of pulls) {
      const key = askedOf('measurement', pull, shelf.recall(pull))!;
      shelf.keep('measurement', { ...measurement!, key });
    }
    const known = pulls.map((pull) => shelf.recall(pull).measurement !== undefined);
    expect(known).toEqual([false, false, true, true]);
  });

  it('are all kept of one part, however large: an oven program that is taken back is known', () => {
    const huge = answersAt(1, 5_000_000);
    const shelf = shelfWith(huge);
    shelf.keep('oven run', { ...huge['oven run']!, key: 'of another program' });
    expect(shelf.recall(at(1))).toEqual(huge);
  });

  it('let the oldest go when there are many', () => {
    const shelf = shelfWith(...[1, 2, 3, 4, 5, 6, 7].map((scale) => answersAt(scale)));
    expect(shelf.recall(at(1))).toEqual({});
    expect(shelf.recall(at(2))).toEqual(answersAt(2));
  });
});
