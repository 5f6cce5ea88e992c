// @vitest-environment jsdom
import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { cutPlies } from '../../src/core/drape/cutPlies';
import { measurePart } from '../../src/core/mesh/measure';
import type { CuttingControl } from '../../src/sheets/cutting/cuttingControl';
import { CuttingSheet } from '../../src/sheets/cutting/CuttingSheet';
import { cuttingChoicesOf } from '../../src/steps/cutting/choicesOf';
import { cuttingReport, withCutPlies } from '../../src/steps/cutting/report';
import type { StepContext } from '../../src/steps/shared/context';
import { emptyContext, trayContext } from '../steps/contexts';
import { tray } from '../support/meshes';
import './support';

const context = trayContext({ part: { pull: [0, 0, -1] }, cutting: { stepMm: 2 } });
const part = tray([60, 40, 12], 0.7, 3);
const cut = cutPlies(part, measurePart(part, [0, 0, -1]), cuttingChoicesOf(context.inputs), () => undefined);

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
    ...given,
  };
  const report = cuttingReport(shown);
  render(
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
  return { control, change };
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
    expect(section.getAllByRole('row')).toHaveLength(1 + cut.pieces.length);
    expect(section.getByRole('img', { name: /^Piece 1A, flat/u })).toBeVisible();
    await userEvent.click(button('2A'));
    expect(section.getByRole('img', { name: /^Piece 2A, flat/u })).toBeVisible();
    expect(section.getByRole('img', { name: /^Threads of ply 2/u })).toBeVisible();
    expect(button('2A')).toHaveAttribute('aria-pressed', 'true');
    expect(screen.getByRole('region', { name: 'Cautions' })).toHaveTextContent('gloves');
  });

  it('takes another start', async () => {
    const { change } = renderSheet({ control: { cut } });
    await userEvent.type(screen.getByRole('textbox', { name: 'Start, along the length' }), '5{Tab}');
    expect(change).toHaveBeenLastCalledWith('cutting', { startAlongMm: 5 });
  });
});
