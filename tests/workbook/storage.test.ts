/** Saving and loading: pause and flush, full and denied storage, damage, newer formats. */
import * as fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { currentFormat, type Project } from '../../src/workbook';
import { encodeProject } from '../../src/workbook/envelope';
import { entryKey, entryPrefix, recordKey, recordPrefix } from '../../src/workbook/keys';
import { savePauseMs } from '../../src/workbook/saver';
import {
  createMachine,
  done,
  fakePackedMesh,
  patternOf,
  propertySeed,
  quotaError,
  reasonOf,
  tabWithProject,
  withoutChecksum,
  type Machine,
} from './support';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** The project as a fresh tab on the same machine finds it. */
async function reloaded(machine: Machine, id: string): Promise<Project | null> {
  const { workbook } = machine.tab();
  done(await workbook.openProject(id));
  return workbook.store.getState().project;
}

function recordKeys(machine: Machine): string[] {
  return [...machine.disk.keys()].filter((key) => key.startsWith(recordPrefix));
}

describe('saving', () => {
  it('waits for a pause in the edits, then writes once', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const writes = vi.fn();
    machine.beforeWrite = writes;
    for (let i = 1; i <= 5; i += 1) {
      done(workbook.setInput('walls.wrongShareAllowedPercent', i / 10));
      vi.advanceTimersByTime(savePauseMs - 1);
    }
    expect(workbook.store.getState().saveState).toBe('saving');
    expect(writes).not.toHaveBeenCalled();
    vi.advanceTimersByTime(1);
    expect(workbook.store.getState().saveState).toBe('saved');
    expect(writes.mock.calls.map(([key]) => key)).toEqual([recordKey(id, 2), entryKey(id)]);
  });

  it('does not wait when the page is hidden', async () => {
    const { machine, tab, workbook, id } = await tabWithProject();
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.3));
    tab.hide();
    tab.crash();
    expect((await reloaded(machine, id))?.inputs.walls.wrongShareAllowedPercent).toBe(0.3);
  });

  it('brings back exactly what was there, after a reload', async () => {
    const { machine, tab, workbook, id } = await tabWithProject();
    const packed = fakePackedMesh(1);
    done(workbook.setPattern(patternOf(packed), packed));
    done(workbook.setRecord('walls.caliper', { measured: '0.9' }));
    const before = workbook.store.getState().project;
    workbook.dispose();
    tab.crash();
    expect(await reloaded(machine, id)).toEqual(before);
  });

  it('keeps the slot before the current one, and no more', async () => {
    const { machine, workbook, id } = await tabWithProject();
    for (const value of [0.1, 0.2, 0.3]) {
      done(workbook.setInput('walls.wrongShareAllowedPercent', value));
      workbook.flush();
    }
    expect(recordKeys(machine).sort()).toEqual([recordKey(id, 3), recordKey(id, 4)]);
  });

  it('does nothing on a flush without changes', async () => {
    const { machine, workbook } = await tabWithProject();
    const before = new Map(machine.disk);
    expect(workbook.flush()).toBe('saved');
    expect(machine.disk).toEqual(before);
  });
});

