// @vitest-environment jsdom
import './support';
import { fireEvent, render, screen } from '@testing-library/react';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { ProgramSection } from '../../src/sheets/cure/ProgramSection';
import type { CureInputs } from '../../src/steps/inputs/cure';
import { inputsWith } from '../steps/contexts';

const first = { targetC: 70, rampKPerMin: null, dwellHours: 3 };
const second = { targetC: 120, rampKPerMin: null, dwellHours: 1.5 };

function show(cure: Partial<CureInputs> = {}, disabled = false) {
  const onChange = vi.fn();
  render(
    <ProgramSection
      inputs={inputsWith({ cure: { stages: [first, second], ...cure } })}
      prediction={null}
      isOfBefore={false}
      disabled={disabled}
      onChange={onChange}
    />,
  );
  return { onChange };
}
const end = (number: number) => screen.getByRole('slider', { name: `End of dwell ${number}` });
const press = (target: HTMLElement, type: string, [x, y]: readonly [number, number]) =>
  fireEvent(
    target,
    Object.assign(new MouseEvent(type, { bubbles: true, clientX: x, clientY: y, button: 0 }), {
      pointerId: 1,
    }),
  );

describe('the oven program on its chart', () => {
  beforeEach(() => {
    // jsdom has no pointer capture.
    HTMLElement.prototype.setPointerCapture = () => undefined;
  });

  it('says each dwell and moves it by keys, small steps and large ones', () => {
    const { onChange } = show();
    expect(end(2)).toHaveAttribute('aria-valuenow', '120');
    expect(end(2)).toHaveAttribute('aria-valuetext', 'Dwell 2: 120 °C for 1 h 30 min, ends at 4 h 30 min');
    const keys: [string, boolean, object[]][] = [
      ['ArrowUp', false, [first, { ...second, targetC: 121 }]],
      ['ArrowDown', false, [first, { ...second, targetC: 119 }]],
      ['PageUp', false, [first, { ...second, targetC: 130 }]],
      ['ArrowRight', false, [first, { ...second, dwellHours: 1.58 }]],
      ['ArrowLeft', true, [first, { ...second, dwellHours: 1 }]],
    ];
    for (const [key, shiftKey, expected] of keys) {
      fireEvent.keyDown(end(2), { key, shiftKey });
      expect(onChange).toHaveBeenLastCalledWith(expected);
    }
    fireEvent.keyDown(end(2), { key: 'ArrowUp', ctrlKey: true });
    fireEvent.keyDown(end(2), { key: 'a' });
    expect(onChange).toHaveBeenCalledTimes(keys.length);
  });

  it('says so at a limit, and makes no step of undo of it', () => {
    const { onChange } = show({ stages: [{ ...first, targetC: 250 }] });
    fireEvent.focus(end(1));
    fireEvent.keyDown(end(1), { key: 'ArrowUp' });
    expect(end(1).getAttribute('aria-valuetext')).toContain('it goes no higher than 250 °C');
    expect(onChange).not.toHaveBeenCalled();
  });

  it('keeps saying which keys move a handle that has the focus', () => {
    show();
    fireEvent.focus(end(1));
    expect(end(1)).toHaveAccessibleDescription(/arrow keys: up and down 1 °C/);
  });

  it('says no more that the chart ends once the handle was let go there', () => {
    const { onChange } = show();
    press(end(1), 'pointerdown', [100, 100]);
    press(end(1), 'pointermove', [5000, 100]);
    press(end(1), 'pointerup', [5000, 100]);
    expect(onChange).toHaveBeenCalledOnce();
    expect(end(1).getAttribute('aria-valuetext')).not.toContain('the chart ends here');
  });

  it('ends a drag at the edge of the chart, and a drag back where it began is no change', () => {
    const { onChange } = show();
    press(end(1), 'pointerdown', [100, 100]);
    press(end(1), 'pointermove', [5000, 100]);
    expect(end(1).getAttribute('aria-valuetext')).toContain('the chart ends here, let go and drag on');
    // The second dwell was pushed off the chart; it is back when the axes follow.
    expect(screen.getAllByRole('slider')).toHaveLength(1);
    press(end(1), 'pointermove', [100, 100]);
    press(end(1), 'pointerup', [100, 100]);
    expect(end(1).getAttribute('aria-valuetext')).toBe('Dwell 1: 70 °C for 3 h 00 min, ends at 3 h 00 min');
    expect(onChange).not.toHaveBeenCalled();
    expect(screen.getAllByRole('slider')).toHaveLength(2);
  });

  it('is dragged as one change; chart and table follow meanwhile', () => {
    const { onChange } = show();
    const at = [100, 100] as const;
    press(end(1), 'pointerdown', at);
    press(end(1), 'pointermove', [102, 97]);
    expect(screen.getByRole('textbox', { name: 'Stage goes to, stage 1' })).toHaveValue('70');
    press(end(1), 'pointermove', [102, 70]);
    press(end(1), 'pointermove', [102, 60]);
    expect(onChange).not.toHaveBeenCalled();
    const dragged = Number(end(1).getAttribute('aria-valuenow'));
    expect(dragged).toBeGreaterThan(75);
    expect(screen.getByRole('textbox', { name: 'Stage goes to, stage 1' })).toHaveValue(String(dragged));
    press(end(1), 'pointerup', [102, 60]);
    expect(onChange).toHaveBeenCalledOnce();
    // Two pixels along the time were no move along the time.
    expect(onChange).toHaveBeenCalledWith([{ ...first, targetC: dragged }, second]);
  });

  it('gives a drag up on Escape, and a press alone changes nothing', () => {
    const { onChange } = show();
    press(end(1), 'pointerdown', [100, 100]);
    press(end(1), 'pointermove', [160, 100]);
    fireEvent.keyDown(end(1), { key: 'Escape' });
    press(end(1), 'pointerup', [160, 100]);
    press(end(2), 'pointerdown', [100, 100]);
    press(end(2), 'pointerup', [100, 100]);
    expect(onChange).not.toHaveBeenCalled();
    expect(end(1).getAttribute('aria-valuetext')).toContain('for 3 h 00 min');
  });

  it('keeps its handles for a program that never heats, and has none while another tab edits', () => {
    show({ stages: [{ ...first, targetC: 15 }] });
    expect(end(1)).toBeInTheDocument();
    show({}, true);
    expect(screen.getAllByRole('slider')).toHaveLength(1);
  });
});
