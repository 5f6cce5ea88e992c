// @vitest-environment jsdom
import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { describe, expect, it, vi } from 'vitest';
import type { Verdict, VerdictWord } from '../../src/core/figure';
import type { PlanFound } from '../../src/pipeline/plan';
import { DecisionSheet } from '../../src/sheets/decision/DecisionSheet';
import { patchOf, type FoundPlan, type Planning } from '../../src/sheets/decision/planning';
import { outcomeSentence, plannedAdvice } from '../../src/sheets/decision/say';
import { defaultProjectInputs, type ProjectInputs } from '../../src/steps/inputs/project';
import { stepReports } from '../../src/steps/registry';
import { decide, headline, type Decision } from '../../src/steps/shared/decision';
import { patched } from '../../src/steps/shared/patch';
import { trayContext, trayPattern } from '../steps/contexts';
import './support';

const plan: PlanFound = {
  outcome: 'cannot be cleared',
  now: { part: 'go', walls: 'stop', mold: 'look again' },
  after: { part: 'go', walls: 'stop', mold: 'go' },
  changes: [
    {
      id: 'mold.patternSoftensC',
      what: 'Print the pattern in polycarbonate.',
      why: 'The pattern softens at 55 °C.',
      turns: [{ id: 'mold.heat', from: 'look again', to: 'go', says: 'It softens at 130 °C.' }],
      patch: { 'mold.patternSoftensC': 130 },
      step: 'mold',
    },
    {
      id: 'closing.shimMm',
      what: 'Close on shims of 0.20 mm.',
      why: 'All of the load is on the lands.',
      turns: [{ id: 'closing.load', from: 'stop', to: 'go', says: 'The laminate carries it.' }],
      patch: { 'closing.shimMm': 0.2 },
      step: 'closing',
    },
  ],
  anew: null,
  left: ['Walls & draft, stop: 70 mm² lock.'],
  stays: new Map([['walls.locks', 'The pattern must be made anew without the undercuts.']]),
  fixes: new Map(),
};

const stop = (id: string): Verdict => ({ id, word: 'stop', reason: `${id} stops.`, fix: '' });

const sheetOn = (...ids: string[]) => (
  <DecisionSheet
    decision={{
      word: 'stop',
      stops: ids.map((id) => ({ verdict: stop(id), stepIds: ['walls'] })),
      unknown: [],
      later: [],
      lookAgain: [],
    }}
    reports={stepReports(trayContext({}))}
    inputs={defaultProjectInputs}
    planning={{ found: null, isLooking: false, look: null, apply: () => undefined }}
    readOnly={false}
    hrefOf={(id) => `#/p/one/${id}`}
  />
);

function DecisionOn({
  found = { plan, inputs: defaultProjectInputs },
  look = null,
  start = defaultProjectInputs,
}: {
  readonly found?: FoundPlan | null;
  readonly look?: (() => void) | null;
  readonly start?: ProjectInputs;
}) {
  const [inputs, setInputs] = useState(start);
  const planning: Planning = {
    found,
    isLooking: false,
    look,
    apply: (changes) => setInputs(patched(inputs, patchOf(changes)) ?? inputs),
  };
  const reports = stepReports({ ...trayContext(), inputs, pattern: trayPattern });
  return (
    <DecisionSheet
      decision={decide(reports)}
      reports={reports}
      inputs={inputs}
      planning={planning}
      readOnly={false}
      hrefOf={(stepId) => `#/p/one/${stepId}`}
    />
  );
}