describe('a full storage', () => {
  it('loses nothing that was saved, says so, and saves as soon as there is room', async () => {
    const { machine, tab, workbook, id } = await tabWithProject();
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.1));
    workbook.flush();
    machine.beforeWrite = () => {
      throw quotaError();
    };
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    expect(workbook.flush()).toBe('full');
    expect(workbook.store.getState()).toMatchObject({
      saveState: 'full',
      project: { inputs: { walls: { wrongShareAllowedPercent: 0.2 } } },
    });
    expect((await machine.tab().workbook.openProject(id)).done).toBe(true);
    machine.beforeWrite = () => {};
    done(workbook.setInput('walls.lookVoidPercent', 0.4));
    expect(workbook.store.getState().saveState).toBe('full');
    vi.advanceTimersByTime(savePauseMs);
    expect(workbook.store.getState().saveState).toBe('saved');
    tab.crash();
    expect((await reloaded(machine, id))?.inputs.walls).toMatchObject({
      wrongShareAllowedPercent: 0.2,
      lookVoidPercent: 0.4,
    });
  });

  it('is not filled further by a save that failed half way', async () => {
    const { machine, workbook } = await tabWithProject();
    const before = recordKeys(machine);
    machine.beforeWrite = (key) => {
      if (key.startsWith(entryPrefix)) throw quotaError();
    };
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    expect(workbook.flush()).toBe('full');
    expect(recordKeys(machine)).toEqual(before);
  });

  it('keeps unsaved changes of a project while another one is open', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const other = done(workbook.createProject({ enclosure: 'Lamp', name: 'Base' }));
    machine.beforeWrite = () => {
      throw quotaError();
    };
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    done(await workbook.openProject(other.id));
    expect(workbook.store.getState().saveState).toBe('full');
    done(await workbook.openProject(id));
    expect(workbook.store.getState().project?.inputs.walls.wrongShareAllowedPercent).toBe(0.2);
  });

  it('leaves a pattern that does not fit in this tab, where it can go into a project file', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const packed = fakePackedMesh(1, 4000);
    machine.beforeWrite = (_key, value) => {
      if (value.length > 2000) throw quotaError();
    };
    done(workbook.setPattern(patternOf(packed), packed));
    expect(workbook.flush()).toBe('full');
    expect(workbook.packedMeshOf(id)).toBe(packed);
    expect(done(workbook.exportProjectFile(id)).file.text).toContain(packed.slice(20));
    expect((await machine.tab().workbook.openProject(id)).done).toBe(true);
  });

  it('is left by freeing space: discarding what is kept aside saves what waits', async () => {
    const { machine, workbook } = await tabWithProject();
    machine.beforeWrite = () => {
      throw quotaError();
    };
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    workbook.flush();
    machine.beforeWrite = () => {};
    workbook.discardKeptAside('mold-layup/kept-aside/anything');
    expect(workbook.store.getState().saveState).toBe('saved');
  });

  /** One edit of the open project, by number. */
  const edits = fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 8 });

  it.each(['once', 'from then on'] as const)(
    `at any write, %s, leaves the last saved state for the next start (seed ${propertySeed})`,
    async (howLong) => {
      await fc.assert(
        fc.asyncProperty(edits, fc.integer({ min: 1, max: 20 }), async (kinds, failAt) => {
          const { machine, tab, workbook, id } = await tabWithProject();
          let writes = 0;
          machine.beforeWrite = () => {
            writes += 1;
            if (writes === failAt || (howLong === 'from then on' && writes > failAt)) throw quotaError();
          };
          let lastSaved = workbook.store.getState().project;
          for (const [number, kind] of kinds.entries()) {
            machine.clock.nowMs += 5000;
            const packed = fakePackedMesh(number);
            if (kind === 0) done(workbook.setInput('walls.wrongShareAllowedPercent', (number + 1) / 100));
            if (kind === 1) done(workbook.setPattern(patternOf(packed), packed));
            if (kind === 2) workbook.undo();
            if (kind === 3) done(workbook.setRecord('line', { measured: String(number) }));
            if (workbook.flush() === 'saved') lastSaved = workbook.store.getState().project;
          }
          tab.crash();
          const later = machine.tab().workbook;
          done(await later.openProject(id));
          expect(later.store.getState().project).toEqual(lastSaved);
          expect(later.store.getState().notes).toEqual([]);
          const meshKey = lastSaved?.pattern?.meshKey;
          if (meshKey !== undefined) expect(later.packedMeshOf(id)).not.toBeNull();
        }),
        { numRuns: 150 },
      );
    },
  );

  it('is told from a denied one by the name of the error', async () => {
    const { machine, workbook } = await tabWithProject();
    machine.beforeWrite = () => {
      throw Object.assign(new Error('no'), { name: 'SecurityError' });
    };
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    expect(workbook.flush()).toBe('denied');
  });
});

