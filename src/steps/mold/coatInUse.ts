/** Sealer and release in use: the kind that the maker chose, the limit of its can where it is given. */
import type { FigureStatus } from '../../core/figure';
import { releaseCards, sealerCards, type CoatCard } from '../../core/stone/coatCards';
import type { MoldInputs } from '../inputs/mold';

export interface CoatInUse {
  /** "sealer" or "release". */
  readonly what: 'sealer' | 'release';
  readonly name: string;
  /** null while neither kind nor limit is told. */
  readonly bearsC: readonly [number, number] | null;
  readonly fails: string;
  readonly status: FigureStatus;
}

function coatOf(what: CoatInUse['what'], card: CoatCard | null, ownLimitC: number | null): CoatInUse {
  const name = card?.name ?? what;
  if (ownLimitC !== null)
    return {
      what,
      name,
      bearsC: [ownLimitC, ownLimitC],
      fails: card?.fails ?? 'fails',
      status: 'your entry',
    };
  return { what, name, bearsC: card?.bearsC ?? null, fails: card?.fails ?? '', status: 'from memory' };
}

/** The coats that are laid on, sealer first; one with no coats is left out. */
export function coatsInUse({
  sealer,
  release,
  sealerCoats,
  releaseCoats,
  coatSheet,
}: MoldInputs): readonly CoatInUse[] {
  return [
    ...(sealerCoats > 0
      ? [coatOf('sealer', sealer === 'not said' ? null : sealerCards[sealer], coatSheet.sealerLimitC)]
      : []),
    ...(releaseCoats > 0
      ? [coatOf('release', release === 'not said' ? null : releaseCards[release], coatSheet.releaseLimitC)]
      : []),
  ];
}
