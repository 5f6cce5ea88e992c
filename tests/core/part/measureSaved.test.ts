/** From bytes to figures: what is measured is what is saved, and a reload changes nothing. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { SavedMeshChoices } from '../../../src/core/mesh/partFromSaved';
import { packMesh, preparePack, unpackMesh } from '../../../src/core/mesh/pack';
import { preparePattern } from '../../../src/core/part/preparePattern';
import { writeStlBinary } from '../../../src/core/mesh/writeStl';
import { Problem } from '../../../src/core/problem';
import { asText } from '../../support/asText';
import { measureSaved } from '../../support/measureSaved';
import { domeShell, tray, trayVolumeMm3 } from '../../support/meshes';

beforeAll(preparePack);

const choices: SavedMeshChoices = {
  unit: null,
  declaredUnit: null,
  body: 0,
  scale: 1,
  pull: [0, 0, 1],
  winding: 'repair',
};
const trayBytes = () => writeStlBinary(tray([60, 40, 20], 2));

describe('a pattern from its file', () => {
  test('names the file, counts its triangles and keeps its volume', () => {
    const seen: number[] = [];
    const prepared = preparePattern(trayBytes(), 'tray.stl', (_doing, share) => seen.push(share));
    expect(prepared).toMatchObject({
      format: 'stl-binary',
      triangles: 28,
      degenerateFacets: 0,
      declaredUnit: null,
    });
    expect(prepared.sha256).toMatch(/^[0-9a-f]{64}$/u);
    expect(seen).toEqual(seen.toSorted((a, b) => a - b));
    expect(seen.at(-1)).toBe(1);
    const { summary, unit, unitGuess } = measureSaved(prepared.canonical.mesh, choices);
    expect(unit).toBe('mm');
    expect(unitGuess.sure).toBe(true);
    expect(summary.volumeMm3).toBeCloseTo(trayVolumeMm3([60, 40, 20], 2), 1);
  });

  test('gives the same figures after packing and unpacking, to the last bit', () => {
    const { canonical } = preparePattern(writeStlBinary(domeShell(12, 40)), 'dome.stl');
    const before = measureSaved(canonical.mesh, choices);
    const after = measureSaved(unpackMesh(packMesh(canonical)), choices);
    expect(asText(after.summary)).toEqual(asText(before.summary));
    expect(asText(after.health)).toEqual(asText(before.health));
    expect(asText(after.measurement)).toEqual(asText(before.measurement));
  });

  test('takes unit and scale as chosen: an inch is 25.4 mm', () => {
    const { mesh } = preparePattern(trayBytes(), 'tray.stl').canonical;
    const inMm = measureSaved(mesh, choices).summary;
    const inInches = measureSaved(mesh, { ...choices, unit: 'in', scale: 2 });
    expect(inInches.unit).toBe('in');
    expect(inInches.summary.areaMm2 / inMm.areaMm2).toBeCloseTo(50.8 ** 2, 6);
    expect(inInches.fileBoxSize[0]).toBeCloseTo(60, 3);
  });

  test('hands the part over before its walls are measured', () => {
    const order: string[] = [];
    measureSaved(preparePattern(trayBytes(), 'tray.stl').canonical.mesh, choices, {
      onPart: () => order.push('part'),
      onProgress: (doing) => order.push(doing),
    });
    expect(order.indexOf('part')).toBeLessThan(order.indexOf('measuring walls along the normal'));
  });

  test('refuses a body that is not there and a pull without direction', () => {
    const { mesh } = preparePattern(trayBytes(), 'tray.stl').canonical;
    expect(() => measureSaved(mesh, { ...choices, body: 2 })).toThrow(Problem);
    expect(() => measureSaved(mesh, { ...choices, pull: [0, 0, 0] })).toThrow(Problem);
  });
});
