// @vitest-environment jsdom
/** What an edit and a delete cost does not depend on how many projects the enclosure has. */
import { act, cleanup, renderHook } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { useOtherHalf } from '../../src/app/project/useOtherHalf';
import type { Measuring } from '../../src/sheets/measuring/useMeasured';
import { useProject, WorkbookContext } from '../../src/workbook/useWorkbook';
import { createMachine, done, fakePackedMesh, patternOf, type Machine, type Tab } from './support';

afterEach(cleanup);

/** One tab has the first of many projects of one enclosure open, another shows the list. */
async function manyProjects(count: number, withPatterns: boolean) {
  const machine = createMachine();
  const tab = machine.tab();
  const ids: string[] = [];
  for (let number = 0; number < count; number += 1) {
    const { id } = done(tab.workbook.createProject({ enclosure: 'Lamp', name: `Part ${number}` }));
    ids.push(id);
    if (!withPatterns) continue;
    done(await tab.workbook.openProject(id));
    const packed = fakePackedMesh(number);
    done(tab.workbook.setPattern(patternOf(packed), packed));
    tab.workbook.flush();
  }
  const [first = '', second = ''] = ids;
  done(await tab.workbook.openProject(first));
  done(tab.workbook.setInput('walls.lookVoidPercent', 0.4));
  tab.workbook.flush();
  const other = machine.tab();
  for (const { workbook } of [tab, other]) workbook.usage();
  return { machine, tab, first, second, shown: showOtherHalf(tab) };
}

/** The page of the open project looks for the other half of its enclosure. */
function showOtherHalf({ workbook }: Tab) {
  const measuring = { desk: {}, mold: null } as unknown as Measuring;
  return renderHook(
    () => {
      const project = useProject();
      if (project === null) throw new Error('no project is open');
      return useOtherHalf(project, measuring);
    },
    { wrapper: ({ children }) => <WorkbookContext value={workbook}>{children}</WorkbookContext> },
  );
}

async function callsOf(machine: Machine, action: () => Promise<void> | void): Promise<number> {
  const before = machine.calls.count;
  await act(async () => action());
  return machine.calls.count - before;
}

async function costs(count: number, withPatterns: boolean) {
  const { machine, tab, first, second, shown } = await manyProjects(count, withPatterns);
  const { workbook } = tab;
  const edit = await callsOf(machine, () => {
    done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2));
    workbook.flush();
    workbook.usage();
  });
  const deletion = await callsOf(machine, async () => void done(await workbook.deleteProject(second)));
  const undo = await callsOf(machine, () => void done(workbook.undeleteProject(second)));
  shown.unmount();
  const ownDeletion = await callsOf(machine, async () => void done(await workbook.deleteProject(first)));
  return { edit, deletion, undo, ownDeletion };
}

describe.each([
  ['without patterns', false],
  ['each with its own pattern', true],
] as const)('200 projects of one enclosure, %s', (_what, withPatterns) => {
  it('cost no more calls of storage for an edit, a delete and its undo than three', async () => {
    const few = await costs(3, withPatterns);
    const many = await costs(200, withPatterns);
    console.log(`storage calls among 200 projects, two tabs: ${JSON.stringify(many)}`);
    expect(many).toEqual(few);
    expect(many.edit).toBeLessThan(30);
    expect(many.deletion).toBeLessThan(40);
  });
});
