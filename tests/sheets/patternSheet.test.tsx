// @vitest-environment jsdom
import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import type { PatternControl } from '../../src/sheets/pattern/patternControl';
import { PatternSheet } from '../../src/sheets/pattern/PatternSheet';
import { patternChoicesOf } from '../../src/steps/pattern/choicesOf';
import { keptSummary } from '../../src/steps/pattern/keptSummary';
import { nameOfMade } from '../../src/steps/pattern/nameOfMade';
import { patternReport, withMadePattern } from '../../src/steps/pattern/report';
import type { StepContext } from '../../src/steps/shared/context';
import { emptyContext, trayContext } from '../steps/contexts';
import { madeSummary } from '../support/madeSummary';
import './support';

const choices = patternChoicesOf(trayContext().inputs);
const made = {
  choices,
  summary: madeSummary,
  stl: new Uint8Array(84),
  display: [],
  changeMm: new Float32Array(0),
};

interface Given {
  readonly context?: StepContext;
  readonly readOnly?: boolean;
  readonly control?: Partial<PatternControl>;
}

function renderSheet({ context = trayContext(), readOnly = false, control: given = {} }: Given = {}) {
  const change = vi.fn();
  const control: PatternControl = {
    choices,
    why: '',
    made: null,
    isOutdated: false,
    used: null,
    isBusy: false,
    make: vi.fn(),
    save: vi.fn(),
    saveToPrint: vi.fn(),
    saveTemplate: vi.fn(),
    use: vi.fn(),
    goBack: vi.fn(),
    ...given,
  };
  const report = patternReport(context);
  const summary = (control.made ?? control.used)?.summary;
  render(
    <PatternSheet
      title="Pattern"
      question="What do I print?"
      context={context}
      report={summary === undefined ? report : withMadePattern(report, choices, summary, 0.2)}
      readOnly={readOnly}
      change={change}
      control={control}
    />,
  );
  return { control, change };
}

const button = (name: string) => screen.getByRole('button', { name });

describe('before a pattern is made', () => {
  it('proposes the wall that the stack wants, and makes it', async () => {
    const { control } = renderSheet();
    expect(screen.getByRole('textbox', { name: 'Wall' })).toHaveAttribute(
      'placeholder',
      choices.wallMm.toFixed(2),
    );
    expect(screen.queryByRole('region', { name: 'The made pattern' })).toBeNull();
    await userEvent.click(button('Make the pattern'));
    expect(control.make).toHaveBeenCalledOnce();
  });

  it('takes another wall', async () => {
    const { change } = renderSheet();
    const field = screen.getByRole('textbox', { name: 'Wall' });
    await userEvent.type(field, '0.9{Tab}');
    expect(change).toHaveBeenLastCalledWith('pattern', { wallMm: 0.9 });
  });

  it('says why nothing can be made', () => {
    renderSheet({ control: { choices: null, why: 'The wall is not known: complete the stack.' } });
    expect(screen.getByText('The wall is not known: complete the stack.')).toBeVisible();
    expect(button('Make the pattern')).toBeDisabled();
  });

  it.each([
    ['there is no model', { context: emptyContext() }],
    ['one is being made', { control: { isBusy: true } }],
  ])('cannot be pressed while %s', (_why, given: Given) => {
    renderSheet(given);
    expect(button('Make the pattern')).toBeDisabled();
  });

  it('says that what was made belongs to other inputs', () => {
    renderSheet({ control: { isOutdated: true } });
    expect(screen.getByText(/made with other inputs/u)).toBeVisible();
  });
});

describe('a made pattern', () => {
  it('shows its figures and the holes to cut, with the caution', () => {
    renderSheet({ control: { made } });
    const section = within(screen.getByRole('region', { name: 'The made pattern' }));
    expect(section.getByText('0.720')).toBeVisible();
    const rows = section
      .getAllByRole('row')
      .map(({ textContent }) => textContent)
      .slice(1, 3);
    expect(rows[0]).toBe('10.0, 20.0, 12.02812.0cut after the cure');
    expect(rows[1]).toContain('stays open');
    expect(screen.getByRole('region', { name: 'Cautions' })).toHaveTextContent('carbon dust');
  });

  it('is saved and used', async () => {
    const { control } = renderSheet({ control: { made } });
    await userEvent.click(button('Save pattern as STL'));
    await userEvent.click(button('Save to print as 3MF'));
    await userEvent.click(button('Save drill template, 1:1'));
    await userEvent.click(button('Use as pattern'));
    expect(control.save).toHaveBeenCalledOnce();
    expect(control.saveTemplate).toHaveBeenCalledExactlyOnceWith(madeSummary);
    expect(control.saveToPrint).toHaveBeenCalledExactlyOnceWith('3mf');
    expect(control.use).toHaveBeenCalledOnce();
    expect(screen.getByText(/puts tray pattern\.stl in the place of tray\.stl/u)).toBeVisible();
  });

  it('can be saved, not used, in a tab that may only read', () => {
    renderSheet({ control: { made }, readOnly: true });
    expect(button('Use as pattern')).toBeDisabled();
    expect(button('Save pattern as STL')).toBeEnabled();
  });

  it('that is in use says what it was made from, keeps its holes to cut, and leads back', async () => {
    const used = { madeOf: 'lid.3mf', choices, summary: keptSummary(madeSummary), whyUnsaved: '' };
    const { control } = renderSheet({ control: { used } });
    const section = within(screen.getByRole('region', { name: 'The pattern in use' }));
    expect(section.getByText('made from lid.3mf')).toBeVisible();
    expect(section.getByRole('note')).toHaveTextContent('lid.3mf stays in the project');
    expect(section.getByText('cut after the cure')).toBeVisible();
    expect(section.getByText('0.720')).toBeVisible();
    await userEvent.click(section.getByRole('button', { name: 'Save drill template, 1:1' }));
    expect(control.saveTemplate).toHaveBeenCalledExactlyOnceWith(used.summary);
    await userEvent.click(section.getByRole('button', { name: 'Go back to the import' }));
    expect(control.goBack).toHaveBeenCalledOnce();
  });

  it('says what both models take where storage is full', () => {
    const used = { madeOf: 'lid.3mf', choices, summary: madeSummary, whyUnsaved: 'No room for both.' };
    renderSheet({ control: { used } });
    expect(screen.getByText('No room for both.')).toBeVisible();
  });
});

describe('its file', () => {
  it.each([
    ['lid.3mf', 'lid pattern.stl'],
    ['my.lid.v2.stl', 'my.lid.v2 pattern.stl'],
    ['lid pattern.stl', 'lid pattern.stl'],
  ])('of %s is %s', (from, name) => expect(nameOfMade(from)).toBe(name));
});
