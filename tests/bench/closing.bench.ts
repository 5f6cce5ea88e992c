/** Cost of following a change of ply, clamp or slider at the closing step, over bins and facet by facet. */
import { bedCurve } from '../../src/core/closing/bedCurve';
import { closingHistogram } from '../../src/core/closing/closingHistogram';
import { closingSamples } from '../../src/core/closing/closingSamples';
import type { ClosingSamples } from '../../src/core/closing/closingTypes';
import { wovenBed } from '../../src/core/closing/fiberBed';
import { tiltedBalance } from '../../src/core/closing/tiltedBalance';
import { findHealth } from '../../src/core/mesh/health';
import { measurePart } from '../../src/core/mesh/measure';
import { summarize } from '../../src/core/part/summary';
import { defaultClamp } from '../../src/steps/inputs/clamp';
import { closingReport } from '../../src/steps/closing/report';
import type { StepContext } from '../../src/steps/shared/context';
import { defaultProjectInputs } from '../../src/steps/inputs/project';
import { defaultMaterial } from '../../src/steps/inputs/material';
import { mapVertices, shellOfTriangles } from '../support/meshes';
import { trayPattern } from '../steps/contexts';

/** The page has worked the step out a few times before anybody drags a slider. */
const warmUps = 5;
const runs = 9;
const triangles = 300_000;
/** So many plies that the shell's wall presses them. */
const plies = 9;

/** Lines to print. */
export async function benchClosing(): Promise<string[]> {
  // Drawn out, or every place of the half sphere would answer a tilt alike and a handful of bins would do.
  const mesh = mapVertices(shellOfTriangles(triangles), ([x, y, z]) => [1.4 * x, y, 0.6 * z]);
  const measurement = measurePart(mesh, [0, 0, 1]);
  const health = findHealth(mesh);
  const summary = summarize(mesh, health, measurement);
  const samples = closingSamples(mesh, measurement);
  const histogramMs = median(() => closingHistogram(samples, measurement.centerMm));
  const context = (forceN: number): StepContext => ({
    inputs: {
      ...defaultProjectInputs,
      plies: {
        ...defaultProjectInputs.plies,
        stack: Array.from({ length: plies }, (_, index) => ({
          ...defaultProjectInputs.plies.stack[0]!,
          id: `ply-${index}`,
        })),
      },
      closing: {
        ...defaultProjectInputs.closing,
        clamps: [{ ...defaultClamp, forceN }],
      },
    },
    pattern: trayPattern,
    mold: null,
    measured: {
      health,
      summary,
      patches: [],
      unitGuess: { unit: 'mm', sure: true, reason: '' },
      fileBoxSize: [100, 100, 50],
    },
  });
  let forceN = 100;
  const reportMs = median(() => closingReport(context((forceN += 1))));
  const curve = bedCurve([{ bed: wovenBed, solidFiberMm: (plies * defaultMaterial.arealWeightGsm) / 1770 }]);
  const solve = (over: ClosingSamples) =>
    tiltedBalance({
      samples: over,
      curve,
      clamps: [{ forceN: (forceN += 1), atOpeningMm: 0, rateNPerMm: 8, planMm: [5, 3] }],
      lands: { outlineHalfMm: [80, 60], shimMm: 0 },
      halfSizeMm: [70, 50],
      sealedAtMm: null,
    });
  const binsMs = median(() => solve(summary.closing));
  const facetsMs = median(() => solve(samples));
  return [
    `closing, ${measurement.facetCount} triangles, ${plies} plies: whole report after a change ${reportMs.toFixed(1)} ms`,
    `one balance with tilts ${binsMs.toFixed(1)} ms over ${summary.closing.areaMm2.length} bins, ${facetsMs.toFixed(1)} ms facet by facet (${(binsMs / facetsMs).toFixed(3)} of it); bins once per measurement ${histogramMs.toFixed(0)} ms`,
  ];
}

function median(work: () => unknown): number {
  for (let run = 0; run < warmUps; run++) work();
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    work();
    times.push(performance.now() - start);
  }
  return times.toSorted((a, b) => a - b)[runs >> 1]!;
}
