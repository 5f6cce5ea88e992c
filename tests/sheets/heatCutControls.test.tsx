// @vitest-environment jsdom
import './support';
import { fireEvent, render, screen, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import { cutFields, fieldBounds, keptFields } from '../../src/core/cure/heatFields';
import { boxMoldVoxels, voxelCount } from '../../src/core/cure/moldVoxels';
import { programOf } from '../../src/steps/shared/process';
import { HeatCutControls, type HeatCutControlsProps } from '../../src/sheets/cure/HeatCutControls';
import { inputsWith } from '../steps/contexts';
import { blockPrediction } from '../support/curePrediction';

const inputs = inputsWith({});
const prediction = blockPrediction(inputs, 'coarse');
const voxels = boxMoldVoxels({ blockMm: [40, 30, 20], laminateMm: [20, 10, 4], voxelMm: 2 });
const frameAt = (timeS: number, celsius: number) => ({
  timeS,
  temperatureC: new Float32Array(voxelCount(voxels)).fill(celsius),
});
const fields = keptFields(voxels, [frameAt(0, 20), frameAt(10_000, 70)], 1e9);
const frame = {
  axes: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  originMm: [0, 0, 0],
  turnDeg: 0,
} as const;
const question = { treatment: 'vapor-held', axis: 1, atMm: null, timeS: 10_000 } as const;
const answer = { question, reply: { cut: cutFields(fields, 1, 15, 10_000), ...fieldBounds(fields), frame } };
const point = {
  pointMm: [20, 15, 10],
  isColdest: true,
  heat: { fill: 'laminate', curve: { timesS: [0, 10_000], valuesC: [20, 68] } },
} as const;

function show(change: Partial<HeatCutControlsProps> = {}) {
  const [onQuestion, onPoint, onOwnScale] = [vi.fn(), vi.fn(), vi.fn()];
  render(
    <HeatCutControls
      prediction={prediction}
      program={programOf(inputs)}
      question={question}
      answer={answer}
      point={point}
      onQuestion={onQuestion}
      onPoint={onPoint}
      isOwnScale
      onOwnScale={onOwnScale}
      {...change}
    />,
  );
  return { onQuestion, onPoint };
}

const read = (term: string) => screen.getByText(term).nextElementSibling?.textContent;
const fill = (name: string, value: string) => {
  const field = screen.getByRole('textbox', { name });
  fireEvent.change(field, { target: { value } });
  fireEvent.blur(field);
};

describe('the controls of the heated mold', () => {
  it('read air and cut at the time that was answered, also while another one is asked', () => {
    show({ question: { ...question, timeS: 0 } });
    expect(read('Air in the oven')).toBe('70 °C');
    expect(read('Laminate in this cut')).toBe('70 to 70 °C');
    expect(screen.getByText('Air in the oven').closest('dl')).toHaveAttribute('aria-busy', 'true');
  });

  it('tell the coldest place until another one is chosen', () => {
    const { onPoint } = show();
    expect(
      screen.getByText(/At 20\.0, 15\.0, 10\.0 mm, in laminate: 68 °C now, 68 °C at most/),
    ).toBeVisible();
    expect(screen.getByRole('img', { name: /^Temperature over hours/ })).toBeInTheDocument();
    fireEvent.click(screen.getByRole('button', { name: 'coldest place', pressed: true }));
    expect(onPoint).toHaveBeenLastCalledWith(null);
  });

  it('take a point by its coordinates, and only from within the mold', () => {
    const { onPoint } = show();
    fill('Point at x', '7.5');
    expect(onPoint).toHaveBeenLastCalledWith([7.5, 15, 10]);
    fill('Point at z', '-3');
    expect(onPoint).toHaveBeenCalledOnce();
    expect(screen.getByRole('alert')).toHaveTextContent('Too small: at least 0 mm.');
  });

  it('say so where the mold has nothing, and draw no curve', () => {
    show({ point: { pointMm: [0, 0, 0], isColdest: false, heat: null } });
    expect(screen.getByText(/there is neither stone nor laminate/)).toBeVisible();
    expect(screen.queryByRole('img')).toBeNull();
  });

  it('ask for another time, place and run', () => {
    const { onQuestion } = show();
    fireEvent.change(screen.getByRole('slider', { name: /from the start$/ }), { target: { value: '3600' } });
    expect(onQuestion).toHaveBeenLastCalledWith({ ...question, timeS: 3600 });
    fireEvent.change(screen.getByRole('slider', { name: /from the middle$/ }), { target: { value: '4' } });
    expect(onQuestion).toHaveBeenLastCalledWith({ ...question, atMm: 4 });
    const ways = screen.getByRole('group', { name: 'Cut the mold' });
    fireEvent.click(within(ways).getByRole('button', { name: 'across the pull' }));
    expect(onQuestion).toHaveBeenLastCalledWith({ ...question, axis: 2, atMm: null });
  });
});
