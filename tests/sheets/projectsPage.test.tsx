// @vitest-environment jsdom
import { act, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { takeGivenModel } from '../../src/app/givenFile';
import { ProjectsPage } from '../../src/app/projects/ProjectsPage';
import { defaultProjectInputs } from '../../src/steps/inputs/project';
import { readProjectFile, writeProjectFile, type ProjectSeed } from '../../src/workbook';
import { newProject } from '../../src/workbook/project';
import { WorkbookContext } from '../../src/workbook/useWorkbook';
import { createMachine, done, fakePackedMesh, patternOf, quotaError } from '../workbook/support';
import './support';

/** Large enough to show beside a project's inputs in megabytes of three decimals. */
const packed = fakePackedMesh(3, 40_000);
const demo: ProjectSeed = {
  enclosure: 'Wind meter',
  name: 'Upper half',
  inputs: defaultProjectInputs,
  pattern: patternOf(packed),
  packedMesh: packed,
};

function openPage() {
  const machine = createMachine();
  const { workbook } = machine.tab({ demoSeeds: () => Promise.resolve([demo]) });
  done(workbook.createProject({ enclosure: 'Lamp', name: 'Lid' }));
  done(workbook.createProject({ enclosure: 'Lamp', name: 'Base' }));
  render(
    <WorkbookContext value={workbook}>
      <ProjectsPage />
    </WorkbookContext>,
  );
  return { machine, workbook };
}

const linksUnder = (enclosure: string) =>
  within(screen.getByRole('region', { name: enclosure }))
    .getAllByRole('link')
    .map(({ textContent }) => textContent);

const megabytesIn = (text: string | null | undefined) => Number(/([\d.]+)\sMB/u.exec(text ?? '')?.[1]);

beforeEach(() => {
  window.location.hash = '';
});
afterEach(() => vi.restoreAllMocks());

describe('the list of projects', () => {
  it('groups parts under their enclosure, in order of their names', async () => {
    openPage();
    await userEvent.click(screen.getByRole('button', { name: 'Put the demo back' }));
    await screen.findByRole('region', { name: 'Wind meter' });
    expect(linksUnder('Lamp')).toEqual(['Base', 'Lid']);
    expect(linksUnder('Wind meter')).toEqual(['Upper half']);
  });

  it('makes a project and goes to it', async () => {
    const { workbook } = openPage();
    await userEvent.click(screen.getByRole('button', { name: 'New project' }));
    const dialog = screen.getByRole('dialog', { name: 'New project' });
    await userEvent.type(within(dialog).getByLabelText('Enclosure'), 'Radio');
    await userEvent.type(within(dialog).getByLabelText(/^Part/), 'Front{Enter}');
    const made = workbook.store.getState().projects.find(({ name }) => name === 'Front');
    expect(made?.enclosure).toBe('Radio');
    expect(window.location.hash).toBe(`#/p/${made?.id}/`);
  });

  it('says why a project without a name is not made', async () => {
    const { workbook } = openPage();
    await userEvent.click(screen.getByRole('button', { name: 'New project' }));
    await userEvent.click(screen.getByRole('button', { name: 'Create' }));
    expect(await screen.findByRole('alert')).toHaveTextContent(/name/i);
    expect(workbook.store.getState().projects).toHaveLength(2);
  });

  it('renames and duplicates', async () => {
    openPage();
    await userEvent.click(screen.getByRole('button', { name: 'Rename Lid' }));
    const name = screen.getByLabelText(/^Part/);
    await userEvent.clear(name);
    await userEvent.type(name, 'Cap{Enter}');
    await screen.findByRole('link', { name: 'Cap' });
    await userEvent.click(screen.getByRole('button', { name: 'Duplicate Cap' }));
    expect(linksUnder('Lamp')).toHaveLength(3);
  });

  it('deletes with a way back', async () => {
    openPage();
    await userEvent.click(screen.getByRole('button', { name: 'Delete Lid' }));
    await screen.findByText(/Deleted: Lamp, Lid/);
    expect(linksUnder('Lamp')).toEqual(['Base']);
    await userEvent.click(screen.getByRole('button', { name: 'Delete Base' }));
    const bars = await screen.findAllByText(/Deleted:/);
    expect(bars.map(({ textContent }) => textContent)).toEqual([
      'Deleted: Lamp, Base.',
      'Deleted: Lamp, Lid.',
    ]);
    await userEvent.click(screen.getByRole('button', { name: 'Undo deleting Lamp, Lid' }));
    await userEvent.click(screen.getByRole('button', { name: 'Undo deleting Lamp, Base' }));
    expect(linksUnder('Lamp')).toEqual(['Base', 'Lid']);
    expect(screen.queryByText(/Deleted:/)).toBeNull();
  });

  it('refuses a file that is no project file, in words', async () => {
    openPage();
    const file = new File(['{"milk": 2}'], 'shopping.json');
    await userEvent.upload(screen.getByLabelText('Project file'), file, { applyAccept: false });
    expect(await screen.findByRole('alert')).toHaveTextContent(/project file/);
  });

  it('takes a model file as the pattern of a new project', async () => {
    const { workbook } = openPage();
    const file = new File(['solid shell'], 'pocket shell.STL');
    await userEvent.upload(screen.getByLabelText('Project file'), file, { applyAccept: false });
    await waitFor(() => expect(window.location.hash).toMatch(/^#\/p\//));
    const made = workbook.store.getState().projects.find((one) => one.enclosure === 'pocket shell');
    expect(made?.name).toBe('Part');
    expect(window.location.hash).toBe(`#/p/${made?.id}/`);
    expect(takeGivenModel(made?.id ?? '')).toBe(file);
    expect(takeGivenModel(made?.id ?? '')).toBeNull();
  });

  it('tells equal names apart', async () => {
    const { workbook } = openPage();
    for (const name of ['Lid', 'lid\u200b '])
      act(() => void workbook.createProject({ enclosure: 'Lamp', name }));
    expect(linksUnder('Lamp').sort()).toEqual(['Base', 'Lid (1 of 3)', 'Lid (2 of 3)', 'lid (3 of 3)']);
    expect(screen.getByRole('button', { name: 'Delete Lid (2 of 3)' })).toBeVisible();
    const [first] = within(screen.getByRole('region', { name: 'Lamp' })).getAllByText(/made/);
    expect(first).toHaveTextContent('made Jan 5, 2026');
    await userEvent.click(screen.getByRole('button', { name: 'Delete Lid (1 of 3)' }));
    expect(linksUnder('Lamp')).toContain('Lid (1 of 2)');
  });

  it('gives a name to one that an older app saved without a visible one', async () => {
    const machine = createMachine();
    const old = newProject({ id: 'old', enclosure: 'Lamp', name: '\u200b', at: '2026-01-05T08:00:00.000Z' });
    const { workbook } = machine.tab();
    done(workbook.importProjectFile(readProjectFile(writeProjectFile(old, null))));
    render(
      <WorkbookContext value={workbook}>
        <ProjectsPage />
      </WorkbookContext>,
    );
    expect(linksUnder('Lamp')).toEqual(['without a name that can be seen']);
  });

  it('counts a mesh to the project that uses it', async () => {
    openPage();
    await userEvent.click(screen.getByRole('button', { name: 'Put the demo back' }));
    const demoLine = (await screen.findByRole('link', { name: 'Upper half' })).closest('li');
    const lamp = screen.getByRole('link', { name: 'Lid' }).closest('li');
    await waitFor(() =>
      expect(megabytesIn(demoLine?.textContent)).toBeGreaterThan(megabytesIn(lamp?.textContent)),
    );
  });

  it('says that the storage is full and what to do', async () => {
    const { machine, workbook } = openPage();
    machine.beforeWrite = () => {
      throw quotaError();
    };
    await userEvent.click(screen.getByRole('button', { name: 'Duplicate Lid' }));
    expect(workbook.store.getState().saveState).toBe('full');
    expect(screen.getByText(/storage is full: your last changes/)).toBeVisible();
    expect(screen.getByText(/The storage is full\. Save projects/)).toBeVisible();
  });

  it('lists damaged data kept aside and lets it go only when told to', async () => {
    const machine = createMachine();
    const first = machine.tab().workbook;
    const { id } = done(first.createProject({ enclosure: 'Lamp', name: 'Lid' }));
    first.flush();
    for (const key of machine.disk.keys()) if (key.includes(id)) machine.disk.set(key, '{"broken');
    const { workbook } = machine.tab();
    await workbook.openProject(id);
    render(
      <WorkbookContext value={workbook}>
        <ProjectsPage />
      </WorkbookContext>,
    );
    const kept = within(screen.getByRole('region', { name: 'Damaged data kept aside' }));
    const before = kept.getAllByRole('button', { name: 'Remove' });
    await userEvent.click(before[0] as HTMLElement);
    expect(workbook.store.getState().keptAside).toHaveLength(before.length - 1);
  });
});
