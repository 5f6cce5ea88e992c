// @vitest-environment jsdom
import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { fitFindings } from '../../src/core/fit/findings';
import { FitSheet, type MateOffer } from '../../src/sheets/fit/FitSheet';
import { fitChoicesOf } from '../../src/steps/fit/choicesOf';
import { fitReport } from '../../src/steps/fit/report';
import { contentTable, type FitInputs } from '../../src/steps/inputs/fit';
import { startOf } from '../../src/steps/kit/inputTable';
import type { FitTrouble } from '../../src/steps/shared/context';
import { boxShell } from '../core/fit/shells';
import { inputsWith, trayContext } from '../steps/contexts';
import './support';

const board = { ...startOf(contentTable), id: 'one', zMm: 8 };
const mate = { projectId: 'lower', name: 'Lower half' };
const offered: MateOffer = { choices: [{ value: 'lower', label: 'Lower half' }], chosen: '' };

const split = vi.fn();

interface Given {
  readonly fit?: Partial<FitInputs>;
  readonly mates?: MateOffer;
  readonly trouble?: FitTrouble;
  readonly worked?: boolean;
  readonly readOnly?: boolean;
}

function renderSheet({ fit = {}, mates = offered, trouble, worked = false, readOnly = false }: Given = {}) {
  const change = vi.fn();
  split.mockClear();
  const choices = fitChoicesOf(inputsWith({ fit, part: { pull: [0, 0, 1] } }), null);
  const shell = boxShell(100, 50, 20, 1);
  const below = {
    positions: shell.positions.map((one, at) => (at % 3 === 2 ? -one : one)),
    facets: shell.facets.map((_, corner, all) => all[corner - (corner % 3) + 2 - (corner % 3)]!),
  };
  const context = {
    ...trayContext({ fit }),
    fit: worked ? fitFindings(shell, fit.mate == null ? null : below, choices) : null,
    ...(trouble === undefined ? {} : { fitTrouble: trouble }),
  };
  render(
    <FitSheet
      title="Fit"
      question="Does everything fit?"
      context={context}
      report={fitReport(context)}
      readOnly={readOnly}
      change={change}
      mates={mates}
      splitting={{ heightMm: 20, isBusy: false, split }}
    />,
  );
  return change;
}

const verdict = () => screen.getByRole('region', { name: 'Verdict' });

describe('the other half', () => {
  it('is kept by its id, with its name', async () => {
    const change = renderSheet();
    await userEvent.selectOptions(screen.getByLabelText('Other half'), 'Lower half');
    expect(change).toHaveBeenCalledWith('fit', { mate });
  });

  it('is taken back', async () => {
    const change = renderSheet({ fit: { mate }, mates: { ...offered, chosen: 'lower' } });
    await userEvent.selectOptions(screen.getByLabelText('Other half'), 'not compared');
    expect(change).toHaveBeenCalledWith('fit', { mate: null });
  });

  it('that is missing stays chosen, and the verdict says why and what to do', () => {
    renderSheet({
      fit: { mate },
      mates: { choices: [{ value: 'lower', label: 'Lower half, not here' }], chosen: 'lower' },
      trouble: { asked: null, mate: 'Lower half, the other half, is not in this browser.' },
    });
    expect(screen.getByLabelText('Other half')).toHaveValue('lower');
    expect(verdict()).toHaveTextContent('Lower half, the other half, is not in this browser.');
    expect(verdict()).toHaveTextContent('open its project file');
  });

  it('compared shows its curve along the rim', () => {
    renderSheet({ fit: { mate }, worked: true });
    expect(screen.getByRole('img', { name: /^Step and gap along the rim/u })).toBeInTheDocument();
    expect(verdict()).toHaveTextContent('The rims step by 0.00 mm at most');
  });
});

describe('one closed model', () => {
  it('is split at half of its height, or where the maker says', async () => {
    renderSheet();
    const field = screen.getByRole('textbox', { name: 'Parting plane at', hidden: true });
    expect(field).toHaveValue('10.0');
    await userEvent.clear(field);
    await userEvent.type(field, '12{Enter}');
    await userEvent.click(screen.getByRole('button', { name: 'Split into two projects', hidden: true }));
    expect(split).toHaveBeenCalledWith(12);
  });
});

describe('contents', () => {
  it('are added, and change by their fields', async () => {
    const change = renderSheet();
    await userEvent.click(screen.getByRole('button', { name: 'Add to the contents' }));
    expect(change).toHaveBeenCalledWith('fit', { contents: [{ ...startOf(contentTable), id: 'entry-1' }] });
  });

  it('that fit say so with their clearance', () => {
    renderSheet({ fit: { contents: [board] }, worked: true });
    expect(verdict()).toHaveTextContent('Board has the least clearance to the core face');
  });

  it('that could not be judged say why', () => {
    renderSheet({
      fit: { contents: [board] },
      trouble: { asked: 'Too large for this browser.', mate: null },
    });
    expect(verdict()).toHaveTextContent('Too large for this browser.');
    expect(verdict()).toHaveTextContent('load the page again');
  });

  it('are off while another tab edits', () => {
    renderSheet({ fit: { contents: [board] }, readOnly: true });
    const given = screen.getByRole('region', { name: 'Given' });
    for (const name of ['Add to the contents', 'Add a transmitter'])
      expect(within(given).getByRole('button', { name })).toBeDisabled();
  });
});
