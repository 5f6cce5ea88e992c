// @vitest-environment jsdom
import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { FinishSheet } from '../../src/sheets/finish/FinishSheet';
import { plannedJob } from '../../src/steps/finish/job';
import { finishReport } from '../../src/steps/finish/report';
import { finishCoatTable, type FinishInputs } from '../../src/steps/inputs/finish';
import { startOf } from '../../src/steps/kit/inputTable';
import { trayContext } from '../steps/contexts';
import './support';

const coat = { ...startOf(finishCoatTable), id: 'entry-1' };

function renderSheet(finish: Partial<FinishInputs> = {}, readOnly = false) {
  const change = vi.fn();
  const onSaveCalendar = vi.fn();
  const context = trayContext({ finish });
  render(
    <FinishSheet
      title="Finish"
      question="When is it done?"
      context={context}
      report={finishReport(context, [])}
      readOnly={readOnly}
      change={change}
      job={plannedJob(context.inputs, [])}
      onSaveCalendar={onSaveCalendar}
    />,
  );
  return { change, onSaveCalendar };
}

const verdict = () => screen.getByRole('region', { name: 'Verdict' });
const save = () => screen.getByRole('button', { name: /calendar/iu });

describe('coats', () => {
  it('are added with the values of a new card, and say what they leave over the fiber', async () => {
    const { change } = renderSheet();
    await userEvent.click(screen.getByRole('button', { name: 'Add a coat' }));
    expect(change).toHaveBeenCalledWith('finish', { coats: [coat] });
  });

  it('too thin for the papers look again, with how many coats more do', () => {
    renderSheet({ coats: [coat] });
    expect(verdict()).toHaveTextContent('3 coats');
  });

  it('are off while another tab edits', () => {
    renderSheet({ coats: [coat] }, true);
    expect(screen.getByRole('button', { name: 'Add a coat' })).toBeDisabled();
    expect(screen.getByLabelText('Start of the job')).toBeDisabled();
  });
});

describe('the calendar', () => {
  it('takes a day, refuses what is none with a sentence, and is saved once there is one', async () => {
    const { change } = renderSheet({ coats: [coat] });
    const field = screen.getByLabelText('Start of the job');
    await userEvent.type(field, '2026-02-30{Enter}');
    expect(screen.getByText(/^Enter a day as year, month and day/u)).toBeVisible();
    expect(change).not.toHaveBeenCalled();
    await userEvent.clear(field);
    await userEvent.type(field, '2026-05-04{Enter}');
    expect(change).toHaveBeenCalledWith('finish', { startDate: '2026-05-04' });
  });

  it('with a day is drawn as a strip and saved', async () => {
    const { onSaveCalendar } = renderSheet({ coats: [coat], startDate: '2026-05-04' });
    await userEvent.click(save());
    expect(onSaveCalendar).toHaveBeenCalledOnce();
    expect(
      within(screen.getByRole('region', { name: 'Worked out' })).getAllByText(/Print the pattern/u)[0],
    ).toBeVisible();
  });
});
