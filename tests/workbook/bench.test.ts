/** Oven run and timers of the open project: saved apart from the document, under the same lock, followed by other tabs. */
import { describe, expect, it } from 'vitest';
import { noOvenRun, type BenchTimer, type OvenRun } from '../../src/workbook';
import { ovenRunKey, timersKey } from '../../src/workbook/keys';
import { createMachine, done, quotaError, reasonOf, settle, tabWithProject } from './support';

const timer: BenchTimer = {
  what: 'mixing',
  lengthS: 60,
  endsAtMs: 1_800_000_060_000,
  leftS: 60,
  heard: false,
};
const run: OvenRun = { ...noOvenRun, startedAtMs: 1_800_000_000_000 };
const noted: OvenRun = { ...run, notes: [{ atMs: 1_800_000_001_000, text: 'Clamps tightened' }] };

describe('timers and oven run', () => {
  it('are there again in the next tab, and undo does not touch them', async () => {
    const { machine, tab, workbook, id } = await tabWithProject();
    expect(workbook.store.getState()).toMatchObject({ timers: [], ovenRun: noOvenRun });
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    done(workbook.setTimers([timer]));
    done(workbook.setOvenRun(run));
    workbook.undo();
    expect(workbook.store.getState()).toMatchObject({ timers: [timer], ovenRun: run });
    tab.crash();
    const later = machine.tab().workbook;
    done(await later.openProject(id));
    expect(later.store.getState()).toMatchObject({ timers: [timer], ovenRun: run });
  });

  it('belong to one project and go with it', async () => {
    const { machine, workbook, id } = await tabWithProject();
    done(workbook.setTimers([timer]));
    done(workbook.setOvenRun(run));
    expect(workbook.usage().projects.map((one) => one.id)).toEqual([id]);
    const other = done(workbook.createProject({ enclosure: 'Lamp', name: 'Base' }));
    done(await workbook.openProject(other.id));
    expect(workbook.store.getState()).toMatchObject({ timers: [], ovenRun: noOvenRun });
    workbook.closeProject();
    await workbook.deleteProject(id);
    workbook.forgetDeleted(id);
    expect([...machine.disk.keys()].filter((key) => key.includes(`/${id}`))).toEqual([]);
  });

  it('need an open project', () => {
    const { workbook } = createMachine().tab();
    expect(reasonOf(workbook.setTimers([timer]))).toBe('No project is open.');
  });

  it('tell when they cannot be saved, and go on in this tab', async () => {
    const { machine, workbook } = await tabWithProject();
    machine.beforeWrite = () => {
      throw quotaError();
    };
    expect(reasonOf(workbook.setTimers([timer]))).toContain('while this project is open');
    expect(reasonOf(workbook.setOvenRun(run))).toContain('Write the start time down');
    expect(workbook.store.getState()).toMatchObject({ timers: [timer], ovenRun: run });
  });
});

describe('a second tab with the same project', () => {
  it('can neither start, note nor overwrite, and follows what the editor does', async () => {
    const { machine, workbook, id } = await tabWithProject();
    const second = machine.tab().workbook;
    done(await second.openProject(id));
    done(workbook.setOvenRun(run));
    done(workbook.setOvenRun(noted));
    done(workbook.setTimers([timer]));
    expect(second.store.getState()).toMatchObject({ ovenRun: noted, timers: [timer] });

    const before = new Map(machine.disk);
    const intruder = { ...noOvenRun, notes: [{ atMs: 1, text: 'from the second tab' }] };
    expect(reasonOf(second.setOvenRun(intruder))).toContain('open in another tab');
    expect(reasonOf(second.setTimers([]))).toContain('open in another tab');
    expect(machine.disk).toEqual(before);
    expect(second.store.getState()).toMatchObject({ ovenRun: noted, timers: [timer] });
  });

  it('goes on with the run when it takes over', async () => {
    const { machine, tab, workbook, id } = await tabWithProject();
    const second = machine.tab().workbook;
    done(await second.openProject(id));
    done(workbook.setOvenRun(noted));
    tab.crash();
    await settle();
    expect(second.store.getState()).toMatchObject({ editor: 'here', ovenRun: noted });
    const held = { ...noted, heldSinceMs: 1_800_000_002_000 };
    done(second.setOvenRun(held));
    expect(machine.disk.get(ovenRunKey(id))).toContain('"heldSinceMs":1800000002000');
    expect(machine.disk.has(timersKey(id))).toBe(false);
  });

  it('follows without locks as well', async () => {
    const machine = createMachine();
    const [first, second] = [machine.tab({ locks: 'absent' }), machine.tab({ locks: 'absent' })];
    const { id } = done(first.workbook.createProject({ enclosure: 'Lamp', name: 'Lid' }));
    for (const { workbook } of [first, second]) done(await workbook.openProject(id));
    done(first.workbook.setOvenRun(run));
    done(second.workbook.setOvenRun({ ...second.workbook.store.getState().ovenRun, heldMs: 5 }));
    expect(first.workbook.store.getState().ovenRun).toEqual({ ...run, heldMs: 5 });
  });
});