describe('a denied storage', () => {
  it('is said from the start, and everything works in memory', async () => {
    const { workbook } = createMachine().tab({ storage: 'denied' });
    expect(workbook.store.getState().saveState).toBe('denied');
    const { id } = done(workbook.createProject({ enclosure: 'Lamp', name: 'Lid' }));
    done(await workbook.openProject(id));
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    expect(workbook.flush()).toBe('denied');
    workbook.closeProject();
    done(await workbook.openProject(id));
    expect(workbook.store.getState().project?.inputs.walls.wrongShareAllowedPercent).toBe(0.2);
  });
});

/** A machine with a project that was saved twice: 0.1 in slot 2, 0.2 in slot 3. */
async function savedTwice(): Promise<{ machine: Machine; id: string }> {
  const { machine, tab, workbook, id } = await tabWithProject();
  for (const value of [0.1, 0.2]) {
    done(workbook.setInput('walls.wrongShareAllowedPercent', value));
    workbook.flush();
  }
  tab.crash();
  return { machine, id };
}

/** 0.2 becomes 0.3 by one bit. */
const flipped = (saved: string): string =>
  saved.replace('"wrongShareAllowedPercent":0.2', '"wrongShareAllowedPercent":0.3');

describe('damage', () => {
  it.each([
    ['broken JSON', '{"kind":"mold-lay'],
    ['a wrong shape', '{"kind":"mold-layup-project","format":2,"project":{"id":"x"}}'],
    ['nothing', ''],
    ['valid JSON with another value in it', flipped],
  ])(
    'in the current record (%s): the save before it is open, the damaged bytes are kept',
    async (_name, what) => {
      const { machine, id } = await savedTwice();
      const saved = machine.disk.get(recordKey(id, 3)) ?? '';
      const bytes = typeof what === 'string' ? what : what(saved);
      machine.disk.set(recordKey(id, 3), bytes);
      const { workbook } = machine.tab();
      const { notes, keptAside, projects } = workbook.store.getState();
      expect(notes).toHaveLength(1);
      expect(notes[0]).toContain('The last save of "Lamp, Lid" was damaged');
      expect(projects).toMatchObject([{ id, condition: 'ok' }]);
      expect(keptAside).toMatchObject([{ foundAt: recordKey(id, 3) }]);
      expect(workbook.keptAsideFile(keptAside[0]?.key ?? '')?.text).toBe(bytes);
      done(await workbook.openProject(id));
      expect(workbook.store.getState().project?.inputs.walls.wrongShareAllowedPercent).toBe(0.1);

      done(workbook.setInput('walls.wrongShareAllowedPercent', 0.5));
      workbook.flush();
      expect(workbook.keptAsideFile(keptAside[0]?.key ?? '')?.text).toBe(bytes);
    },
  );

  it('in both records: the project stays listed, cannot be opened, and no byte is lost', async () => {
    const { machine, id } = await savedTwice();
    machine.disk.set(recordKey(id, 3), 'three');
    machine.disk.set(recordKey(id, 2), 'two');
    const { workbook } = machine.tab();
    expect(workbook.store.getState().projects).toMatchObject([{ id, name: 'Lid', condition: 'damaged' }]);
    expect(reasonOf(await workbook.openProject(id))).toContain('cannot be read');
    const { keptAside } = workbook.store.getState();
    expect(new Set(keptAside.map(({ key }) => workbook.keptAsideFile(key)?.text))).toEqual(
      new Set(['three', 'two']),
    );
    done(await workbook.deleteProject(id));
    workbook.forgetDeleted(id);
    expect(workbook.store.getState().keptAside).toHaveLength(2);
  });

  it('is told once, however often the list is read', async () => {
    const { machine, id } = await savedTwice();
    machine.disk.set(recordKey(id, 3), 'three');
    machine.disk.set(recordKey(id, 2), 'two');
    const first = machine.tab().workbook;
    first.dismissNotes();
    expect(reasonOf(await first.openProject(id))).toContain('its record is missing');
    expect(first.store.getState().notes).toEqual([]);
    expect(machine.tab().workbook.store.getState().notes).toEqual([]);
  });

  it('that was recovered from is told once, and the record in its place counts from then on', async () => {
    const { machine, id } = await savedTwice();
    machine.disk.set(recordKey(id, 3), 'three');
    machine.tab();
    const { workbook } = machine.tab();
    expect(workbook.store.getState().notes).toEqual([]);
    expect(done(await workbook.openProject(id)).load).toBe('ok');
  });

  it('found twice at the same place is kept twice', async () => {
    const { machine, id } = await savedTwice();
    for (const bytes of ['once', 'twice']) {
      machine.disk.set(entryKey(id), bytes);
      machine.tab();
    }
    const { workbook } = machine.tab();
    const texts = workbook.store.getState().keptAside.map(({ key }) => workbook.keptAsideFile(key)?.text);
    expect(texts).toEqual(['once', 'twice']);
  });

  it('without room for a copy: the damaged bytes stay where they are, through later saves', async () => {
    const { machine, id } = await savedTwice();
    machine.disk.set(recordKey(id, 3), 'three');
    machine.beforeWrite = (key) => {
      if (key.includes('kept-aside')) throw quotaError();
    };
    const { workbook } = machine.tab();
    done(await workbook.openProject(id));
    for (const value of [0.5, 0.6, 0.7]) {
      done(workbook.setInput('walls.wrongShareAllowedPercent', value));
      expect(workbook.flush()).toBe('saved');
    }
    expect(machine.disk.get(recordKey(id, 3))).toBe('three');
    machine.beforeWrite = () => {};
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.8));
    workbook.flush();
    expect(machine.disk.has(recordKey(id, 3))).toBe(false);
    const [kept] = machine.tab().workbook.store.getState().keptAside;
    expect(workbook.keptAsideFile(kept?.key ?? '')?.text).toBe('three');
  });

  it('in the list entry: the entry is made again from the record', async () => {
    const { machine, id } = await savedTwice();
    machine.disk.set(entryKey(id), '{"id":');
    const { workbook } = machine.tab();
    expect(workbook.store.getState().projects).toMatchObject([{ id, name: 'Lid', condition: 'ok' }]);
    expect(workbook.store.getState().keptAside).toMatchObject([{ foundAt: entryKey(id) }]);
    done(await workbook.openProject(id));
    expect(workbook.store.getState().project?.inputs.walls.wrongShareAllowedPercent).toBe(0.2);
  });

  it('in the list entry by one bit that points to the save before: the last save is open', async () => {
    const { machine, id } = await savedTwice();
    const entry = machine.disk.get(entryKey(id)) ?? '';
    expect(entry).toContain('"slot":3');
    machine.disk.set(entryKey(id), entry.replace('"slot":3', '"slot":2'));
    expect((await reloaded(machine, id))?.inputs.walls.wrongShareAllowedPercent).toBe(0.2);
    expect(machine.tab().workbook.store.getState().keptAside).toMatchObject([{ foundAt: entryKey(id) }]);
  });

  it('in the list entry and every record: the project is still listed, so that it can be deleted', async () => {
    const { machine, id } = await savedTwice();
    machine.disk.set(entryKey(id), 'x');
    machine.disk.set(recordKey(id, 2), 'x');
    machine.disk.set(recordKey(id, 3), 'x');
    const { workbook } = machine.tab();
    expect(workbook.store.getState().projects).toMatchObject([{ id, condition: 'damaged' }]);
    done(await workbook.deleteProject(id));
    expect(workbook.store.getState().projects).toEqual([]);
  });

  it('by a record of another project under this key is noticed', async () => {
    const { machine, id } = await savedTwice();
    const text = withoutChecksum(machine.disk.get(recordKey(id, 3)) ?? '');
    machine.disk.set(recordKey(id, 3), text.replace(`"id":"${id}"`, '"id":"other"'));
    const project = await reloaded(machine, id);
    expect(project).toMatchObject({ id, inputs: { walls: { wrongShareAllowedPercent: 0.1 } } });
  });

  it('is discarded only when the maker says so', async () => {
    const { machine, id } = await savedTwice();
    machine.disk.set(recordKey(id, 3), 'three');
    const { workbook } = machine.tab();
    const [kept] = workbook.store.getState().keptAside;
    workbook.discardKeptAside(kept?.key ?? '');
    expect(workbook.store.getState().keptAside).toEqual([]);
    expect([...machine.disk.values()]).not.toContain('three');
    workbook.discardKeptAside(entryKey(id));
    expect(machine.disk.has(entryKey(id))).toBe(true);
  });
});

