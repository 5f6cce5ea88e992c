/** The list: create, rename, duplicate, delete and its undo. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { noOvenRun, readProjectFile } from '../../src/workbook';
import { keptAsidePrefix, meshStorageKey, ovenRunKey, recordKey } from '../../src/workbook/keys';
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
    for (const unseen of ['', ' ', '\u200b', '\u200d\ufe0f \u2060', '\u3164', '\u2800\t', '\ud800'])
      expect(reasonOf(workbook.createProject({ enclosure: unseen, name: 'x' }))).toBe(
        'Give the enclosure a name that can be seen.',
      );
    expect(reasonOf(workbook.createProject({ enclosure: 'x', name: '\u200b' }))).toBe(
      'Give the part a name that can be seen.',
    );
    expect(reasonOf(await workbook.renameProject(id, { enclosure: 'x', name: 'x'.repeat(121) }))).toBe(
      'The name of the part is too long: 120 characters are the most.',
    );
    done(await workbook.renameProject(id, { enclosure: '\u200bLamp', name: 'Co\u00advér 👩‍🔧\u200b' }));
    expect(workbook.store.getState().project).toMatchObject({ enclosure: 'Lamp', name: 'Co\u00advér 👩‍🔧' });
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
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
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
      deleted: [{ id, name: 'Lid' }],
    });
    done(workbook.undeleteProject(id));
    expect(workbook.store.getState().deleted).toEqual([]);
    done(await workbook.openProject(id));
    expect(workbook.store.getState().project).toEqual(before);
    expect(workbook.packedMeshOf(id)).toBe(packed);
  });

  it('a deleted project does not come back by an edit that could not be saved', async () => {
    const { machine, workbook, id } = await tabWithProject();
    machine.beforeWrite = () => {
      throw quotaError();
    };
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    expect(workbook.flush()).toBe('full');
    done(await workbook.deleteProject(id));
    expect(workbook.store.getState()).toMatchObject({ saveState: 'saved', projects: [] });
    machine.beforeWrite = () => {};
    workbook.flush();
    expect(machine.tab().workbook.store.getState().projects).toEqual([]);
    done(workbook.undeleteProject(id));
    done(await workbook.openProject(id));
    expect(workbook.store.getState().project?.inputs.walls.wrongShareAllowedPercent).toBe(0.2);
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
    expect(reasonOf(workbook.undeleteProject(id))).toContain('no room');
    machine.beforeWrite = () => {};
    done(workbook.undeleteProject(id));
    expect(machine.disk).toEqual(before);
  });

  it('every delete can be undone until it is forgotten, in any order', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const other = done(workbook.createProject({ enclosure: 'Lamp', name: 'Base' }));
    done(await workbook.deleteProject(id));
    done(await workbook.deleteProject(other.id));
    const deletedNames = () => workbook.store.getState().deleted.map(({ name }) => name);
    expect(deletedNames()).toEqual(['Base', 'Lid']);
    done(workbook.undeleteProject(id));
    expect(deletedNames()).toEqual(['Base']);
    expect(reasonOf(workbook.undeleteProject(id))).toBe('There is no delete to undo.');
    done(workbook.undeleteProject(other.id));
    expect(workbook.store.getState().projects.map(({ name }) => name)).toEqual(['Base', 'Lid']);
    for (const one of [id, other.id]) {
      done(await workbook.deleteProject(one));
      workbook.forgetDeleted(one);
      expect(workbook.undeleteProject(one).done).toBe(false);
    }
    expect([...machine.disk.keys()].filter((key) => !key.startsWith(keptAsidePrefix))).toEqual([]);
  });

  it('puts back the oven run and the timers of a deleted project', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const run = { ...noOvenRun, startedAtMs: 1_800_000_000_000 };
    const timer = { what: 'mixing', lengthS: 60, endsAtMs: null, leftS: 20, heard: false };
    done(workbook.setOvenRun(run));
    done(workbook.setTimers([timer]));
    const before = new Map(machine.disk);
    done(await workbook.deleteProject(id));
    expect(machine.disk.has(ovenRunKey(id))).toBe(false);
    done(workbook.undeleteProject(id));
    expect(machine.disk).toEqual(before);
    done(await workbook.openProject(id));
    expect(workbook.store.getState()).toMatchObject({ ovenRun: run, timers: [timer] });
  });

  it('puts back the mesh of a project that a newer format saved', async () => {
    const { machine, tab, workbook: first, id } = await tabWithProject();
    const packed = fakePackedMesh(3);
    done(first.setPattern(patternOf(packed), packed));
    first.flush();
    tab.crash();
    const { meshKey } = patternOf(packed);
    const newer = `{"kind":"mold-layup-project","format":99,"project":{"mesh":"${meshKey}"}}`;
    for (const slot of [1, 2]) machine.disk.set(recordKey(id, slot), newer);
    const { workbook } = machine.tab();
    const before = new Map(machine.disk);
    done(await workbook.deleteProject(id));
    workbook.flush();
    // Another tab sweeps: it knows of nobody who wants the mesh.
    machine.tab();
    expect(machine.disk.has(meshStorageKey(meshKey))).toBe(false);
    done(workbook.undeleteProject(id));
    workbook.flush();
    expect(machine.disk).toEqual(before);
  });

  it('does not put a deleted project over one that came back from its file in another tab', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const { file } = done(workbook.exportProjectFile(id));
    done(await workbook.deleteProject(id));
    const second = machine.tab().workbook;
    expect(done(second.importProjectFile(readProjectFile(file.text))).id).toBe(id);
    expect(reasonOf(workbook.undeleteProject(id))).toContain('is there again already');
  });

  it('refuses actions on projects that are not there', async () => {
    const { workbook } = createMachine().tab();
    expect(reasonOf(await workbook.openProject('none'))).toContain('not in this browser: it was deleted');
    expect(reasonOf(await workbook.renameProject('none', { enclosure: 'a', name: 'b' }))).toContain(
      'not in this browser',
    );
    expect(reasonOf(await workbook.deleteProject('none'))).toContain('no longer there');
    expect(reasonOf(workbook.duplicateProject('none'))).toContain('not in this browser');
    expect(reasonOf(workbook.exportProjectFile('none'))).toContain('not in this browser');
    expect(workbook.packedMeshOf('none')).toBeNull();
  });

  it('opening a project twice at once makes this tab its editor', async () => {
    const { workbook, id } = await tabWithProject();
    workbook.closeProject();
    await Promise.all([workbook.openProject(id), workbook.openProject(id)]);
    expect(workbook.store.getState().editor).toBe('here');
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
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
