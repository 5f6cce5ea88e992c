import type { ReactNode } from 'react';
import type { SaveState } from '../workbook';
import { Note } from '../ui/Note';
import { projectsHref } from './route';

const notes: Record<SaveState, ReactNode> = {
  saved: null,
  saving: null,
  readOnly: (
    <Note>
      Another tab has this project open for editing. This page follows it and its inputs are off. Close the
      project there to edit it here.
    </Note>
  ),
  full: (
    <Note problem>
      The browser’s storage is full: your last changes are only in this tab. Nothing saved earlier is lost.
      Save the project file now, then make room under <a href={projectsHref}>All projects</a>.
    </Note>
  ),
  denied: (
    <Note problem>
      The browser gives this page no storage (a private window, or site data is blocked), so everything is
      gone when this tab closes. Save the project file before you leave.
    </Note>
  ),
};

/** Why changes are not being saved, or why they can't be made; nothing while all is well. */
export function SaveNote({ saveState }: { readonly saveState: SaveState }) {
  return notes[saveState];
}
