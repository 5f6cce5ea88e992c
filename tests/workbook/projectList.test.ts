/** The list: create, rename, duplicate, delete and its undo. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { keptAsidePrefix, recordKey } from '../../src/workbook/keys';
import {
  createMachine,
  done,
  fakePackedMesh,
  patternOf,
  quotaError,
  reasonOf,
  tabWithProject,
} from './support';

beforeEach(() => void vi.useFakeTimers());

describe('the project list', () => {
  it('is sorted by enclosure and name, and the same in a later tab', () => {
    const machine = createMachine();
    const { workbook } = machine.tab();
    for (const [enclosure, name] of [
      ['Lamp', 'Lid'],
      ['Box', 'Top'],
      ['Lamp', 'Base'],
    ] as const) {
      done(workbook.createProject({ enclosure, name }));
    }
    const names = workbook.store.getState().projects.map((listed) => `${listed.enclosure}/${listed.name}`);
    expect(names).toEqual(['Box/Top', 'Lamp/Base', 'Lamp/Lid']);
    expect(machine.tab().workbook.store.getState().projects).toEqual(workbook.store.getState().projects);
  });

  it('takes names without the blanks around them and refuses empty and overlong ones', async () => {
    const { workbook, id } = await tabWithProject();
    done(await workbook.renameProject(id, { enclosure: ' Lamp ', name: ' Cover ' }));
    expect(workbook.store.getState().project).toMatchObject({ enclosure: 'Lamp', name: 'Cover' });
    expect(reasonOf(workbook.createProject({ enclosure: ' ', name: 'x' }))).toBe(
      'The name of the enclosure needs 1 to 120 characters.',
    );
    expect(reasonOf(await workbook.renameProject(id, { enclosure: 'x', name: 'x'.repeat(121) }))).toBe(
      'The name of the part needs 1 to 120 characters.',
    );
  });

  it('renames a project that is not open', async () => {
    const { machine, workbook, id } = await tabWithProject();
    workbook.closeProject();
    done(await workbook.renameProject(id, { enclosure: 'Torch', name: 'Cap' }));
    expect(machine.tab().workbook.store.getState().projects).toMatchObject([
      { enclosure: 'Torch', name: 'Cap' },
    ]);
  });

  it('duplicates inputs and pattern, but not what was done at the bench', async () => {
    const { workbook, id } = await tabWithProject();
    const packed = fakePackedMesh(1);
    done(workbook.setPattern(patternOf(packed), packed));
    done(workbook.setInput('walls.overMm', 0.2));
    done(workbook.setRecord('line', { done: true }));
    const copy = done(workbook.duplicateProject(id));
    done(workbook.duplicateProject(id));
    expect(workbook.store.getState().projects.map(({ name }) => name)).toEqual([
      'Lid',
      'Lid (copy 2)',
      'Lid (copy)',
    ]);
    const original = workbook.store.getState().project;
    done(await workbook.openProject(copy.id));
    expect(workbook.store.getState().project).toMatchObject({
      inputs: original?.inputs,
      pattern: original?.pattern,
      record: {},
    });
    expect(workbook.packedMeshOf(copy.id)).toBe(packed);
  });

  it('deletes the open project and puts it back as it was, unsaved edits included', async () => {
    const { workbook, id } = await tabWithProject();
    const packed = fakePackedMesh(1);
    done(workbook.setPattern(patternOf(packed), packed));
    const before = workbook.store.getState().project;
    done(await workbook.deleteProject(id));
    expect(workbook.store.getState()).toMatchObject({
      project: null,
      editor: 'none',
      projects: [],
      lastDeleted: { id, name: 'Lid' },
    });
    expect(done(workbook.undeleteProject()).id).toBe(id);
    expect(workbook.store.getState().lastDeleted).toBeNull();
    done(await workbook.openProject(id));
    expect(workbook.store.getState().project).toEqual(before);
    expect(workbook.packedMeshOf(id)).toBe(packed);
  });

  it('a deleted project does not come back by an edit that could not be saved', async () => {
    const { machine, workbook, id } = await tabWithProject();
    machine.beforeWrite = () => {
      throw quotaError();
    };
    done(workbook.setInput('walls.overMm', 0.2));
    expect(workbook.flush()).toBe('full');
    done(await workbook.deleteProject(id));
    expect(workbook.store.getState()).toMatchObject({ saveState: 'saved', projects: [] });
    machine.beforeWrite = () => {};
    workbook.flush();
    expect(machine.tab().workbook.store.getState().projects).toEqual([]);
    done(workbook.undeleteProject());
    done(await workbook.openProject(id));
    expect(workbook.store.getState().project?.inputs.walls.overMm).toBe(0.2);
  });

  it('puts back a project of a newer format byte for byte', async () => {
    const { machine, tab, id } = await tabWithProject();
    tab.crash();
    machine.disk.set(recordKey(id, 1), '{"kind":"mold-layup-project","format":99}');
    const { workbook } = machine.tab();
    const before = new Map(machine.disk);
    done(await workbook.deleteProject(id));
    expect(machine.disk.size).toBeLessThan(before.size);
    machine.beforeWrite = () => {
      throw quotaError();
    };
    expect(reasonOf(workbook.undeleteProject())).toContain('no room');
    machine.beforeWrite = () => {};
    done(workbook.undeleteProject());
    expect(machine.disk).toEqual(before);
  });

  it('a delete is final after the next one, and after it is forgotten', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const other = done(workbook.createProject({ enclosure: 'Lamp', name: 'Base' }));
    done(await workbook.deleteProject(id));
    done(await workbook.deleteProject(other.id));
    expect(done(workbook.undeleteProject()).id).toBe(other.id);
    expect(reasonOf(workbook.undeleteProject())).toBe('There is no delete to undo.');
    done(await workbook.deleteProject(other.id));
    workbook.forgetDeleted();
    expect(workbook.undeleteProject().done).toBe(false);
    expect([...machine.disk.keys()].filter((key) => !key.startsWith(keptAsidePrefix))).toEqual([]);
  });

  it('refuses actions on projects that are not there', async () => {
    const { workbook } = createMachine().tab();
    expect(reasonOf(await workbook.openProject('none'))).toContain('its record is missing');
    expect(reasonOf(await workbook.renameProject('none', { enclosure: 'a', name: 'b' }))).toContain(
      'missing',
    );
    expect(reasonOf(await workbook.deleteProject('none'))).toContain('no longer there');
    expect(reasonOf(workbook.duplicateProject('none'))).toContain('missing');
    expect(reasonOf(workbook.exportProjectFile('none'))).toContain('missing');
    expect(workbook.packedMeshOf('none')).toBeNull();
  });

  it('opening a project twice at once makes this tab its editor', async () => {
    const { workbook, id } = await tabWithProject();
    workbook.closeProject();
    await Promise.all([workbook.openProject(id), workbook.openProject(id)]);
    expect(workbook.store.getState().editor).toBe('here');
    done(workbook.setInput('walls.overMm', 0.2));
  });

  it('opening two projects at once ends with the later one', async () => {
    const { workbook, id } = await tabWithProject();
    const other = done(workbook.createProject({ enclosure: 'Lamp', name: 'Base' }));
    const [first, second] = await Promise.all([workbook.openProject(other.id), workbook.openProject(id)]);
    expect(reasonOf(first)).toBe('Another project was opened meanwhile.');
    done(second);
    expect(workbook.store.getState().project?.id).toBe(id);
  });
});
