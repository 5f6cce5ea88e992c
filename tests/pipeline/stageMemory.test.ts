/** What the stages tell of a part: as measured in one straight line, and the same however it was come by. */
import { describe, expect, it } from 'vitest';
import { preparePack } from '../../src/core/mesh/pack';
import { preparePattern } from '../../src/core/part/preparePattern';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { openPacked, packPattern, readPatternFile } from '../../src/pipeline/patternFile';
import { StageMemory } from '../../src/pipeline/stageMemory';
import type { RepairedWalls } from '../../src/pipeline/told';
import { asText } from '../support/asText';
import { lowTemperatureCures } from '../support/curePrediction';
import { measureSaved } from '../support/measureSaved';
import { box, domeShell, domeShellWallMm, joinMeshes, mapVertices, tray } from '../support/meshes';
import { ignore, measuredPart, memoryOf, openPart, questionWith, smallTray, trayQuestion } from './support';

const dome = domeShell(24, 48);
const alongZ = {
  unit: 'mm',
  declaredUnit: null,
  body: 0,
  scale: 1,
  pull: [0, 0, 1],
  winding: 'repair',
} as const;

describe('the measured part', () => {
  it('is what measuring the saved mesh in one straight line gives', async () => {
    await preparePack();
    const { canonical } = preparePattern(writeStlBinary(dome), 'part.stl');
    const wanted = measureSaved(canonical.mesh, alongZ);
    const { reply, shape } = await measuredPart(dome);
    expect(asText(reply.summary)).toEqual(asText(wanted.summary));
    expect(asText(reply.health)).toEqual(asText(wanted.health));
    expect(asText(reply.maps.rayWallMm)).toBe(asText(wanted.measurement.rayWallMm));
    expect(asText(reply.maps.ballWallMm)).toBe(asText(wanted.measurement.ballWallMm));
    expect(asText(reply.maps.kind)).toBe(asText(wanted.measurement.kind));
    expect(shape).toMatchObject({ unit: wanted.unit, fileBoxSize: wanted.fileBoxSize });
    expect(reply.summary.showBallWall.median).toBeCloseTo(domeShellWallMm, 1);
  });

  it('is the same after saving and opening again', async () => {
    const { shape, reply } = await measuredPart(dome);
    const { canonical } = await readPatternFile(new Uint8Array(writeStlBinary(dome)), 'part.stl', ignore);
    const later = new StageMemory();
    later.openMesh('the mesh', await openPacked(packPattern(canonical).packed));
    expect(asText(await later.tell('measurement', questionWith(), ignore))).toEqual(asText(reply));
    expect(asText(await later.tell('part', questionWith(), ignore))).toEqual(asText(shape));
  });

  it('is drawn facet by facet, each once, in order', async () => {
    const { shape } = await measuredPart(dome);
    expect(shape.facetCount).toBeGreaterThan(dome.facets.length / 3);
    expect(shape.boxMaxMm[2]).toBeCloseTo(50, 2);
    let next = 0;
    for (const { firstFacet, corners } of shape.display) {
      expect(firstFacet).toBe(next);
      next += corners.length / 9;
    }
    expect(next).toBe(shape.facetCount);
  });

  it('is along another pull what a fresh memory measures', async () => {
    const sideways = questionWith({ part: { pull: [1, 0, 0] } });
    const part = await measuredPart(dome);
    const turned = await part.tell('measurement', sideways);
    expect(asText(turned)).toEqual(asText((await measuredPart(dome, sideways)).reply));
    expect(asText(await part.tell('measurement'))).toEqual(asText(part.reply));
  });

  it('has its walls measured once, whatever the pull', async () => {
    const { memory, tell } = await openPart(dome);
    const doings: string[] = [];
    const note = (doing: string) => void (doings.at(-1) === doing || doings.push(doing));
    await memory.tell('measurement', questionWith(), note);
    expect(doings).toContain('measuring walls');
    doings.length = 0;
    await memory.tell('measurement', questionWith({ part: { pull: [1, 0, 0] } }), note);
    expect(doings[0]).toBe('looking for undercuts');
    expect(doings).not.toContain('measuring walls');
    expect(await tell('walls')).toBeNull();
  });

  it('counts findings as the view counts its facets', async () => {
    // The larger body is whole; the smaller one lacks a facet of its 5 mm box.
    const small = mapVertices(box([0, 0, 0], [5, 5, 5]), ([x, y, z]) => [x + 200, y, z]);
    const both = joinMeshes(domeShell(4, 8), { ...small, facets: small.facets.slice(3) });
    const all = await measuredPart(both);
    const second = await measuredPart(both, questionWith({ part: { body: 2 } }));
    expect(all.reply.health.show.openEdges.length).toBe(3);
    for (const part of [all, second]) {
      expect(part.reply.findingFacets.openEdges.length).toBeGreaterThan(3);
      expect(shownAreaMm2(part, part.reply.findingFacets.openEdges)).toBeCloseTo((3 * 25) / 2, 1);
    }
    const first = await measuredPart(both, questionWith({ part: { body: 1 } }));
    expect(first.reply.findingFacets.openEdges.length).toBe(0);
  });

  it('of a flipped facet is turned right, or left as it is', async () => {
    const flipped = { positions: dome.positions, facets: dome.facets.slice() };
    flipped.facets.set([flipped.facets[1]!, flipped.facets[0]!], 0);
    const repaired = await measuredPart(flipped);
    expect(repaired.reply.health.flippedFacets).toBe(1);
    expect(asText(repaired.reply.summary)).toEqual(asText((await measuredPart(dome)).reply.summary));
    const asFile = await measuredPart(flipped, questionWith({ part: { winding: 'asFile' } }));
    expect(asText(asFile.reply.summary)).not.toEqual(asText(repaired.reply.summary));
  });
});

