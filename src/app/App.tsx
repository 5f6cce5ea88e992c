import { useState } from 'react';
import { createMeasureCache } from '../sheets/measuring/measureCache';
import type { Workbook } from '../workbook';
import { WorkbookContext } from '../workbook/useWorkbook';
import { ErrorBoundary } from './ErrorBoundary';
import { NewVersionNote } from './NewVersionNote';
import { ProjectPage } from './project/ProjectPage';
import { ProjectsPage } from './projects/ProjectsPage';
import { useRoute } from './route';
import { saveTextFile } from './saveTextFile';

export function App({ workbook }: { readonly workbook: Workbook }) {
  const route = useRoute();
  const [cache] = useState(createMeasureCache);
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
          <ProjectsPage />
        ) : (
          <ProjectPage
            key={route.projectId}
            projectId={route.projectId}
            stepId={route.stepId}
            cache={cache}
          />
        )}
      </ErrorBoundary>
    </WorkbookContext>
  );
}
