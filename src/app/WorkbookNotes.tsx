import { Button } from '../ui/Button';
import { Note } from '../ui/Note';
import { useWorkbook, useWorkbookState } from '../workbook/useWorkbook';

/** What happened to saved data, until it has been read. */
export function WorkbookNotes() {
  const workbook = useWorkbook();
  const notes = useWorkbookState((state) => state.notes);
  if (notes.length === 0) return null;
  return (
    <Note problem>
      {notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      <Button onClick={() => workbook.dismissNotes()}>I have read this</Button>
    </Note>
  );
}
