import type { ListedProject } from '../../workbook';
import { Button } from '../../ui/Button';

export interface DeletedListProps {
  /** The last one first. */
  readonly deleted: readonly ListedProject[];
  readonly onUndo: (id: string) => void;
  readonly onForget: (id: string) => void;
}

/** What was deleted in this tab, each with its way back. */
export function DeletedList({ deleted, onUndo, onForget }: DeletedListProps) {
  return (
    <div role="status">
      {deleted.map(({ id, enclosure, name }) => (
        <div key={id} className="undo-bar">
          <span>
            Deleted: {enclosure}, {name}.
          </span>
          <Button aria-label={`Undo deleting ${enclosure}, ${name}`} onClick={() => onUndo(id)}>
            Undo
          </Button>
          <Button aria-label={`Delete for good: ${enclosure}, ${name}`} onClick={() => onForget(id)}>
            Delete for good
          </Button>
        </div>
      ))}
    </div>
  );
}
