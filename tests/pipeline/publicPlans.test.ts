/** Plans for real enclosures: applied, no step contradicts another, and a fix is shown only where it turns its verdict. */
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../src/pipeline/evaluate';
import { readPatternFile } from '../../src/pipeline/patternFile';
import { stateOf, type PlanState } from '../../src/pipeline/planState';
import type { Question } from '../../src/pipeline/question';
import { planFor } from '../../src/pipeline/remedies';
import { StageMemory } from '../../src/pipeline/stageMemory';
import type { StageName } from '../../src/pipeline/told';
import { whatIf } from '../../src/pipeline/whatIf';
import type { Vec3 } from '../../src/core/mesh/types';
import { stepReports } from '../../src/steps/registry';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { trayPattern } from '../steps/contexts';
import { tray } from '../support/meshes';
import { hasSharedMeshes, sharedMesh } from '../support/sharedMeshes';
import { ignore, questionWith } from './support';

/** Stone and oven are tried on small trays (`faultPlans.test.ts`). */
const skips: ReadonlySet<StageName> = new Set([
  'halves',
  'filled mold',
  'oven run',
  'fine oven run',
  'places',
]);
const files: readonly (readonly [name: string, pull: Vec3])[] = [
  ['handheld_top_ascii.stl', [0, 0, 1]],
  ['mini_player_top_snap.stl', [0, 0, 1]],
  ['calculator_front_nonmanifold.stl', [0, 0, -1]],
  ['adapter_box_snap.stl', [0, 0, -1]],
];
const hasShared = hasSharedMeshes('public');
const ownTray: readonly [string, Vec3] = ['own_tray.stl', [0, 0, -1]];

async function opened(name: string): Promise<StageMemory> {
  const bytes = hasShared
    ? sharedMesh(`public/${name}`).slice()
    : new Uint8Array(writeStlBinary(tray([60, 40, 12], 1.57, 3)));
  const memory = new StageMemory();
  const { canonical } = await readPatternFile(bytes, name, ignore);
  memory.openMesh('the mesh', canonical.mesh);
  return memory;
}

const wordOf = ({ verdicts }: PlanState, id: string) => verdicts.get(id)?.word;

/** The same wall, plies and cavity are judged at four steps. */
function expectNoContradiction(state: PlanState): void {
  expect(wordOf(state, 'plies.fit')).toBe(wordOf(state, 'walls.band'));
  // What is cleared at a step is not held up by the sum of the steps, nor the other way round.
  const reports = stepReports(state.context);
  const stops = [...reports].filter(([step]) => step !== 'checklist').flatMap(([, { verdicts }]) => verdicts);
  const summed = reports.get('checklist')!.verdicts.map(({ word }) => word);
  expect(summed.includes('stop')).toBe(stops.some(({ word }) => word === 'stop'));
  // A cavity that the plies fill is no cavity that they leave air in, and the other way round.
  if (wordOf(state, 'closing.load') === 'go') expect(wordOf(state, 'plies.content')).not.toBe('stop');
  for (const [id, { word, reason }] of state.verdicts) {
    expect(reason, id).not.toBe('');
    if (word === 'go') expect(reason, id).not.toMatch(/must be|do not|does not cure|will not/iu);
  }
}

describe('the plan for a real enclosure', { timeout: 120_000 }, () => {
  it.each(hasShared ? files : [ownTray])('%s', async (name, pull) => {
    const memory = await opened(name);
    const question: Question = questionWith({ part: { pull: [...pull] } });
    const answers = await evaluate(question, (stage, asked) => memory.tell(stage, asked, ignore), skips);
    const given = { question, answers, memory };
    const options = { pattern: trayPattern, skips, onProgress: ignore, most: { quick: 40, heavy: 0 } };
    const plan = await planFor(given, options);
    const now = stateOf(given, trayPattern);
    const after = stateOf(plan.evaluated, trayPattern);
    expect(after.stops).toBeLessThanOrEqual(now.stops);
    expectNoContradiction(now);
    expectNoContradiction(after);
    for (const [id, fixes] of plan.fixes)
      for (const { patch, what } of fixes) {
        const tried = await whatIf(given, patch, skips, ignore);
        expect(wordOf(stateOf(tried!, trayPattern), id), what).not.toBe(wordOf(now, id));
      }
  });
});
