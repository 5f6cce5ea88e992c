/** Editing the open project: validation at the door, undo and redo of every input, typing taken together. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { finishCoatTable } from '../../src/steps/inputs/finish';
import { contentTable, measuredRimTable, stackTable, transmitterTable } from '../../src/steps/inputs/fit';
import { startOf } from '../../src/steps/kit/inputTable';
import { defaultProjectInputs, inputSpecs } from '../../src/steps/inputs/project';
import { coalesceMs } from '../../src/workbook/history';
import { undoLimit } from '../../src/workbook/state';
import { done, fakePackedMesh, patternOf, reasonOf, tabWithProject, createMachine } from './support';
import type { Ply } from '../../src/steps/inputs/ply';

beforeEach(() => void vi.useFakeTimers());

describe('an input', () => {
  it('is set by its path, in lists too', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.setInput('plies.materials.0.arealWeightGsm', 160));
    done(workbook.setInput('plies.stack.1.angleDeg', -45));
    done(workbook.setInput('part.pull', [1, 0, 0]));
    expect(workbook.store.getState().project?.inputs).toMatchObject({
      part: { pull: [1, 0, 0] },
      plies: { materials: [{ arealWeightGsm: 160 }], stack: [{}, { angleDeg: -45 }, {}] },
    });
  });

  it.each([
    'walls.over',
    'walls',
    '',
    'plies.stack.9.angleDeg',
    'walls.wrongShareAllowedPercent.x',
    '__proto__.x',
    'toString',
  ])('that does not exist (%j) is refused', async (path) => {
    const { workbook } = await tabWithProject();
    expect(workbook.setInput(path, 1).done).toBe(false);
    expect(workbook.canUndo()).toBe(false);
  });

  it.each([
    [
      'walls.wrongShareAllowedPercent',
      -1,
      'Share that may have a wrong wall must be a number from 0 to 100 % of area.',
    ],
    [
      'walls.wrongShareAllowedPercent',
      Number.NaN,
      'Share that may have a wrong wall must be a number from 0 to 100 % of area.',
    ],
    ['part.body', 1.5, 'Body must be a whole number from 0 to 100000.'],
    ['part.winding', 'x', 'Flipped facets must be one of: turn them right, leave as in the file.'],
    ['plies.materials.0.fiberDensityGCm3', 50, 'Fiber density must be a number from 0.5 to 5 g/cm³.'],
    ['plies.stack.0.angleDeg', 999, 'Angle must be a number from -180 to 180 °.'],
    ['part.pull', [0, 0], 'The value for Pull cannot be used.'],
  ])('%s = %j is refused in plain words', async (path, value, reason) => {
    const { workbook } = await tabWithProject();
    const before = workbook.store.getState().project;
    expect(reasonOf(workbook.setInput(path, value))).toBe(reason);
    expect(workbook.store.getState().project).toBe(before);
  });

  it('set to the value it has is no change', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.setInput('walls.wrongShareAllowedPercent', 5));
    expect(workbook.canUndo()).toBe(false);
    expect(workbook.store.getState().saveState).toBe('saved');
  });

  it('cannot be changed past the actions: the document is frozen once edited', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    const walls = workbook.store.getState().project?.inputs.walls;
    expect(() => Object.assign(walls ?? {}, { wrongShareAllowedPercent: 9 })).toThrow(TypeError);
  });

  it('is refused when no project is open', () => {
    const { workbook } = createMachine().tab();
    expect(reasonOf(workbook.setInput('walls.wrongShareAllowedPercent', 1))).toBe('No project is open.');
  });
});

describe('undo and redo', () => {
  /** For inputs that have no spec of a number or a choice; an empty list where none is said. */
  const otherValues: Readonly<Record<string, unknown>> = {
    'part.pull': [0, 1, 0],
    'fit.mate': { projectId: 'lower', name: 'Lower half' },
    'fit.contents': [{ ...startOf(contentTable), id: 'board-1' }],
    'fit.transmitters': [{ ...startOf(transmitterTable), id: 'radio-1' }],
    'fit.stack': [{ ...startOf(stackTable), id: 'tolerance-1' }],
    'fit.measuredRims': [{ ...startOf(measuredRimTable), id: 'place-1' }],
    'finish.coats': [{ ...startOf(finishCoatTable), id: 'coat-1' }],
    'finish.startDate': '2031-05-06',
    'plies.patches': [
      {
        id: 'patch-1',
        place: 'hinge',
        materialId: 'twill-200',
        angleDeg: 45,
        faceDown: false,
        areaCm2: 6,
        afterPly: 2,
      },
    ],
    'closing.bedPoints': [
      { materialId: 'twill-200', lightKpa: 20, lightPlyMm: 0.28, heavyKpa: 200, heavyPlyMm: 0.23 },
    ],
    'cure.supplierCures': [{ hours: 16, temperatureC: 70 }],
    'cure.kinetics': { ...defaultProjectInputs.cure.kinetics, heatJPerG: 300 },
    'mold.bag': { ...defaultProjectInputs.mold.bag, waterPowderRatio: 0.22 },
    'mold.measured': { ...defaultProjectInputs.mold.measured, patternG: 41.5 },
    'mold.coatSheet': { ...defaultProjectInputs.mold.coatSheet, sealerLimitC: 140 },
    'mold.wanted': { ...defaultProjectInputs.mold.wanted, xMm: 120 },
    'mold.dryingLog': [{ hours: 0, negativeG: 421, positiveG: null }],
    'mold.repairs': [
      {
        id: 'repair-1',
        half: 'negative',
        kind: 'scraped',
        atMm: [10, 20, 5],
        radiusMm: 4,
        depthMm: 0.2,
        note: 'bubble',
      },
    ],
  };

  /** Another valid value for any input, by its spec. */
  const changed = Object.entries(inputSpecs).map(([path, spec]): [string, unknown] => {
    if (spec.kind === 'number') return [path, spec.default === spec.max ? spec.min : spec.max];
    if (spec.kind === 'choice')
      return [path, spec.choices.find(({ value }) => value !== spec.default)?.value];
    return [path, otherValues[path] ?? []];
  });

  it.each(changed)('cover %s', async (path, value) => {
    const { workbook } = await tabWithProject();
    const before = workbook.store.getState().project?.inputs;
    done(workbook.setInput(path, value));
    const after = workbook.store.getState().project?.inputs;
    expect(after).not.toEqual(before);
    workbook.undo();
    expect(workbook.store.getState().project?.inputs).toEqual(before);
    expect([workbook.canUndo(), workbook.canRedo()]).toEqual([false, true]);
    workbook.redo();
    expect(workbook.store.getState().project?.inputs).toEqual(after);
    expect([workbook.canUndo(), workbook.canRedo()]).toEqual([true, false]);
  });

  it('cover the pattern: the former one is back with its mesh, also after both were saved', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const [first, second] = [fakePackedMesh(1), fakePackedMesh(2)];
    for (const packed of [first, second]) {
      done(workbook.setPattern(patternOf(packed), packed));
      workbook.flush();
    }
    workbook.undo();
    expect(workbook.packedMeshOf(id)).toBe(first);
    expect(workbook.flush()).toBe('saved');
    const later = machine.tab().workbook;
    expect(later.packedMeshOf(id)).toBe(first);
    workbook.redo();
    expect(workbook.packedMeshOf(id)).toBe(second);
    workbook.undo();
    workbook.undo();
    expect(workbook.store.getState().project?.pattern).toBeNull();
  });

  it('cover the bench record and the names', async () => {
    const { workbook, id } = await tabWithProject();
    done(workbook.setRecord('line', { done: true }));
    done(await workbook.renameProject(id, { enclosure: 'Lamp', name: 'Cover' }));
    workbook.undo();
    expect(workbook.store.getState().projects).toMatchObject([{ name: 'Lid' }]);
    workbook.undo();
    expect(workbook.store.getState().project?.record).toEqual({});
  });

  it('are saved like edits', async () => {
    const { machine, tab, workbook, id } = await tabWithProject();
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    workbook.flush();
    workbook.undo();
    workbook.flush();
    tab.crash();
    const later = machine.tab().workbook;
    done(await later.openProject(id));
    expect(later.store.getState().project?.inputs.walls.wrongShareAllowedPercent).toBe(5);
  });

  it('belong to each project: opening another one does not mix them', async () => {
    const { workbook, id } = await tabWithProject();
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    const other = done(workbook.createProject({ enclosure: 'Lamp', name: 'Base' }));
    done(await workbook.openProject(other.id));
    expect(workbook.canUndo()).toBe(false);
    workbook.undo();
    expect(workbook.store.getState().project?.id).toBe(other.id);
    done(await workbook.openProject(id));
    workbook.undo();
    expect(workbook.store.getState().project).toMatchObject({
      id,
      inputs: { walls: { wrongShareAllowedPercent: 5 } },
    });
  });

  it('forget a project that was changed elsewhere meanwhile', async () => {
    const { machine, workbook, id } = await tabWithProject();
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    workbook.closeProject();
    const other = machine.tab().workbook;
    machine.clock.nowMs += 5000;
    done(await other.openProject(id));
    done(other.setInput('walls.wrongShareAllowedPercent', 0.4));
    other.dispose();
    done(await workbook.openProject(id));
    expect(workbook.store.getState().project?.inputs.walls.wrongShareAllowedPercent).toBe(0.4);
    expect(workbook.canUndo()).toBe(false);
  });

  it('reach back a limited number of steps', async () => {
    const { machine, workbook } = await tabWithProject();
    for (let i = 0; i < undoLimit + 5; i += 1) {
      machine.clock.nowMs += coalesceMs + 1;
      done(workbook.setInput('walls.wrongShareAllowedPercent', i % 2 === 0 ? 1 : 2));
    }
    expect(workbook.store.temporal.getState().pastStates).toHaveLength(undoLimit);
  });

  it('a new edit after an undo ends the redo', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    workbook.undo();
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.3));
    expect(workbook.canRedo()).toBe(false);
  });
});

