/** Several tabs on one storage: one editor per project, everybody else follows. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { entryKey } from '../../src/workbook/keys';
import { savePauseMs } from '../../src/workbook/saver';
import { createMachine, done, reasonOf, settle, tabWithProject, type Tab } from './support';

beforeEach(() => void vi.useFakeTimers());

const wrongShareAllowedPercent = ({ workbook }: Tab): number | null | undefined =>
  workbook.store.getState().project?.inputs.walls.wrongShareAllowedPercent;

describe('a second tab with the same project', () => {
  it('is read-only, says so, and refuses every change', async () => {
    const { machine, id } = await tabWithProject();
    const { workbook } = machine.tab();
    done(await workbook.openProject(id));
    expect(workbook.store.getState()).toMatchObject({ editor: 'elsewhere', saveState: 'readOnly' });
    const refusals = [
      workbook.setInput('walls.wrongShareAllowedPercent', 1),
      workbook.updateInputs((draft) => void (draft.walls.wrongShareAllowedPercent = 1)),
      workbook.setPattern(null, null),
      workbook.setRecord('line', { done: true }),
      await workbook.renameProject(id, { enclosure: 'a', name: 'b' }),
      await workbook.deleteProject(id),
    ];
    for (const refusal of refusals) expect(reasonOf(refusal)).toContain('open in another tab');
    workbook.undo();
    expect(workbook.store.getState().project?.name).toBe('Lid');
  });

  it('follows what the editor saves', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const second = machine.tab();
    done(await second.workbook.openProject(id));
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.3));
    expect(wrongShareAllowedPercent(second)).toBe(5);
    vi.advanceTimersByTime(savePauseMs);
    expect(wrongShareAllowedPercent(second)).toBe(0.3);
    done(await workbook.renameProject(id, { enclosure: 'Lamp', name: 'Cover' }));
    workbook.flush();
    expect(second.workbook.store.getState().projects).toMatchObject([{ name: 'Cover' }]);
    expect(second.workbook.store.getState().saveState).toBe('readOnly');
  });

  it.each([
    ['closes the project', 'close'],
    ['is closed', 'dispose'],
    ['crashes', 'crash'],
  ] as const)('takes over by itself when the first %s, with the last save', async (_what, how) => {
    const { machine, tab, workbook, id } = await tabWithProject();
    const second = machine.tab();
    done(await second.workbook.openProject(id));
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.3));
    if (how === 'crash') {
      workbook.flush();
      tab.crash();
    } else if (how === 'close') workbook.closeProject();
    else workbook.dispose();
    await settle();
    expect(second.workbook.store.getState()).toMatchObject({ editor: 'here', saveState: 'saved' });
    expect(wrongShareAllowedPercent(second)).toBe(0.3);
    expect(second.workbook.canUndo()).toBe(false);
    done(second.workbook.setInput('walls.wrongShareAllowedPercent', 0.4));
    expect(second.workbook.flush()).toBe('saved');
  });

  it('does not take over a project that it has left', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const second = machine.tab();
    done(await second.workbook.openProject(id));
    second.workbook.closeProject();
    workbook.closeProject();
    await settle();
    expect(second.workbook.store.getState()).toMatchObject({ project: null, editor: 'none' });
    done(await workbook.openProject(id));
    expect(workbook.store.getState().editor).toBe('here');
  });

  it('closes the project when it is deleted in the first', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const second = machine.tab();
    done(await second.workbook.openProject(id));
    done(await workbook.deleteProject(id));
    await settle();
    expect(second.workbook.store.getState()).toMatchObject({ project: null, editor: 'none', projects: [] });
    expect(second.workbook.store.getState().notes[0]).toContain('no longer there');
  });

  it('and a third take over in the order in which they came', async () => {
    const { machine, tab, id } = await tabWithProject();
    const [second, third] = [machine.tab(), machine.tab()];
    done(await second.workbook.openProject(id));
    done(await third.workbook.openProject(id));
    tab.crash();
    await settle();
    expect([second, third].map((one) => one.workbook.store.getState().editor)).toEqual(['here', 'elsewhere']);
    second.crash();
    await settle();
    expect(third.workbook.store.getState().editor).toBe('here');
  });
});

describe('two tabs with two projects', () => {
  it('do not lose a line or a change of each other', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const second = machine.tab().workbook;
    const other = done(second.createProject({ enclosure: 'Lamp', name: 'Base' }));
    done(await second.openProject(other.id));
    for (const value of [0.1, 0.2, 0.3]) {
      done(workbook.setInput('walls.wrongShareAllowedPercent', value));
      done(second.setInput('walls.wrongShareAllowedPercent', value + 1));
      vi.advanceTimersByTime(savePauseMs);
    }
    const third = machine.tab().workbook;
    const values: unknown[] = [];
    for (const one of [id, other.id]) {
      workbook.closeProject();
      second.closeProject();
      done(await third.openProject(one));
      values.push(third.store.getState().project?.inputs.walls.wrongShareAllowedPercent);
    }
    expect(values).toEqual([0.3, 1.3]);
    expect(workbook.store.getState().projects.map(({ name }) => name)).toEqual(['Base', 'Lid']);
  });

  it('rename and delete only what the other does not edit', async () => {
    const { machine, id } = await tabWithProject();
    const second = machine.tab().workbook;
    expect((await second.deleteProject(id)).done).toBe(false);
    expect(machine.disk.has(entryKey(id))).toBe(true);
    const other = done(second.createProject({ enclosure: 'Lamp', name: 'Base' }));
    const third = machine.tab().workbook;
    done(await third.renameProject(other.id, { enclosure: 'Lamp', name: 'Foot' }));
    expect(second.store.getState().projects.map(({ name }) => name)).toEqual(['Foot', 'Lid']);
    done(await third.deleteProject(other.id));
    expect(second.store.getState().projects.map(({ name }) => name)).toEqual(['Lid']);
  });

  it('a project with changes that could not be saved keeps its lock after it was left', async () => {
    const { machine, workbook, id } = await tabWithProject();
    machine.beforeWrite = () => {
      throw Object.assign(new Error('full'), { name: 'QuotaExceededError' });
    };
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.3));
    workbook.closeProject();
    const second = machine.tab();
    done(await second.workbook.openProject(id));
    expect(second.workbook.store.getState().editor).toBe('elsewhere');
    machine.beforeWrite = () => {};
    expect(workbook.flush()).toBe('saved');
    await settle();
    expect(second.workbook.store.getState().editor).toBe('here');
    expect(wrongShareAllowedPercent(second)).toBe(0.3);
  });
});

describe('a browser without locks', () => {
  it('lets every tab edit, says so, and the tabs follow each other', async () => {
    const machine = createMachine();
    const [first, second] = [machine.tab({ locks: 'absent' }), machine.tab({ locks: 'absent' })];
    const { id } = done(first.workbook.createProject({ enclosure: 'Lamp', name: 'Lid' }));
    done(await first.workbook.openProject(id));
    done(await second.workbook.openProject(id));
    expect(second.workbook.store.getState().editor).toBe('here');
    expect(second.workbook.store.getState().notes[0]).toContain('Keep it open in one tab only');
    done(first.workbook.setInput('walls.wrongShareAllowedPercent', 0.3));
    // What is being typed here is not replaced under the maker's hands.
    done(second.workbook.setInput('walls.lookVoidPercent', 0.7));
    first.workbook.flush();
    expect(second.workbook.store.getState().project?.inputs.walls.lookVoidPercent).toBe(0.7);
    second.workbook.flush();
    done(first.workbook.setInput('walls.wrongShareAllowedPercent', 0.3));
    first.workbook.flush();
    expect(wrongShareAllowedPercent(second)).toBe(0.3);
  });
});