/** Area of the facets as they are drawn. */
function shownAreaMm2(
  { shape }: Pick<Awaited<ReturnType<typeof measuredPart>>, 'shape'>,
  facets: Uint32Array,
): number {
  const corners = (facet: number) => {
    const chunk = shape.display.findLast(({ firstFacet }) => firstFacet <= facet)!;
    return chunk.corners.subarray(9 * (facet - chunk.firstFacet), 9 * (facet - chunk.firstFacet) + 9);
  };
  return [...facets].reduce((sum, facet) => {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = corners(facet);
    const u = [bx! - ax!, by! - ay!, bz! - az!] as const;
    const v = [cx! - ax!, cy! - ay!, cz! - az!] as const;
    return (
      sum + Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) / 2
    );
  }, 0);
}

describe('what is missing is said', () => {
  it('before a mesh is open, and of another mesh than the open one', async () => {
    await expect(new StageMemory().tell('part', questionWith(), ignore)).rejects.toMatchObject({
      name: 'Problem',
      code: 'job.noMesh',
    });
    const memory = await memoryOf(smallTray);
    const other = { ...questionWith(), mesh: 'another mesh' };
    await expect(memory.tell('measurement', other, ignore)).rejects.toMatchObject({ code: 'job.noMesh' });
    await expect(memory.ask('cut', other, { axis: 'x', atMm: 0 }, ignore)).rejects.toMatchObject({
      code: 'job.noMesh',
    });
  });

  it('when the inputs make no part', async () => {
    const { tell } = await openPart(smallTray);
    await expect(tell('measurement', questionWith({ part: { pull: [0, 0, 0] } }))).rejects.toMatchObject({
      code: 'pull.zero',
    });
    await expect(tell('part', questionWith({ part: { body: 2 } }))).rejects.toMatchObject({
      code: 'part.noSuchBody',
    });
  });

  it('and a stage that has failed is asked anew', async () => {
    const { tell, question } = await openPart(smallTray);
    await expect(tell('measurement', questionWith({ part: { pull: [0, 0, 0] } }))).rejects.toThrow();
    expect(asText(await tell('measurement'))).toEqual(
      asText((await measuredPart(smallTray, question)).reply),
    );
  });
});

describe('a mesh that is opened', () => {
  it('leaves nothing of the one before', async () => {
    const { memory } = await measuredPart(dome);
    const larger = tray([60, 40, 12], 1);
    const { canonical } = await readPatternFile(new Uint8Array(writeStlBinary(larger)), 'b.stl', ignore);
    memory.openMesh('the mesh', canonical.mesh);
    expect(asText(await memory.tell('measurement', questionWith(), ignore))).toEqual(
      asText((await measuredPart(larger)).reply),
    );
  });
});

const highest = ({ wallMm }: Pick<RepairedWalls, 'wallMm'>) =>
  Array.from(wallMm).reduce((most, wall) => Math.max(most, wall), 0);
const areaMm2 = ({ areaMm2: areas }: RepairedWalls['closing']) =>
  Array.from(areas).reduce((sum, area) => sum + area, 0);

