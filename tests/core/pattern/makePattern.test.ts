import { beforeAll, describe, expect, it } from 'vitest';
import { findHealth } from '../../../src/core/mesh/health';
import type { IndexedMesh, Vec3 } from '../../../src/core/mesh/types';
import { cutTemplateSvg } from '../../../src/core/pattern/cutTemplate';
import { makePattern, type MadePattern, type PatternChoices } from '../../../src/core/pattern/makePattern';
import { Problem } from '../../../src/core/problem';
import { cellPart } from '../../support/cellPart';
import { ballGap, exactWalls, facesOf, leastDraftDeg, shareUnder } from '../../support/exactShell';
import { box, joinMeshes, mapVertices, tray } from '../../support/meshes';
import { turned } from '../../support/savedTray';

const up: Vec3 = [0, 0, 1];
const usual: PatternChoices = {
  pull: up,
  wallMm: 0.8,
  draftDeg: 3,
  neutralPlane: 'rim',
  insideRadiusMm: 1,
  edges: 'eased',
  keepHolesOverMm: null,
  gridMm: 0.4,
};
const make = (part: IndexedMesh, choices: Partial<PatternChoices> = {}): MadePattern =>
  makePattern(part, { ...usual, ...choices }, () => undefined);

/** Vertices less half the facets: 2 for a shell without a tunnel. */
const eulerNumber = ({ positions, facets }: IndexedMesh) => positions.length / 3 - facets.length / 6;

describe('the pattern of a block', () => {
  let made: MadePattern;
  beforeAll(() => {
    made = make(box([0, 0, 0], [30, 22, 8]));
  });

  it('is closed, one body, without a tunnel', () => {
    const health = findHealth(made.mesh);
    expect(health.watertight).toBe(true);
    expect(health.bodies).toHaveLength(1);
    expect(eulerNumber(made.mesh)).toBe(2);
  });

  it('has the asked wall within 0.02 mm, by exact distance from facet to face', () => {
    const walls = exactWalls(facesOf(made.mesh, up));
    expect(walls.p1).toBeGreaterThan(0.78);
    expect(walls.median).toBeCloseTo(0.8, 2);
    expect(walls.p99).toBeLessThan(0.82);
    expect(made.wallMm.p1).toBeCloseTo(walls.p1, 2);
    expect(made.wallMm.p99).toBeCloseTo(walls.p99, 2);
  });

  it('releases: all but a thousandth of it at the asked draft, nothing a degree under it', () => {
    const faces = facesOf(made.mesh, up);
    expect(leastDraftDeg(faces)).toBeGreaterThan(2);
    expect(shareUnder(faces, 2.9)).toBeLessThan(0.001);
    expect(made.leastDraftDeg).toBeGreaterThan(2);
  });

  it('keeps the outline at the rim', () => {
    expect(made.rimShiftMm.median).toBeLessThan(0.01);
    const outline = outlineOf(made.mesh);
    const off = outline
      .filter(([x, y]) => Math.min(x, 30 - x) > 2 || Math.min(y, 22 - y) > 2)
      .map(([x, y]) => Math.min(Math.abs(x), Math.abs(30 - x), Math.abs(y), Math.abs(22 - y)));
    expect(off.length).toBeGreaterThan(8);
    expect(Math.max(...off)).toBeLessThan(0.02);
  });

  it('lets a ball of the asked inside radius less a tenth into every corner', () => {
    const { core } = facesOf(made.mesh, up);
    const every = Math.ceil(core.length / 60);
    const gaps = core
      .filter((_, at) => at % every === 0)
      .map(({ corners: [a, b, c], center }) => {
        const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
        const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
        const n = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx] as const;
        const length = Math.hypot(...n);
        return ballGap(core, center, [n[0] / length, n[1] / length, n[2] / length], 0.9);
      });
    expect(Math.max(...gaps)).toBeLessThan(0.02);
  });
});

