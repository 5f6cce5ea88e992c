// @vitest-environment jsdom
import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { expect, it, vi } from 'vitest';
import { ErrorBoundary } from '../../src/app/ErrorBoundary';
import './support';

function Broken(): never {
  throw new Error('a figure that is not a number');
}

it('says a fault of the page in plain words and lets the work be saved', async () => {
  // React reports every caught error there; the test is about what the maker sees.
  vi.spyOn(console, 'error').mockImplementation(() => {});
  const save = vi.fn();
  render(
    <ErrorBoundary onSaveProject={save}>
      <Broken />
    </ErrorBoundary>,
  );
  expect(screen.getByRole('heading')).toHaveTextContent('Something went wrong in this page');
  expect(screen.getByText(/a figure that is not a number/)).toBeVisible();
  await userEvent.click(screen.getByRole('button', { name: 'Save project file' }));
  expect(save).toHaveBeenCalledOnce();
});
