// @vitest-environment jsdom
import '@testing-library/jest-dom/vitest';
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { HalvesControls } from '../../src/viewer/HalvesControls';
import { halvesBox, mostApartMm, type MoldHalves } from '../../src/viewer/halvesBox';
import type { StoneView } from '../../src/viewer/scene/sceneMessages';

afterEach(cleanup);

const halves: MoldHalves = {
  negative: { facetCount: 0, display: [], boxMinMm: [0, 0, 10], boxMaxMm: [60, 40, 30] },
  positive: { facetCount: 0, display: [], boxMinMm: [0, 0, 0], boxMaxMm: [60, 40, 18] },
};
const stone: StoneView = { apartMm: 5, shows: { negative: true, pattern: true, positive: true } };

describe('the mold pulled apart', () => {
  it('goes as far as the closed mold is high, whichever way the pull points', () => {
    expect(mostApartMm(halves, [0, 0, -2])).toBe(30);
    expect(halvesBox(halves, [0, 0, 1])).toEqual({ boxMinMm: [0, 0, -30], boxMaxMm: [60, 40, 60] });
    expect(halvesBox(halves, [0, 0, -1])).toEqual({ boxMinMm: [0, 0, -20], boxMaxMm: [60, 40, 48] });
  });

  it('is moved by the slider and shown part by part', async () => {
    const onStone = vi.fn();
    render(<HalvesControls stone={stone} mostApartMm={30} onStone={onStone} />);
    const slider = screen.getByRole('slider', { name: 'Pulled apart by 5 mm each' });
    fireEvent.change(slider, { target: { value: '12' } });
    expect(onStone).toHaveBeenLastCalledWith({ ...stone, apartMm: 12 });
    await userEvent.click(screen.getByRole('button', { name: 'Pattern', pressed: true }));
    expect(onStone).toHaveBeenLastCalledWith({ ...stone, shows: { ...stone.shows, pattern: false } });
  });
});
