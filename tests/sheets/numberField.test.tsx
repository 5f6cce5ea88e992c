// @vitest-environment jsdom
import { fireEvent, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { NumberField } from '../../src/ui/NumberField';
import './support';

const spec = {
  label: 'Wall may be over the stack by',
  unit: 'mm',
  meaning: 'How much wider a wall may be.',
  min: 0,
  max: 5,
  decimals: 2,
};

const kept = vi.fn();

function Field({ emptyWord }: { readonly emptyWord?: string }) {
  const [value, setValue] = useState<number | null>(0.05);
  return (
    <>
      <NumberField
        spec={spec}
        value={value}
        {...(emptyWord === undefined ? {} : { emptyWord })}
        onChange={(next) => {
          kept(next);
          setValue(next);
        }}
      />
      <button type="button" onClick={() => setValue(0.3)}>
        from outside
      </button>
    </>
  );
}

const input = () => screen.getByLabelText<HTMLInputElement>(spec.label);

async function type(text: string) {
  await userEvent.clear(input());
  if (text !== '') await userEvent.type(input(), text);
  await userEvent.tab();
}

beforeEach(() => kept.mockClear());

describe('a number field', () => {
  it('takes a decimal comma as what was meant', async () => {
    render(<Field />);
    await type('0,25');
    expect(kept).toHaveBeenLastCalledWith(0.25);
    expect(input().value).toBe('0.25');
  });

  it.each([
    ['1.2.3', /more than one separator/],
    ['1,234', /two ways/],
    ['7', /at most 5 mm/],
    ['-0.1', /at least 0 mm/],
    ['abc', /not a number/],
    ['0.1 cm', /not a number in mm/],
    ['', /enter a number/i],
  ])('refuses "%s" with a reason and keeps the last good value', async (text, reason) => {
    render(<Field />);
    await type(text);
    expect(screen.getByRole('alert')).toHaveTextContent(reason);
    expect(screen.getByRole('alert')).toHaveTextContent('The last good value stays in use.');
    expect(kept).not.toHaveBeenCalled();
    expect(input()).toBeInvalid();
    expect(input()).toHaveAccessibleDescription(reason);
  });

  it('takes the unit along when it is typed', async () => {
    render(<Field />);
    await type('0.1 mm');
    expect(kept).toHaveBeenLastCalledWith(0.1);
  });

  it('passes a number on at Enter, once', async () => {
    render(<Field />);
    await userEvent.clear(input());
    await userEvent.type(input(), '0.4{Enter}');
    await userEvent.tab();
    expect(kept.mock.calls).toEqual([[0.4]]);
  });

  it('counts a pause in typing as the end of the number', () => {
    vi.useFakeTimers();
    try {
      render(<Field />);
      fireEvent.change(input(), { target: { value: '0.4' } });
      expect(kept).not.toHaveBeenCalled();
      vi.runAllTimers();
      expect(kept.mock.calls).toEqual([[0.4]]);
    } finally {
      vi.useRealTimers();
    }
  });

  it('shows a value from outside and drops the error', async () => {
    render(<Field />);
    await type('7');
    await userEvent.click(screen.getByText('from outside'));
    expect(input().value).toBe('0.30');
    expect(screen.queryByRole('alert')).toBeNull();
  });

  it('may be left empty only where the field says so', async () => {
    render(<Field emptyWord="not measured" />);
    await type('');
    expect(kept).toHaveBeenLastCalledWith(null);
    expect(input()).toHaveAttribute('placeholder', 'not measured');
  });

  it('tells its meaning behind the question mark', async () => {
    render(<Field />);
    expect(screen.getByText(spec.meaning)).not.toBeVisible();
    await userEvent.click(screen.getByRole('button', { name: `What "${spec.label}" means` }));
    expect(screen.getByText(spec.meaning)).toBeVisible();
  });
});
