import { useState } from 'react';
import type { Material } from '../../steps/inputs/material';
import type { Outcome } from '../../workbook';
import { useWorkbook, useWorkbookState } from '../../workbook/useWorkbook';

/** The cards that all projects share, and what the last action on them came to. */
export function useMaterialLibrary() {
  const workbook = useWorkbook();
  const cards = useWorkbookState((state) => state.materialLibrary);
  const [told, setTold] = useState<{ readonly problem: boolean; readonly text: string } | null>(null);
  const tell = (outcome: Outcome, text: string) =>
    setTold(outcome.done ? { problem: false, text } : { problem: true, text: outcome.reason });
  return {
    cards,
    told,
    save: (card: Material) =>
      tell(workbook.saveMaterial(card), `${card.name} is in the library of all projects.`),
    forget: (name: string) =>
      tell(workbook.forgetMaterial(name), `${name} is out of the library; cards in projects stay.`),
  };
}
