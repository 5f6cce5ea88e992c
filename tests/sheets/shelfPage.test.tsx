// @vitest-environment jsdom
/** The page of the shelf, and the control by which a sheet takes from it. */
import { render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, it } from 'vitest';
import { FromShelf } from '../../src/app/project/FromShelf';
import { OfferCards } from '../../src/app/project/OfferCards';
import { openGivenFile } from '../../src/app/givenFile';
import { ShelfPage } from '../../src/app/shelf/ShelfPage';
import type { Workbook } from '../../src/workbook';
import type { CardKind } from '../../src/workbook/shelfKinds';
import { useProject, WorkbookContext } from '../../src/workbook/useWorkbook';
import { createMachine, done, tabWithProject } from '../workbook/support';
import './support';

const weight = 'plies.materials.N.arealWeightGsm';

function open(workbook: Workbook, page: React.ReactNode) {
  return render(<WorkbookContext value={workbook}>{page}</WorkbookContext>);
}

function Control({ kind, readOnly = false }: { readonly kind: CardKind; readonly readOnly?: boolean }) {
  const project = useProject();
  return project === null ? null : <FromShelf project={project} kind={kind} readOnly={readOnly} />;
}

beforeEach(() => {
  window.location.hash = '';
});

describe('the page of the shelf', () => {
  it('adds a card, takes its fields from the inputs’ own table, and asks where a value is from', async () => {
    const { workbook } = createMachine().tab();
    open(workbook, <ShelfPage />);
    await userEvent.click(screen.getByRole('button', { name: 'Add roll' }));
    const name = await screen.findByLabelText('Name, as on the roll');
    await userEvent.clear(name);
    await userEvent.type(name, 'Roll 7{Enter}');
    const field = await screen.findByRole('textbox', { name: 'Fiber areal weight' });
    await userEvent.type(field, '245{Enter}');
    const origin = await screen.findByRole('combobox', { name: 'Where it is from: Fiber areal weight' });
    expect(origin).toHaveValue('supplier');
    await userEvent.selectOptions(origin, 'measured');
    await waitFor(() =>
      expect(workbook.store.getState().shelf[0]?.values[weight]).toEqual({ value: 245, origin: 'measured' }),
    );
    await userEvent.selectOptions(screen.getByRole('combobox', { name: 'Kind of fabric' }), 'non-crimp');
    await waitFor(() =>
      expect(workbook.store.getState().shelf[0]?.values['plies.materials.N.weave']?.value).toBe('non-crimp'),
    );
    await userEvent.clear(screen.getByRole('textbox', { name: 'Fiber areal weight' }));
    await userEvent.tab();
    await waitFor(() => expect(workbook.store.getState().shelf[0]?.values[weight]).toBeUndefined());
  });

  it('deletes with a way back', async () => {
    const { workbook } = createMachine().tab();
    done(await workbook.shelf.addCard({ kind: 'oven', name: 'Small oven' }));
    open(workbook, <ShelfPage />);
    await userEvent.click(screen.getByRole('button', { name: 'Delete Small oven' }));
    await userEvent.click(await screen.findByRole('button', { name: 'Undo deleting Small oven' }));
    expect(await screen.findByRole('button', { name: 'Edit Small oven' })).toBeVisible();
  });

  it('writes down the hours of a roll by part and says what is left of its out-life', async () => {
    const { workbook } = createMachine().tab();
    done(workbook.createProject({ enclosure: 'Lamp', name: 'Lid' }));
    const values = { 'plies.materials.N.allowedOutTimeH': { value: 720, origin: 'supplier' } } as const;
    done(await workbook.shelf.addCard({ kind: 'roll', name: 'Roll 7', values }));
    open(workbook, <ShelfPage />);
    await userEvent.click(screen.getByRole('button', { name: 'Edit Roll 7' }));
    const log = screen.getByRole('region', { name: 'Out of the freezer: Roll 7' });
    expect(within(log).getByText('0.0 h out in all, 720.0 h left of its out-life')).toBeVisible();
    await userEvent.type(within(log).getByRole('textbox', { name: 'Hours out this time' }), '6,5{Enter}');
    await userEvent.selectOptions(within(log).getByRole('combobox', { name: 'For' }), 'Lamp, Lid');
    await userEvent.click(within(log).getByRole('button', { name: 'Write it down' }));
    expect(await within(log).findByText('6.5 h out in all, 713.5 h left of its out-life')).toBeVisible();
    expect(within(log).getByText(/, Lamp, Lid$/u)).toBeVisible();
    await userEvent.click(within(log).getByRole('button', { name: /^Take out: 6.5 h/u }));
    expect(await within(log).findByText(/^0.0 h out in all/u)).toBeVisible();
  });
});

