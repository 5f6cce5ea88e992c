import { useId, useState } from 'react';
import { Button } from '../../ui/Button';
import { Disclosure } from '../../ui/Disclosure';
import { Note } from '../../ui/Note';
import type { Outcome, Project } from '../../workbook';
import { nameForCard, placesOf, valuesFrom, type CardPlace } from '../../workbook/cardPicks';
import { isChangedSince, type CardCopy, type ShelfCard } from '../../workbook/shelfCards';
import { kindsOfCards, type CardKind } from '../../workbook/shelfKinds';
import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';
import { shelfHref } from '../route';
import { dayOf, kindWords, originCounts } from '../shelf/shelfWords';
import '../shelf/shelf.css';
import { RollHours } from './RollHours';

export interface FromShelfProps {
  readonly project: Project;
  readonly kind: CardKind;
  readonly readOnly: boolean;
}

/** What of this project comes from cards of one kind: pick one, take its changes over, put what stands here on the shelf. */
export function FromShelf({ project, kind, readOnly }: FromShelfProps) {
  const workbook = useWorkbook();
  const shelf = useWorkbookState((state) => state.shelf);
  const cards = shelf.filter((card) => card.kind === kind);
  const [told, setTold] = useState<{ readonly problem: boolean; readonly text: string } | null>(null);
  const places = placesOf(project, kind);
  const { list } = kindsOfCards[kind];
  const { one } = kindWords[kind];
  const tell = (outcome: Outcome, text: string) =>
    setTold(outcome.done ? { problem: false, text } : { problem: true, text: outcome.reason });
  const copies = places.flatMap(({ copy }) => copy ?? []);

  const putOnShelf = async (place: CardPlace) => {
    const name = nameForCard(place, `${one}, ${project.enclosure}`.slice(0, 120));
    const outcome = await workbook.shelf.addCard({ kind, name, values: valuesFrom(project, kind, place) });
    if (!outcome.done) {
      tell(outcome, '');
      return;
    }
    const picked = workbook.pickCard(outcome.card, place.entryId);
    tell(picked, `${name} is on your shelf.`);
  };

  return (
    <Disclosure title={`From my shelf: ${one}`} remark={remarkOf(copies, cards.length)}>
      <CardPick
        cards={cards}
        doLabel={list === null ? 'Fill in from it' : 'Add to this project'}
        readOnly={readOnly}
        onPick={(card) =>
          tell(workbook.pickCard(card, null), `Filled from ${card.name}. Undo takes it back.`)
        }
      />
      {told === null ? null : <Note problem={told.problem}>{told.text}</Note>}
      <ul className="project-list">
        {places.map((place) => (
          <PlaceLine
            key={place.entryId ?? kind}
            place={place}
            called={place.name || (list === null ? `This project’s ${one}` : `${one} ${place.position + 1}`)}
            onShelf={cards.find(({ id }) => id === place.copy?.cardId) ?? null}
            readOnly={readOnly}
            onTakeOver={(card) =>
              tell(workbook.pickCard(card, place.entryId), `Taken over from ${card.name}.`)
            }
            onLog={(card, hoursH) =>
              void workbook.shelf
                .logHours(card.id, hoursH, `${project.enclosure}, ${project.name}`)
                .then((outcome) => tell(outcome, `Written down on the card of ${card.name}.`))
            }
            onPutNew={() => void putOnShelf(place)}
            onPutCopy={(copy) =>
              void workbook.shelf
                .putCopyOnShelf(copy)
                .then((outcome) => tell(outcome, `${copy.name} is on your shelf.`))
            }
          />
        ))}
      </ul>
    </Disclosure>
  );
}

function remarkOf(copies: readonly CardCopy[], onShelf: number): string {
  if (copies.length > 0) return copies.map(({ name }) => name).join(', ');
  return onShelf === 0 ? 'none' : `none picked, ${onShelf} on the shelf`;
}

interface CardPickProps {
  readonly cards: readonly ShelfCard[];
  readonly doLabel: string;
  readonly readOnly: boolean;
  readonly onPick: (card: ShelfCard) => void;
}

function CardPick({ cards, doLabel, readOnly, onPick }: CardPickProps) {
  const [chosenId, setChosenId] = useState('');
  const selectId = useId();
  const chosen = cards.find(({ id }) => id === chosenId) ?? cards[0];
  if (chosen === undefined)
    return (
      <p className="quiet">
        No card of this kind yet. <a href={shelfHref}>My shelf</a>
      </p>
    );
  return (
    <div className="shelf-pick">
      <label htmlFor={selectId}>Card</label>
      <select
        id={selectId}
        className="select"
        value={chosen.id}
        disabled={readOnly}
        onChange={(event) => setChosenId(event.target.value)}
      >
        {cards.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
      <Button disabled={readOnly} onClick={() => onPick(chosen)}>
        {doLabel}
      </Button>
      <span className="quiet">What it does not tell goes back to its ready-made value.</span>
    </div>
  );
}

interface PlaceLineProps {
  readonly place: CardPlace;
  readonly called: string;
  /** The card that its copy was taken of, when it is on the shelf. */
  readonly onShelf: ShelfCard | null;
  readonly readOnly: boolean;
  readonly onTakeOver: (card: ShelfCard) => void;
  readonly onLog: (card: ShelfCard, hoursH: number) => void;
  readonly onPutNew: () => void;
  readonly onPutCopy: (copy: CardCopy) => void;
}

function PlaceLine(props: PlaceLineProps) {
  const { place, called, onShelf, readOnly, onTakeOver, onLog, onPutNew, onPutCopy } = props;
  const { copy } = place;
  if (copy === null)
    return (
      <li className="project-line">
        <span>
          {called}
          <span className="row-note">as entered here, from no card</span>
        </span>
        <Button disabled={readOnly} aria-label={`Put on my shelf: ${called}`} onClick={onPutNew}>
          Put on my shelf
        </Button>
      </li>
    );
  const isChanged = onShelf !== null && isChangedSince(copy, onShelf);
  return (
    <li className="project-line">
      <span>
        {copy.name}
        <span className="row-note">
          taken {dayOf(copy.takenAt)}: {originCounts(copy.values)}
          {isChanged ? '. The card has changed since; this project keeps what it took.' : ''}
          {onShelf === null ? '. Its card is not on this shelf.' : ''}
        </span>
      </span>
      {isChanged ? (
        <Button
          disabled={readOnly}
          aria-label={`Card changed: take over ${onShelf.name}`}
          onClick={() => onTakeOver(onShelf)}
        >
          Card changed: take over
        </Button>
      ) : null}
      {onShelf === null ? (
        <Button aria-label={`Put on my shelf: ${copy.name}`} onClick={() => onPutCopy(copy)}>
          Put on my shelf
        </Button>
      ) : null}
      {onShelf?.kind === 'roll' ? (
        <RollHours rollName={onShelf.name} disabled={readOnly} onLog={(hoursH) => onLog(onShelf, hoursH)} />
      ) : null}
    </li>
  );
}
