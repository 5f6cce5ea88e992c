/** Input specs of the maker's own cure kinetics and glass transition; nothing is given in advance. */
import { choice, optional } from '../kit/inputTable';

export const kineticsForm = choice('Kinetics of this resin', 'none', {
  meaning:
    'A rate law fitted to this very resin gives degree of cure and Tg. Sets of other resins are far off, so none is built in; without one the dose judges.',
  choices: {
    none: 'none: the dose judges',
    autocatalytic: '(K1 + K2 αᵐ)(1 − α)ⁿ',
    'diffusion-limited': 'K2 αᵐ(1 − α)ⁿ, slowed by diffusion',
    'two-term diffusion-limited': 'K1 αᵐ¹(1 − α)ⁿ¹ + K2 αᵐ(1 − α)ⁿ, the second slowed by diffusion',
  },
});

/** Paths `cure.kinetics.<field>`. */
export const kineticsTable = {
  k1PerS: optional('A1', '1/s', 0, [0, 1e30, 4], {
    meaning: 'Factor of K1 = A1 exp(−E1/RT); per second, not per minute. Left empty: no K1.',
  }),
  k1EnergyKJPerMol: optional('E1', 'kJ/mol', 0, [0, 500, 2], { meaning: 'Energy of K1.' }),
  k1M: optional('m1', '', 0, [0, 5, 4], {
    meaning: 'Exponent of the cured share beside K1; with the two-term form.',
  }),
  k1N: optional('n1', '', 0, [0, 50, 3], {
    meaning: 'Exponent of the uncured share beside K1; with the two-term form.',
  }),
  k2PerS: optional('A2', '1/s', 0, [0, 1e30, 4], { meaning: 'Factor of K2 = A2 exp(−E2/RT); per second.' }),
  k2EnergyKJPerMol: optional('E2', 'kJ/mol', 0, [0, 500, 2], { meaning: 'Energy of K2.' }),
  m: optional('m', '', 0, [0, 5, 4], { meaning: 'Exponent of the cured share.' }),
  n: optional('n', '', 0, [0, 5, 3], { meaning: 'Exponent of the uncured share.' }),
  sharpness: optional('C', '', 0, [0, 200, 2], {
    meaning:
      'How sharply diffusion slows the cure: K2’s term is divided by 1 + exp[C (α − αC0 − αCT T)], T in K.',
  }),
  criticalCure: optional('αC0', '', 0, [-10, 10, 4], { meaning: 'Critical degree of cure at 0 K.' }),
  criticalCurePerK: optional('αCT', '1/K', 0, [-0.1, 0.1, 6], {
    meaning: 'Rise of the critical degree of cure per kelvin.',
  }),
  startCure: optional('α at the start', '', 0, [0, 0.99, 4], {
    meaning:
      'Degree of cure when the oven starts; a law that feeds on cured resin needs a little. Left empty: 0.',
  }),
  heatJPerG: optional('Heat of reaction', 'J/g', 0, [0, 4999, 0], {
    meaning: 'Of the full cure, per gram of resin. Left empty: no heat.',
  }),
  tgUncuredC: optional('Tg uncured', '°C', 0, [-100, 300, 1], {
    meaning: 'Of the fresh resin, for DiBenedetto.',
  }),
  tgCuredC: optional('Tg fully cured', '°C', 0, [-50, 400, 1], {
    meaning: 'Of the fully cured resin, for DiBenedetto.',
  }),
  lambda: optional('λ', '', 0, [0.01, 1, 3], { meaning: 'DiBenedetto λ, between 0 and 1.' }),
};

export type KineticsForm = (typeof kineticsForm)['default'];
export type KineticsField = keyof typeof kineticsTable;

const ofK1 = ['k1PerS', 'k1EnergyKJPerMol'] as const;
const ofK2 = ['k2PerS', 'k2EnergyKJPerMol', 'm', 'n'] as const;
const ofDiffusion = ['sharpness', 'criticalCure', 'criticalCurePerK'] as const;
const ofAll = ['startCure', 'heatJPerG', 'tgUncuredC', 'tgCuredC', 'lambda'] as const;

/** What each form asks for, in the order in which it is asked. */
export const kineticsFields: Readonly<Record<KineticsForm, readonly KineticsField[]>> = {
  none: [],
  autocatalytic: [...ofK1, ...ofK2, ...ofAll],
  'diffusion-limited': [...ofK2, ...ofDiffusion, ...ofAll],
  'two-term diffusion-limited': [...ofK1, 'k1M', 'k1N', ...ofK2, ...ofDiffusion, ...ofAll],
};