describe('what a sheet takes from the shelf', () => {
  it('fills in, keeps its copy when the card changes, and takes the change over when asked', async () => {
    const { workbook } = await tabWithProject();
    const values = { 'cure.overshootK': { value: 7, origin: 'measured' } } as const;
    const { card } = done(await workbook.shelf.addCard({ kind: 'oven', name: 'Small oven', values }));
    open(workbook, <Control kind="oven" />);
    const overshoot = () => workbook.store.getState().project?.inputs.cure.overshootK;
    await userEvent.click(screen.getByText('From my shelf: oven'));
    await userEvent.click(screen.getByRole('button', { name: 'Fill in from it' }));
    expect(overshoot()).toBe(7);
    expect(screen.getByText(/: 1 measured$/u)).toBeVisible();
    done(
      await workbook.shelf.changeCard(card.id, (one) => ({
        ...one,
        values: { 'cure.overshootK': { value: 9, origin: 'measured' } },
      })),
    );
    const takeOver = await screen.findByRole('button', { name: 'Card changed: take over Small oven' });
    expect(overshoot()).toBe(7);
    await userEvent.click(takeOver);
    expect(overshoot()).toBe(9);
    workbook.undo();
    expect(overshoot()).toBe(7);
  });

  it('puts what was entered in a project on the shelf', async () => {
    const { workbook } = await tabWithProject();
    done(workbook.setInput('closing.clamps.0.forceN', 210));
    open(workbook, <Control kind="clamps" />);
    await userEvent.click(screen.getByText('From my shelf: clamps'));
    await userEvent.click(screen.getByRole('button', { name: 'Put on my shelf: clamps 1' }));
    expect(await screen.findByText(/is on your shelf/u)).toBeVisible();
    const [card] = workbook.store.getState().shelf;
    expect(card?.values['closing.clamps.N.forceN']).toEqual({ value: 210, origin: 'measured' });
    expect(workbook.store.getState().project?.cards).toMatchObject([
      { cardId: card?.id, entryId: 'clamps-1' },
    ]);
  });

  it('writes down in the roll’s log that it was out for this part, and the project takes it over when asked', async () => {
    const { workbook } = await tabWithProject();
    const { card } = done(await workbook.shelf.addCard({ kind: 'roll', name: 'Roll 7' }));
    done(workbook.pickCard(card, null));
    open(workbook, <Control kind="roll" />);
    await userEvent.click(screen.getByText('From my shelf: roll'));
    await userEvent.type(screen.getByRole('textbox', { name: 'Hours out this time, Roll 7' }), '6.5{Enter}');
    await userEvent.click(screen.getByRole('button', { name: 'Write down the hours of Roll 7' }));
    expect(await screen.findByText('Written down on the card of Roll 7.')).toBeVisible();
    expect(workbook.store.getState().shelf[0]?.log).toMatchObject([{ hoursH: 6.5, project: 'Lamp, Lid' }]);
    const hoursOut = () => workbook.store.getState().project?.inputs.plies.materials[1]?.hoursOutH;
    expect(hoursOut()).toBe(0);
    await userEvent.click(screen.getByRole('button', { name: 'Card changed: take over Roll 7' }));
    expect(hoursOut()).toBe(6.5);
  });

  it('does nothing while another tab edits the project', async () => {
    const { workbook } = await tabWithProject();
    done(await workbook.shelf.addCard({ kind: 'oven', name: 'Small oven' }));
    open(workbook, <Control kind="oven" readOnly />);
    await userEvent.click(screen.getByText('From my shelf: oven'));
    expect(screen.getByRole('button', { name: 'Fill in from it' })).toBeDisabled();
  });
});

describe('a project file with cards', () => {
  it('offers them to the shelf of whoever opened it, once', async () => {
    const { workbook, id } = await tabWithProject();
    const { card } = done(await workbook.shelf.addCard({ kind: 'oven', name: 'Small oven' }));
    done(workbook.pickCard(card, null));
    const { text } = done(workbook.exportProjectFile(id)).file;
    const theirs = createMachine().tab().workbook;
    const opened = done(await openGivenFile(theirs, new File([text], 'a.workbook.json')));
    done(await theirs.openProject(opened.id));
    const project = theirs.store.getState().project!;
    open(theirs, <OfferCards project={project} />);
    expect(screen.getByText(/Small oven/u)).toBeVisible();
    await userEvent.click(screen.getByRole('button', { name: 'Put on my shelf' }));
    await waitFor(() =>
      expect(theirs.store.getState().shelf.map(({ name }) => name)).toEqual(['Small oven']),
    );
    expect(screen.queryByRole('button', { name: 'Put on my shelf' })).toBeNull();
  });
});
