import { describe, expect, it } from 'vitest';
import type { BenchTimer } from '../../src/workbook';
import { createMachine, quotaError } from './support';

const timer: BenchTimer = {
  what: 'mixing',
  lengthS: 60,
  endsAtMs: 1_800_000_060_000,
  leftS: 60,
  heard: false,
};

function opened() {
  const machine = createMachine();
  const { workbook } = machine.tab();
  const made = workbook.createProject({ enclosure: 'Lamp', name: 'Lid' });
  if (!made.done) throw new Error(made.reason);
  return { machine, workbook, id: made.id };
}

describe('bench timers', () => {
  it('are there again in the next tab, and undo does not touch them', async () => {
    const { machine, workbook, id } = opened();
    await workbook.openProject(id);
    expect(workbook.timersOf(id)).toEqual([]);
    workbook.setInput('walls.overMm', 0.2);
    expect(workbook.setTimers(id, [timer])).toEqual({ done: true });
    workbook.undo();
    expect(machine.tab().workbook.timersOf(id)).toEqual([timer]);
  });

  it('belong to one project and go with it', async () => {
    const { machine, workbook, id } = opened();
    workbook.setTimers(id, [timer]);
    expect(workbook.timersOf('another')).toEqual([]);
    expect(workbook.usage().projects.map((one) => one.id)).toEqual([id]);
    await workbook.deleteProject(id);
    workbook.forgetDeleted();
    expect([...machine.disk.keys()].filter((key) => key.includes(id))).toEqual([]);
  });

  it('are none when the saved text is damaged', () => {
    const { machine, workbook, id } = opened();
    workbook.setTimers(id, [timer]);
    const key = [...machine.disk.keys()].find((one) => one.includes('timers')) ?? '';
    for (const text of ['{"what":', '7', '[{"what":"mixing"}]', '[{"lengthS":-1}]']) {
      machine.disk.set(key, text);
      expect(workbook.timersOf(id)).toEqual([]);
    }
  });

  it('tell when they cannot be saved', () => {
    const { machine, workbook, id } = opened();
    machine.beforeWrite = () => {
      throw quotaError();
    };
    const outcome = workbook.setTimers(id, [timer]);
    expect(outcome.done).toBe(false);
    expect(outcome.done ? '' : outcome.reason).toContain('as long as this page is open');
  });
});
