/** Input specs of the maker's own cure kinetics and glass transition; nothing is given in advance. */
import type { ChoiceSpec, NumberSpec } from '../inputSpec';

export const kineticsFormSpec: ChoiceSpec = {
  kind: 'choice',
  label: 'Kinetics of this resin',
  unit: '',
  meaning:
    'A rate law fitted to this very resin gives degree of cure and Tg. Sets of other resins are far off, so none is built in; without one the dose judges.',
  default: 'none',
  choices: [
    { value: 'none', label: 'none: the dose judges' },
    { value: 'autocatalytic', label: '(K1 + K2 αᵐ)(1 − α)ⁿ' },
    { value: 'diffusion-limited', label: 'K2 αᵐ(1 − α)ⁿ, slowed by diffusion' },
    {
      value: 'two-term diffusion-limited',
      label: 'K1 αᵐ¹(1 − α)ⁿ¹ + K2 αᵐ(1 − α)ⁿ, the second slowed by diffusion',
    },
  ],
};

const number = (
  label: string,
  unit: string,
  meaning: string,
  [min, max, decimals]: readonly [number, number, number],
): NumberSpec => ({ kind: 'number', label, unit, meaning, default: 0, min, max, decimals });

/** Paths `cure.kinetics.<field>`. */
export const kineticsSpecs = {
  k1PerS: number(
    'A1',
    '1/s',
    'Factor of K1 = A1 exp(−E1/RT); per second, not per minute. Left empty: no K1.',
    [0, 1e30, 4],
  ),
  k1EnergyKJPerMol: number('E1', 'kJ/mol', 'Energy of K1.', [0, 500, 2]),
  k1M: number('m1', '', 'Exponent of the cured share beside K1; with the two-term form.', [0, 5, 4]),
  k1N: number('n1', '', 'Exponent of the uncured share beside K1; with the two-term form.', [0, 50, 3]),
  k2PerS: number('A2', '1/s', 'Factor of K2 = A2 exp(−E2/RT); per second.', [0, 1e30, 4]),
  k2EnergyKJPerMol: number('E2', 'kJ/mol', 'Energy of K2.', [0, 500, 2]),
  m: number('m', '', 'Exponent of the cured share.', [0, 5, 4]),
  n: number('n', '', 'Exponent of the uncured share.', [0, 5, 3]),
  sharpness: number(
    'C',
    '',
    'How sharply diffusion slows the cure: K2’s term is divided by 1 + exp[C (α − αC0 − αCT T)], T in K.',
    [0, 200, 2],
  ),
  criticalCure: number('αC0', '', 'Critical degree of cure at 0 K.', [-10, 10, 4]),
  criticalCurePerK: number('αCT', '1/K', 'Rise of the critical degree of cure per kelvin.', [-0.1, 0.1, 6]),
  startCure: number(
    'α at the start',
    '',
    'Degree of cure when the oven starts; a law that feeds on cured resin needs a little. Left empty: 0.',
    [0, 0.99, 4],
  ),
  heatJPerG: number(
    'Heat of reaction',
    'J/g',
    'Of the full cure, per gram of resin. Left empty: no heat.',
    [0, 4999, 0],
  ),
  tgUncuredC: number('Tg uncured', '°C', 'Of the fresh resin, for DiBenedetto.', [-100, 300, 1]),
  tgCuredC: number('Tg fully cured', '°C', 'Of the fully cured resin, for DiBenedetto.', [-50, 400, 1]),
  lambda: number('λ', '', 'DiBenedetto λ, between 0 and 1.', [0.01, 1, 3]),
} as const satisfies Record<string, NumberSpec>;

export type KineticsForm = 'none' | 'autocatalytic' | 'diffusion-limited' | 'two-term diffusion-limited';
export type KineticsField = keyof typeof kineticsSpecs;

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