describe('repairs of the stone', () => {
  it('correct the walls of closing at a scraped place; without any there is nothing to correct', async () => {
    const { tell, ask, reply } = await measuredPart(
      tray([60, 40, 15], 2, 2),
      questionWith({ part: { pull: [0, 0, -1] } }),
    );
    expect(await tell('repaired walls')).toBeNull();
    const floor = await ask('probe', { originMm: [0, 0, 30], direction: [0, 0, -1] });
    const scraped = {
      id: 'a',
      half: 'negative' as const,
      kind: 'scraped' as const,
      atMm: [...floor!.pointMm] as [number, number, number],
      radiusMm: 6,
      depthMm: 0.5,
      note: '',
    };
    const repaired = questionWith({ part: { pull: [0, 0, -1] }, mold: { repairs: [scraped] } });
    const after = (await tell('repaired walls', repaired))!;
    expect(highest(after)).toBeCloseTo(highest(reply.maps.closing) + 0.5, 5);
    expect(areaMm2(after.closing)).toBeCloseTo(areaMm2(reply.summary.closing), 3);
    expect(await tell('repaired walls')).toBeNull();
  });
});

describe('the two halves', { timeout: 30_000 }, () => {
  it('are told with volumes and with both to draw, and with progress', async () => {
    const { memory, question } = await openPart(smallTray, trayQuestion());
    const told: (readonly [string, number])[] = [];
    const { geometry, halves } = await memory.tell('halves', question, (...one) => void told.push(one));
    expect(geometry.method).toBe('solid booleans');
    for (const half of [halves!.negative, halves!.positive]) {
      const drawn = half.display.reduce((sum, { corners }) => sum + corners.length / 9, 0);
      expect(drawn).toBe(half.facetCount);
    }
    expect(told.at(-1)![1]).toBe(1);
    expect(new Set(told.map(([doing]) => doing)).size).toBeGreaterThan(2);
  });
});

describe('the oven run', { timeout: 60_000 }, () => {
  const cure = { supplierCures: lowTemperatureCures, voxelMm: 3 };
  const large: IndexedMesh = tray([60, 40, 15], 2, 2);
  const part = { pull: [0, 0, -1] as [number, number, number] };

  it('is coarse at once and refined after it, with three runs each', async () => {
    const { memory, tell, question } = await openPart(large, questionWith({ part, cure }));
    const told: (readonly [string, number])[] = [];
    const coarse = await memory.tell('oven run', question, (...one) => void told.push(one));
    const refined = await tell('fine oven run');
    expect([coarse.stage, refined.stage]).toEqual(['coarse', 'refined']);
    expect(coarse.voxelMm).toBe(4);
    expect(refined.voxelMm).toBe(3);
    expect(refined.runs.map(({ treatment }) => treatment)).toEqual(['none', 'vapor-held', 'open air']);
    expect(told.at(-1)).toEqual(['heating the mold', 1]);
    // Dwells cost runs of their own, so they come with the refined answer.
    expect(coarse.runs[0]?.neededDwellS).toBeNull();
    expect(refined.runs[0]?.neededDwellS).toBeGreaterThan(0);
    for (const [i, run] of refined.runs.entries())
      expect(Math.abs(run.coldest.peakC - (coarse.runs[i]?.coldest.peakC ?? 0))).toBeLessThan(3);
  });

  it('holds the whole mold: as much laminate as the part has, cut at its coldest place', async () => {
    const { tell } = await openPart(large, questionWith({ part, cure }));
    const { counts, runs } = await tell('oven run');
    // Tray of 60 x 40 x 15 mm and 10 mm of stone on every side.
    expect(counts).toEqual([20, 15, 9]);
    const { slice } = runs[0]!;
    expect([slice.nx, slice.nz]).toEqual([20, 9]);
    expect(slice.temperatureC).toHaveLength(slice.timesS.length);
    expect(slice.laminateShare.some((share) => share > 0.2)).toBe(true);
  });

  it('tells bad choices in a sentence', async () => {
    const kinetics = {
      ...questionWith().inputs.cure.kinetics,
      k2PerS: 1e20,
      k2EnergyKJPerMol: 60,
      m: 1,
      n: 1,
      startCure: 0.01,
    };
    const { tell } = await openPart(
      smallTray,
      trayQuestion({ cure: { ...cure, voxelMm: 8, kineticsForm: 'autocatalytic', kinetics } }),
    );
    await expect(tell('oven run')).rejects.toMatchObject({ code: 'cure.kineticsBlowUp' });
  });
});
