import { useEffect, useState } from 'react';
import { Announcer } from '../../ui/Announcer';
import { Button } from '../../ui/Button';
import { FilePick } from '../../ui/FilePick';
import { Note } from '../../ui/Note';
import type { Outcome } from '../../workbook';
import { cardKinds, kindsOfCards, type CardKind } from '../../workbook/shelfKinds';
import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';
import { projectsHref } from '../route';
import { saveTextFile } from '../saveTextFile';
import { ThemeToggle } from '../ThemeToggle';
import { WorkbookNotes } from '../WorkbookNotes';
import { ShelfCardLine } from './ShelfCardLine';
import { kindWords } from './shelfWords';
import './shelf.css';

/** What belongs to the shop: its cards by kind, over all projects. */
export function ShelfPage() {
  const workbook = useWorkbook();
  const { shelf } = workbook;
  const cards = useWorkbookState((state) => state.shelf);
  const projects = useWorkbookState((state) => state.projects);
  const [openId, setOpenId] = useState<string | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [said, setSaid] = useState('');
  useEffect(() => {
    document.title = 'My shelf · Mold & Layup Workbook';
  }, []);

  const told = async (asked: Promise<Outcome>, done = '') => {
    const outcome = await asked;
    setRefusal(outcome.done ? null : outcome.reason);
    setSaid(outcome.done ? done : '');
  };
  const add = async (kind: CardKind) => {
    const outcome = await shelf.addCard({ kind, name: `New ${kindWords[kind].one}` });
    void told(Promise.resolve(outcome));
    if (outcome.done) setOpenId(outcome.card.id);
  };
  const exportShelf = () => {
    const outcome = shelf.exportShelf();
    setRefusal(outcome.done ? null : outcome.reason);
    if (outcome.done) saveTextFile(outcome.file);
  };
  const importShelf = async (file: File) => {
    const outcome = await shelf.importShelf(await file.text());
    const words = outcome.done ? `${outcome.added} ${outcome.added === 1 ? 'card' : 'cards'} added.` : '';
    void told(Promise.resolve(outcome), words);
  };

  return (
    <main className="page projects-page shelf-page">
      <ShelfHead
        isEmpty={cards.length === 0}
        onExport={exportShelf}
        onImport={(file) => void importShelf(file)}
      />
      <WorkbookNotes />
      {refusal === null ? null : <Note problem>{refusal}</Note>}
      {said === '' ? null : <Note>{said}</Note>}
      <Announcer message={said} />
      <DeletedCards onUndo={(id, name) => void told(shelf.undeleteCard(id), `${name} is back.`)} />
      {cardKinds.map((kind) => (
        <section key={kind} aria-label={kindsOfCards[kind].title}>
          <div className="shelf-head">
            <h2>{kindsOfCards[kind].title}</h2>
            <Button onClick={() => void add(kind)}>Add {kindWords[kind].one}</Button>
          </div>
          <ul className="project-list">
            {cards
              .filter((card) => card.kind === kind)
              .map((card) => (
                <ShelfCardLine
                  key={card.id}
                  card={card}
                  open={openId === card.id}
                  projects={projects}
                  onOpen={() => setOpenId(openId === card.id ? null : card.id)}
                  onChange={(recipe) => void told(shelf.changeCard(card.id, recipe))}
                  onDelete={() => void told(shelf.deleteCard(card.id))}
                  onLog={(hoursH, project) => void told(shelf.logHours(card.id, hoursH, project))}
                  onRemoveSession={(id) => void told(shelf.removeSession(card.id, id))}
                />
              ))}
          </ul>
        </section>
      ))}
    </main>
  );
}

interface ShelfHeadProps {
  readonly isEmpty: boolean;
  readonly onExport: () => void;
  readonly onImport: (file: File) => void;
}

function ShelfHead({ isEmpty, onExport, onImport }: ShelfHeadProps) {
  return (
    <header className="page-head">
      <div>
        <h1>My shelf</h1>
        <p className="quiet">
          What the shop has, entered once. A project keeps what it took from a card as it was then.
        </p>
      </div>
      <div className="button-row">
        <a href={projectsHref}>All projects</a>
        <ThemeToggle />
        <FilePick accept=".json,application/json" inputLabel="Shelf file" onFile={onImport}>
          Add from a shelf file
        </FilePick>
        <Button disabled={isEmpty} onClick={onExport}>
          Save the shelf as a file
        </Button>
      </div>
    </header>
  );
}

/** What was deleted in this tab, each with its way back. */
function DeletedCards({ onUndo }: { readonly onUndo: (id: string, name: string) => void }) {
  const deleted = useWorkbookState((state) => state.deletedCards);
  return (
    <div role="status">
      {deleted.map(({ id, name }) => (
        <div key={id} className="undo-bar">
          <span>Deleted: {name}.</span>
          <Button aria-label={`Undo deleting ${name}`} onClick={() => onUndo(id, name)}>
            Undo
          </Button>
        </div>
      ))}
    </div>
  );
}
