// @vitest-environment jsdom
import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { describe, expect, it, vi } from 'vitest';
import { ChecklistSheet } from '../../src/checklist/ChecklistSheet';
import { checklistModel, type ChecklistRecord } from '../../src/checklist/printModel';
import type { StepContext } from '../../src/steps/shared/context';
import { defaultProjectInputs } from '../../src/steps/inputs/project';
import './support';

const facts = {
  project: 'Wind meter',
  part: 'Upper half',
  date: '2026-01-05',
  appVersion: '0.1.0',
  formatNumber: 2,
};
const context: StepContext = { inputs: defaultProjectInputs, pattern: null, measured: null, mold: null };
const onPrint = vi.fn();
const onSaveHtml = vi.fn();

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
      onSaveHtml={onSaveHtml}
    />
  );
}

describe('the checklist', () => {
  const model = checklistModel(facts, context);

  it('shows every fact, quantity, warning, caution and line of the model', () => {
    render(<Page />);
    const page = screen.getByRole('article').textContent;
    for (const { label, value } of [...model.header, ...model.quantities]) {
      expect(page).toContain(label);
      expect(page).toContain(value);
    }
    for (const section of model.sections) {
      const region = within(screen.getByRole('region', { name: section.title }));
      expect(region.getAllByRole('checkbox')).toHaveLength(section.lines.length);
      for (const { text } of section.lines) expect(region.getByText(plain(text))).toBeInTheDocument();
      for (const { text } of section.cautions)
        expect(region.getByText(new RegExp(escaped(text)))).toBeVisible();
      // A line may give the same reason for a number that is not known yet.
      for (const { reason } of section.warnings)
        expect(region.getAllByText(new RegExp(escaped(reason)))[0]).toBeVisible();
    }
  });

  it('keeps ticks, measured values and initials', async () => {
    render(<Page />);
    const line = model.sections.flatMap(({ lines }) => lines).find(({ measure }) => measure !== undefined);
    if (line?.measure === undefined) throw new Error('the checklist has no line to measure');
    await userEvent.click(screen.getByLabelText(`Done: ${plain(line.text)}`));
    expect(screen.getByLabelText(`Done: ${plain(line.text)}`)).toBeChecked();
    const measured = screen.getByLabelText(
      `${line.measure.label} in ${line.measure.unit}: ${plain(line.text)}`,
    );
    await userEvent.type(measured, '0.91');
    await userEvent.tab();
    expect(measured).toHaveValue('0.91');
    const initials = screen.getByLabelText(`Initials: ${plain(line.text)}`);
    await userEvent.type(initials, 'ab ');
    await userEvent.tab();
    expect(initials).toHaveValue('ab');
    expect(screen.getByLabelText(`Done: ${plain(line.text)}`)).toBeChecked();
  });

  it('repeats the head of a section over its pages', () => {
    render(<Page />);
    for (const section of model.sections) {
      const head = screen
        .getByRole('region', { name: section.title })
        .querySelector('table.check-table thead');
      expect(head).toHaveTextContent('Wind meter: Upper half');
      expect(head).toHaveTextContent(section.title);
    }
  });

  it('prints and saves at a press', async () => {
    render(<Page />);
    await userEvent.click(screen.getByRole('button', { name: 'Print' }));
    await userEvent.click(screen.getByRole('button', { name: 'Save as HTML file' }));
    expect(onPrint).toHaveBeenCalledOnce();
    expect(onSaveHtml).toHaveBeenCalledOnce();
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

function escaped(text: string): string {
  return plain(text).replace(/[.*+?^${}()|[\]\\]/gu, '\\$&');
}
