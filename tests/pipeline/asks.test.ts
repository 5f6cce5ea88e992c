/** What the maker may ask of the results: cuts, probes, files to save, programs side by side. */
import { describe, expect, it } from 'vitest';
import { integrate } from '../../src/core/mesh/integrals';
import { readMeshFile } from '../../src/core/mesh/read/readMeshFile';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { weld } from '../../src/core/mesh/weld';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { packPattern, readPatternFile } from '../../src/pipeline/patternFile';
import { meshChoices } from '../../src/pipeline/question';
import { StageMemory } from '../../src/pipeline/stageMemory';
import { heatChoices } from '../../src/pipeline/stages';
import { pourChoicesOf } from '../../src/steps/mold/pourChoicesOf';
import { plyAt, trayPattern } from '../steps/contexts';
import { lowTemperatureCures } from '../support/curePrediction';
import { domeShell, domeShellWallMm, tray } from '../support/meshes';
import { ignore, measuredPart, openPart, questionWith, smallTray, trayQuestion } from './support';

const torn: IndexedMesh = { ...smallTray, facets: smallTray.facets.slice(3) };

describe('on the measured part', () => {
  it('a probe tells what lies along a line of sight, and when it misses', async () => {
    const { ask } = await openPart(domeShell(24, 48));
    const probe = await ask('probe', { originMm: [1, 2, 200], direction: [0, 0, -2] });
    expect(probe?.pointMm[2]).toBeCloseTo(50, 0);
    expect(probe?.ballWallMm).toBeCloseTo(domeShellWallMm, 1);
    expect(probe?.place).toContain('show face');
    expect(probe?.normal[2]).toBeGreaterThan(0.9);
    expect(await ask('probe', { originMm: [500, 0, 200], direction: [0, 0, -1] })).toBeNull();
  });

  it('a cut has its walls, places are found, and a pull, and faces that touch', async () => {
    const stack = ['a', 'b', 'c', 'd', 'e'].map((id) => plyAt(id));
    const { ask, tell } = await openPart(tray([60, 40, 12], 1), questionWith({ plies: { stack } }));
    const section = await ask('cut', { axis: 'y', atMm: 3 });
    expect(section.lines.length).toBe(1);
    expect(section.walls.length).toBeGreaterThan(0);
    for (const { wallMm } of section.walls) expect(wallMm).toBeCloseTo(1, 3);
    const findings = (await tell('places')).map(({ finding }) => finding);
    expect(findings).toEqual(expect.arrayContaining(['thin', 'drags']));
    expect(Math.abs((await ask('best pull', null)).pull[2])).toBeCloseTo(1, 6);
    expect(await ask('self touching', null)).toEqual({ facetCount: 0, facets: new Uint32Array(0) });
  });

  it('a mesh that is not open is said to be missing', async () => {
    const asked = new StageMemory().ask('cut', questionWith(), { axis: 'x', atMm: 0 }, ignore);
    await expect(asked).rejects.toMatchObject({ code: 'job.noMesh' });
  });
});

describe('a plan', { timeout: 60_000 }, () => {
  const cold = trayQuestion({ plies: { stack: [plyAt('a'), plyAt('b'), plyAt('c')] } });

  it('comes from the worker as plain data, with its progress in one run', async () => {
    const { memory } = await openPart(smallTray, cold);
    const shares: number[] = [];
    const doings = new Set<string>();
    const found = await memory.ask('plan', cold, { pattern: trayPattern, taken: {} }, (doing, share) => {
      doings.add(doing);
      if (doing === 'looking for a plan') shares.push(share);
    });
    expect(found.changes.map(({ id }) => id)).toContain('plies.stack');
    expect(structuredClone(found)).toEqual(found);
    expect(doings).toContain('looking for a plan');
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  });

  it('is of no use before a pattern is in', async () => {
    const asked = new StageMemory().ask('plan', null, { pattern: trayPattern, taken: {} }, ignore);
    await expect(asked).rejects.toMatchObject({ code: 'job.noMesh' });
  });
});

