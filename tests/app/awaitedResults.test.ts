import { describe, expect, it } from 'vitest';
import { awaitedResults } from '../../src/app/project/awaitedResults';
import { nothingKnown, type DeskState } from '../../src/sheets/measuring/deskState';
import type { CureForecast } from '../../src/sheets/cure/forecast';
import type { MoldReply } from '../../src/pipeline/told';
import { defaultProjectInputs } from '../../src/steps/inputs';
import { trayMeasured, trayPattern } from '../steps/contexts';

type Forecast = Pick<CureForecast, 'prediction' | 'problem' | 'stopped'>;
const noForecast: Forecast = { prediction: null, problem: null, stopped: false };
const heated = (stage: 'coarse' | 'refined'): Forecast => ({
  ...noForecast,
  prediction: { stage } as CureForecast['prediction'],
});
const cast = { mold: {} as MoldReply };
const measured = { measured: trayMeasured };

function told(
  desk: Partial<DeskState>,
  forecast = noForecast,
  { pattern, otherHalf = false }: { pattern?: typeof trayPattern | null; otherHalf?: boolean } = {},
): readonly string[] {
  const inputs = { pattern: pattern === undefined ? trayPattern : pattern, inputs: defaultProjectInputs };
  return awaitedResults(inputs, { ...nothingKnown, ...desk }, forecast, otherHalf).map(
    ({ stage, isUnderWay }) => `${stage}${isUnderWay ? '' : ', not coming'}`,
  );
}

describe('what is awaited', () => {
  it('is nothing where there is no pattern, and nothing where all is in', () => {
    expect(told({}, noForecast, { pattern: null })).toEqual([]);
    expect(told({ ...measured, ...cast }, heated('refined'))).toEqual([]);
  });

  it('is everything at the start, and in the moments between two jobs', () => {
    expect(told({})).toEqual(['measurement', 'halves', 'oven run']);
    expect(told({ measured: { ...trayMeasured, patches: null } })).toEqual(['places', 'halves', 'oven run']);
    expect(told(measured)).toEqual(['halves', 'oven run']);
    expect(told({ ...measured, ...cast })).toEqual(['oven run']);
    expect(told({ ...measured, ...cast }, heated('coarse'))).toEqual(['fine oven run']);
  });

  it('is the import while the old pattern is still shown, all in', () => {
    expect(told({ ...measured, ...cast, importing: true }, heated('refined'))).toEqual(['import']);
    expect(told({ importing: true }, noForecast, { pattern: null })).toEqual(['import']);
  });

  it('is the walls of repaired stone, and the rim of another half', () => {
    expect(told({ ...measured, ...cast, repairsAwaited: true }, heated('refined'))).toEqual([
      'repaired walls',
    ]);
    expect(told({ ...measured, ...cast }, heated('refined'), { otherHalf: true })).toEqual(['other half']);
  });

  it('does not come by itself after a cancel', () => {
    expect(told({ stopped: true })).toEqual([
      'measurement, not coming',
      'halves, not coming',
      'oven run, not coming',
    ]);
    expect(told({ ...measured, castStopped: true })).toEqual(['halves, not coming', 'oven run, not coming']);
    expect(told({ ...measured, ...cast }, { ...heated('coarse'), stopped: true })).toEqual([
      'fine oven run, not coming',
    ]);
  });

  it('is nothing more where the halves or the oven run cannot be had: why is a result', () => {
    expect(told({ ...measured, moldProblem: 'It is a sheet.' })).toEqual([]);
    expect(told({ ...measured, ...cast }, { ...noForecast, problem: 'No stage.' })).toEqual([]);
  });
});
