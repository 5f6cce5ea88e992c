import { useEffect, useState } from 'react';
import { Announcer } from '../../ui/Announcer';
import { Button } from '../../ui/Button';
import { FilePick } from '../../ui/FilePick';
import { Note } from '../../ui/Note';
import type { ListedProject, Outcome, Usage } from '../../workbook';
import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';
import { givenFileKinds, openGivenFile } from '../givenFile';
import { goTo, projectHref, shelfHref } from '../route';
import { SaveNote } from '../SaveNote';
import { saveTextFile } from '../saveTextFile';
import { ThemeToggle } from '../ThemeToggle';
import { WorkbookNotes } from '../WorkbookNotes';
import { DeletedList } from './DeletedList';
import { KeptAsideList } from './KeptAsideList';
import { lineNames } from './lineNames';
import { NamesDialog } from './NamesDialog';
import { ProjectLine } from './ProjectLine';
import { StorageUse } from './StorageUse';

type Asking = { readonly what: 'create' } | { readonly what: 'rename'; readonly project: ListedProject };

/** Projects under the name of their enclosure, both in order of their names, and what their lines are called. */
function byEnclosure(projects: readonly ListedProject[]) {
  const groups = new Map<string, ListedProject[]>();
  const sorted = [...projects].sort((a, b) => a.name.localeCompare(b.name));
  for (const project of sorted)
    groups.set(project.enclosure, [...(groups.get(project.enclosure) ?? []), project]);
  return [...groups]
    .sort(([a], [b]) => a.localeCompare(b))
    .map(([enclosure, group]) => [enclosure, lineNames(group), group] as const);
}

/** Record and meshes of one project, UTF-16 units; halves that share a mesh each count it. */
function unitsOf({ id: projectId, meshKey, importKey }: ListedProject, usage: Usage): number {
  const record = usage.projects.find(({ id }) => id === projectId)?.units ?? 0;
  const own = usage.meshes.filter((mesh) => mesh.meshKey === meshKey || mesh.meshKey === importKey);
  return own.reduce((sum, { units }) => sum + units, record);
}

/** The list of projects, one per enclosure part. */
export function ProjectsPage({ starting = false }: { readonly starting?: boolean }) {
  const workbook = useWorkbook();
  const projects = useWorkbookState((state) => state.projects);
  const deleted = useWorkbookState((state) => state.deleted);
  const saveState = useWorkbookState((state) => state.saveState);
  const [asking, setAsking] = useState<Asking | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [said, setSaid] = useState('');
  const usage = workbook.usage();
  useEffect(() => {
    document.title = 'Mold & Layup Workbook';
  }, []);

  /** Shows why an action was refused; true when it was done. */
  const told = (outcome: Outcome, done = ''): boolean => {
    setRefusal(outcome.done ? null : outcome.reason);
    setSaid(outcome.done ? done : '');
    return outcome.done;
  };
  const openFile = async (file: File) => {
    const outcome = await openGivenFile(workbook, file);
    told(outcome, 'The file was opened.');
    if (outcome.done) goTo(projectHref(outcome.id));
  };
  const saveFile = (id: string) => {
    const outcome = workbook.exportProjectFile(id);
    told(outcome);
    if (outcome.done) saveTextFile(outcome.file);
  };

  return (
    <main className="page projects-page">
      <header className="page-head">
        <div>
          <h1>Mold &amp; Layup Workbook</h1>
          <p className="quiet">Will this mold and layup work? One project per enclosure part.</p>
        </div>
        <div className="button-row">
          <a href={shelfHref}>My shelf</a>
          <ThemeToggle />
          <FilePick accept={givenFileKinds} inputLabel="Project file" onFile={(file) => void openFile(file)}>
            Open project file
          </FilePick>
          <Button kind="main" onClick={() => setAsking({ what: 'create' })}>
            New project
          </Button>
        </div>
      </header>
      <WorkbookNotes />
      <SaveNote saveState={saveState} />
      {refusal ? <Note problem>{refusal}</Note> : null}
      <Announcer message={said} />
      <DeletedList
        deleted={deleted}
        onUndo={(id) => told(workbook.undeleteProject(id), 'The project is back.')}
        onForget={(id) => workbook.forgetDeleted(id)}
      />
      {projects.length === 0 ? (
        <p role="status">
          {starting
            ? 'Making the demo project…'
            : 'No project yet. Make a new one, open a project file, or put the demo in.'}
        </p>
      ) : null}
      {byEnclosure(projects).map(([enclosure, names, group]) => (
        <section key={enclosure} aria-label={enclosure}>
          <h2>{enclosure}</h2>
          <ul className="project-list">
            {group.map((project) => (
              <ProjectLine
                key={project.id}
                project={project}
                called={names.get(project.id)}
                units={unitsOf(project, usage)}
                onRename={() => setAsking({ what: 'rename', project })}
                onDuplicate={() =>
                  told(workbook.duplicateProject(project.id), `${project.name} was duplicated.`)
                }
                onSaveFile={() => saveFile(project.id)}
                onDelete={() => void workbook.deleteProject(project.id).then((outcome) => told(outcome))}
              />
            ))}
          </ul>
        </section>
      ))}
      <div className="button-row">
        <Button
          onClick={() => void workbook.restoreDemo().then((outcome) => told(outcome, 'The demo is back.'))}
        >
          Put the demo back
        </Button>
      </div>
      <StorageUse usage={usage} full={saveState === 'full'} />
      <KeptAsideList />
      {asking ? (
        <NamesDialog
          title={asking.what === 'create' ? 'New project' : 'Rename project'}
          doLabel={asking.what === 'create' ? 'Create' : 'Rename'}
          initial={asking.what === 'create' ? { enclosure: '', name: '' } : asking.project}
          enclosures={[...new Set(projects.map((project) => project.enclosure))]}
          onClose={() => setAsking(null)}
          onDo={async ({ enclosure, name }) => {
            if (asking.what === 'rename') {
              const outcome = await workbook.renameProject(asking.project.id, { enclosure, name });
              if (!outcome.done) return outcome.reason;
              setAsking(null);
              return null;
            }
            const outcome = workbook.createProject({ enclosure, name });
            if (!outcome.done) return outcome.reason;
            goTo(projectHref(outcome.id));
            return null;
          }}
        />
      ) : null}
    </main>
  );
}
