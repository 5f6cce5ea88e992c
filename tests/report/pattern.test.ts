/** The headless command makes the pattern and writes it. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { findHealth } from '../../src/core/mesh/health';
import { readPatternFile } from '../../src/pipeline/patternFile';
import { runReport } from '../../src/report/runReport';
import { box } from '../support/meshes';
import { bytesOf, objText } from '../support/meshText';

const folder = mkdtempSync(join(tmpdir(), 'pattern-'));
afterAll(() => rmSync(folder, { recursive: true }));
const surroundings = { appVersion: '0', date: '2026-01-05', onProgress: () => undefined };

describe('--out FOLDER', () => {
  it('writes the pattern in mm, in the axes of the file, and tells of it between part and walls', async () => {
    const file = join(folder, 'block.obj');
    writeFileSync(file, bytesOf(objText(box([1, 0, 0], [1.95, 0.75, 0.3]))));
    const out = join(folder, 'made', 'here');
    const words = [
      '--stl',
      file,
      '--unit',
      'in',
      '--out',
      out,
      '--json',
      '--set',
      'pattern.wallMm=0.9',
      '--set',
      'cure.voxelMm=8',
    ];
    const { output } = await runReport(
      [
        ...words,
        '--set',
        'mold.printScale=1.1',
        '--set',
        'pattern.gridMm=0.5',
        '--set',
        'pattern.insideRadiusMm=1.5',
      ],
      surroundings,
    );
    const report = JSON.parse(output) as {
      readonly steps: Readonly<
        Record<string, { readonly figures: readonly { id: string; value: number }[] }>
      >;
    };
    expect(Object.keys(report.steps).slice(0, 3)).toEqual(['part', 'pattern', 'walls']);
    const value = (id: string) =>
      report.steps['pattern']!.figures.find((one) => one.id === `pattern.${id}`)!.value;
    expect(value('wallMedianMm')).toBeCloseTo(0.9, 2);
    expect(value('leastDraftDeg')).toBeGreaterThan(2);
    expect(value('holes')).toBe(0);
    expect(value('triangles')).toBeGreaterThan(500);
    expect(report.steps['pattern']!.figures.map(({ id }) => id)).toEqual(
      [
        'wallP1Mm',
        'wallMedianMm',
        'wallP99Mm',
        'leastDraftDeg',
        'shareUnderDraft',
        'addedShare',
        'addedMaxMm',
        'takenMaxMm',
        'filledMm3',
        'holes',
        'rimShiftMm',
        'triangles',
        'layerStepMm',
        'beads',
        'beadWidthMm',
      ].map((id) => `pattern.${id}`),
    );
    const { canonical } = await readPatternFile(
      readFileSync(join(out, 'pattern.stl')),
      'pattern.stl',
      () => undefined,
    );
    for (const name of ['pattern to print.stl', 'pattern to print.3mf']) {
      const printed = await readPatternFile(readFileSync(join(out, name)), name, () => undefined);
      const [body] = findHealth(printed.canonical.mesh).bodies;
      expect(body!.boxMin[2]).toBeCloseTo(0, 2);
      expect(body!.boxMax[2]).toBeCloseTo(1.1 * 7.62, 1);
    }
    const { watertight, bodies } = findHealth(canonical.mesh);
    expect(watertight).toBe(true);
    expect(bodies).toHaveLength(1);
    const [{ boxMin, boxMax }] = bodies as [(typeof bodies)[0]];
    expect(boxMin[0]).toBeCloseTo(25.4, 1);
    expect(boxMax[2] - boxMin[2]).toBeCloseTo(7.62, 1);
  });

  it('writes nothing when the pattern cannot be made, and says why', async () => {
    const file = join(folder, 'sheet.obj');
    writeFileSync(file, bytesOf(objText(box([0, 0, 0], [40, 30, 1]))));
    const out = join(folder, 'none');
    await expect(runReport(['--stl', file, '--unit', 'mm', '--out', out], surroundings)).rejects.toThrow(
      'flat sheet',
    );
    expect(existsSync(out)).toBe(false);
  });
});
