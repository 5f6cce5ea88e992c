/** Inputs of the kinds of sealer and release, and of the limits on their sheets. */
import { releaseCards, sealerCards, type CoatCard } from '../../core/stone/coatCards';
import type { ChoiceSpec, NumberSpec } from '../inputSpec';

const kinds = (cards: Readonly<Record<string, CoatCard>>) => [
  { value: 'not said', label: 'not said' },
  ...Object.entries(cards).map(([value, { name }]) => ({ value, label: name })),
];

export const sealerSpec: ChoiceSpec = {
  kind: 'choice',
  label: 'Sealer',
  unit: '',
  meaning: 'Its kind tells what heat it bears, which the oven program is held against.',
  default: 'not said',
  choices: kinds(sealerCards),
};
export const releaseSpec: ChoiceSpec = {
  kind: 'choice',
  label: 'Release',
  unit: '',
  meaning: 'Its kind tells what heat it bears, which the oven program is held against.',
  default: 'not said',
  choices: kinds(releaseCards),
};

const limit = (what: string): NumberSpec => ({
  kind: 'number',
  label: `${what} bears, from its sheet`,
  unit: '°C',
  meaning: 'Highest temperature on the supplier’s sheet; replaces what is usual for the kind.',
  default: 120,
  min: 20,
  max: 400,
  decimals: 0,
});

/** What the supplier's sheets say; null where what is usual for the kind stands. Paths are `mold.coatSheet.<field>`. */
export const coatSheetSpecs = {
  sealerLimitC: limit('Sealer'),
  releaseLimitC: limit('Release'),
} as const satisfies Record<string, NumberSpec>;
