/** Inputs of the kinds of sealer and release, and of the limits on their sheets. */
import { releaseCards, sealerCards, type CoatCard } from '../../core/stone/coatCards';
import { choice, optional } from '../kit/inputTable';

function kinds<Kind extends string>(cards: Readonly<Record<Kind, CoatCard>>) {
  const names = Object.entries<CoatCard>(cards).map(([kind, { name }]) => [kind, name]);
  return { 'not said': 'not said', ...Object.fromEntries(names) } as Readonly<
    Record<Kind | 'not said', string>
  >;
}

export const sealer = choice('Sealer', 'not said', {
  meaning: 'Its kind tells what heat it bears, which the oven program is held against.',
  choices: kinds(sealerCards),
});
export const release = choice('Release', 'not said', {
  meaning: 'Its kind tells what heat it bears, which the oven program is held against.',
  choices: kinds(releaseCards),
});

const limit = (what: string) =>
  optional(`${what} bears, from its sheet`, '°C', 120, [20, 400, 0], {
    meaning: 'Highest temperature on the supplier’s sheet; replaces what is usual for the kind.',
  });

/** What the supplier's sheets say; null where what is usual for the kind stands. Paths are `mold.coatSheet.<field>`. */
export const coatSheetTable = {
  sealerLimitC: limit('Sealer'),
  releaseLimitC: limit('Release'),
};
