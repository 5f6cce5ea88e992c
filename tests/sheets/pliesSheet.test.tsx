// @vitest-environment jsdom
import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { describe, expect, it } from 'vitest';
import { PliesSheet } from '../../src/sheets/plies/PliesSheet';
import type { ChangeInputs } from '../../src/sheets/sheetProps';
import { defaultProjectInputs } from '../../src/steps/inputs';
import { pliesReport } from '../../src/steps/plies/report';
import './support';

function Plies({ readOnly = false }: { readonly readOnly?: boolean }) {
  const [inputs, setInputs] = useState(defaultProjectInputs);
  const context = { inputs, pattern: null, measured: null, mold: null };
  const change: ChangeInputs = (step, patch) =>
    setInputs({ ...inputs, [step]: { ...inputs[step], ...patch } });
  return (
    <PliesSheet
      title="Ply schedule"
      question="Which plies?"
      context={context}
      report={pliesReport(context)}
      readOnly={readOnly}
      change={change}
    />
  );
}

const angles = () => screen.getAllByLabelText<HTMLInputElement>(/^Angle of ply/).map(({ value }) => value);

describe('the stack', () => {
  it('moves a ply by keys and keeps the focus on it', async () => {
    render(<Plies />);
    expect(angles()).toEqual(['0', '45', '0']);
    screen.getByLabelText('Material of ply 2').focus();
    await userEvent.keyboard('{Alt>}{ArrowUp}{/Alt}');
    expect(angles()).toEqual(['45', '0', '0']);
    expect(screen.getByLabelText('Material of ply 1')).toHaveFocus();
    await userEvent.keyboard('{Alt>}{ArrowUp}{/Alt}');
    expect(angles()).toEqual(['45', '0', '0']);
  });

  it('moves a ply by its buttons, from the keyboard too', async () => {
    render(<Plies />);
    screen.getByRole('button', { name: 'Move ply 2 towards the core face' }).focus();
    await userEvent.keyboard('{Enter}');
    expect(angles()).toEqual(['0', '0', '45']);
    expect(screen.getByRole('button', { name: 'Move ply 3 towards the core face' })).toHaveFocus();
  });

  it('adds, turns and removes plies', async () => {
    render(<Plies />);
    await userEvent.click(screen.getByRole('button', { name: 'Add ply' }));
    expect(angles()).toEqual(['0', '45', '0', '45']);
    const angle = screen.getByLabelText('Angle of ply 4');
    await userEvent.clear(angle);
    await userEvent.type(angle, '90{Enter}');
    await userEvent.click(screen.getByRole('button', { name: 'Remove ply 1' }));
    expect(angles()).toEqual(['45', '0', '90']);
  });

  it('says what is missing when the last ply is gone', async () => {
    render(<Plies />);
    for (const number of [3, 2, 1])
      await userEvent.click(screen.getByRole('button', { name: `Remove ply ${number}` }));
    expect(screen.getByText('No ply yet. Add the first one.')).toBeVisible();
    expect(screen.queryByRole('region', { name: 'Walls and stacks that meet' })).toBeNull();
  });

  it('is off while another tab edits', () => {
    render(<Plies readOnly />);
    expect(screen.getByRole('button', { name: 'Add ply' })).toBeDisabled();
    expect(screen.getByLabelText('Angle of ply 1')).toBeDisabled();
  });
});

describe('material cards', () => {
  it('duplicate, take a missing thickness, and refuse to go while in use', async () => {
    render(<Plies />);
    await userEvent.click(screen.getByRole('button', { name: 'Edit' }));
    expect(screen.getByRole('button', { name: 'Delete card' })).toBeDisabled();
    await userEvent.click(screen.getByRole('button', { name: 'Duplicate card' }));
    const copy = screen.getByRole('region', { name: /, copy$/ });
    await userEvent.click(within(copy).getByRole('button', { name: 'Edit' }));
    await userEvent.clear(within(copy).getByLabelText(/^Thickness as laid/));
    await userEvent.tab();
    expect(within(copy).getByText(/thickness as laid not measured/)).toBeVisible();
    await userEvent.click(within(copy).getByRole('button', { name: 'Delete card' }));
    expect(screen.queryByRole('region', { name: /, copy$/ })).toBeNull();
  });
});

describe('pairing', () => {
  it('shows 2 lines : 3 plies with 0.1 mm and 3 : 5 as exact', () => {
    render(<Plies />);
    const table = screen.getByRole('table', { name: /Walls of whole printed lines/ });
    const rows = within(table)
      .getAllByRole('row')
      .map((row) =>
        within(row)
          .queryAllByRole('cell')
          .map((cell) => cell.textContent),
      );
    expect(rows).toContainEqual(['2', '3', '1.00', '0.90', '0.10 loose', '◇ nearest']);
    expect(rows).toContainEqual(['3', '5', '1.50', '1.50', 'exact', '◆ exact']);
  });
});
