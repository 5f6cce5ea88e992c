import { describe, expect, it } from 'vitest';
import { findHealth } from '../../src/core/mesh/health';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { measureSaved } from '../support/measureSaved';
import { preparePack } from '../../src/core/mesh/pack';
import { preparePattern } from '../../src/core/mesh/preparePattern';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { BenchSession } from '../../src/jobs/benchSession';
import type { WallsHelper } from '../../src/jobs/startWallsHelper';
import { WallsBench } from '../../src/jobs/wallsBench';
import { asText } from '../support/asText';
import { indexElsewhere } from '../support/indexElsewhere';
import { box, domeShell, domeShellWallMm, joinMeshes, mapVertices, tray } from '../support/meshes';
import { alongZ, ignore, shapeCatcher, stlBlob } from './support';
import { overMessages } from './wireSupport';

const dome = domeShell(24, 48);

async function measuredSession(mesh = dome, choices = alongZ) {
  const session = new BenchSession();
  await session.importFile(stlBlob(mesh), 'part.stl', ignore);
  const { shapes, onShape } = shapeCatcher();
  const reply = await session.measure(choices, ignore, onShape);
  return { session, reply, shapes };
}

describe('bench session', () => {
  it('tells the facts of an imported file as the headless command does', async () => {
    await preparePack();
    const bytes = writeStlBinary(dome);
    const { canonical, ...facts } = preparePattern(bytes, 'part.stl');
    const reply = await new BenchSession().importFile(stlBlob(dome), 'part.stl', ignore);
    expect(reply).toEqual({ ...facts, packErrorFileUnits: canonical.errorFileUnits });
  });

  it('measures what the headless command measures', async () => {
    await preparePack();
    const { canonical } = preparePattern(writeStlBinary(dome), 'part.stl');
    const wanted = measureSaved(canonical.mesh, alongZ);
    const { reply } = await measuredSession();
    expect(asText(reply.summary)).toEqual(asText(wanted.summary));
    expect(asText(reply.health)).toEqual(asText(wanted.health));
    expect(asText(reply.maps.rayWallMm)).toBe(asText(wanted.measurement.rayWallMm));
    expect(asText(reply.maps.ballWallMm)).toBe(asText(wanted.measurement.ballWallMm));
    expect(asText(reply.maps.kind)).toBe(asText(wanted.measurement.kind));
    expect(reply.summary.showBallWall.median).toBeCloseTo(domeShellWallMm, 1);
  });

  it('measures the same after saving and opening again', async () => {
    const { session, reply, shapes } = await measuredSession();
    const { packed, meshKey } = await session.packOpenMesh();
    const later = new BenchSession();
    await later.openMesh(packed);
    const again = shapeCatcher();
    expect(asText(await later.measure(alongZ, ignore, again.onShape))).toEqual(asText(reply));
    expect(asText(again.shapes)).toEqual(asText(shapes));
    expect(await later.packOpenMesh()).toEqual({ packed, meshKey });
  });

  it('gives the same values over messages as on the own thread', async () => {
    const { reply, shapes, session } = await measuredSession();
    const { bench, end } = overMessages(new BenchSession());
    await bench.importFile(stlBlob(dome), 'part.stl', ignore);
    const told = shapeCatcher();
    expect(asText(await bench.measure(alongZ, ignore, told.onShape))).toEqual(asText(reply));
    expect(asText(told.shapes)).toEqual(asText(shapes));
    const band = {
      measure: 'ray',
      lowMm: 1,
      highMm: 1.5,
      leastDraftDeg: 2,
      leastCornerRadiusMm: 1,
      leastOuterEdgeRadiusMm: null,
    } as const;
    expect(await bench.findPatches(band)).toEqual(await session.findPatches(band));
    expect(await bench.cut({ axis: 'x', atMm: 3 })).toEqual(await session.cut({ axis: 'x', atMm: 3 }));
    end();
  });

  it('draws every facet that is measured once, in order', async () => {
    const { shapes } = await measuredSession();
    const [shape] = shapes;
    expect(shape?.facetCount).toBeGreaterThan(dome.facets.length / 3);
    expect(shape?.boxMaxMm[2]).toBeCloseTo(50, 2);
    let next = 0;
    for (const { firstFacet, corners } of shape?.display ?? []) {
      expect(firstFacet).toBe(next);
      next += corners.length / 9;
    }
    expect(next).toBe(shape?.facetCount);
  });

  it('measures another pull as a fresh session would, without telling the shape again', async () => {
    const sideways = { ...alongZ, pull: [1, 0, 0] } as const;
    const { session } = await measuredSession();
    const told = shapeCatcher();
    const turned = await session.measure(sideways, ignore, told.onShape);
    expect(told.shapes).toEqual([]);
    expect(asText(turned)).toEqual(asText((await measuredSession(dome, sideways)).reply));
  });

  it('counts findings as the view counts its facets', async () => {
    // The larger body is whole; the smaller one lacks a facet of its 5 mm box.
    const whole = domeShell(4, 8);
    const small = mapVertices(box([0, 0, 0], [5, 5, 5]), ([x, y, z]) => [x + 200, y, z]);
    const torn = { ...small, facets: small.facets.slice(3) };
    const both = joinMeshes(whole, torn);
    const shownArea = ({ reply, shapes }: Awaited<ReturnType<typeof measuredSession>>) => {
      const corners = (facet: number) => {
        const chunk = shapes[0]!.display.findLast(({ firstFacet }) => firstFacet <= facet)!;
        return chunk.corners.subarray(9 * (facet - chunk.firstFacet), 9 * (facet - chunk.firstFacet) + 9);
      };
      return [...reply.findingFacets.openEdges].reduce((sum, facet) => {
        const [ax, ay, az, bx, by, bz, cx, cy, cz] = corners(facet);
        const u = [bx! - ax!, by! - ay!, bz! - az!] as const;
        const v = [cx! - ax!, cy! - ay!, cz! - az!] as const;
        return (
          sum +
          Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) / 2
        );
      }, 0);
    };
    const all = await measuredSession(both);
    const second = await measuredSession(both, { ...alongZ, body: 2 });
    expect(all.reply.health.show.openEdges.length).toBe(3);
    for (const session of [all, second]) {
      expect(session.reply.findingFacets.openEdges.length).toBeGreaterThan(3);
      expect(shownArea(session)).toBeCloseTo((3 * 25) / 2, 1);
    }
    const first = await measuredSession(both, { ...alongZ, body: 1 });
    expect(first.reply.findingFacets.openEdges.length).toBe(0);
  });

  it('probes along a line of sight, and tells when it misses', async () => {
    const { session } = await measuredSession();
    const probe = await session.probe([1, 2, 200], [0, 0, -2]);
    expect(probe?.pointMm[2]).toBeCloseTo(50, 0);
    expect(probe?.ballWallMm).toBeCloseTo(domeShellWallMm, 1);
    expect(probe?.place).toContain('show face');
    expect(probe?.normal[2]).toBeGreaterThan(0.9);
    expect(await session.probe([500, 0, 200], [0, 0, -1])).toBeNull();
  });

  it('cuts, finds places, a pull and faces that touch', async () => {
    const { session } = await measuredSession(tray([60, 40, 12], 1));
    const section = await session.cut({ axis: 'y', atMm: 3 });
    expect(section.lines.length).toBe(1);
    expect(section.walls.length).toBeGreaterThan(0);
    for (const { wallMm } of section.walls) expect(wallMm).toBeCloseTo(1, 3);
    const findings = await session.findPatches({
      measure: 'ray',
      lowMm: 1.2,
      highMm: 2,
      leastDraftDeg: 2,
      leastCornerRadiusMm: null,
      leastOuterEdgeRadiusMm: null,
    });
    expect(findings.map(({ finding }) => finding)).toEqual(expect.arrayContaining(['thin', 'drags']));
    expect(Math.abs((await session.bestPull(ignore)).pull[2])).toBeCloseTo(1, 6);
    expect(await session.findSelfTouching(ignore)).toEqual({ facetCount: 0, facets: new Uint32Array(0) });
  });

  it('says what is missing instead of guessing', async () => {
    const session = new BenchSession();
    await expect(session.packOpenMesh()).rejects.toMatchObject({ code: 'job.noMesh' });
    await session.importFile(stlBlob(dome), 'part.stl', ignore);
    await expect(session.cut({ axis: 'x', atMm: 0 })).rejects.toMatchObject({ code: 'job.notMeasured' });
    await expect(session.measure({ ...alongZ, pull: [0, 0, 0] }, ignore, ignore)).rejects.toMatchObject({
      code: 'pull.zero',
    });
  });

  it('keeps the open mesh when an import is refused', async () => {
    const { session, reply } = await measuredSession();
    await expect(session.importFile(new Blob([]), 'nothing.stl', ignore)).rejects.toMatchObject({
      name: 'Problem',
    });
    expect(asText((await session.measure(alongZ, ignore, ignore)).summary)).toEqual(asText(reply.summary));
  });
});

