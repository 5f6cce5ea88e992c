import { describe, expect, it } from 'vitest';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import type { CureChoices } from '../../src/core/cure/predictCure';
import { BenchSession } from '../../src/jobs/benchSession';
import { createBench } from '../../src/jobs/client';
import type { Progress } from '../../src/jobs/protocol';
import { cureChoicesOf } from '../../src/steps/cure/cureChoicesOf';
import { inputsWith } from '../steps/contexts';
import { lowTemperatureCures } from '../support/curePrediction';
import { tray } from '../support/meshes';

const measureChoices = {
  unit: 'mm',
  declaredUnit: null,
  body: 0,
  scale: 1,
  pull: [0, 0, -1],
  winding: 'repair',
} as const;
const trayBlob = () => new Blob([writeStlBinary(tray([60, 40, 15], 2, 2)) as BlobPart]);
const nothing = () => undefined;

function choicesWith(cure: Parameters<typeof inputsWith>[0]['cure'] = {}): CureChoices {
  const choices = cureChoicesOf(
    inputsWith({
      part: { pull: [0, 0, -1] },
      cure: { supplierCures: lowTemperatureCures, voxelMm: 3, ...cure },
    }),
  );
  if (!choices.known) throw new Error(choices.why);
  return choices.value;
}

describe('predicting the oven run on the bench', { timeout: 60_000 }, () => {
  it('answers coarse at once and refined after it, with three runs each', async () => {
    const session = new BenchSession();
    await session.importFile(trayBlob(), 'tray.stl', nothing);
    await session.measure(measureChoices, nothing, nothing);
    const told: Progress[] = [];
    const coarse = await session.predictCure(choicesWith(), 'coarse', (progress) => told.push(progress));
    const refined = await session.predictCure(choicesWith(), 'refined', nothing);
    expect(coarse.voxelMm).toBe(4);
    expect(refined.voxelMm).toBe(3);
    expect(refined.runs.map(({ treatment }) => treatment)).toEqual(['none', 'vapor-held', 'open air']);
    expect(told.at(-1)).toEqual({ doing: 'heating the mold', share: 1 });
    // Dwells cost runs of their own, so they come with the refined answer.
    expect(coarse.runs[0]?.neededDwellS).toBeNull();
    expect(refined.runs[0]?.neededDwellS).toBeGreaterThan(0);
    for (const [i, run] of refined.runs.entries())
      expect(Math.abs(run.coldest.peakC - (coarse.runs[i]?.coldest.peakC ?? 0))).toBeLessThan(3);
  });

  it('holds the whole mold: as much laminate as the part has, cut at its coldest place', async () => {
    const session = new BenchSession();
    await session.importFile(trayBlob(), 'tray.stl', nothing);
    await session.measure(measureChoices, nothing, nothing);
    const { counts, runs } = await session.predictCure(choicesWith(), 'coarse', nothing);
    // Tray of 60 x 40 x 15 mm and 10 mm of stone on every side.
    expect(counts).toEqual([20, 15, 9]);
    const { slice } = runs[0]!;
    expect([slice.nx, slice.nz]).toEqual([20, 9]);
    expect(slice.temperatureC).toHaveLength(slice.timesS.length);
    expect(slice.laminateShare.some((share) => share > 0.2)).toBe(true);
  });

  it('compares programs and molds: less stone and drier stone follow the oven sooner', async () => {
    const session = new BenchSession();
    await session.importFile(trayBlob(), 'tray.stl', nothing);
    await session.measure(measureChoices, nothing, nothing);
    const choices = choicesWith({ freeWaterLeftPercent: 50, voxelMm: 4 });
    const { programs, variants } = await session.compareCure(choices, 110, nothing);
    const first = variants.map(({ firstDwellS }) => firstDwellS[0] ?? Infinity);
    const [planned = 0, thinner = 0, dry = 0, wet = 0] = first;
    expect(thinner).toBeLessThan(planned);
    expect(dry).toBeLessThan(planned);
    expect(wet).toBeGreaterThan(planned);
    expect(programs.length).toBeGreaterThan(5);
    for (const { program, totalS } of programs) {
      expect(program === null).toBe(totalS === null);
      for (const { targetC } of program?.stages ?? []) expect(targetC).toBeLessThanOrEqual(110);
    }
    // A hold that cures in every case is among them, and it is cooler than the stone's own range.
    expect(programs.some(({ name, totalS }) => name.startsWith('hold at') && totalS !== null)).toBe(true);
  });

  it('tells bad choices in a sentence', async () => {
    const session = new BenchSession();
    await session.importFile(trayBlob(), 'tray.stl', nothing);
    await session.measure(measureChoices, nothing, nothing);
    const blowsUp = choicesWith({
      kineticsForm: 'autocatalytic',
      kinetics: {
        ...inputsWith({}).cure.kinetics,
        k2PerS: 1e20,
        k2EnergyKJPerMol: 60,
        m: 1,
        n: 1,
        startCure: 0.01,
      },
    });
    await expect(session.predictCure(blowsUp, 'coarse', nothing)).rejects.toMatchObject({
      code: 'cure.kineticsBlowUp',
    });
  });

  it('lets a newer question take the place of an older one without ending the worker', async () => {
    let started = 0;
    const client = createBench(() => {
      started++;
      return { bench: new BenchSession(), crashed: new Promise(() => undefined), terminate: nothing };
    });
    await client.importFile(trayBlob(), 'tray.stl');
    await client.measure(measureChoices);
    const older = client.predictCure(choicesWith(), 'refined');
    const newer = client.predictCure(choicesWith({ freeWaterLeftPercent: 50 }), 'coarse');
    await expect(older).rejects.toMatchObject({ code: 'job.outdated' });
    expect((await newer).stage).toBe('coarse');
    expect(started).toBe(1);
    client.dispose();
  });
});
