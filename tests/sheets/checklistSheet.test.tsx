// @vitest-environment jsdom
import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { describe, expect, it, vi } from 'vitest';
import { ChecklistSheet } from '../../src/checklist/ChecklistSheet';
import { checklistModel, type ChecklistRecord } from '../../src/checklist/printModel';
import { trayContext } from '../steps/contexts';
import './support';

const facts = {
  project: 'Wind meter',
  part: 'Upper half',
  date: '2026-01-05',
  appVersion: '0.1.0',
  formatNumber: 2,
};
const context = trayContext();
const onPrint = vi.fn();
const onSaveRecord = vi.fn();

function Page({ readOnly = false }: { readonly readOnly?: boolean }) {
  const [record, setRecord] = useState<ChecklistRecord>({});
  return (
    <ChecklistSheet
      model={checklistModel(facts, context, record)}
      readOnly={readOnly}
      onRecord={(id, change) =>
        setRecord({ ...record, [id]: { done: false, measured: '', initials: '', ...record[id], ...change } })
      }
      onPrint={onPrint}
      onSaveRecord={onSaveRecord}
    />
  );
}

describe('the checklist', () => {
  const model = checklistModel(facts, context);

  it('shows the card with its numbers, drawings and blanks', () => {
    render(<Page />);
    const card = within(screen.getByRole('region', { name: 'Bench card' }));
    for (const { label } of model.card.numbers) expect(card.getByText(label)).toBeVisible();
    for (const { drawing } of model.card.drawings)
      expect(card.getByRole('img', { name: plain(drawing.told) })).toBeVisible();
    for (const { number } of model.card.blanks) expect(card.getByText(number)).toBeVisible();
  });

  it('shows every action, caution and blank of each phase', () => {
    render(<Page />);
    for (const phase of model.phases) {
      const region = screen.getByRole('region', { name: phase.title });
      expect(within(region).getAllByRole('checkbox')).toHaveLength(phase.actions.length);
      expect(within(region).getAllByText('CAUTION')).toHaveLength(1);
      expect(plain(region.textContent)).toContain(plain(phase.caution));
      for (const { text, blanks } of phase.actions) {
        expect(plain(region.textContent)).toContain(plain(text));
        for (const { number } of blanks) expect(region.textContent).toContain(number);
      }
    }
  });

  it('keeps ticks, one signature and one note for each page', async () => {
    render(<Page />);
    const region = within(screen.getByRole('region', { name: 'Pour' }));
    const [box] = region.getAllByRole('checkbox');
    if (box === undefined) throw new Error('nothing to tick');
    await userEvent.click(box);
    expect(box).toBeChecked();
    const signed = region.getByLabelText('Pour done by');
    await userEvent.type(signed, 'ab ');
    await userEvent.tab();
    expect(signed).toHaveValue('ab');
    const note = region.getByLabelText('Note on Pour');
    await userEvent.type(note, 'two bubbles');
    await userEvent.tab();
    expect(note).toHaveValue('two bubbles');
    expect(box).toBeChecked();
  });

  it('prints and saves at a press', async () => {
    render(<Page />);
    await userEvent.click(screen.getByRole('button', { name: 'Print' }));
    await userEvent.click(screen.getByRole('button', { name: 'Save the full record' }));
    expect(onPrint).toHaveBeenCalledOnce();
    expect(onSaveRecord).toHaveBeenCalledOnce();
  });

  it('is off while another tab edits, and can be printed all the same', () => {
    render(<Page readOnly />);
    for (const box of screen.getAllByRole('checkbox')) expect(box).toBeDisabled();
    expect(screen.getByRole('button', { name: 'Print' })).toBeEnabled();
  });
});

/** The narrow spaces of numbers as the queries see them. */
function plain(text: string): string {
  return text.replace(/\s+/gu, ' ');
}