/** A helper on the own thread, started at any size. */
function helpedSession(
  healthFails = false,
  wallsOnlyFrom = Infinity,
  end: () => void = ignore,
  onSlice: () => void = ignore,
) {
  let bench: WallsBench | null = null;
  const helper: Omit<WallsHelper, 'end'> = {
    findHealth: (mesh) =>
      healthFails ? Promise.reject(new Error('the helper is gone')) : Promise.resolve(findHealth(mesh)),
    load: async (_part, index) => {
      bench = new WallsBench(indexElsewhere(index));
    },
    measure: async (_part, from, to, pull, withWalls) => {
      if (bench === null) throw new Error('no part yet');
      onSlice();
      bench.measure(from, to, pull, withWalls);
      return bench.slice(from, to, withWalls);
    },
  };
  return new BenchSession(() => ({ ...helper, end }), { over: 0, wallsOnlyFrom });
}

const silence = () => new Promise<never>(() => undefined);

describe('bench session with a helper', () => {
  const flipped = { positions: dome.positions, facets: dome.facets.slice() };
  flipped.facets.set([flipped.facets[1]!, flipped.facets[0]!], 0);

  it.each([
    ['a part that is wound right', dome, 'repair', false],
    ['a part with a flipped facet, repaired', flipped, 'repair', false],
    ['a part with a flipped facet, taken as it is', flipped, 'asFile', false],
    ['a helper that fails at once', flipped, 'repair', true],
  ] as const)('measures the same as alone: %s', async (_, mesh, winding, healthFails) => {
    const choices = { ...alongZ, winding };
    let slices = 0;
    const session = helpedSession(healthFails, Infinity, ignore, () => slices++);
    await session.importFile(stlBlob(mesh), 'part.stl', ignore);
    const { shapes, onShape } = shapeCatcher();
    const reply = await session.measure(choices, ignore, onShape);
    const alone = await measuredSession(mesh, choices);
    expect(asText(reply)).toEqual(asText(alone.reply));
    expect(asText(shapes.at(-1))).toEqual(asText(alone.shapes.at(-1)));
    expect(reply.health.flippedFacets).toBe(mesh === flipped ? 1 : 0);
    expect(slices).toBeGreaterThan(0);
  });

  it('lets go of the helper of a large part once its walls are measured, and goes on alone', async () => {
    let ended = 0;
    const session = helpedSession(false, 1, () => ended++);
    await session.importFile(stlBlob(dome), 'part.stl', ignore);
    await session.measure(alongZ, ignore, ignore);
    expect(ended).toBe(1);
    const turned = { ...alongZ, pull: [1, 0, 0] as const };
    const reply = await session.measure(turned, ignore, ignore);
    expect(asText(reply)).toEqual(asText((await measuredSession(dome, turned)).reply));
    expect(ended).toBe(1);
  });

  it.each(['findHealth', 'load', 'measure'] as const)(
    'ends a helper that falls silent in %s, measures the same alone, and starts another for the next part',
    async (silentIn) => {
      let started = 0;
      let ended = 0;
      const working = {
        findHealth: (mesh: IndexedMesh) => Promise.resolve(findHealth(mesh)),
        load: () => Promise.resolve(),
        measure: silence,
        end: () => ended++,
      };
      const helper: WallsHelper = { ...working, [silentIn]: silence };
      const start = () => {
        started++;
        return helper;
      };
      const session = new BenchSession(start, { over: 0, silenceMs: 20 });
      await session.importFile(stlBlob(dome), 'part.stl', ignore);
      const doings: string[] = [];
      const reply = await session.measure(alongZ, ({ doing }) => doings.push(doing), ignore);
      expect(asText(reply)).toEqual(asText((await measuredSession(dome, alongZ)).reply));
      expect({ started, ended }).toEqual({ started: 1, ended: 1 });
      if (silentIn === 'measure')
        expect(doings).toContain('measuring walls, alone since the second worker fell silent');
      await session.importFile(stlBlob(dome), 'part.stl', ignore);
      expect(started).toBe(2);
    },
  );

  it('measures alone where a worker can start no other', async () => {
    const session = new BenchSession(
      () => {
        throw new ReferenceError('Worker is not defined');
      },
      { over: 0 },
    );
    await session.importFile(stlBlob(dome), 'part.stl', ignore);
    const reply = await session.measure(alongZ, ignore, ignore);
    expect(asText(reply)).toEqual(asText((await measuredSession(dome, alongZ)).reply));
  });
});
