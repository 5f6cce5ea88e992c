// @vitest-environment jsdom
import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import type { Verdict, VerdictWord } from '../../src/core/figure';
import { VerdictBox } from '../../src/ui/VerdictBox';
import { VerdictMark } from '../../src/ui/VerdictMark';
import './support';

const words: readonly VerdictWord[] = ['go', 'look again', 'stop', 'not yet known'];

describe('verdict marks', () => {
  it.each(words)('name "%s" for those who do not see them', (word) => {
    render(<VerdictMark word={word} />);
    expect(screen.getByRole('img', { name: word })).toBeInTheDocument();
  });

  it('differ by shape, not only by color', () => {
    const drawings = words.map((word) => {
      const { container, unmount } = render(<VerdictMark word={word} decorative />);
      const drawing = container.querySelector('svg')?.innerHTML;
      unmount();
      return drawing;
    });
    expect(new Set(drawings).size).toBe(words.length);
  });
});

const verdict = (word: VerdictWord, reason: string): Verdict => ({
  id: reason,
  word,
  reason,
  fix: `fix ${reason}`,
});

describe('the verdict box', () => {
  it('puts the worst first, findings under it, and what is in order behind one line', async () => {
    render(
      <VerdictBox
        verdicts={[verdict('go', 'a'), verdict('stop', 'b'), verdict('look again', 'c'), verdict('go', 'd')]}
      />,
    );
    expect(screen.getByRole('heading')).toHaveTextContent('Stop');
    expect(screen.getByText('b')).toBeVisible();
    expect(screen.getByText('fix b')).toBeVisible();
    expect(screen.getByText('c')).toBeVisible();
    expect(screen.getByText('fix c')).not.toBeVisible();
    await userEvent.click(screen.getByText('c'));
    expect(screen.getByText('fix c')).toBeVisible();
    expect(screen.getByText('a fix a')).not.toBeVisible();
    await userEvent.click(screen.getByText('2 more checks say go'));
    expect(screen.getByText('a fix a')).toBeVisible();
  });

  it('is not yet known without a verdict', () => {
    render(<VerdictBox verdicts={[]} />);
    expect(screen.getByRole('heading')).toHaveTextContent('Not yet known');
  });
});