describe('typing', () => {
  it('in one field is one step while it goes on, and a pause begins another', async () => {
    const { machine, workbook } = await tabWithProject();
    for (const value of [1, 1.2, 1.25]) {
      machine.clock.nowMs += coalesceMs;
      done(workbook.setInput('walls.wrongShareAllowedPercent', value));
    }
    machine.clock.nowMs += coalesceMs + 1;
    done(workbook.setInput('walls.wrongShareAllowedPercent', 2));
    workbook.undo();
    expect(workbook.store.getState().project?.inputs.walls.wrongShareAllowedPercent).toBe(1.25);
    workbook.undo();
    expect(workbook.store.getState().project?.inputs.walls.wrongShareAllowedPercent).toBe(5);
    expect(workbook.canUndo()).toBe(false);
  });

  it('in another field is another step', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.setInput('walls.wrongShareAllowedPercent', 1));
    done(workbook.setInput('walls.leastDraftDeg', 1));
    workbook.undo();
    expect(workbook.store.getState().project?.inputs.walls).toMatchObject({
      wrongShareAllowedPercent: 1,
      leastDraftDeg: 2,
    });
  });

  it('goes on after an undo as a new step', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.setInput('walls.wrongShareAllowedPercent', 1));
    workbook.undo();
    done(workbook.setInput('walls.wrongShareAllowedPercent', 2));
    workbook.undo();
    expect(workbook.store.getState().project?.inputs.walls.wrongShareAllowedPercent).toBe(5);
  });

  it('in the record is taken together per line; recipes only when they name a group', async () => {
    const { workbook } = await tabWithProject();
    for (const measured of ['0', '0.', '0.9']) done(workbook.setRecord('caliper', { measured }));
    for (const deg of [1, 2])
      done(workbook.updateInputs((draft) => void (draft.walls.leastDraftDeg = deg), 'draft'));
    for (const mm of [1, 2])
      done(workbook.updateInputs((draft) => void (draft.walls.wrongShareAllowedPercent = mm)));
    expect(workbook.store.temporal.getState().pastStates).toHaveLength(1 + 1 + 2);
  });
});

