/** The headless command as a person runs it: exit codes, one line on stderr, JSON that holds what it promises. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { canonicalMesh } from '../src/core/mesh/canonicalMesh';
import { meshKey } from '../src/core/mesh/meshKey';
import { packMesh, preparePack } from '../src/core/mesh/pack';
import { writeStlBinary } from '../src/core/mesh/writeStl';
import { runReport } from '../src/report/runReport';
import { defaultProjectInputs } from '../src/steps/inputs/project';
import { newProject } from '../src/workbook/project';
import { writeProjectFile } from '../src/workbook/projectFile';
import { box, tray } from './support/meshes';
import { publicMeshes, publicMeshFiles, publicTitle } from './support/publicMeshes';

const root = fileURLToPath(new URL('..', import.meta.url));
const patience = 120_000;
/** For questions that the oven has no part in: its run takes most of the command's time. */
const noOven = ['--set', 'cure.stages=[]'];
/** A whole run in large bricks. */
const coarseOven = ['--set', 'cure.voxelMm=6'];

function report(...words: readonly string[]) {
  const run = spawnSync(process.execPath, ['src/startReport.mjs', ...words], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64 * 2 ** 20,
  });
  return { code: run.status, stdout: run.stdout, stderr: run.stderr };
}

interface Quantiles {
  readonly p5: number;
  readonly median: number;
  readonly p95: number;
  readonly min: number;
  readonly max: number;
  readonly hitShare: number;
}

interface ReportContent {
  readonly file: {
    readonly name: string;
    readonly sha256: string;
    readonly triangles: number;
    readonly unit: string;
  };
  readonly health: Readonly<Record<string, number | boolean>>;
  readonly measurement: {
    readonly volumeMm3: number | null;
    readonly areaMm2: number;
    readonly boxMm: readonly number[];
    readonly pull: readonly number[];
    readonly rayWallMm: Quantiles;
    readonly ballWallMm: Quantiles;
    readonly draft: Readonly<Record<string, number>>;
    readonly insideCornerRadiusMm: Readonly<Record<string, number | null>>;
  };
  readonly steps: Readonly<
    Record<
      string,
      {
        readonly figures: readonly {
          readonly id: string;
          readonly value: unknown;
          readonly status: string;
        }[];
        readonly verdicts: readonly { readonly id: string; readonly word: string; readonly reason: string }[];
        readonly cautions: readonly { readonly id: string; readonly text: string }[];
      }
    >
  >;
}

/** Started as a person does. */
function startedJson(...words: readonly string[]): { code: number | null; content: ReportContent } {
  const { code, stdout, stderr } = report(...words, '--json');
  if (stdout === '') throw new Error(`no output: ${stderr}`);
  return { code, content: JSON.parse(stdout) as ReportContent };
}

/** The same run without starting a program for it. */
async function reportJson(...words: readonly string[]): Promise<{ code: number; content: ReportContent }> {
  const { output, exitCode } = await runReport([...words, '--json'], {
    appVersion: '0',
    date: '2031-05-06',
    onProgress: () => {},
  });
  return { code: exitCode, content: JSON.parse(output) as ReportContent };
}

const folder = mkdtempSync(join(tmpdir(), 'report-test-'));
const trayPath = join(folder, 'tray.stl');
const solidPath = join(folder, 'solid.stl');
const projectPath = join(folder, 'tray.workbook.json');
afterAll(() => rmSync(folder, { recursive: true }));

