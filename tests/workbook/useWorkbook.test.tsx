// @vitest-environment jsdom
/** The React bindings: pages see what they select, and only that. */
import { act, cleanup, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  useProject,
  useUndoState,
  useWorkbook,
  useWorkbookState,
  WorkbookContext,
} from '../../src/workbook/useWorkbook';
import { done, tabWithProject } from './support';

afterEach(cleanup);

const renders = vi.fn();

function Page() {
  const project = useProject();
  const { canUndo, canRedo } = useUndoState();
  const saveState = useWorkbookState((state) => state.saveState);
  return <p>{[project?.inputs.walls.wrongShareAllowedPercent, canUndo, canRedo, saveState].join(' ')}</p>;
}

function ListLength() {
  renders();
  return <b>{useWorkbookState((state) => state.projects.length)}</b>;
}

function Lost() {
  useWorkbook();
  return null;
}

describe('hooks', () => {
  it('show the open project, undo and the save state as they change', async () => {
    const { workbook } = await tabWithProject();
    render(
      <WorkbookContext value={workbook}>
        <Page />
        <ListLength />
      </WorkbookContext>,
    );
    const rendersBefore = renders.mock.calls.length;
    expect(screen.getByText('5 false false saved')).toBeTruthy();
    act(() => void done(workbook.setInput('walls.wrongShareAllowedPercent', 0.2)));
    expect(screen.getByText('0.2 true false saving')).toBeTruthy();
    act(() => void workbook.flush());
    act(() => workbook.undo());
    expect(screen.getByText('5 false true saving')).toBeTruthy();
    act(() => workbook.dispose());
    expect(screen.getByText(/false false saved$/)).toBeTruthy();
    expect(renders).toHaveBeenCalledTimes(rendersBefore);
  });

  it('need a workbook above them', () => {
    vi.spyOn(console, 'error').mockImplementation(() => {});
    expect(() => render(<Lost />)).toThrow('needs a WorkbookContext provider');
    vi.restoreAllMocks();
  });
});
