/**
 * Plain trays whose skins are known in closed form, from the file to the mass of the part: a wall's own outside corner is
 * wall, so that nothing of them is a boss or a rib.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { closingSamples } from '../../src/core/closing/closingSamples';
import { preparePack } from '../../src/core/mesh/pack';
import { partMassFigures } from '../../src/steps/plies/massFigures';
import {
  coreMm2,
  midSurfaceMm2,
  savedTray,
  showMm2,
  type TrayFile,
  type TrayShape,
} from '../support/savedTray';
import { trayContext } from './contexts';

beforeAll(preparePack);

const shapes: readonly TrayShape[] = [
  { size: [80, 50, 20], wallMm: 0.9, draftDeg: 2 },
  { size: [80, 50, 20], wallMm: 2, draftDeg: 2 },
  { size: [80, 50, 20], wallMm: 3, draftDeg: 0 },
  { size: [120, 80, 40], wallMm: 4, draftDeg: 5 },
  { size: [40, 30, 25], wallMm: 2.5, draftDeg: 1 },
];
const files: readonly TrayFile[] = [
  {},
  { turn: [0, 0, 0.5], halvings: 2 },
  { turn: [0.4, -0.7, 1.1], unit: 'in' },
  { turn: [-1.3, 0.2, 0.9], halvings: 4 },
];
const cases = shapes.flatMap((shape) =>
  files.map((file) => [`${JSON.stringify(shape)} ${JSON.stringify(file)}`, shape, file] as const),
);

describe('a plain tray', () => {
  test.each(cases)('%s', (_, shape, file) => {
    const { measuring, measurement, summary } = savedTray(shape, file);
    const { show, core, detail, trapped } = summary.kindAreaMm2;
    expect(Math.abs(show / showMm2(shape) - 1)).toBeLessThan(0.005);
    expect(Math.abs(core / coreMm2(shape) - 1)).toBeLessThan(0.005);
    expect(detail + trapped).toBeLessThan(0.001 * show);

    const [areaFigure, massFigure] = partMassFigures(trayContext({ summary }));
    const arealGsm = (1e4 * (massFigure!.value as number)) / (areaFigure!.value as number);
    expect(Math.abs((100 * (areaFigure!.value as number)) / midSurfaceMm2(shape) - 1)).toBeLessThan(0.01);
    const massG = (midSurfaceMm2(shape) / 1e6) * arealGsm;
    expect(Math.abs((massFigure!.value as number) / massG - 1)).toBeLessThan(0.01);

    let closingMm2 = 0;
    for (const area of closingSamples(measuring.mesh, measurement).areaMm2) closingMm2 += area;
    expect(Math.abs(closingMm2 / midSurfaceMm2(shape) - 1)).toBeLessThan(0.01);

    // The corners are not judged: a ray along the next wall is no thick wall.
    const { showWall } = summary;
    expect(showWall.wallMm.at(-1)).toBeLessThan(1.6 * shape.wallMm);
    expect(showWall.wallMm[0]).toBeGreaterThan(0.95 * shape.wallMm);
  });
});
