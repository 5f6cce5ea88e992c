// @vitest-environment jsdom
import { fireEvent, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import { DropArea } from '../../src/sheets/part/DropArea';
import { PatternFile } from '../../src/sheets/part/PatternFile';
import { pullName, PullChoiceRow } from '../../src/sheets/part/PullChoiceRow';
import './support';

const file = new File(['solid x'], 'shell.stl');

describe('the pattern file', () => {
  it('is taken from the picker', async () => {
    const onFile = vi.fn();
    render(<PatternFile pattern={null} problem={null} disabled={false} onFile={onFile} />);
    await userEvent.upload(screen.getByLabelText('Model file'), file);
    expect(onFile).toHaveBeenCalledWith(file);
  });

  it('is taken when dropped, unless another tab edits', () => {
    const onFile = vi.fn();
    const { rerender } = render(
      <DropArea disabled={false} onFile={onFile}>
        here
      </DropArea>,
    );
    fireEvent.drop(screen.getByText('here'), { dataTransfer: { files: [file] } });
    expect(onFile).toHaveBeenCalledWith(file);
    rerender(
      <DropArea disabled onFile={onFile}>
        here
      </DropArea>,
    );
    fireEvent.drop(screen.getByText('here'), { dataTransfer: { files: [file] } });
    expect(onFile).toHaveBeenCalledOnce();
  });

  it('says why it was refused', () => {
    render(<PatternFile pattern={null} problem="The file is empty." disabled={false} onFile={vi.fn()} />);
    expect(screen.getByRole('alert')).toHaveTextContent('The file is empty.');
  });
});

describe('the pull', () => {
  it('is named by its axis, or by its numbers when askew', () => {
    expect(pullName([0, 0, -1])).toBe('−z');
    expect(pullName([0.6, 0, 0.8])).toBe('0.600, 0.000, 0.800');
  });

  it('is chosen from six axes, a facet, or the best one', async () => {
    const calls = { onPull: vi.fn(), onPick: vi.fn(), onFindBest: vi.fn() };
    render(<PullChoiceRow pull={[0, 0, 1]} disabled={false} picking={false} {...calls} />);
    expect(screen.getByRole('button', { name: '+z' })).toHaveAttribute('aria-pressed', 'true');
    await userEvent.click(screen.getByRole('button', { name: '−y' }));
    expect(calls.onPull).toHaveBeenCalledWith([0, -1, 0]);
    await userEvent.click(screen.getByRole('button', { name: 'Along a facet' }));
    await userEvent.click(screen.getByRole('button', { name: 'Find the best' }));
    expect(calls.onPick).toHaveBeenCalledOnce();
    expect(calls.onFindBest).toHaveBeenCalledOnce();
  });
});