/** Points of the outer border of the land, for a shell whose rim lies on z = 0. */
function outlineOf({ positions, facets }: IndexedMesh): readonly (readonly [number, number])[] {
  const isLow = (vertex: number) => Math.abs(positions[3 * vertex + 2]!) < 1e-4;
  const points: [number, number][] = [];
  for (let f = 0; f < facets.length; f += 3) {
    const corners = [facets[f]!, facets[f + 1]!, facets[f + 2]!];
    const low = corners.filter(isLow);
    if (low.length !== 2) continue;
    const [a, b, c] = corners.map((v) => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!]);
    const nz = (b![0]! - a![0]!) * (c![1]! - a![1]!) - (c![0]! - a![0]!) * (b![1]! - a![1]!);
    if (nz > 0) for (const v of low) points.push([positions[3 * v]!, positions[3 * v + 1]!]);
  }
  return points;
}

describe('other parts', () => {
  it('fills side holes and covers holes in the show face', () => {
    const part = cellPart(
      [24, 20, 8],
      [1, 1, 1],
      [
        {
          is: 'solid',
          box: [
            [0, 24],
            [0, 20],
            [0, 8],
          ],
        },
        {
          is: 'air',
          box: [
            [2, 22],
            [2, 18],
            [0, 6],
          ],
        },
        {
          is: 'air',
          box: [
            [8, 14],
            [0, 2],
            [2, 5],
          ],
        },
        {
          is: 'air',
          box: [
            [8, 13],
            [8, 12],
            [6, 8],
          ],
        },
      ],
    );
    const made = make(part);
    expect(eulerNumber(made.mesh)).toBe(2);
    expect(leastDraftDeg(facesOf(made.mesh, up))).toBeGreaterThan(2);
    expect(made.holes).toHaveLength(1);
    const [hole] = made.holes;
    expect(hole!.areaMm2).toBeGreaterThan(16);
    expect(hole!.areaMm2).toBeLessThan(25);
    expect(hole!.depthMm).toBeCloseTo(8, 3);
    expect(hole!.centerMm[0]).toBeCloseTo(10.5, 0);
    expect(hole!.centerMm[1]).toBeCloseTo(10, 0);
    expect(made.filledMm3).toBeGreaterThan(20);
    const svg = cutTemplateSvg(made.template!);
    // An outline of 24 x 20, with room for the 100 mm bar and the 50 mm square beside each other under it.
    expect(svg).toMatch(/width="180\.000mm" height="(99\.9|100\.0)\d\dmm" viewBox="0 0 180\.000 /u);
    const [run] = /M([\d.]+) ([\d.]+)h([\d.]+)v0\.400/u.exec(svg)!.slice(1, 4).map(Number) as [number];
    expect(run).toBeGreaterThan(8 + 10 - 0.5);
    expect(run).toBeLessThan(8 + 10 + 0.5);
    const kept = make(part, { keepHolesOverMm: 4 });
    expect(kept.template).toBeNull();
    expect(kept.holes[0]!.plugged).toBe(false);
    expect(eulerNumber(kept.mesh)).toBe(0);
    expect(findHealth(kept.mesh).watertight).toBe(true);
  });

  it('meets its mate: outlines of two halves of different height agree within 0.02 mm', () => {
    const [low, high] = [6, 10].map((height) => outlineOf(make(box([-14, -10, 0], [14, 10, height])).mesh));
    for (const [x, y] of low!.filter(([px, py]) => Math.abs(px) < 12 || Math.abs(py) < 8))
      expect(Math.min(Math.abs(Math.abs(x) - 14), Math.abs(Math.abs(y) - 10))).toBeLessThan(0.01);
    for (const [x, y] of high!.filter(([px, py]) => Math.abs(px) < 12 || Math.abs(py) < 8))
      expect(Math.min(Math.abs(Math.abs(x) - 14), Math.abs(Math.abs(y) - 10))).toBeLessThan(0.01);
  });

  it('leaves the top as drawn and widens the rim when the neutral plane is there', () => {
    const made = make(box([0, 0, 0], [24, 20, 8]), { neutralPlane: 'top' });
    const widest = Math.max(...outlineOf(made.mesh).map(([x]) => x));
    expect(widest).toBeGreaterThan(24 + 8 * Math.tan((3 * Math.PI) / 180) - 0.05);
    expect(widest).toBeLessThan(24.6);
  });

  it('finds the rim where the outline ends, not where a tongue inside it does', () => {
    const made = make(joinMeshes(box([0, 0, 0], [24, 20, 8]), box([3, 3, -1.5], [21, 17, 0.5])));
    const lowest = made.mesh.positions.filter((_, at) => at % 3 === 2).reduce((a, b) => Math.min(a, b));
    expect(lowest).toBeCloseTo(0, 3);
  });

  it('makes the same of a part turned any way, in its own axes', () => {
    const turn = turned([0.4, 0.7, 0.2]);
    const made = make(mapVertices(box([0, 0, 0], [24, 20, 8]), turn), { pull: turn(up) });
    const faces = facesOf(made.mesh, turn(up));
    const walls = exactWalls(faces);
    expect(walls.p1).toBeGreaterThan(0.78);
    expect(walls.p99).toBeLessThan(0.82);
    expect(leastDraftDeg(faces)).toBeGreaterThan(2);
  });

  it('tells how far the show face stays behind what is drawn', () => {
    const part = box([0, 0, 0], [28, 24, 10]);
    // Where three edges meet, a ball of wall and radius leaves out √3 - 1 of itself; the draft takes a little more.
    const small = make(part);
    expect(small.takenMaxMm).toBeGreaterThan(0.73 * 1.8);
    expect(small.takenMaxMm).toBeLessThan(0.73 * 1.8 + 0.9);
    expect(make(part, { insideRadiusMm: 5 }).takenMaxMm).toBeGreaterThan(0.73 * 5.8);
  });

  it('keeps sharp edges sharp when asked', () => {
    const part = box([0, 0, 0], [24, 20, 8]);
    expect(flatTopMm2(make(part, { edges: 'sharp' }))).toBeGreaterThan(flatTopMm2(make(part)) + 80);
  });
});

/** Area of the show face that lies square to the pull. */
const flatTopMm2 = (made: MadePattern) =>
  facesOf(made.mesh, up)
    .show.filter(({ draftDeg }) => draftDeg > 89)
    .reduce((sum, { areaMm2 }) => sum + areaMm2, 0);

const refusalOf = (part: IndexedMesh, choices: Partial<PatternChoices> = {}): string => {
  try {
    make(part, choices);
    return 'made';
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    expect(error.message).toMatch(/Enter|Turn|Import/);
    return error.code;
  }
};

describe('what cannot be made', () => {
  it('for its size names the grid that fits', () => {
    const part = box([0, 0, 0], [184, 114, 95]);
    const refused = () => make(part, { gridMm: 0.3, wallMm: 1 });
    expect(refused).toThrow('Enter a grid of 0.5 mm, or check the unit');
  });

  it('is refused with a sentence that says what to do', () => {
    expect(refusalOf(box([0, 0, 0], [40, 30, 1]))).toBe('pattern.flat');
    expect(refusalOf(box([0, 0, 0], [6, 6, 20]), { wallMm: 3, insideRadiusMm: 0.6 })).toBe('pattern.thick');
    expect(refusalOf(box([0, 0, 0], [6, 6, 20]), { insideRadiusMm: 3.5 })).toBe('pattern.radius');
    expect(refusalOf(box([0, 0, 0], [6, 6, 20]), { wallMm: 2, insideRadiusMm: 1.5 })).toBe('pattern.noCore');
    expect(refusalOf(box([0, 0, 0], [600, 400, 200]))).toBe('pattern.grid');
    expect(refusalOf(box([0, 0, 0], [30, 20, 8]), { gridMm: 0.7 })).toBe('pattern.coarse');
    expect(refusalOf(tray([30, 20, 8], 1, 2))).toBe('pattern.hollow');
    expect(refusalOf({ positions: new Float64Array(0), facets: new Uint32Array(0) })).toBe('pattern.empty');
  });
});
