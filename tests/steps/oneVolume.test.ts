/** The volume of the pattern is one number, wherever it is told: by facets, by solids, and by columns where neither holds. */
import { beforeAll, describe, expect, test } from 'vitest';
import { preparePack } from '../../src/core/mesh/pack';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { contextOf, evaluate } from '../../src/pipeline/evaluate';
import { moldReport } from '../../src/steps/mold/report';
import { partReport } from '../../src/steps/part/report';
import { ignore, memoryOf, questionWith } from '../pipeline/support';
import { box, joinMeshes, tray, trayVolumeMm3 } from '../support/meshes';
import { trayPattern } from './contexts';
import { figureOf } from './reportHelpers';

const size = [60, 40, 20] as const;
const wallMm = 2;
const plain = tray(size, wallMm);
const trayMm3 = trayVolumeMm3(size, wallMm);
const without = (mesh: IndexedMesh, facet: number): IndexedMesh => ({
  ...mesh,
  facets: Uint32Array.of(...mesh.facets.slice(0, 3 * facet), ...mesh.facets.slice(3 * facet + 3)),
});

/** A rib across the floor: 1 mm of its foot and of both its ends stand in floor and walls. */
const rib = box([-29, -1, 1], [29, 1, 8]);
const ribAloneMm3 = 56 * 2 * 6;
const torn = { floor: without(plain, 0), side: without(plain, 5) };

/** What was meant, and whether it is told with a band that holds it. */
const cases: readonly (readonly [what: string, mesh: IndexedMesh, meantMm3: number, hasBand: boolean])[] = [
  ['one closed body', plain, trayMm3, false],
  ['two bodies that overlap', joinMeshes(plain, rib), trayMm3 + ribAloneMm3, false],
  ['half of one side missing', torn.side, trayMm3, true],
  ['half of the floor missing: the holes could hold most of it', torn.floor, trayMm3, true],
  [
    'half of one side missing, and two bodies that overlap',
    joinMeshes(torn.side, rib),
    trayMm3 + ribAloneMm3,
    true,
  ],
];

beforeAll(preparePack);

describe('one volume for the whole program', () => {
  test.each(cases)('%s', async (_, mesh, meantMm3, hasBand) => {
    const memory = await memoryOf(mesh);
    const question = questionWith({ part: { pull: [0, 0, -1] }, mold: { prySlotCount: 0 } });
    const answers = await evaluate(
      question,
      (name, asked) => memory.tell(name, asked, ignore),
      new Set(['filled mold', 'oven run', 'fine oven run']),
    );
    const context = { inputs: question.inputs, pattern: trayPattern, ...contextOf(answers) };
    const [part, mold] = [partReport(context), moldReport(context)];
    const [atPart, atMold] = [figureOf(part, 'part.volumeMm3'), figureOf(mold, 'mold.patternMl')];
    expect(atPart.value).toBeCloseTo(1000 * (atMold.value as number), 6);
    expect(atPart.band !== undefined).toBe(hasBand);
    if (!hasBand) {
      expect((atPart.value as number) / meantMm3).toBeCloseTo(1, 5);
      return;
    }
    const [low, high] = atPart.band!;
    expect(low / 1000).toBeCloseTo(atMold.band![0], 9);
    expect(high / 1000).toBeCloseTo(atMold.band![1], 9);
    expect(low).toBeLessThan(meantMm3);
    expect(high).toBeGreaterThan(meantMm3);
    // So have the amounts that follow from it.
    for (const id of ['mold.negative.powderG', 'mold.positive.powderG', 'mold.patternG', 'mold.powderKg'])
      expect(figureOf(mold, id).band, id).toBeDefined();
  });
});