describe('other edits', () => {
  it('a recipe may change lists, and is refused as a whole', async () => {
    const { workbook } = await tabWithProject();
    done(
      workbook.updateInputs(
        ({ plies }) => void plies.stack.push({ ...(plies.stack[0] as Ply), id: 'p4', angleDeg: 90 }),
      ),
    );
    expect(workbook.store.getState().project?.inputs.plies.stack).toHaveLength(4);
    const refusedRecipe = workbook.updateInputs(({ plies }) => {
      plies.stack.pop();
      plies.bulkFactor = 0;
    });
    expect(reasonOf(refusedRecipe)).toBe('Thickness as laid over cured must be a number from 1 to 3.');
    expect(workbook.store.getState().project?.inputs.plies.stack).toHaveLength(4);
  });

  it('a pattern without its mesh is refused, one that the workbook has needs none', async () => {
    const { workbook } = await tabWithProject();
    const packed = fakePackedMesh(1);
    expect(reasonOf(workbook.setPattern(patternOf(packed), null))).toContain('is missing');
    done(workbook.setPattern(patternOf(packed), packed));
    done(workbook.setPattern({ ...patternOf(packed), fileName: 'renamed.stl' }, null));
    done(workbook.setPattern(null, null));
    expect(reasonOf(workbook.setPattern({ ...patternOf(packed), sha256: 'x' }, packed))).toContain(
      'not complete',
    );
  });

  it('a record line keeps what the patch does not name, and refuses what no sheet can hold', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.setRecord('caliper', { measured: '0.9' }));
    done(workbook.setRecord('caliper', { done: true }));
    expect(workbook.store.getState().project?.record).toEqual({
      caliper: { done: true, measured: '0.9', initials: '' },
    });
    expect(reasonOf(workbook.setRecord('caliper', { measured: 'x'.repeat(401) }))).toContain('too long');
  });
});