describe('other formats', () => {
  it('a newer record is listed, not opened, and not touched', async () => {
    const { machine, id } = await savedTwice();
    const newer = '{"kind":"mold-layup-project","format":99,"project":{}}';
    machine.disk.set(recordKey(id, 3), newer);
    const { workbook } = machine.tab();
    expect(workbook.store.getState().projects).toMatchObject([{ id, condition: 'newer' }]);
    expect(reasonOf(await workbook.openProject(id))).toContain('newer version of the workbook (format 99)');
    workbook.flush();
    expect(machine.disk.get(recordKey(id, 3))).toBe(newer);
  });

  it('a newer record that was written but not pointed to yet is left for the newer app', async () => {
    const { machine, id } = await savedTwice();
    const newer = '{"kind":"mold-layup-project","format":99,"project":{}}';
    machine.disk.set(recordKey(id, 4), newer);
    const { workbook } = machine.tab();
    done(await workbook.openProject(id));
    for (const value of [0.5, 0.6]) {
      done(workbook.setInput('walls.wrongShareAllowedPercent', value));
      workbook.flush();
    }
    expect(machine.disk.get(recordKey(id, 4))).toBe(newer);
  });

  it('a former record is migrated, and written in the new format with the next save', async () => {
    const { machine, id } = await savedTwice();
    const former = withoutChecksum(machine.disk.get(recordKey(id, 3)) ?? '')
      .replace(`"format":${currentFormat}`, '"format":1')
      .replace('"walls":{"toleranceMm":null', '"walls":{"toleranceMm":0.3');
    machine.disk.set(recordKey(id, 3), former);
    const { workbook } = machine.tab();
    expect(done(await workbook.openProject(id)).load).toBe('migrated');
    expect(machine.disk.get(recordKey(id, 3))).toBe(former);
    done(workbook.setInput('walls.leastDraftDeg', 1));
    workbook.flush();
    const project = workbook.store.getState().project;
    expect(machine.disk.get(recordKey(id, 4))).toBe(project && encodeProject(project));
    expect(machine.disk.get(recordKey(id, 3))).toBe(former);
  });
});

describe('leftovers of a tab that ended between two writes', () => {
  it('a record that no entry names goes, a record newer than the pointer is ignored', async () => {
    const { machine, id } = await savedTwice();
    const text = machine.disk.get(recordKey(id, 3)) ?? '';
    machine.disk.set(recordKey('gone', 1), text.replace(`"id":"${id}"`, '"id":"gone"'));
    machine.disk.set(
      recordKey(id, 4),
      text.replace('"wrongShareAllowedPercent":0.2', '"wrongShareAllowedPercent":0.9'),
    );
    expect((await reloaded(machine, id))?.inputs.walls.wrongShareAllowedPercent).toBe(0.2);
    expect(machine.disk.has(recordKey('gone', 1))).toBe(false);
  });
});
