// @vitest-environment jsdom
/** The question of the fit on the page: when it is asked, and what is told when it fails. */
import { act, cleanup, renderHook, waitFor } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { useFit } from '../../src/app/project/useFit';
import { Problem } from '../../src/core/problem';
import type { Measuring } from '../../src/sheets/measuring/useMeasured';
import { fitReport } from '../../src/steps/fit/report';
import { useProject, WorkbookContext } from '../../src/workbook/useWorkbook';
import { questionWith } from '../pipeline/support';
import { trayContext } from '../steps/contexts';
import { done, tabWithProject } from '../workbook/support';

afterEach(cleanup);

async function rendered(ask: () => Promise<unknown>) {
  const { workbook, id } = await tabWithProject();
  const asks = vi.fn(ask);
  const measuring = {
    desk: { client: { ask: asks } },
    question: questionWith(),
    answers: { measurement: { key: '', told: {}, refused: null } },
  } as unknown as Measuring;
  const hook = renderHook(() => useFit(useProject()!, measuring), {
    wrapper: ({ children }) => <WorkbookContext value={workbook}>{children}</WorkbookContext>,
  });
  return { workbook, id, asks, hook };
}

describe('the fit of the open project', () => {
  it('is asked once something is entered, and not again for what does not touch it', async () => {
    const findings = { rims: null };
    const { workbook, asks, hook } = await rendered(() => Promise.resolve(findings));
    expect(hook.result.current).toMatchObject({ fit: null, isAwaited: false });
    expect(asks).not.toHaveBeenCalled();
    act(() => void done(workbook.setInput('fit.mate', { projectId: 'gone', name: 'Lower half' })));
    expect(hook.result.current.isAwaited).toBe(true);
    await waitFor(() => expect(hook.result.current.fit).toBe(findings));
    expect(hook.result.current.isAwaited).toBe(false);
    expect(hook.result.current.fitTrouble.mate).toMatch(
      /^Lower half, the other half, is not in this browser/u,
    );
    act(() => void done(workbook.setInput('finish.printThroughUm', 40)));
    expect(asks).toHaveBeenCalledOnce();
  });

  it('that fails says why on the sheet, and nothing waits for it', async () => {
    const { workbook, hook } = await rendered(() =>
      Promise.reject(new Problem('job.memory', 'Too large for this browser.')),
    );
    act(() => void done(workbook.setInput('fit.mate', { projectId: 'gone', name: 'Lower half' })));
    await waitFor(() => expect(hook.result.current.fitTrouble.asked).toBe('Too large for this browser.'));
    expect(hook.result.current.isAwaited).toBe(false);
    const { fitTrouble } = hook.result.current;
    const { verdicts } = fitReport({
      ...trayContext({ fit: { mate: { projectId: 'gone', name: 'Lower half' } } }),
      fit: null,
      fitTrouble: { ...fitTrouble, mate: null },
    });
    expect(verdicts).toMatchObject([
      { id: 'fit.rims', word: 'not yet known', reason: 'Too large for this browser.' },
    ]);
  });

  it('that an import dropped is asked again', async () => {
    let calls = 0;
    const { workbook, hook } = await rendered(() =>
      ++calls === 1 ? Promise.reject(new Problem('job.outdated', 'Newer.')) : Promise.resolve({ rims: null }),
    );
    act(() => void done(workbook.setInput('fit.mate', { projectId: 'gone', name: 'Lower half' })));
    await waitFor(() => expect(hook.result.current.fit).not.toBeNull());
    expect(calls).toBe(2);
  });
});
