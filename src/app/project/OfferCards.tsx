import { useState } from 'react';
import { Button } from '../../ui/Button';
import { Note } from '../../ui/Note';
import type { Project } from '../../workbook';
import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';
import { copiesInUse } from '../../workbook/cardPicks';
import { cameFromFile, forgetItCameFromFile } from '../givenFile';

/** A project file carries the cards that it was worked out with: they are offered to the shelf when it was opened. */
export function OfferCards({ project }: { readonly project: Project }) {
  const workbook = useWorkbook();
  const shelf = useWorkbookState((state) => state.shelf);
  const [offers, setOffers] = useState(() => cameFromFile(project.id));
  const [refusal, setRefusal] = useState<string | null>(null);
  const missing = copiesInUse(project).filter(
    ({ cardId }, at, all) =>
      !shelf.some(({ id }) => id === cardId) && all.findIndex((copy) => copy.cardId === cardId) === at,
  );
  if (!offers || missing.length === 0) return null;
  const end = () => {
    forgetItCameFromFile(project.id);
    setOffers(false);
  };
  const putAll = async () => {
    for (const copy of missing) {
      const outcome = await workbook.shelf.putCopyOnShelf(copy);
      if (!outcome.done) {
        setRefusal(outcome.reason);
        return;
      }
    }
    end();
  };
  return (
    <>
      <Note>
        This file brings {missing.length === 1 ? 'a card' : `${missing.length} cards`} that your shelf does
        not have: {missing.map(({ name }) => name).join(', ')}.{' '}
        <Button onClick={() => void putAll()}>Put on my shelf</Button> <Button onClick={end}>Not now</Button>
      </Note>
      {refusal === null ? null : <Note problem>{refusal}</Note>}
    </>
  );
}
