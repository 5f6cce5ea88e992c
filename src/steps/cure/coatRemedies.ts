/** Kinds of sealer and release that bear more heat than those on the stone. */
import { releaseCards, sealerCards, type CoatCard } from '../../core/stone/coatCards';
import type { InputPatch } from '../shared/patch';
import { processOf } from '../shared/process';
import { changeCosts, type Remedy, type RemedyFacts } from '../shared/remedy';
import { coatsInUse, type CoatInUse } from '../mold/coatInUse';

const cardsOf: Readonly<Record<CoatInUse['what'], Readonly<Record<string, CoatCard>>>> = {
  sealer: sealerCards,
  release: releaseCards,
};

/** All coats that do not bear the oven, changed at once: one that stays would hold the pour up as before. */
export function coatsForHeat({ context: { inputs } }: RemedyFacts): readonly Remedy[] {
  const { hottestAirC } = processOf(inputs);
  if (hottestAirC === null) return [];
  const better = coatsInUse(inputs.mold).flatMap(({ what, bearsC, status }) => {
    // A limit that was read off a can is a fact about that can.
    if (bearsC === null || status === 'your entry' || hottestAirC <= bearsC[0]) return [];
    const [best] = Object.entries(cardsOf[what])
      .filter(([, card]) => card.bearsC[0] > bearsC[0])
      .toSorted(([, one], [, other]) => other.bearsC[0] - one.bearsC[0]);
    return best === undefined ? [] : [{ what, kind: best[0], name: best[1].name }];
  });
  if (better.length === 0) return [];
  const words = better.map(({ what, name }) => `${name} as ${what}`).join(' and ');
  const patch: InputPatch = Object.fromEntries(better.map(({ what, kind }) => [`mold.${what}`, kind]));
  return [{ id: 'mold.coats', what: `Take ${words}.`, patch, cost: changeCosts.bench }];
}
