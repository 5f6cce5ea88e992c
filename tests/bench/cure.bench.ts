/** Cost of the oven prediction, against a plain explicit scheme at the same accuracy, and why stone is kept near 10 mm. */
import type { DehydrationTreatment } from '../../src/core/cure/dehydration';
import { imbalance } from '../../src/core/cure/heatLedger';
import { runHeat } from '../../src/core/cure/heatRun';
import { laminateAnswers } from '../../src/core/cure/laminateAnswers';
import { blockRound, boxMoldVoxels, halfCode, type MoldVoxels } from '../../src/core/cure/moldVoxels';
import { ovenAirCurve, usualOven } from '../../src/core/cure/ovenAir';
import { programOnDial, usualProgram } from '../../src/core/cure/ovenProgram';
import { kineticsForLearning } from '../../src/core/cure/publishedKinetics';
import { options, stoneCase, uniformCase } from '../support/cureCases';
import { blockTheta, type UniformBlock } from '../support/exactHeat';
import { explicitHeat } from '../support/explicitHeat';

const hours5 = 18_000;
const blockMm = [90, 60, 40] as const;
const laminateMm = [70, 40, 0.7] as const;
const block: UniformBlock = {
  sizeM: blockMm.map((mm) => mm / 1000),
  k: 0.8,
  density: 1788,
  heat: 1080,
  film: 25,
};

/** Lines to print. */
export async function benchCure(): Promise<string[]> {
  return Promise.resolve([...fullRuns(), ...againstExplicit(), ...coverSweep()]);
}

function fastest<Result>(work: () => Result, runs: number): [Result, number] {
  let best = Infinity;
  let result = work();
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    result = work();
    best = Math.min(best, performance.now() - start);
  }
  return [result, best];
}

/** Everything switched on: usual oven, radiation, free water, dehydration, dose; then the heat of a curing resin too. */
function fullRuns(): string[] {
  const air = ovenAirCurve(usualProgram, usualOven, hours5);
  const kinds: readonly (readonly [string, number, DehydrationTreatment, 'C' | 'E' | null])[] = [
    ['dry, no dehydration', 0, 'none', null],
    ['damp, vapor-held', 1, 'vapor-held', null],
    ['damp, open air', 1, 'open air', null],
    ['damp, vapor-held, two-term kinetics with 400 J/g', 1, 'vapor-held', 'C'],
    ['damp, vapor-held, fast kinetics with 400 J/g', 1, 'vapor-held', 'E'],
  ];
  return [2, 1].flatMap((voxelMm) =>
    kinds.map(([name, heldShare, treatment, letter]) => {
      const voxels = boxMoldVoxels({ blockMm, laminateMm, voxelMm });
      const set = kineticsForLearning.find((each) => each.letter === letter);
      const one = {
        ...stoneCase({ voxels, air, heldShare, treatment }),
        kinetics: set === undefined ? null : { ...set.kinetics, heatJPerG: 400 },
      };
      const [run, ms] = fastest(() => runHeat(one, options(hours5)), voxelMm === 1 ? 1 : 3);
      return [
        `oven 5 h, 90 x 60 x 40 mm at ${voxelMm} mm (${voxels.half.length} voxels), ${name}: ${ms.toFixed(0)} ms`,
        `${run.steps} steps`,
        `books off by ${(100 * Math.abs(imbalance(run.ledger))).toFixed(4)} %`,
      ].join(', ');
    }),
  );
}

function uniformVoxels(counts: readonly [number, number, number]): MoldVoxels {
  const [nx, ny, nz] = counts;
  return {
    nx,
    ny,
    nz,
    sizeMm: [blockMm[0] / nx, blockMm[1] / ny, blockMm[2] / nz],
    originMm: [0, 0, 0],
    half: new Uint8Array(nx * ny * nz).fill(halfCode.positive),
    laminateShare: new Float32Array(nx * ny * nz).fill(1),
    filledShare: new Float32Array(nx * ny * nz).fill(1),
    faceAreaFactor: [1, 1, 1],
  };
}

