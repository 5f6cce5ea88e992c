import { describe, expect, it } from 'vitest';
import { integrate } from '../../src/core/mesh/integrals';
import { readMeshFile } from '../../src/core/mesh/read/readMeshFile';
import { weld } from '../../src/core/mesh/weld';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { usualPours, type PourChoices } from '../../src/core/stone/pours/pourChoices';
import { BenchSession } from '../../src/jobs/benchSession';
import type { Progress } from '../../src/jobs/protocol';
import { tray } from '../support/meshes';

const choices: PourChoices = { ...usualPours, pull: [0, 0, -1] };
const nothing = () => undefined;

async function measuredTray(tear = false): Promise<BenchSession> {
  const session = new BenchSession();
  const mesh = tray([60, 40, 15], 2, 2);
  const bytes = writeStlBinary(tear ? { ...mesh, facets: mesh.facets.slice(3) } : mesh);
  await session.importFile(new Blob([bytes as BlobPart]), 'tray.stl', nothing);
  await session.measure(
    { unit: 'mm', declaredUnit: null, body: 0, scale: 1, pull: choices.pull, winding: 'repair' },
    nothing,
    nothing,
  );
  return session;
}

describe('casting on the bench', { timeout: 30_000 }, () => {
  it('answers with volumes and with both halves to draw, and tells its progress', async () => {
    const session = await measuredTray();
    const told: Progress[] = [];
    const { geometry, halves } = await session.castHalves(choices, (progress) => told.push(progress));
    expect(geometry.method).toBe('solid booleans');
    for (const half of [halves!.negative, halves!.positive]) {
      const drawn = half.display.reduce((sum, { corners }) => sum + corners.length / 9, 0);
      expect(drawn).toBe(half.facetCount);
    }
    expect(told.at(-1)!.share).toBe(1);
    expect(new Set(told.map(({ doing }) => doing)).size).toBeGreaterThan(2);
  });

  it('saves either half as an STL that measures the same', async () => {
    const session = await measuredTray();
    const { geometry } = await session.castHalves(choices, nothing);
    for (const half of ['negative', 'positive'] as const) {
      const { mesh } = weld(readMeshFile(await session.saveHalf(half, choices, nothing), 'half.stl'));
      const wanted = half === 'negative' ? geometry.negativeMm3 : geometry.positiveMm3;
      expect(integrate(mesh).volume / wanted).toBeCloseTo(1, 5);
    }
  });

  it('says why there is no half to save of a torn pattern', async () => {
    const session = await measuredTray(true);
    await expect(session.saveHalf('negative', choices, nothing)).rejects.toMatchObject({
      code: 'pours.noHalves',
      message: expect.stringContaining('3 edges are open') as string,
    });
  });

  it('wants a measured part first', async () => {
    await expect(new BenchSession().castHalves(choices, nothing)).rejects.toMatchObject({
      code: 'job.notMeasured',
    });
  });
});
