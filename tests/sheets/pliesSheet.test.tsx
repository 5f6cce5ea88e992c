// @vitest-environment jsdom
import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { describe, expect, it } from 'vitest';
import { PliesSheet } from '../../src/sheets/plies/PliesSheet';
import type { ChangeInputs } from '../../src/sheets/sheetProps';
import { defaultProjectInputs } from '../../src/steps/inputs/project';
import { pliesReport } from '../../src/steps/plies/report';
import { placeAt } from '../../src/sheets/plies/stackEdits';
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

const remark = () => screen.getByText(/^free of stress at/u).textContent;

describe('cure and use', () => {
  it('follows the oven program and the room until something is entered, and again once it is emptied', async () => {
    render(<Plies />);
    expect(remark()).toBe('free of stress at 70 °C, used at 21 °C');
    expect(screen.getByText('empty: 70 °C, where it gels')).toBeInTheDocument();
    const field = screen.getByRole('textbox', { name: 'Free of stress at', hidden: true });
    await userEvent.type(field, '120{Enter}');
    expect(remark()).toBe('free of stress at 120 °C, used at 21 °C');
    expect(screen.getByText('entered; differs from where it gels, 70 °C')).toBeInTheDocument();
    await userEvent.clear(field);
    await userEvent.tab();
    expect(remark()).toBe('free of stress at 70 °C, used at 21 °C');
  });
});

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

describe('turned and paired plies', () => {
  it('are set behind the three dots and said in the row', async () => {
    render(<Plies />);
    await userEvent.click(screen.getByRole('button', { name: 'Turn or pair ply 2' }));
    await userEvent.click(screen.getByRole('checkbox', { name: 'Ply 2 lies face down' }));
    expect(screen.getByText('face down: lies at −45°')).toBeVisible();
    await userEvent.click(screen.getByRole('checkbox', { name: 'Ply 2 is cut as a mirrored pair' }));
    expect(
      screen.getByText('face down: lies at −45°; mirrored pair: the second piece lies at 45°'),
    ).toBeVisible();
  });

  it('a dragged ply goes where its height belongs', () => {
    expect(placeAt(5, [20, 40])).toBe(0);
    expect(placeAt(30, [20, 40])).toBe(1);
    expect(placeAt(99, [20, 40])).toBe(2);
  });
});

describe('local patches', () => {
  it('are added, sized and removed, and weigh in', async () => {
    render(<Plies />);
    await userEvent.click(screen.getByText('Doublers and overlaps'));
    await userEvent.click(screen.getByRole('button', { name: 'Add patch' }));
    const area = screen.getByLabelText('Area');
    await userEvent.clear(area);
    await userEvent.type(area, '12{Enter}');
    const worked = screen.getByRole('region', { name: 'Worked out' });
    expect(within(worked).getByText('Doublers and overlaps, area').closest('.row')).toHaveTextContent('12.0');
    await userEvent.click(screen.getByRole('button', { name: 'Remove patch 1' }));
    expect(screen.queryByLabelText('Area')).toBeNull();
  });
});

describe('the coat', () => {
  it('asks for its numbers only where there is one, and warns when it set hot', async () => {
    render(<Plies />);
    await userEvent.click(screen.getByText('One-sided coat'));
    expect(screen.queryByLabelText('Coat thickness')).toBeNull();
    await userEvent.selectOptions(screen.getByLabelText('Coat'), 'show');
    expect(screen.getByText('0.15 mm on the show face')).toBeVisible();
    const set = screen.getByLabelText('Temperature at which the coat set');
    await userEvent.clear(set);
    await userEvent.type(set, '120{Enter}');
    expect(
      within(screen.getByRole('region', { name: 'Verdict' })).getByText(/The stack bends/),
    ).toBeVisible();
  });
});

describe('a card in depth', () => {
  it('takes a caliper reading that replaces the thickness as laid', async () => {
    render(<Plies />);
    await userEvent.click(screen.getByRole('button', { name: 'Edit' }));
    await userEvent.click(screen.getByText('Measured at the bench'));
    await userEvent.type(screen.getByLabelText('Caliper over plies as laid'), '0.84{Enter}');
    expect(screen.getByText(/0\.28 mm as laid, measured/)).toBeVisible();
    expect(screen.getByText('replaced by the caliper reading below')).toBeVisible();
  });

  it('says what out-time is left once the data sheet is known', async () => {
    render(<Plies />);
    await userEvent.click(screen.getByRole('button', { name: 'Edit' }));
    await userEvent.click(screen.getByText('Roll and out-time'));
    await userEvent.type(screen.getByLabelText('Out-time allowed'), '5{Enter}');
    expect(
      within(screen.getByRole('region', { name: 'Verdict' })).getByText(/has 5\.0 h of out-time left/),
    ).toBeVisible();
  });
});

describe('pairing', () => {
  it('tells for each number of plies the beads that come nearest, what they leave, and the bead that fits', () => {
    render(<Plies />);
    const table = screen.getByRole('table', { name: /Stacks of whole plies/ });
    const rows = within(table)
      .getAllByRole('row')
      .map((row) =>
        within(row)
          .queryAllByRole('cell')
          .map((cell) => cell.textContent),
      );
    expect(rows).toHaveLength(9);
    // Three plies want 0.673 mm; one bead of 0.50 mm squeezes them to 68 % fiber.
    expect(rows[3]?.slice(0, 4)).toEqual(['3', '0.67', '1', '0.50']);
    expect(rows[3]?.[4]).toContain('68 % fiber');
    expect(rows[3]?.[5]).toBe('0.673');
    expect(rows[4]?.[4]).toContain('7 % air');
  });
});
