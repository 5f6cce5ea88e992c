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

  it('tells the rim of another part as casting that part does, and leaves the bench as it was', async () => {
    const session = await measuredTray();
    const { geometry } = await session.castHalves(choices, nothing);
    const { packed } = await session.packOpenMesh();
    const other = new BenchSession();
    const part = {
      unit: 'mm' as const,
      declaredUnit: null,
      body: 0,
      scale: 1,
      pull: choices.pull,
      winding: 'repair' as const,
    };
    expect(await other.rimOf(packed, part, choices)).toEqual(geometry.rimOutlineMm);
    await expect(other.castHalves(choices, nothing)).rejects.toMatchObject({ code: 'job.notMeasured' });
  });

  it('corrects the walls of closing by a scraped place', async () => {
    const session = await measuredTray();
    const floor = await session.probe([0, 0, 30], [0, 0, -1]);
    const repair = {
      id: 'a',
      half: 'negative' as const,
      kind: 'scraped' as const,
      atMm: floor!.pointMm,
      radiusMm: 6,
      depthMm: 0.5,
    };
    const before = await session.repairedWalls([]);
    const after = await session.repairedWalls([repair]);
    const highest = (walls: typeof after) =>
      Array.from(walls.wallMm).reduce((most, wall) => Math.max(most, wall), 0);
    expect(highest(after)).toBeCloseTo(highest(before) + 0.5, 5);
    const areaMm2 = ({ closing }: typeof after) =>
      Array.from(closing.areaMm2).reduce((sum, area) => sum + area, 0);
    expect(areaMm2(after)).toBeCloseTo(areaMm2(before), 3);
  });
});