/** Error at the middle of the block, which both schemes meet with the mean of its eight voxels, K. */
function middleError(
  field: ArrayLike<number>,
  [nx, ny, nz]: readonly [number, number, number],
  timeS: number,
): number {
  let sum = 0;
  for (const k of [nz / 2 - 1, nz / 2])
    for (const j of [ny / 2 - 1, ny / 2])
      for (const i of [Math.ceil(nx / 2) - 1, Math.floor(nx / 2)]) sum += field[i + nx * (j + ny * k)]!;
  return Math.abs(sum / 8 - (70 - 50 * blockTheta(block, timeS, [0, 0, 0])));
}

/** Plain conduction, 20 to 70 °C; the explicit scheme at 1 mm is run for a twelfth of the time and scaled. */
function againstExplicit(): string[] {
  return ([2, 1] as const).map((voxelMm) => {
    const counts = blockMm.map((mm) => mm / voxelMm) as unknown as [number, number, number];
    const [run, ms] = fastest(
      () =>
        runHeat({ ...uniformCase(block, uniformVoxels(counts), 20, 70), supplier: null }, options(hours5)),
      1,
    );
    const share = voxelMm === 1 ? 1 / 12 : 1;
    const start = performance.now();
    const plain = explicitHeat(block, counts, 20, 70, hours5 * share);
    const plainMs = (performance.now() - start) / share;
    const early = 1800;
    const ours = runHeat(
      { ...uniformCase(block, uniformVoxels(counts), 20, 70), supplier: null },
      options(early),
    );
    const ourError = middleError(ours.laminate.temperatureC.at(-1)!, counts, early);
    const plainError =
      voxelMm === 2
        ? middleError(explicitHeat(block, counts, 20, 70, early).temperatureC, counts, early)
        : null;
    return [
      `plain conduction 5 h at ${voxelMm} mm: implicit ${ms.toFixed(0)} ms in ${run.steps} steps, error after 30 min ${ourError.toFixed(3)} K`,
      `explicit ${plainMs.toFixed(0)} ms in ${Math.round(plain.steps / share)} steps${plainError === null ? ' (scaled from 25 min)' : `, error ${plainError.toFixed(3)} K`}`,
      `ratio ${(plainMs / ms).toFixed(1)}`,
    ].join('; ');
  });
}

const minutes = (seconds: number | null) =>
  seconds === null ? '  never' : `${(seconds / 60).toFixed(0).padStart(4)} min`;

/** Lag behind the 70 °C dwell against the stone over a flat laminate of 70 x 40 mm. */
function coverSweep(): string[] {
  const { dwells, heatedS } = programOnDial(usualProgram);
  const air = ovenAirCurve(usualProgram, usualOven, heatedS);
  const lines = [5, 10, 15, 20, 25, 30, 35, 40].map((coverMm) => {
    const voxels = boxMoldVoxels({
      blockMm: blockRound(laminateMm, coverMm),
      laminateMm,
      voxelMm: coverMm < 15 ? 2 : 4,
    });
    const cells = [0, 1].map((heldShare) => {
      const one = stoneCase({ voxels, air, heldShare, treatment: 'vapor-held' });
      const { coldest } = laminateAnswers(one, runHeat(one, options(heatedS)), dwells);
      return { lagS: coldest.dwells[0]!.lagS, peakC: coldest.peakC, dose: coldest.dose!.total };
    });
    const [dry, damp] = cells as [(typeof cells)[0], (typeof cells)[0]];
    const bar = '#'.repeat(Math.round((damp.lagS ?? heatedS) / 600));
    return `${String(coverMm).padStart(5)} mm | ${minutes(dry.lagS)} ${dry.peakC.toFixed(0).padStart(4)} °C ${dry.dose.toFixed(2)} | ${minutes(damp.lagS)} ${damp.peakC.toFixed(0).padStart(4)} °C ${damp.dose.toFixed(2)} | ${bar}`;
  });
  return [
    'stone cover against lag to 65 °C, peak and dose of the coldest place (70 °C 3 h, 120 °C 1.5 h, vapor-held):',
    '   cover |   dry                    |   damp                   | damp lag, 10 min each',
    ...lines,
  ];
}