describe('a damaged oven run or damaged timers', () => {
  const damage: readonly (readonly [string, (saved: string) => string])[] = [
    ['half a text', (saved) => saved.slice(0, 40)],
    ['another value', () => '7'],
    ['a wrong shape', () => '[{"what":"mixing"}]'],
    ['a wrong shape in an envelope', () => '{"format":1,"saved":{"startedAtMs":-1}}'],
    ['one flipped bit that leaves valid JSON', (saved) => saved.replace('18000000', '18000001')],
  ];

  it.each(damage)(
    '%s: is kept aside and said, and the next start overwrites nothing',
    async (_what, change) => {
      const { machine, tab, workbook: before, id } = await tabWithProject();
      done(before.setOvenRun(run));
      done(before.setTimers([timer]));
      tab.crash();
      const texts: readonly (string | undefined)[] = [ovenRunKey(id), timersKey(id)].map((key) => {
        const text = change(machine.disk.get(key) ?? '');
        machine.disk.set(key, text);
        return text;
      });
      const { workbook } = machine.tab();
      done(await workbook.openProject(id));
      const { notes, keptAside } = workbook.store.getState();
      expect(workbook.store.getState()).toMatchObject({ timers: [], ovenRun: noOvenRun });
      expect(notes.join(' ')).toContain('The oven run of this project cannot be read');
      expect(notes.join(' ')).toContain('The record of the timers of this project cannot be read');
      done(workbook.setOvenRun(noted));
      done(workbook.setTimers([timer]));
      const kept = keptAside.map(({ key }) => workbook.keptAsideFile(key)?.text);
      expect(new Set(kept)).toEqual(new Set(texts));
      expect(kept).toHaveLength(2);
    },
  );

  it('stays where it is while there is no room to keep it aside, and nothing is written over it', async () => {
    const { machine, tab, id } = await tabWithProject();
    tab.crash();
    machine.disk.set(ovenRunKey(id), 'damaged');
    machine.beforeWrite = (key) => {
      if (key.includes('kept-aside')) throw quotaError();
    };
    const { workbook } = machine.tab();
    done(await workbook.openProject(id));
    expect(workbook.store.getState().notes.join(' ')).toContain('no room to keep it aside');
    expect(reasonOf(workbook.setOvenRun(run))).toContain('cannot be saved over one');
    expect(machine.disk.get(ovenRunKey(id))).toBe('damaged');
  });

  it('of a newer app is left alone', async () => {
    const { machine, tab, id } = await tabWithProject();
    tab.crash();
    const newer = '{"format":2,"saved":{"ovens":[]}}';
    machine.disk.set(ovenRunKey(id), newer);
    const { workbook } = machine.tab();
    done(await workbook.openProject(id));
    expect(workbook.store.getState().notes.join(' ')).toContain('newer version of the workbook (format 2)');
    expect(workbook.setOvenRun(run).done).toBe(false);
    expect(machine.disk.get(ovenRunKey(id))).toBe(newer);
    expect(workbook.store.getState().keptAside).toEqual([]);
  });

  it('as an app before envelopes wrote it still opens', async () => {
    const { machine, tab, id } = await tabWithProject();
    tab.crash();
    machine.disk.set(ovenRunKey(id), JSON.stringify(noted));
    machine.disk.set(timersKey(id), JSON.stringify([timer]));
    const { workbook } = machine.tab();
    done(await workbook.openProject(id));
    expect(workbook.store.getState()).toMatchObject({ ovenRun: noted, timers: [timer], notes: [] });
  });
});