describe('the Decision sheet', () => {
  it('says the decision in words, and each stop with a link to its step', () => {
    render(<DecisionOn found={null} />);
    const reports = stepReports({ ...trayContext(), pattern: trayPattern });
    const { word, stops, unknown } = decide(reports);
    expect(screen.getByRole('heading', { level: 1, name: 'Decision' })).toBeVisible();
    const wanted = { stop: 'Do not pour yet', 'not yet known': 'Not yet known', go: 'Cleared to pour' }[word];
    expect(screen.getByRole('heading', { level: 2, name: wanted })).toBeVisible();
    expect(stops.length + unknown.length).toBeGreaterThan(0);
    for (const { verdict, stepIds } of [...stops, ...unknown]) {
      const line = screen.getByText(verdict.reason).closest('li')!;
      const hrefs = within(line)
        .getAllByRole('link')
        .map((link) => link.getAttribute('href'));
      expect(hrefs).toEqual(stepIds.map((id) => `#/p/one/${id}`));
    }
  });

  it('leads to Pattern where the stops are about what is printed, and nowhere else', () => {
    const { rerender } = render(sheetOn('walls.locks', 'walls.band', 'cure.cures'));
    expect(screen.getByText(/^2 of the stops are about/)).toBeVisible();
    expect(screen.getByRole('link', { name: 'Pattern' })).toHaveAttribute('href', '#/p/one/pattern');
    rerender(sheetOn('cure.cures'));
    expect(screen.queryByRole('link', { name: 'Pattern' })).toBeNull();
  });

  it('gives the five numbers of the job with their units', () => {
    render(<DecisionOn found={null} />);
    const job = screen.getByRole('region', { name: 'The job' });
    for (const [label, value] of [
      ['Stack', /\d (ply|plies)/u],
      ['Powder', /\d g|not known/u],
      ['Box', /\d mm|not known/u],
      ['Oven', /\d h \d\d min/u],
      ['Part', /\d g|not known/u],
    ] as const)
      expect(within(job).getByText(label, { exact: true }).closest('div')).toHaveTextContent(value);
  });

  it('looks for a plan when asked, and not without a pattern', async () => {
    const look = vi.fn();
    const { rerender } = render(<DecisionOn found={null} look={look} />);
    await userEvent.click(screen.getByRole('button', { name: 'Look for a plan' }));
    expect(look).toHaveBeenCalledTimes(1);
    rerender(<DecisionOn found={null} />);
    expect(screen.getByRole('button', { name: 'Look for a plan' })).toBeDisabled();
  });

  it('shows each change with why, what then holds and the marks that turn, and applies one', async () => {
    render(<DecisionOn />);
    const [first] = within(screen.getByRole('list', { name: 'Changes' })).getAllByRole('listitem');
    expect(first).toHaveTextContent('Print the pattern in polycarbonate.');
    expect(first).toHaveTextContent('The pattern softens at 55 °C.');
    expect(first).toHaveTextContent('Then: It softens at 130 °C.');
    expect(
      within(first!)
        .getAllByRole('img')
        .map((mark) => mark.getAttribute('aria-label')),
    ).toEqual(['look again', 'go']);
    await userEvent.click(screen.getByRole('button', { name: 'Apply: Print the pattern in polycarbonate.' }));
    expect(within(first!).getByText('Applied')).toBeVisible();
    expect(screen.getByRole('button', { name: 'Apply: Close on shims of 0.20 mm.' })).toBeVisible();
  });

  it('applies all that is not applied yet at once', async () => {
    render(<DecisionOn />);
    await userEvent.click(screen.getByRole('button', { name: 'Apply all' }));
    expect(screen.getAllByText('Applied')).toHaveLength(2);
    expect(screen.queryByRole('button', { name: 'Apply all' })).toBeNull();
  });

  it('says in one sentence what came of it', () => {
    render(<DecisionOn />);
    expect(screen.getByText('2 changes help, but no change that was tried clears the pour.')).toBeVisible();
  });

  it('keeps the focus on the button that was pressed', async () => {
    render(<DecisionOn />);
    await userEvent.click(screen.getByRole('button', { name: 'Apply: Print the pattern in polycarbonate.' }));
    expect(
      screen.getByRole('button', { name: 'Applied: Print the pattern in polycarbonate.' }),
    ).toHaveFocus();
  });

  it('shows no plan of other inputs', () => {
    const { mold } = defaultProjectInputs;
    render(<DecisionOn start={{ ...defaultProjectInputs, mold: { ...mold, roomC: mold.roomC + 3 } }} />);
    expect(screen.getByText(/Other inputs have been changed/u)).toBeVisible();
    expect(screen.queryByRole('list', { name: 'Changes' })).toBeNull();
  });
});

const verdict = (id: string, word: VerdictWord): Verdict => ({ id, word, reason: 'So.', fix: 'Try this.' });

const finding = (word: VerdictWord, isAwaited = false) => ({
  verdict: { id: 'cure.one', word, reason: 'So.', fix: '', ...(isAwaited && { isAwaited }) } as Verdict,
  stepIds: ['cure'],
});

describe('the advice under a finding, with a plan', () => {
  it('names the change that mends it', () => {
    expect(plannedAdvice(plan, verdict('closing.load', 'stop'))).toBe('Mended by change 2.');
    expect(plannedAdvice(plan, verdict('mold.heat', 'look again'))).toBe('Mended by change 1.');
  });

  it('shows no untried fix at a stop that stays, but what is left to do', () => {
    expect(plannedAdvice(plan, verdict('walls.locks', 'stop'))).toBe(
      'No change that was tried mends this. The pattern must be made anew without the undercuts.',
    );
  });

  it('leaves a look-again that nothing mends its own', () => {
    expect(plannedAdvice(plan, verdict('part.pull', 'look again'))).toBe('Try this.');
  });
});

describe('the decision in one sentence', () => {
  const none = { stops: [], unknown: [], later: [], lookAgain: [] };

  it.each<[Decision, string]>([
    [{ ...none, word: 'go' }, 'All checks say go.'],
    [
      { ...none, word: 'go', lookAgain: [finding('look again')] },
      'Nothing says stop. 1 check to look at again; the pour need not wait.',
    ],
    [{ ...none, word: 'stop', stops: [finding('stop')] }, '1 check says stop.'],
    [{ ...none, word: 'not yet known' }, 'Import the pattern file on the Part sheet first.'],
    [
      { ...none, word: 'not yet known', unknown: [finding('not yet known')] },
      'Nothing says stop; 1 answer is missing.',
    ],
    [
      { ...none, word: 'not yet known', unknown: [finding('not yet known', true)] },
      'It is still being worked out.',
    ],
  ])('of %j', (decision, wanted) => {
    expect(headline(decision)).toBe(wanted);
  });
});

describe('the outcome in one sentence', () => {
  it.each<[PlanFound['outcome'], number, RegExp]>([
    ['cleared', 0, /^Nothing has to change\.$/u],
    ['cleared by the changes', 1, /^1 change clears it\.$/u],
    ['cleared by the changes', 2, /^2 changes clear it\.$/u],
    ['not yet known', 0, /missing answers/u],
    ['not yet known', 2, /^2 changes help\. Then nothing says stop/u],
    ['cannot be cleared', 0, /^No change that was tried helps\.$/u],
    ['cannot be cleared', 1, /^1 change helps, but/u],
  ])('%s by %i', (outcome, count, wanted) => {
    expect(outcomeSentence({ ...plan, outcome, changes: plan.changes.slice(0, count) })).toMatch(wanted);
  });
});
