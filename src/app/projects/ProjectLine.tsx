import type { ListedProject } from '../../workbook';
import { Button } from '../../ui/Button';
import type { LineName } from './lineNames';
import { projectHref } from '../route';
import { sizeText } from './storageWords';

export interface ProjectLineProps {
  readonly project: ListedProject;
  readonly called: LineName | undefined;
  /** Record and mesh together, UTF-16 units. */
  readonly units: number;
  readonly onRename: () => void;
  readonly onDuplicate: () => void;
  readonly onSaveFile: () => void;
  readonly onDelete: () => void;
}

const conditionWords = {
  newer: 'saved by a newer version of this workbook; it opens there',
  damaged: 'its saved data is damaged; the bytes are kept',
} as const;

const timeText = (at: string): string =>
  new Date(at).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** One project of the list with what can be done to it. */
export function ProjectLine({
  project,
  called,
  units,
  onRename,
  onDuplicate,
  onSaveFile,
  onDelete,
}: ProjectLineProps) {
  const { condition } = project;
  const name = called?.name ?? project.name;
  const usable = condition === 'ok';
  return (
    <li className="project-line">
      <div>
        {usable ? (
          <a className="project-link" href={projectHref(project.id)}>
            {name}
          </a>
        ) : (
          <strong>{name}</strong>
        )}
        <span className="row-note">
          {usable ? `changed ${timeText(project.changedAt)}` : conditionWords[condition]}
          {called?.isShared && project.createdAt !== ''
            ? ` · made ${timeText(project.createdAt)}`
            : ''} · {sizeText(units)}
        </span>
      </div>
      <div className="button-row">
        {usable ? (
          <>
            <Button aria-label={`Rename ${name}`} onClick={onRename}>
              Rename
            </Button>
            <Button aria-label={`Duplicate ${name}`} onClick={onDuplicate}>
              Duplicate
            </Button>
            <Button aria-label={`Save ${name} as a file`} onClick={onSaveFile}>
              Save file
            </Button>
          </>
        ) : null}
        <Button kind="danger" aria-label={`Delete ${name}`} onClick={onDelete}>
          Delete
        </Button>
      </div>
    </li>
  );
}
