// @vitest-environment jsdom
import './support';
import { fireEvent, render, screen, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import { CureSheet } from '../../src/sheets/cure/CureSheet';
import type { OvenRunControl } from '../../src/sheets/cure/run/useOvenRun';
import { firstMoment } from '../../src/sheets/cure/heatMoment';
import type { CureForecast } from '../../src/sheets/cure/forecast';
import { cureReport } from '../../src/steps/cure/report';
import type { CureInputs } from '../../src/steps/inputs/cure';
import { noOvenRun, type OvenRun } from '../../src/workbook';
import { inputsWith, trayContext } from '../steps/contexts';
import { blockPrediction, lowTemperatureCures } from '../support/curePrediction';

const nothing = () => undefined;
const prediction = blockPrediction(inputsWith({ cure: { supplierCures: lowTemperatureCures } }), 'coarse');

function show(
  cure: Partial<CureInputs> = {},
  forecast: Partial<CureForecast> = {},
  run: OvenRun = noOvenRun,
) {
  const context = trayContext({ cure: { supplierCures: lowTemperatureCures, ...cure }, prediction });
  const change = vi.fn();
  const put = vi.fn();
  const onMoment = vi.fn();
  render(
    <CureSheet
      title="Clamp & cure"
      question="Will it cure?"
      context={context}
      report={cureReport(context)}
      readOnly={false}
      change={change}
      forecast={{
        prediction,
        shownRun: 'oven run',
        lastPrediction: prediction,
        progress: null,
        stopped: false,
        cancel: nothing,
        again: nothing,
        ...forecast,
      }}
      moment={firstMoment}
      onMoment={onMoment}
      run={{ run, nowMs: 1_800_000_000_000, setBackMs: 0, problem: null, disabled: false, put }}
      onFit={null}
      onCompare={() => Promise.resolve(null)}
    />,
  );
  return { change, put, onMoment };
}

describe('the clamp and cure sheet', () => {
  it('says the verdict first, then draws three cases and tells them in tables', () => {
    show();
    expect(screen.getByRole('region', { name: 'Verdict' })).toHaveTextContent(
      'Cures if the stone keeps its water',
    );
    for (const name of ['the stone keeps its water', 'its own vapor holds it back', 'the stone lets it go'])
      expect(screen.getAllByText(`Laminate, if ${name}`)).not.toHaveLength(0);
    const band = screen.getByRole('table', { name: /What the stone may do/u });
    expect(within(band).getAllByRole('row')).toHaveLength(4);
    expect(screen.getByRole('img', { name: /Cut through the closed mold/u })).toBeInTheDocument();
  });

  it('marks what still answers the values before, until the new answer is there', () => {
    show({}, { prediction: null });
    for (const [name, words] of [
      ['Oven program', 'curves and times: of the values before'],
      ['Worked out', 'Of the values before'],
      ['Cut through the mold', 'of the values before'],
    ] as const)
      expect(screen.getByRole('region', { name })).toHaveTextContent(words);
  });

  it('cuts the mold at the moment that the bench view shows', () => {
    const { onMoment } = show();
    fireEvent.change(screen.getByRole('slider', { name: /Time of the cut/u }), { target: { value: '0' } });
    expect(onMoment).toHaveBeenLastCalledWith({ treatment: 'vapor-held', timeS: 0 });
    const treatment = screen.getByRole('combobox', { name: 'Cut shown for' });
    fireEvent.change(treatment, { target: { value: 'open air' } });
    expect(onMoment).toHaveBeenLastCalledWith({ treatment: 'open air', timeS: null });
  });

  it('edits the program as a table; an emptied ramp means at once', () => {
    const { change } = show({ stages: [{ targetC: 70, rampKPerMin: 1, dwellHours: 3 }] });
    const target = screen.getByRole('textbox', { name: 'Stage goes to, stage 1' });
    fireEvent.change(target, { target: { value: '80' } });
    fireEvent.blur(target);
    expect(change).toHaveBeenLastCalledWith('cure', {
      stages: [{ targetC: 80, rampKPerMin: 1, dwellHours: 3 }],
    });
    const ramp = screen.getByRole('textbox', { name: 'Ramp, stage 1' });
    fireEvent.change(ramp, { target: { value: '' } });
    fireEvent.blur(ramp);
    expect(change).toHaveBeenLastCalledWith('cure', {
      stages: [{ targetC: 70, rampKPerMin: null, dwellHours: 3 }],
    });
    fireEvent.click(screen.getByRole('button', { name: 'Add a stage' }));
    expect(change.mock.lastCall?.[1]).toMatchObject({ stages: [{ targetC: 70 }, { targetC: 70 }] });
  });

  it('shows progress with a way to stop it, and a way back after that', () => {
    const cancel = vi.fn();
    show({}, { progress: { doing: 'heating the mold', share: 0.4 }, cancel });
    fireEvent.click(screen.getByRole('button', { name: 'Cancel' }));
    expect(cancel).toHaveBeenCalledOnce();
  });

  it('offers to work it out after it was canceled, and draws the dial meanwhile', () => {
    const again = vi.fn();
    show({}, { prediction: null, lastPrediction: null, stopped: true, again });
    fireEvent.click(screen.getByRole('button', { name: 'Work it out' }));
    expect(again).toHaveBeenCalledOnce();
    expect(screen.getByRole('img', { name: /^Temperature over hours/u })).toBeInTheDocument();
    expect(screen.getByRole('button', { name: 'Compare programs and molds' })).toBeDisabled();
  });

  it('starts a run at the moment of the button', () => {
    const { put } = show();
    fireEvent.click(screen.getByRole('button', { name: 'Oven on: start the run' }));
    const [change] = put.mock.calls[0] as Parameters<OvenRunControl['put']>;
    expect(change(noOvenRun, 5000)).toMatchObject({ startedAtMs: 5000, endedAtMs: null });
  });

  it('tells where a run is and what is due', () => {
    show({}, {}, { ...noOvenRun, startedAtMs: 1_800_000_000_000 - 3.5 * 3_600_000 });
    expect(screen.getByRole('timer')).toHaveTextContent('3:30:00');
    expect(screen.getByText(/Next at 3:49: Start the ramp to 120 °C, 1 K\/min\./u)).toBeInTheDocument();
  });
});
