/** The headless command cuts the plies on the pattern that it makes, and writes the templates. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { runReport } from '../../src/report/runReport';
import { tray } from '../support/meshes';
import { readDxf } from '../support/readDxf';
import { readPdf } from '../support/readPdf';

const folder = mkdtempSync(join(tmpdir(), 'templates-'));
afterAll(() => rmSync(folder, { recursive: true }));
const surroundings = { appVersion: '0', date: '2026-01-05', onProgress: () => undefined };

interface Told {
  readonly steps: Readonly<
    Record<
      string,
      {
        readonly figures: readonly { readonly id: string; readonly value: number | null }[];
        readonly verdicts: readonly { readonly id: string; readonly word: string; readonly reason: string }[];
      }
    >
  >;
}

const file = join(folder, 'tray.stl');
// As thick as a plate: laid on the tray itself, the core face would be half as large as the pattern's.
writeFileSync(file, writeStlBinary(tray([40, 30, 10], 5, 3)));

async function cuttingOf(name: string, ...sets: readonly string[]) {
  const out = join(folder, name);
  const given = ['pattern.gridMm=0.5', 'part.pull=[0,0,-1]', 'cutting.stepMm=1.5', 'cure.voxelMm=8', ...sets];
  const words = [
    '--stl',
    file,
    '--unit',
    'mm',
    '--out',
    out,
    '--json',
    ...given.flatMap((set) => ['--set', set]),
  ];
  const { output } = await runReport(words, surroundings);
  return { out, cutting: (JSON.parse(output) as Told).steps['cutting']! };
}

describe('--out FOLDER', () => {
  it('writes the pieces as PDF, SVG and DXF, and tells of roll, waste and mass', async () => {
    const { out, cutting } = await cuttingOf(
      'all',
      'cutting.paper=letter',
      'plies.materials.0.rollWidthMm=300',
    );
    const value = (id: string) => cutting.figures.find((one) => one.id === `cutting.${id}`)!.value!;
    expect(value('pieces')).toBe(3);
    expect(value('coveredShare')).toBeGreaterThan(0.95);
    expect(value('rollLengthMm')).toBeGreaterThan(30);
    expect(value('wasteShare')).toBeGreaterThan(0);
    expect(value('wasteShare')).toBeLessThan(1);
    expect(value('clothMassG')).toBeCloseTo(value('rollLengthMm') * 0.3 * (0.2 / 0.58), 6);
    // Of the pattern, whose wall is thin: the plies cover five sides of 40 by 30 by 10 mm less draft, each of them.
    expect(value('clothAreaCm2')).toBeGreaterThan(3 * 22);
    const { pages } = await readPdf(new Uint8Array(readFileSync(join(out, 'templates.pdf'))));
    expect(pages.length).toBeGreaterThan(1);
    expect(pages[0]!.widthMm).toBeCloseTo(215.9, 1);
    for (const name of ['1A', '2A', '3A'])
      expect(pages.flatMap(({ texts }) => texts).join(' ')).toContain(`${name} · ply`);
    expect(readFileSync(join(out, 'templates.svg'), 'utf8')).toMatch(/<svg[^>]*width="[\d.]+mm"/u);
    const { polylines } = readDxf(readFileSync(join(out, 'templates.dxf'), 'utf8'));
    expect(polylines.filter(({ layer, closed }) => layer === 'CUT' && closed)).toHaveLength(3);
  });

  it('says which piece a roll is too narrow for, and writes no templates', async () => {
    const { out, cutting } = await cuttingOf('narrow', 'plies.materials.0.rollWidthMm=20');
    const verdict = cutting.verdicts.find(({ id }) => id === 'cutting.roll')!;
    expect(verdict.word).toBe('look again');
    expect(verdict.reason).toMatch(/Piece \dA is \d+ mm across the warp.*seam/u);
    expect(existsSync(join(out, 'pattern.stl'))).toBe(true);
    expect(existsSync(join(out, 'templates.pdf'))).toBe(false);
  });
});
