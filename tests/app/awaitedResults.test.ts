import { describe, expect, it } from 'vitest';
import { awaitedResults, isMeasurementStopped } from '../../src/app/project/awaitedResults';
import type { Answers } from '../../src/pipeline/evaluate';
import { stageNames } from '../../src/pipeline/stages';
import type { StageName } from '../../src/pipeline/told';
import { nothingKnown, type DeskState } from '../../src/sheets/measuring/deskState';
import { questionWith } from '../pipeline/support';

const question = questionWith();
/** Of a stage that has told something. */
const told = (name: StageName) => ({ key: name, told: { of: name }, refused: null });
const refused = (name: StageName, why: string) => ({ key: name, told: null, refused: why });

/** All stages before this one have told something; it itself and those after it have not. */
const answersBefore = (name: StageName | null): Answers =>
  Object.fromEntries(
    stageNames
      .slice(0, name === null ? stageNames.length : stageNames.indexOf(name))
      .map((known) => [known, told(known)]),
  );

function awaited(desk: Partial<DeskState>, otherHalf = false, fit = false): readonly string[] {
  return awaitedResults({ ...nothingKnown, question, ...desk }, otherHalf, fit).map(
    ({ stage, isUnderWay }) => `${stage}${isUnderWay ? '' : ', not coming'}`,
  );
}

const all = answersBefore(null);

describe('what is awaited', () => {
  it('is the fit once something is entered, as long as the part is measured or will be', () => {
    expect(awaited({ answers: all }, false, true)).toEqual(['fit']);
    expect(awaited({ answers: answersBefore('measurement'), stopped: 'measurement' }, false, true)).toContain(
      'fit, not coming',
    );
    const noPart = { ...answersBefore('part'), part: refused('part', 'There is no body 4.') };
    expect(awaited({ answers: noPart }, false, true)).not.toContain('fit');
  });

  it('is nothing where there is no pattern, and nothing where all is in', () => {
    expect(awaited({ question: null })).toEqual([]);
    expect(awaited({ answers: all })).toEqual([]);
  });

  it('is everything at the start, and in the moments between two stages', () => {
    expect(awaited({})).toEqual(['measurement', 'halves', 'oven run']);
    expect(awaited({ answers: answersBefore('walls') })).toEqual(['measurement', 'halves', 'oven run']);
    expect(awaited({ answers: answersBefore('places') })).toEqual([
      'places',
      'repaired walls',
      'halves',
      'oven run',
    ]);
    expect(awaited({ answers: answersBefore('halves') })).toEqual(['halves', 'oven run']);
    expect(awaited({ answers: answersBefore('filled mold') })).toEqual(['oven run']);
    expect(awaited({ answers: answersBefore('fine oven run') })).toEqual(['fine oven run']);
  });

  it('is the import while the old pattern is still shown, all in', () => {
    expect(awaited({ answers: all, importing: true })).toEqual(['import']);
    expect(awaited({ question: null, importing: true })).toEqual(['import']);
  });

  it('is the walls of repaired stone, and the rim of another half', () => {
    const { 'repaired walls': _, ...rest } = all;
    expect(awaited({ answers: rest })).toEqual(['repaired walls']);
    expect(awaited({ answers: all }, true)).toEqual(['other half']);
    expect(awaited({ answers: { ...all, halves: refused('halves', 'It is a sheet.') } }, true)).toEqual([]);
  });

  it('does not come by itself after a cancel: the stopped stage and what comes after it', () => {
    expect(awaited({ stopped: 'measurement' })).toEqual([
      'measurement, not coming',
      'halves, not coming',
      'oven run, not coming',
    ]);
    expect(awaited({ answers: answersBefore('halves'), stopped: 'halves' })).toEqual([
      'halves, not coming',
      'oven run, not coming',
    ]);
    expect(awaited({ answers: answersBefore('fine oven run'), stopped: 'fine oven run' })).toEqual([
      'fine oven run, not coming',
    ]);
  });

  it('does not come by itself when a stage that nobody is told of was stopped', () => {
    for (const stopped of ['part', 'walls'] as const)
      expect(awaited({ answers: answersBefore(stopped), stopped })).toEqual([
        'measurement, not coming',
        'halves, not coming',
        'oven run, not coming',
      ]);
  });

  it('is nothing more where the halves or the oven run cannot be had: why is a result', () => {
    const noHalves = { ...answersBefore('halves'), halves: refused('halves', 'It is a sheet.') };
    expect(awaited({ answers: { ...noHalves, 'filled mold': told('filled mold') as never } })).toEqual([]);
    const noRun = { ...answersBefore('oven run'), 'oven run': refused('oven run', 'The rate blows up.') };
    expect(awaited({ answers: noRun })).toEqual([]);
    const noProgram = questionWith({ cure: { stages: [] } });
    expect(awaited({ question: noProgram, answers: answersBefore('oven run') })).toEqual([]);
  });
});

it('a measurement is stopped by any stage of the part, and by no stage of the mold', () => {
  expect(stageNames.filter(isMeasurementStopped)).toEqual([
    'part',
    'walls',
    'measurement',
    'places',
    'repaired walls',
  ]);
  expect(isMeasurementStopped(null)).toBe(false);
});