describe('of the stone halves', { timeout: 30_000 }, () => {
  it('either is saved as an STL that measures the same', async () => {
    const { ask, tell } = await openPart(smallTray, trayQuestion());
    const { geometry } = await tell('halves');
    for (const half of ['negative', 'positive'] as const) {
      const { mesh } = weld(readMeshFile(await ask('saved half', half), 'half.stl'));
      const wanted = half === 'negative' ? geometry.negativeMm3 : geometry.positiveMm3;
      expect(integrate(mesh).volume / wanted).toBeCloseTo(1, 5);
    }
  });

  it('there is none to save of a torn pattern, which is said', async () => {
    const { ask } = await openPart(torn, trayQuestion());
    await expect(ask('saved half', 'negative')).rejects.toMatchObject({
      code: 'pours.noHalves',
      message: expect.stringContaining('3 edges are open') as string,
    });
  });

  it('the rim of another part is told as casting that part does, with no mesh open', async () => {
    const { tell, question } = await openPart(smallTray, trayQuestion());
    const { geometry } = await tell('halves');
    const { canonical } = await readPatternFile(new Uint8Array(writeStlBinary(smallTray)), 'a.stl', ignore);
    const { packed } = packPattern(canonical);
    const given = { packed, part: meshChoices(question), pours: pourChoicesOf(question.inputs) };
    const other = new StageMemory();
    expect(await other.ask('rim', null, given, ignore)).toEqual(geometry.rimOutlineMm);
    await expect(other.tell('halves', question, ignore)).rejects.toMatchObject({ code: 'job.noMesh' });
  });

  it('the rim of another part leaves the open one as it was', async () => {
    const { ask, tell, shape, question } = await measuredPart(smallTray, trayQuestion());
    const { canonical } = await readPatternFile(
      new Uint8Array(writeStlBinary(tray([70, 50, 12], 2, 3))),
      'b.stl',
      ignore,
    );
    const { packed } = packPattern(canonical);
    const given = { packed, part: meshChoices(question), pours: pourChoicesOf(question.inputs) };
    const rim = (await ask('rim', given))!;
    expect(Math.max(...rim.map(([u]) => u)) - Math.min(...rim.map(([u]) => u))).toBeGreaterThan(50);
    expect((await tell('part')).boxMaxMm).toEqual(shape.boxMaxMm);
  });
});

describe('of the oven run', { timeout: 60_000 }, () => {
  const question = trayQuestion({ cure: { supplierCures: lowTemperatureCures } });

  it('the heated mold is cut, in its middle unless said, and felt at a point', async () => {
    const { ask, tell } = await openPart(smallTray, question);
    const { heatedS } = await tell('oven run');
    const of = { run: 'oven run', treatment: 'none' } as const;
    const middle = (await ask('heat cut', { ...of, axis: 2, atMm: null, timeS: heatedS }))!;
    const middleMm = (middle.lowMm[2] + middle.highMm[2]) / 2;
    expect(await ask('heat cut', { ...of, axis: 2, atMm: middleMm, timeS: heatedS })).toEqual(middle);
    const hottest = Math.max(...middle.cut.temperatureC);
    // At the end of the last dwell, at 120 °C less what has not arrived.
    expect(hottest).toBeGreaterThan(90);
    expect(hottest).toBeLessThan(125);
    const cold = (await ask('heat cut', { ...of, axis: 2, atMm: null, timeS: 0 }))!;
    expect(Math.max(...cold.cut.temperatureC)).toBeLessThan(30);

    const { heat } = await ask('heat at', { ...of, pointMm: [0, 0, 0.75] });
    expect(heat).not.toBeNull();
    expect((await ask('heat at', { ...of, pointMm: [500, 0, 0] })).heat).toBeNull();
  });

  it('a cut works out by itself the run that it is asked of', async () => {
    const { ask, tell } = await openPart(smallTray, question);
    const given = { run: 'fine oven run', treatment: 'none', axis: 0, atMm: null, timeS: 3600 } as const;
    const cut = await ask('heat cut', given);
    expect(cut).not.toBeNull();
    await tell('fine oven run');
    expect(await ask('heat cut', given)).toEqual(cut);
  });

  it('less stone and drier stone follow the oven sooner, and programs keep to the limit', async () => {
    const asked = questionWith({
      part: { pull: [0, 0, -1] },
      cure: { supplierCures: lowTemperatureCures, freeWaterLeftPercent: 50, voxelMm: 4 },
    });
    const { ask } = await openPart(tray([60, 40, 15], 2, 2), asked);
    const choices = heatChoices(asked, null)!;
    const { programs, variants } = await ask('comparison', { choices, mostC: 110 });
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
});
