/** Fields kept of a run: what straight lines between them say against every step of it. */
import { describe, expect, test } from 'vitest';
import { valueAt } from '../../../src/core/cure/curve';
import { runHeat } from '../../../src/core/cure/heatRun';
import type { HeatFrame } from '../../../src/core/cure/heatFrames';
import { ovenAirCurve, usualOven } from '../../../src/core/cure/ovenAir';
import { usualProgram } from '../../../src/core/cure/ovenProgram';
import { idealProgram, options, stoneCase } from '../../support/cureCases';

/** Into the cooling, so that all that the dial does and the long quiet between is in it. */
const untilS = 18_000;
const one = stoneCase({ treatment: 'vapor-held', air: ovenAirCurve(usualProgram, usualOven, untilS) });
const { nx, ny, nz } = one.voxels;
const everyStep = runHeat(one, options(untilS, { frameEveryS: 0 })).frames;
const kept = (more: Parameters<typeof options>[1]) =>
  runHeat(one, options(untilS, { frameEveryS: 300, ...more })).frames;

const curveAt = (frames: readonly HeatFrame[], voxel: number) => ({
  timesS: frames.map(({ timeS }) => timeS),
  valuesC: frames.map(({ temperatureC }) => temperatureC[voxel]!),
});

function worstOffK(frames: readonly HeatFrame[], voxel: number): number {
  const lines = curveAt(frames, voxel);
  return Math.max(
    ...everyStep.map(({ timeS, temperatureC }) => Math.abs(valueAt(lines, timeS) - temperatureC[voxel]!)),
  );
}

const corner = 0;
const middle = Math.floor(nx / 2) + nx * (Math.floor(ny / 2) + ny * Math.floor(nz / 2));

describe('fields kept of a run', () => {
  test('stand closer where the mold moves fast: lines between them are about half a kelvin off in its middle, three at its corner', () => {
    const close = kept({ frameAfterK: 3 });
    expect(worstOffK(close, middle)).toBeLessThan(0.6);
    expect(worstOffK(close, corner)).toBeLessThan(3);
    expect(close.length).toBeLessThan(everyStep.length);
    // Evenly spaced at nine minutes they would miss what the dial does between them.
    expect(worstOffK(kept({ frameEveryS: 540 }), corner)).toBeGreaterThan(6);
  });

  test('are kept where the dial jumps and at the end, whatever else is asked', () => {
    const ideal = stoneCase({ air: idealProgram });
    const { frames } = runHeat(ideal, options(untilS, { frameEveryS: 1e9 }));
    expect(frames.map(({ timeS }) => timeS)).toEqual([0, idealProgram.timesS[1], untilS]);
  });

  test('never are more than there is room for, and reach from the start to the end', () => {
    const few = kept({ frameAfterK: 3, mostFrames: 16 });
    expect(few.length).toBeLessThanOrEqual(16);
    expect(few.length).toBeGreaterThanOrEqual(8);
    expect([few[0]!.timeS, few.at(-1)!.timeS]).toEqual([0, untilS]);
    const timesS = few.map(({ timeS }) => timeS);
    expect(timesS).toEqual([...new Set(timesS)].sort((a, b) => a - b));
  });

  test('are none where none are wanted', () => {
    expect(runHeat(one, options(untilS)).frames).toEqual([]);
  });
});
