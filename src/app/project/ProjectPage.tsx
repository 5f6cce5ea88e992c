import { useEffect, useState } from 'react';
import type { AnswerShelf } from '../../pipeline/answerShelf';
import { benchPages } from '../../sheets/bench/benchPages';
import { decisionPage } from '../../sheets/decision/decisionPage';
import { steps } from '../../steps/registry';
import { Note } from '../../ui/Note';
import { useProject, useWorkbook } from '../../workbook/useWorkbook';
import { projectsHref } from '../route';
import { WorkbookNotes } from '../WorkbookNotes';
import { OpenProject } from './OpenProject';

export interface ProjectPageProps {
  readonly projectId: string;
  readonly stepId: string | null;
  readonly shelf: AnswerShelf;
}

/** Opens a project for as long as the page is shown. Mount it with the project's id as key. */
export function ProjectPage({ projectId, stepId, shelf }: ProjectPageProps) {
  const workbook = useWorkbook();
  const project = useProject();
  const [refusal, setRefusal] = useState<string | null>(null);
  // As it was opened: whoever imports on the Part sheet stays there.
  const [openedWithPattern, setOpenedWithPattern] = useState<boolean | null>(null);
  if (project?.id === projectId && openedWithPattern === null) setOpenedWithPattern(project.pattern !== null);

  useEffect(() => {
    let shown = true;
    void workbook.openProject(projectId).then((outcome) => {
      if (shown && !outcome.done) setRefusal(outcome.reason);
    });
    return () => {
      shown = false;
      workbook.closeProject();
    };
  }, [workbook, projectId]);

  if (project?.id !== projectId) {
    return (
      <main className="page">
        <WorkbookNotes />
        {refusal === null ? (
          <p role="status">Opening the project…</p>
        ) : (
          <Note problem>
            {refusal} <a href={projectsHref}>All projects</a>
          </Note>
        )}
      </main>
    );
  }
  const known = [decisionPage, ...steps, ...benchPages].find(({ id }) => id === stepId);
  const landing = known?.id ?? (openedWithPattern ? decisionPage.id : steps[0]?.id);
  return landing === undefined ? null : <OpenProject project={project} stepId={landing} shelf={shelf} />;
}
