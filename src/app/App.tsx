import { useEffect, useState } from 'react';
import { createAnswerShelf } from '../pipeline/answerShelf';
import type { Workbook } from '../workbook';
import { WorkbookContext } from '../workbook/useWorkbook';
import { ErrorBoundary } from './ErrorBoundary';
import { NewVersionNote } from './NewVersionNote';
import { ProjectPage } from './project/ProjectPage';
import { ProjectsPage } from './projects/ProjectsPage';
import { useRoute } from './route';
import { saveTextFile } from './saveTextFile';
import { ShelfPage } from './shelf/ShelfPage';

export interface AppProps {
  readonly workbook: Workbook;
  /** Settles when the first start has put the demo in, or found that it is not the first. */
  readonly started: Promise<unknown>;
}

export function App({ workbook, started }: AppProps) {
  const route = useRoute();
  const [starting, setStarting] = useState(true);
  useEffect(() => {
    void started.finally(() => setStarting(false));
  }, [started]);
  const [shelf] = useState(createAnswerShelf);
  const saveOpenProject = () => {
    const id = workbook.store.getState().project?.id;
    const outcome = id === undefined ? null : workbook.exportProjectFile(id);
    if (outcome?.done) saveTextFile(outcome.file);
  };
  return (
    <WorkbookContext value={workbook}>
      <NewVersionNote onBeforeReload={() => workbook.flush()} />
      <ErrorBoundary onSaveProject={saveOpenProject}>
        {route.page === 'projects' ? (
          <ProjectsPage starting={starting} />
        ) : route.page === 'shelf' ? (
          <ShelfPage />
        ) : (
          <ProjectPage
            key={route.projectId}
            projectId={route.projectId}
            stepId={route.stepId}
            shelf={shelf}
          />
        )}
      </ErrorBoundary>
    </WorkbookContext>
  );
}
