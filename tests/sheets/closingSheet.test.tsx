// @vitest-environment jsdom
import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { describe, expect, it, vi } from 'vitest';
import { ClosingSheet } from '../../src/sheets/closing/ClosingSheet';
import { HoldingPlaces } from '../../src/sheets/closing/HoldingPlaces';
import type { ChangeInputs } from '../../src/sheets/sheetProps';
import { closingReport } from '../../src/steps/closing/report';
import { closingState } from '../../src/steps/closedMold/state';
import type { StepContext } from '../../src/steps/shared/context';
import { emptyContext, plyAt, trayContext } from '../steps/contexts';
import './support';

function Closing({ start, readOnly = false }: { readonly start: StepContext; readonly readOnly?: boolean }) {
  const [context, setContext] = useState(start);
  const change: ChangeInputs = (step, patch) =>
    setContext({ ...context, inputs: { ...context.inputs, [step]: { ...context.inputs[step], ...patch } } });
  return (
    <ClosingSheet
      title="Mold closing"
      question="Does the load go into the laminate?"
      context={context}
      report={closingReport(context)}
      readOnly={readOnly}
      change={change}
      shape={null}
    />
  );
}

const verdict = () => screen.getByRole('region', { name: 'Verdict' });
const working = () => screen.getByRole('region', { name: 'Where the mold stands' }).textContent;
const valueOf = (label: string) =>
  screen.getByRole('button', { name: `Working of "${label}"` }).parentElement?.textContent ?? '';

async function fill(label: string, text: string) {
  const field = screen.getByLabelText(label);
  await userEvent.clear(field);
  await userEvent.type(field, `${text}{Enter}`);
}

/** Six plies in the tray's wall of 0.80 mm. */
const sixPlies = trayContext({
  plies: { stack: ['a', 'b', 'c', 'd', 'e', 'f'].map((id) => plyAt(id)) },
});

describe('clamps', () => {
  it('add up, stand on the plan with their letters, and change the balance at once', async () => {
    render(<Closing start={sixPlies} />);
    expect(valueOf('Clamp force')).toContain('N');
    const plan = screen.getByRole('img', { name: /Plan of the clamps/u });
    expect(within(plan).getAllByText('A')).toHaveLength(8);
    const before = valueOf('Load in the laminate');
    await fill('Force of clamps A', '1500');
    expect(valueOf('Load in the laminate')).not.toBe(before);
    await userEvent.click(screen.getByRole('button', { name: 'Add clamps' }));
    expect(screen.getByLabelText('Where clamps B stand')).toHaveValue('at a place');
    expect(within(plan).getAllByText('B')).toHaveLength(1);
  });

  it('placed by numbers move the line of action, and one outside of everything tips the mold', async () => {
    render(<Closing start={sixPlies} />);
    await userEvent.selectOptions(screen.getByLabelText('Where clamps A stand'), 'at a place');
    await fill('Place x of clamps A', '20');
    expect(screen.getByText('the clamps act at x 20.0, y 0.0 mm')).toBeVisible();
    expect(screen.getByText('×8')).toBeVisible();
    await fill('Place x of clamps A', '400');
    expect(verdict()).toHaveTextContent('The clamps act outside the part: the mold tips.');
    expect(valueOf('Stand-off in the middle')).toContain('not known');
  });

  it('take a second measured point instead of a rate', async () => {
    render(<Closing start={sixPlies} />);
    await userEvent.click(screen.getByRole('button', { name: 'Spring of clamps A' }));
    expect(screen.getByLabelText('Spring rate')).toBeVisible();
    await fill('Second measured force', '250');
    await fill('Second opening', '10');
    expect(screen.queryByLabelText('Spring rate')).toBeNull();
    expect(valueOf('Clamp force lost per mm of closing')).toContain('80.0');
  });

  it('without any the sheet says what is missing and keeps its inputs', async () => {
    render(<Closing start={sixPlies} />);
    await userEvent.click(screen.getByRole('button', { name: 'Remove clamps A' }));
    expect(verdict()).toHaveTextContent(
      'No clamp presses on the mold: give at least one clamp with a force.',
    );
    expect(screen.getByText('No clamp yet. Add the first line.')).toBeVisible();
    await userEvent.click(screen.getByRole('button', { name: 'Add clamps' }));
    expect(screen.getByRole('img', { name: /Plan of the clamps/u })).toBeInTheDocument();
  });

  it('are off while another tab edits', () => {
    render(<Closing start={sixPlies} readOnly />);
    expect(screen.getByLabelText('Force of clamps A')).toBeDisabled();
    expect(screen.getByRole('button', { name: 'Add clamps' })).toBeDisabled();
  });
});

