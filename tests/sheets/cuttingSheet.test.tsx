// @vitest-environment jsdom
import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { cutPlies } from '../../src/core/drape/cutPlies';
import { measurePart } from '../../src/core/mesh/measure';
import type { CuttingControl } from '../../src/sheets/cutting/cuttingControl';
import { CuttingSheet } from '../../src/sheets/cutting/CuttingSheet';
import { cuttingChoicesOf } from '../../src/steps/cutting/choicesOf';
import { nestPieces } from '../../src/core/templates/nest';
import { cuttingReport, withCutPlies, type CutAndNested } from '../../src/steps/cutting/report';
import { nestAskedOf } from '../../src/steps/cutting/rolls';
import type { StepContext } from '../../src/steps/shared/context';
import { emptyContext, trayContext } from '../steps/contexts';
import { tray } from '../support/meshes';
import './support';

const context = trayContext({ part: { pull: [0, 0, -1] }, cutting: { stepMm: 2 } });
const part = tray([60, 40, 12], 0.7, 3);
const pieces = cutPlies(
  part,
  measurePart(part, [0, 0, -1]),
  cuttingChoicesOf(context.inputs),
  () => undefined,
);

const { rolls, choices } = nestAskedOf(context.inputs, pieces.pieces);
const nests = nestPieces(pieces.pieces, rolls, choices);
const cut: CutAndNested = { cut: pieces, nests, noPaper: '' };

interface Given {
  readonly shown?: StepContext;
  readonly control?: Partial<CuttingControl>;
  readonly readOnly?: boolean;
}

function renderSheet({ shown = context, control: given = {}, readOnly = false }: Given = {}) {
  const change = vi.fn();
  const control: CuttingControl = {
    why: '',
    cut: null,
    isOutdated: false,
    isBusy: false,
    workOut: vi.fn(),
    save: vi.fn(),
    ...given,
  };
  const report = cuttingReport(shown);
  const { container } = render(
    <CuttingSheet
      title="Ply cutting"
      question="What do I cut?"
      context={shown}
      report={control.cut === null ? report : withCutPlies(report, shown.inputs, control.cut)}
      readOnly={readOnly}
      change={change}
      control={control}
    />,
  );
  return { control, change, container };
}

const button = (name: string) => screen.getByRole('button', { name });

describe('before the pieces are known', () => {
  it('works them out on demand', async () => {
    const { control } = renderSheet();
    expect(screen.queryByRole('region', { name: 'The pieces' })).toBeNull();
    await userEvent.click(button('Work out the pieces'));
    expect(control.workOut).toHaveBeenCalledOnce();
  });

  it.each([
    ['there is no model', { shown: emptyContext() }],
    ['they are being worked out', { control: { isBusy: true } }],
  ])('cannot be pressed while %s', (_why, given: Given) => {
    renderSheet(given);
    expect(button('Work out the pieces')).toBeDisabled();
  });

  it('says why there are none, and that the last ones are outdated', () => {
    renderSheet({ control: { why: 'The start of the cloth lies off the part.', isOutdated: true } });
    expect(screen.getByText('The start of the cloth lies off the part.')).toBeVisible();
    expect(screen.getByText(/belong to other inputs/u)).toBeVisible();
  });
});

describe('the pieces', () => {
  it('stand in a table with their figures; the first is drawn, another can be picked', async () => {
    renderSheet({ control: { cut } });
    const section = within(screen.getByRole('region', { name: 'The pieces' }));
    expect(section.getAllByRole('row')).toHaveLength(1 + cut.cut.pieces.length);
    expect(section.getByRole('img', { name: /^Piece 1A, flat/u })).toBeVisible();
    await userEvent.click(button('2A'));
    expect(section.getByRole('img', { name: /^Piece 2A, flat/u })).toBeVisible();
    expect(section.getByRole('img', { name: /^Threads of ply 2/u })).toBeVisible();
    expect(button('2A')).toHaveAttribute('aria-pressed', 'true');
    expect(screen.getByRole('region', { name: 'Cautions' })).toHaveTextContent('gloves');
  });

  it('lie on the roll; what is picked there is picked in the table, and the other way around', async () => {
    const { container } = renderSheet({ control: { cut } });
    const roll = within(screen.getByRole('region', { name: 'On the roll' }));
    expect(
      roll.getByRole('img', { name: /roll: 3 pieces on \d+ × 1000 mm, piece 1A picked out$/u }),
    ).toBeVisible();
    await userEvent.click(button('3A'));
    expect(roll.getByRole('img', { name: /piece 3A picked out$/u })).toBeVisible();
    expect(container.querySelectorAll('.nest-piece.picked')).toHaveLength(1);
    await userEvent.pointer({ keys: '[MouseLeft]', target: roll.getByText('2A') });
    expect(button('2A')).toHaveAttribute('aria-pressed', 'true');
  });

  it('are saved on the paper that is chosen', async () => {
    const { control, change } = renderSheet({ control: { cut } });
    await userEvent.selectOptions(screen.getByRole('combobox', { name: 'Paper of the templates' }), 'letter');
    expect(change).toHaveBeenLastCalledWith('cutting', { paper: 'letter' });
    for (const [name, kind] of [
      ['Save PDF to print', 'pdf'],
      ['Save SVG', 'svg'],
      ['Save DXF', 'dxf'],
    ] as const) {
      await userEvent.click(button(name));
      expect(control.save).toHaveBeenLastCalledWith(kind);
    }
  });

  it('say why they are on no roll, and then there is nothing to save', () => {
    renderSheet({ control: { cut: { ...cut, nests: 'Piece 1A is wider than the roll.' } } });
    const roll = within(screen.getByRole('region', { name: 'On the roll' }));
    expect(roll.getByText('Piece 1A is wider than the roll.')).toBeVisible();
    expect(screen.queryByRole('region', { name: 'Templates' })).toBeNull();
  });

  it('say why there is no paper', () => {
    renderSheet({ control: { cut: { ...cut, noPaper: 'That would be 900 pages.' } } });
    const section = within(screen.getByRole('region', { name: 'Templates' }));
    expect(section.getByText('That would be 900 pages.')).toBeVisible();
  });

  it('takes another start', async () => {
    const { change } = renderSheet({ control: { cut } });
    await userEvent.type(screen.getByRole('textbox', { name: 'Start, along the length' }), '5{Tab}');
    expect(change).toHaveBeenLastCalledWith('cutting', { startAlongMm: 5 });
  });
});
