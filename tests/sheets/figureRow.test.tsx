// @vitest-environment jsdom
import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../src/core/figure';
import { sources } from '../../src/core/sources';
import { FigureRow } from '../../src/ui/FigureRow';
import './support';

const cured: Figure = {
  id: 'plies.curedThicknessMm',
  label: 'Stack cured',
  value: 0.7023,
  unit: 'mm',
  decimals: 2,
  working: ['3 plies × 0.234 mm'],
  status: 'computed',
  source: 'plyVolumeSum',
};

describe('a figure row', () => {
  it('shows the value with its unit and opens relation, status and source', async () => {
    render(<FigureRow figure={cured} />);
    expect(screen.getByText('0.70')).toBeVisible();
    expect(screen.getByText('mm')).toBeVisible();
    const help = screen.getByRole('button', { name: 'Working of "Stack cured"' });
    expect(help).toHaveAttribute('aria-expanded', 'false');
    expect(screen.getByText('3 plies × 0.234 mm')).not.toBeVisible();
    await userEvent.click(help);
    expect(help).toHaveAttribute('aria-expanded', 'true');
    expect(screen.getByText('3 plies × 0.234 mm')).toBeVisible();
    expect(screen.getByText(/Status: computed from the numbers given/)).toHaveTextContent(
      sources.plyVolumeSum.full,
    );
  });

  it('says at once that a number is an estimate, with its band', () => {
    render(<FigureRow figure={{ ...cured, band: [0.6, 0.8], status: 'from memory' }} />);
    expect(screen.getByText(/estimate, 0\.60 to 0\.80/)).toHaveTextContent('from memory');
  });

  it('says that a figure is not known, never NaN', () => {
    render(<FigureRow figure={{ ...cured, value: null }} />);
    expect(screen.getByText('not known')).toBeVisible();
  });

  it('shows several numbers and words', () => {
    render(<FigureRow figure={{ ...cured, value: [70, 41, 9.96], decimals: 1 }} />);
    expect(screen.getByText('70.0 × 41.0 × 10.0')).toBeVisible();
  });
});
