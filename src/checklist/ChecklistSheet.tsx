import { Button } from '../ui/Button';
import { CardSection } from './CardSection';
import { PhaseSection, type OnRecord } from './PhaseSection';
import type { ChecklistModel } from './model';

export interface ChecklistSheetProps {
  readonly model: ChecklistModel;
  /** Another tab holds the project. */
  readonly readOnly: boolean;
  readonly onRecord: OnRecord;
  readonly onPrint: () => void;
  readonly onSaveRecord: () => void;
}

/** The card and the phases that are carried to the bench; on screen and on paper they are the same. */
export function ChecklistSheet({ model, readOnly, onRecord, onPrint, onSaveRecord }: ChecklistSheetProps) {
  const { title, incomplete, card, phases } = model;
  return (
    <article className="sheet checklist">
      <header className="check-head screen-only">
        <div>
          <h1 tabIndex={-1}>Checklist</h1>
          <p className="quiet">What do I do, in which order, with which numbers?</p>
        </div>
        <div className="button-row">
          <Button onClick={onSaveRecord}>Save the full record</Button>
          <Button kind="main" onClick={onPrint}>
            Print
          </Button>
        </div>
      </header>
      {incomplete.length > 0 ? (
        <p className="check-incomplete">
          <strong>Incomplete.</strong> Do not work from this sheet. {incomplete.join(' ')}
        </p>
      ) : null}
      <CardSection card={card} title={title} />
      {phases.map((phase) => (
        <PhaseSection key={phase.id} phase={phase} disabled={readOnly} onRecord={onRecord} />
      ))}
    </article>
  );
}
