/** A shell with the wanted wall and draft is cleared; with one fault the plan, or what it leaves, names that fault and no other. */
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/pipeline/evaluate';
import { stateOf } from '../../src/pipeline/planState';
import { planFor } from '../../src/pipeline/remedies';
import type { StageName } from '../../src/pipeline/told';
import type { IndexedMesh } from '../../src/core/mesh/types';
import { defaultClamp } from '../../src/steps/inputs/clamp';
import { demoInputs, demoParts } from '../../src/workbook/demo/demoParts';
import { trayPattern } from '../steps/contexts';
import { steppedTray, tray } from '../support/meshes';
import { ignore, memoryOf, type InputChanges } from './support';

const skips: ReadonlySet<StageName> = new Set(['fine oven run']);
const size = [40, 30, 10] as const;
/** What three plies want. */
const rightWallMm = 0.67;
/** All that a maker reads off sheets and clamps is there, and stone enough for a part this small. */
const lower = demoParts().find(({ name }) => name === 'Lower half')!.inputs;
const coverMm = 18;
const right: InputChanges = {
  ...lower,
  mold: {
    ...lower.mold,
    coverXLowMm: coverMm,
    coverXHighMm: coverMm,
    coverYLowMm: coverMm,
    coverYHighMm: coverMm,
    coverOverShowMm: coverMm,
    coverUnderRimMm: coverMm,
  },
  cure: { ...lower.cure, voxelMm: 8 },
};

async function plannedFor(mesh: IndexedMesh, fault: InputChanges = {}) {
  const inputs = demoInputs({
    ...right,
    ...fault,
    mold: { ...right.mold, ...fault.mold },
    cure: { ...right.cure, ...fault.cure },
  });
  const memory = await memoryOf(mesh);
  const question = { mesh: 'the mesh', declaredUnit: null, inputs, thermocouple: null };
  const answers = await evaluate(question, (name, asked) => memory.tell(name, asked, ignore), skips);
  const given = { question, answers, memory };
  const plan = await planFor(given, { pattern: trayPattern, skips, onProgress: ignore });
  const { verdicts } = stateOf(given, trayPattern);
  const stops = [...verdicts.values()].filter(({ word }) => word === 'stop').map(({ id }) => id);
  return { plan, stops };
}

const ofTheWall = [
  'walls.band',
  'plies.fit',
  'plies.content',
  'closing.load',
  'closing.closes',
  'closing.choked',
  'closing.resin',
];
const coldStages = [{ targetC: 50, rampKPerMin: 1, dwellHours: 2 }];
const weakClamps = [{ ...defaultClamp, forceN: 5 }];

describe('a shell with the wanted wall and 3° of draft', { timeout: 120_000 }, () => {
  const shell = tray([...size], rightWallMm, 3);

  it('is cleared as it is', async () => {
    const { plan, stops } = await plannedFor(shell);
    expect(stops).toEqual([]);
    expect(plan).toMatchObject({ outcome: 'cleared', changes: [], left: [], anew: null });
  });

  it.each<readonly [string, string, InputChanges]>([
    ['thin cover', 'mold.cover', { mold: { coverXLowMm: 2, coverYHighMm: 2 } }],
    ['a cold oven', 'cure.stages', { cure: { stages: coldStages } }],
    ['weak clamps', 'closing.clamps', { closing: { clamps: weakClamps } }],
  ])('with %s is cleared by changing that and nothing else', async (_, id, fault) => {
    const { plan } = await plannedFor(shell, fault);
    expect(plan.changes.map((one) => one.id)).toEqual([id]);
    expect(plan).toMatchObject({ outcome: 'cleared by the changes', left: [], anew: null });
  });

  it.each<readonly [string, IndexedMesh, readonly string[]]>([
    ['a wall too thin for any stack', tray([...size], 0.3, 3), ofTheWall],
    ['a wall between two stacks', tray([...size], 1, 3), ofTheWall],
    ['an undercut', steppedTray([...size], rightWallMm, 3, 0.12), ['walls.locks', 'mold.locking']],
    ['no draft', tray([...size], rightWallMm, 0), ['walls.draft']],
  ])('with %s is to be made anew for that and nothing else', async (_, mesh, faults) => {
    const { plan, stops } = await plannedFor(mesh);
    expect(plan.outcome).toBe('cannot be cleared');
    expect(plan.changes).toEqual([]);
    expect(plan.anew?.mends).toEqual(stops);
    expect(stops.filter((id) => !faults.includes(id))).toEqual([]);
    expect(stops).toContain(faults[0]);
    expect(plan.left).toHaveLength(stops.length);
  });
});