beforeAll(async () => {
  writeFileSync(trayPath, writeStlBinary(tray([80, 50, 15], 0.8, 5)));
  writeFileSync(solidPath, writeStlBinary(box([0, 0, 0], [80, 50, 15])));
  await preparePack();
  const canonical = canonicalMesh(tray([80, 50, 15], 0.8, 5));
  const packed = packMesh(canonical);
  const project = newProject({
    id: 'tray',
    enclosure: 'Wind meter',
    name: 'Lower half',
    at: '2031-05-06T07:08:09Z',
  });
  const pattern = {
    fileName: 'tray.stl',
    sha256: 'ab'.repeat(32),
    format: 'stl-binary' as const,
    declaredUnit: null,
    triangles: canonical.mesh.facets.length / 3,
    meshKey: meshKey(packed),
    packErrorFileUnits: canonical.errorFileUnits,
    degenerateFacets: 0,
    notes: [],
  };
  const inputs = {
    ...defaultProjectInputs,
    plies: { ...defaultProjectInputs.plies, lineWidthMm: 0.4 },
  };
  const record = { 'caliper.typical': { done: true, measured: '0.82', initials: 'kl' } };
  writeFileSync(projectPath, writeProjectFile({ ...project, pattern, inputs, record }, packed));
});

describe('the headless command on a tray of our own', { timeout: patience }, () => {
  test('JSON holds file, health, measurement and every step', () => {
    const { code, content } = startedJson('--stl', trayPath, '--unit', 'mm', ...coarseOven);
    expect(content.file).toMatchObject({ name: 'tray.stl', triangles: 28, unit: 'mm' });
    expect(content.file.sha256).toMatch(/^[0-9a-f]{64}$/u);
    expect(content.health).toMatchObject({ watertight: true, openEdges: 0, bodies: 1 });
    expect(content.measurement.boxMm[2]).toBeCloseTo(15, 3);
    // It lies open side up: what people see of it looks down.
    expect(content.measurement.pull).toEqual([0, 0, -1]);
    expect(content.measurement.rayWallMm.median).toBeCloseTo(0.8, 2);
    expect(Object.keys(content.measurement.draft).toSorted()).toEqual([
      'awayShare',
      'trappedShare',
      'under1DegShare',
      'under3DegShare',
    ]);
    expect(Object.keys(content.steps)).toEqual([
      'part',
      'pattern',
      'walls',
      'plies',
      'cutting',
      'closing',
      'mold',
      'cure',
      'fit',
      'finish',
      'checklist',
    ]);
    const stops = Object.values(content.steps).some(({ verdicts }) =>
      verdicts.some(({ word }) => word === 'stop'),
    );
    expect(code).toBe(stops ? 1 : 0);
  });

  test('a verdict of stop gives exit code 1 and the output is whole all the same', async () => {
    const { code, content } = await reportJson(
      '--stl',
      trayPath,
      '--set',
      'plies.stack=[]',
      '--pull',
      '0,0,-1',
      ...noOven,
    );
    expect(content.steps['plies']?.verdicts[0]?.word).toBe('not yet known');
    const wide = await reportJson('--stl', trayPath, '--scale', '3', '--pull', '0,0,-1', ...noOven);
    expect(wide.code).toBe(1);
    expect(wide.content.measurement.boxMm[2]).toBeCloseTo(45, 2);
    expect(wide.content.steps['walls']?.verdicts.find(({ id }) => id === 'walls.band')?.word).toBe('stop');
    expect([0, 1]).toContain(code);
  });

  test('a pattern drawn solid takes the beads of the print', async () => {
    const lines = ['--set', 'part.nominalWall=print', '--set', 'plies.lineWidthMm=0.335'];
    const { content } = await reportJson(
      '--stl',
      solidPath,
      '--pull',
      '0,0,1',
      '--unit',
      'mm',
      ...lines,
      ...noOven,
    );
    const nominal = content.steps['part']?.figures.find(({ id }) => id === 'part.nominalWallMm');
    expect(nominal).toMatchObject({ value: 0.67, status: 'your entry' });
    expect(content.steps['walls']?.verdicts.find(({ id }) => id === 'walls.band')?.word).toBe('go');
  });

  test('a small box without a unit is taken as guessed and said so', async () => {
    const { content } = await reportJson('--stl', trayPath, '--scale', '1', '--unit', 'in', ...noOven);
    expect(content.measurement.boxMm[2]).toBeCloseTo(15 * 25.4, 1);
    const small = join(folder, 'small.stl');
    writeFileSync(small, writeStlBinary(tray([3, 2, 0.6], 0.03, 5)));
    const guessed = (await reportJson('--stl', small, ...noOven)).content;
    expect(guessed.file.unit).toBe('in');
    const unit = guessed.steps['part']?.verdicts.find(({ id }) => id === 'part.unit');
    expect(unit).toMatchObject({ word: 'look again' });
    expect(unit?.reason).toContain('inches');
  });

  test('--pull best finds a pull that traps nothing', async () => {
    const { content } = await reportJson('--stl', trayPath, '--pull', 'best', ...noOven);
    expect(content.measurement.draft['trappedShare']).toBeCloseTo(0, 3);
  });

  test('without --json it prints the checklist, and nothing on stderr', () => {
    const { stdout, stderr } = report('--stl', trayPath, '--pull', '0,0,-1', ...coarseOven);
    expect(stderr).toBe('');
    expect(stdout).toContain('· tray.stl ·');
    expect(stdout).toContain('[ ] ');
    expect(stdout).toContain('CAUTION:');
  });

  test('a project file brings its inputs, names and record; the mesh inside is the same part', async () => {
    const { stdout } = report('--project', projectPath, '--pull', '0,0,-1', ...noOven);
    expect(stdout).toContain('Wind meter: Lower half');
    expect(stdout).toMatch(/beads\s+of\s+0\.40\s+mm/u);
    expect(stdout).toContain('caliper.typical: 0.82, kl');
    const fromProject = (await reportJson('--project', projectPath, ...noOven)).content.measurement;
    const fromFile = (await reportJson('--stl', trayPath, ...noOven)).content.measurement;
    expect(fromProject.areaMm2).toBeCloseTo(fromFile.areaMm2, 2);
  });

  test('--inputs lists the inputs', () => {
    const { code, stdout } = report('--inputs');
    expect(code).toBe(0);
    expect(stdout).toContain('walls.leastDraftDeg');
  });

  test.each([
    ['no words', [], /--stl FILE/u],
    ['no such file', ['--stl', join(folder, 'gone.stl')], /no such file/u],
    ['a folder', ['--stl', folder], /a folder/u],
    ['not a mesh', ['--stl', fileURLToPath(import.meta.url)], /STL/u],
    ['no such body', ['--stl', trayPath, '--body', '9'], /Body 9 does not exist/u],
    ['a wrong unit', ['--stl', trayPath, '--unit', 'ft'], /--unit ft/u],
    ['a wrong value', ['--stl', trayPath, '--set', 'plies.lineWidthMm=40'], /plies\.lineWidthMm must be/u],
    ['not a project', ['--project', trayPath], /project/u],
  ] as const)(
    'bad input (%s): exit code 2, stderr says what, stdout stays empty',
    (_name, words, message) => {
      const { code, stdout, stderr } = report(...words);
      expect(code).toBe(2);
      expect(stdout).toBe('');
      expect(stderr).toMatch(message);
      expect(stderr).not.toContain('defect');
      expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    },
  );
});

describe(publicTitle('the headless command'), { timeout: patience }, () => {
  const { pathOf, remove } = publicMeshFiles();
  afterAll(remove);

  test.each(publicMeshes)('%s', async (path, reference) => {
    const { code, content } = await reportJson('--stl', pathOf(path), ...coarseOven);
    const mm = reference.mm_per_unit;
    expect([0, 1]).toContain(code);
    expect(content.file.triangles).toBe(reference.triangles);
    expect(content.steps['checklist']?.verdicts).toHaveLength(1);
    // The mesh that is measured is the saved one: it may differ from the file by 1e-5 of area and volume.
    expect(Math.abs(content.measurement.areaMm2 / (reference.area * mm ** 2) - 1)).toBeLessThan(1e-5);
    if (reference.topology_exact_weld.manifold_watertight)
      expect(
        Math.abs((content.measurement.volumeMm3 ?? 0) / ((reference.volume ?? 0) * mm ** 3) - 1),
      ).toBeLessThan(1e-5);
  });
});
