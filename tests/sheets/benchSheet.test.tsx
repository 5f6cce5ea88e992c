// @vitest-environment jsdom
import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { produce } from 'immer';
import { useEffect, useState } from 'react';
import { describe, expect, it } from 'vitest';
import { checklistModel, type ChecklistRecord } from '../../src/checklist/printModel';
import { BenchSheet } from '../../src/sheets/bench/BenchSheet';
import { writeReading } from '../../src/steps/bench/written';
import type { ProjectInputs } from '../../src/steps/inputs/project';
import { stepReports } from '../../src/steps/registry';
import type { StepContext } from '../../src/steps/shared/context';
import { trayContext } from '../steps/contexts';
import './support';

const facts = { project: 'Wind meter', part: 'Upper half', date: '', appVersion: '0', formatNumber: 7 };
const planned = trayContext();
/** What the page shows at last. */
const seen: { context: StepContext } = { context: planned };

function Page() {
  const [inputs, setInputs] = useState<ProjectInputs>(planned.inputs);
  const [record, setRecord] = useState<ChecklistRecord>({});
  const shown = { ...planned, inputs };
  useEffect(() => {
    seen.context = shown;
  });
  const reports = stepReports(shown);
  return (
    <BenchSheet
      model={checklistModel(facts, shown, record, reports)}
      context={shown}
      reports={reports}
      readOnly={false}
      liveHref="#live"
      onReading={(path, value) =>
        setInputs((now) => produce(now, (draft) => writeReading(draft, path, value)))
      }
      onRecord={(id, change) =>
        setRecord({ ...record, [id]: { done: false, measured: '', initials: '', ...record[id], ...change } })
      }
    />
  );
}

const words = (context: StepContext) =>
  new Map(
    [...stepReports(context)]
      .filter(([id]) => id !== 'checklist')
      .flatMap(([, { verdicts }]) => verdicts.map(({ id, word }) => [id, word] as const)),
  );

async function type(what: RegExp, value: string): Promise<void> {
  const field = screen.getByRole('textbox', { name: what });
  await userEvent.clear(field);
  await userEvent.type(field, value);
  await userEvent.tab();
}

describe('the bench page', () => {
  it('takes twelve readings, three out of band, and turns exactly what rests on them', async () => {
    render(<Page />);
    const before = words(planned);
    const readings: readonly (readonly [RegExp, string])[] = [
      [/print along x/u, '118'],
      [/print along y/u, '64'],
      [/print along z/u, '18'],
      [/wall at a typical place/u, '0.67'],
      [/pattern on the scale/u, '11.2'],
      [/warmest in the trial cup/u, '70'],
      [/slurry in a cup/u, '2.07'],
      [/3 plies, caliper/u, '0.75'],
      [/whole stack, pressed/u, '0.72'],
      [/finished along x/u, '119'],
      [/finished along y/u, '64.1'],
      [/finished wall/u, '0.67'],
    ];
    for (const [what, value] of readings) await type(what, value);
    expect(screen.getByRole('region', { name: 'Readings' })).toHaveTextContent(
      /12 of \d+ read; out of band: m1, m9, m25\./u,
    );
    const turned = [...words(seen.context)].filter(([id, word]) => before.get(id) !== word).map(([id]) => id);
    expect(turned.toSorted()).toEqual(['mold.heat', 'mold.size']);
  });

  it('has its fields in the order of the numbers, and keeps a note for each phase', async () => {
    render(<Page />);
    const numbers = screen
      .getAllByRole('textbox', { name: /^m\d+ / })
      .map((field) => Number(/^m(\d+) /u.exec(field.getAttribute('aria-label') ?? '')?.[1]));
    expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
    expect(new Set(numbers).size).toBe(numbers.length);
    const pour = within(screen.getByRole('region', { name: 'Pour' }));
    await userEvent.type(pour.getByLabelText('Note on Pour'), 'two bubbles at B');
    await userEvent.tab();
    expect(pour.getByLabelText('Note on Pour')).toHaveValue('two bubbles at B');
  });

  it('says what follows, and takes an emptied reading back', async () => {
    render(<Page />);
    await type(/finished along x/u, '119');
    expect(screen.getByRole('region', { name: 'Finish' })).toHaveTextContent(
      'print the next pattern at scale 1.0084',
    );
    await userEvent.clear(screen.getByRole('textbox', { name: /finished along x/u }));
    await userEvent.tab();
    expect(screen.getByRole('region', { name: 'Readings' })).toHaveTextContent(/^0 of/u);
    expect(seen.context.inputs).toEqual(planned.inputs);
  });
});
