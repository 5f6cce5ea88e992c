import { Button } from '../../ui/Button';
import type { ListedProject } from '../../workbook';
import type { ShelfCard } from '../../workbook/shelfCards';
import { CardForm, type CardFormProps } from './CardForm';
import { outLifeWords, RollLog, type RollLogProps } from './RollLog';
import { dayOf, originCounts } from './shelfWords';

export interface ShelfCardLineProps extends CardFormProps {
  readonly card: ShelfCard;
  readonly open: boolean;
  readonly projects: readonly ListedProject[];
  readonly onOpen: () => void;
  readonly onDelete: () => void;
  readonly onLog: RollLogProps['onLog'];
  readonly onRemoveSession: RollLogProps['onRemove'];
}

/** One card of the shelf: what it tells in a line, and its fields when it is opened. */
export function ShelfCardLine(props: ShelfCardLineProps) {
  const { card, open, projects, onOpen, onChange, onDelete, onLog, onRemoveSession } = props;
  return (
    <li aria-label={card.name}>
      <div className="project-line">
        <div>
          <strong>{card.name}</strong>
          <span className="row-note">
            {originCounts(card.values)} · changed {dayOf(card.changedAt)}
            {card.kind === 'roll' ? ` · ${outLifeWords(card)}` : ''}
            {card.note === '' ? '' : ` · ${card.note}`}
          </span>
        </div>
        <div className="button-row">
          <Button
            aria-expanded={open}
            aria-label={`${open ? 'Close' : 'Edit'} ${card.name}`}
            onClick={onOpen}
          >
            {open ? 'Close' : 'Edit'}
          </Button>
          <Button kind="danger" aria-label={`Delete ${card.name}`} onClick={onDelete}>
            Delete
          </Button>
        </div>
      </div>
      {open ? (
        <>
          <CardForm card={card} onChange={onChange} />
          {card.kind === 'roll' ? (
            <RollLog card={card} projects={projects} onLog={onLog} onRemove={onRemoveSession} />
          ) : null}
        </>
      ) : null}
    </li>
  );
}
