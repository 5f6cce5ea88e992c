/** Saved meshes: one copy per content, kept as long as anything needs it, and no longer. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { keptAsidePrefix, meshPrefix, meshStorageKey, recordKey } from '../../src/workbook/keys';
import {
  createMachine,
  done,
  fakePackedMesh,
  patternOf,
  quotaError,
  reasonOf,
  tabWithProject,
  type Machine,
} from './support';

beforeEach(() => void vi.useFakeTimers());

const [first, second] = [fakePackedMesh(1, 900), fakePackedMesh(2, 900)];
const keyOf = (packed: string): string => patternOf(packed).meshKey;

function storedMeshes(machine: Machine): string[] {
  return [...machine.disk.keys()].flatMap((key) =>
    key.startsWith(meshPrefix) ? key.slice(meshPrefix.length) : [],
  );
}

describe('a saved mesh', () => {
  it('is stored once for two projects, and goes with the last of them', async () => {
    const { machine, workbook, id } = await tabWithProject();
    done(workbook.setPattern(patternOf(first), first));
    const copy = done(workbook.duplicateProject(id));
    expect(storedMeshes(machine)).toEqual([keyOf(first)]);
    done(await workbook.deleteProject(id));
    workbook.forgetDeleted(id);
    expect(storedMeshes(machine)).toEqual([keyOf(first)]);
    done(await workbook.deleteProject(copy.id));
    workbook.forgetDeleted(copy.id);
    expect(storedMeshes(machine)).toEqual([]);
  });

  it('stays while a delete can be undone', async () => {
    const { machine, workbook, id } = await tabWithProject();
    done(workbook.setPattern(patternOf(first), first));
    workbook.flush();
    done(await workbook.deleteProject(id));
    expect(storedMeshes(machine)).toEqual([keyOf(first)]);
  });

  it('of a replaced pattern stays while it can come back by undo, and goes at the next start', async () => {
    const { machine, tab, workbook } = await tabWithProject();
    for (const packed of [first, second]) {
      done(workbook.setPattern(patternOf(packed), packed));
      workbook.flush();
    }
    for (const value of [0.1, 0.2, 0.3]) {
      done(workbook.setInput('walls.wrongShareAllowedPercent', value));
      workbook.flush();
    }
    expect(storedMeshes(machine).sort()).toEqual([keyOf(first), keyOf(second)].sort());
    tab.crash();
    machine.tab();
    expect(storedMeshes(machine)).toEqual([keyOf(second)]);
  });

  it('of a pattern that was undone goes with the redo', async () => {
    const { machine, workbook } = await tabWithProject();
    done(workbook.setPattern(patternOf(first), first));
    workbook.flush();
    workbook.undo();
    for (const initials of ['a', 'b']) {
      workbook.flush();
      expect(storedMeshes(machine)).toEqual([keyOf(first)]);
      workbook.redo();
      done(workbook.setRecord('line', { initials }));
      workbook.undo();
      workbook.undo();
    }
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.1));
    workbook.flush();
    expect(storedMeshes(machine)).toEqual([]);
  });

  it('that only an undo wants gives way when storage is full, and undo still works', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const other = done(workbook.createProject({ enclosure: 'Lamp', name: 'Base' }));
    done(await workbook.openProject(other.id));
    done(workbook.setPattern(patternOf(first), first));
    workbook.flush();
    done(await workbook.deleteProject(other.id));
    expect(storedMeshes(machine)).toEqual([keyOf(first)]);
    // Room for one mesh only.
    machine.beforeWrite = (key) => {
      if (key.startsWith(meshPrefix) && storedMeshes(machine).length > 0) throw quotaError();
    };
    done(await workbook.openProject(id));
    done(workbook.setPattern(patternOf(second), second));
    expect(workbook.flush()).toBe('saved');
    expect(storedMeshes(machine)).toEqual([keyOf(second)]);
    expect(reasonOf(workbook.undeleteProject(other.id))).toContain('no room');
    machine.beforeWrite = () => {};
    done(workbook.undeleteProject(other.id));
    expect(workbook.packedMeshOf(other.id)).toBe(first);
    expect(storedMeshes(machine).sort()).toEqual([keyOf(first), keyOf(second)].sort());
  });

  it('is held for the undo of a pattern that replaces it after a reload', async () => {
    const { machine, tab, workbook: before, id } = await tabWithProject();
    done(before.setPattern(patternOf(first), first));
    before.flush();
    tab.crash();
    const { workbook } = machine.tab();
    done(await workbook.openProject(id));
    done(workbook.setPattern(patternOf(second), second));
    machine.disk.delete(meshStorageKey(keyOf(first)));
    workbook.undo();
    expect(workbook.flush()).toBe('saved');
    expect(storedMeshes(machine)).toContain(keyOf(first));
  });

  it('is held for a delete that follows a reload', async () => {
    const { machine, tab, workbook: before, id } = await tabWithProject();
    done(before.setPattern(patternOf(first), first));
    before.flush();
    tab.crash();
    const { workbook } = machine.tab();
    done(await workbook.deleteProject(id));
    machine.disk.delete(meshStorageKey(keyOf(first)));
    done(workbook.undeleteProject(id));
    expect(workbook.packedMeshOf(id)).toBe(first);
  });

  it('of a deleted project goes with its history', async () => {
    const { machine, workbook, id } = await tabWithProject();
    for (const packed of [first, second]) {
      done(workbook.setPattern(patternOf(packed), packed));
      workbook.flush();
    }
    workbook.closeProject();
    expect(storedMeshes(machine)).toHaveLength(2);
    done(await workbook.deleteProject(id));
    workbook.forgetDeleted(id);
    expect(storedMeshes(machine)).toEqual([]);
  });

  it('that a damaged or newer record names is never removed', async () => {
    const { machine, tab, workbook, id } = await tabWithProject();
    done(workbook.setPattern(patternOf(first), first));
    workbook.flush();
    tab.crash();
    for (const slot of [1, 2])
      machine.disk.set(recordKey(id, slot), `{"half a record","meshKey":"${keyOf(first)}`);
    machine.tab();
    machine.tab();
    expect(storedMeshes(machine)).toEqual([keyOf(first)]);
    expect([...machine.disk.keys()].filter((key) => key.startsWith(keptAsidePrefix))).toHaveLength(2);
  });

  it('that is cut short is kept aside, and the project says what to do', async () => {
    const { machine, tab, workbook, id } = await tabWithProject();
    done(workbook.setPattern(patternOf(first), first));
    workbook.flush();
    tab.crash();
    machine.disk.set(meshStorageKey(keyOf(first)), first.slice(0, 100));
    const later = machine.tab().workbook;
    done(await later.openProject(id));
    expect(later.packedMeshOf(id)).toBeNull();
    const { notes, keptAside } = later.store.getState();
    expect(notes[0]).toContain('"Lamp, Lid": The saved model is cut short');
    expect(later.keptAsideFile(keptAside[0]?.key ?? '')?.text).toBe(first.slice(0, 100));
    done(later.setPattern(patternOf(first), first));
    later.flush();
    expect(later.packedMeshOf(id)).toBe(first);
  });

  it('that could not be unpacked is set aside on request, and a fresh import takes its place', async () => {
    const { workbook, id, machine } = await tabWithProject();
    done(workbook.setPattern(patternOf(first), first));
    workbook.flush();
    workbook.setMeshAside(id);
    expect(storedMeshes(machine)).toEqual([]);
    expect(workbook.packedMeshOf(id)).toBeNull();
    expect(workbook.store.getState().keptAside).toHaveLength(1);
    expect(workbook.exportProjectFile(id).done).toBe(false);
    expect(workbook.duplicateProject(id).done).toBe(false);
    done(workbook.setPattern({ ...patternOf(first), fileName: 'again.stl' }, first));
    workbook.flush();
    expect(storedMeshes(machine)).toEqual([keyOf(first)]);
  });

  it('in a newer packing is left where it is', async () => {
    const { machine, workbook, id } = await tabWithProject();
    done(workbook.setPattern(patternOf(first), first));
    workbook.flush();
    const newer = first.replace('packed-mesh 1', 'packed-mesh 9');
    machine.disk.set(meshStorageKey(keyOf(first)), newer);
    expect(machine.tab().workbook.packedMeshOf(id)).toBeNull();
    expect(machine.disk.get(meshStorageKey(keyOf(first)))).toBe(newer);
  });

  it('is written again when another tab swept it away before its record was saved', async () => {
    const { machine, workbook, id } = await tabWithProject();
    done(workbook.setPattern(patternOf(first), first));
    workbook.flush();
    done(workbook.setPattern(patternOf(second), second));
    machine.disk.delete(meshStorageKey(keyOf(first)));
    workbook.undo();
    expect(workbook.flush()).toBe('saved');
    expect(machine.tab().workbook.packedMeshOf(id)).toBe(first);
  });
});

describe('storage use', () => {
  it('adds up to what lies on the disk, keys counted', async () => {
    const { machine, workbook, id } = await tabWithProject();
    done(workbook.setPattern(patternOf(first), first));
    workbook.flush();
    machine.disk.set('somebody else', 'xyz');
    machine.disk.set(`${keptAsidePrefix}2026|x`, 'damaged');
    const usage = workbook.usage();
    const total = [...machine.disk].reduce((sum, [key, value]) => sum + key.length + value.length, 0);
    expect(usage.totalUnits).toBe(total);
    expect(usage.limitUnits).toBe(5_242_880);
    expect(usage.meshes).toEqual([
      { meshKey: keyOf(first), units: meshStorageKey(keyOf(first)).length + first.length },
    ]);
    expect(usage.otherUnits).toBe('somebody else'.length + 3);
    expect(usage.keptAsideUnits).toBe(`${keptAsidePrefix}2026|x`.length + 7);
    const [own] = usage.projects;
    expect(own?.id).toBe(id);
    const parts = [own, ...usage.meshes].reduce((sum, part) => sum + (part?.units ?? 0), 0);
    expect(parts + usage.otherUnits + usage.keptAsideUnits).toBe(total);
  });

  it('of an empty machine is nothing', () => {
    expect(createMachine().tab().workbook.usage()).toMatchObject({ totalUnits: 0, projects: [], meshes: [] });
  });
});
