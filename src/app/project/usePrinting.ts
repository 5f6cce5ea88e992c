import { useEffect, useState } from 'react';

export interface PrintingFacts {
  /** Results are being worked out that the checklist shows. */
  readonly isUnderWay: boolean;
  /** Why a pattern file was not taken; who asked to print meant that file. */
  readonly importProblem: string | null;
  readonly isOnChecklist: boolean;
  readonly openChecklist: () => void;
}

export interface Printing {
  /** Asked for, and waiting for results. */
  readonly isWaiting: boolean;
  /** Prints the checklist once everything is worked out. */
  readonly print: () => void;
  /** Does not wait; the pages say that they are incomplete. */
  readonly printNow: () => void;
  readonly dontPrint: () => void;
}

type Wish = 'none' | 'when all is in' | 'now';

/** Printing of the checklist, which waits until all results are in. */
export function usePrinting(facts: PrintingFacts): Printing {
  const { isUnderWay, importProblem, isOnChecklist, openChecklist } = facts;
  const [wish, setWish] = useState<Wish>('none');
  // The old pattern's checklist is not what was asked for.
  const [problemBefore, setProblemBefore] = useState(importProblem);
  if (problemBefore !== importProblem) {
    setProblemBefore(importProblem);
    if (importProblem !== null) setWish('none');
  }

  const isDue = wish === 'now' || (wish === 'when all is in' && !isUnderWay);
  useEffect(() => {
    if (!isDue) return undefined;
    if (!isOnChecklist) {
      openChecklist();
      return undefined;
    }
    const printing = setTimeout(() => {
      setWish('none');
      window.print();
    });
    return () => clearTimeout(printing);
  }, [isDue, isOnChecklist, openChecklist]);

  return {
    isWaiting: wish === 'when all is in' && isUnderWay,
    print: () => {
      setWish('when all is in');
      openChecklist();
    },
    printNow: () => setWish('now'),
    dontPrint: () => setWish('none'),
  };
}