describe('given', () => {
  it('no lands hides their width and shim; a measured stack replaces the debulk factor', async () => {
    render(<Closing start={sixPlies} />);
    await userEvent.selectOptions(screen.getByLabelText('Lands'), 'none');
    expect(screen.queryByLabelText('Shim on the lands')).toBeNull();
    expect(screen.getByLabelText('Debulked over as laid')).toBeVisible();
    await fill('Stack after debulking, measured', '1.5');
    expect(screen.queryByLabelText('Debulked over as laid')).toBeNull();
  });

  it('counts a measured fiber bed only when all four readings are in', async () => {
    render(<Closing start={sixPlies} />);
    await userEvent.click(screen.getByText('Given: fiber bed and friction'));
    await userEvent.click(screen.getByRole('button', { name: /^Enter two measured points/u }));
    await fill('Light weight over the area', '20');
    await fill('One ply under the light weight', '0.23');
    await fill('Heavy weight over the area', '100');
    expect(working()).not.toContain('your two points');
    await fill('One ply under the heavy weight', '0.21');
    expect(working()).toContain('your two points');
    await userEvent.click(screen.getByRole('button', { name: 'Back to the usual curve' }));
    expect(working()).not.toContain('your two points');
  });
});

describe('worked out', () => {
  it('shows every figure of the report once, but the shares at shut as a bar', () => {
    render(<Closing start={sixPlies} />);
    const { figures } = closingReport(sixPlies);
    for (const { id, label } of figures) {
      const rows = screen.queryAllByRole('button', { name: `Working of "${label}"` });
      expect(rows, id).toHaveLength(id === 'closing.sharesAtShut' ? 0 : 1);
    }
    expect(screen.getByRole('img', { name: /^Show face: As drawn, if it were shut: / })).toBeInTheDocument();
  });

  it('tells both limits of the resin and the friction bound side by side', () => {
    render(<Closing start={sixPlies} />);
    const table = screen.getByRole('table', { name: 'Ends between which the mold will lie' });
    const names = within(table)
      .getAllByRole('row')
      .slice(1)
      .map((row) => within(row).getAllByRole('cell')[0]?.textContent);
    expect(names).toEqual([
      'Resin held inused by the verdicts',
      'Resin free to leave',
      'Resin free, most friction',
    ]);
  });

  it('without a pattern every number is not known, and the reason stands first', () => {
    render(<Closing start={emptyContext()} />);
    expect(verdict()).toHaveTextContent('No pattern is imported yet.');
    expect(screen.queryByRole('img', { name: /Plan of the clamps/u })).toBeNull();
    expect(valueOf('Load in the laminate')).toContain('not known');
  });
});

describe('ranked places', () => {
  it('tell load, class, gap and wanted wall, and ask for marks', async () => {
    const state = closingState(sixPlies);
    if (!state.known) throw new Error(state.reason);
    const onHold = vi.fn();
    const onSaveWallChanges = vi.fn();
    render(<HoldingPlaces state={state} held={null} onHold={onHold} onSaveWallChanges={onSaveWallChanges} />);
    const table = screen.getByRole('table', { name: 'What holds the mold open, most load first' });
    const [, first] = within(table).getAllByRole('row');
    expect(first).toHaveTextContent(state.places[0]!.place);
    await userEvent.click(within(first!).getByRole('button'));
    expect(onHold).toHaveBeenCalledWith(state.places[0]!.place);
    await userEvent.click(screen.getByRole('button', { name: 'Save wall changes as CSV' }));
    expect(onSaveWallChanges).toHaveBeenCalledOnce();
  });
});
