/**
 * Kinetics of four aerospace and out-of-autoclave epoxy prepregs and of one invented resin: for tests and for learning what
 * such a law does. None of them describes a prepreg that cures at 70 to 120 °C, so none may stand in for the user's own fit.
 * Parameters of the four from memory; the papers are named in `full`.
 */
import type { CureKinetics, RateConstant } from './kinetics';

export interface KineticsForLearning {
  readonly letter: 'A' | 'B' | 'C' | 'D' | 'E';
  readonly short: string;
  readonly full: string;
  readonly kinetics: CureKinetics;
}

const k = (perS: number, energyJPerMol: number): RateConstant => ({ perS, energyJPerMol });

export const kineticsForLearning: readonly KineticsForLearning[] = [
  {
    letter: 'A',
    short: 'amine-cured epoxy prepreg, a 177 °C system',
    full: 'Lee, Loos and Springer, J. Compos. Mater. 16 (1982) 510; parameters from memory.',
    kinetics: {
      law: {
        form: 'two-stage',
        k1: k(2.101e9 / 60, 8.07e4),
        k2: k(-2.014e9 / 60, 7.78e4),
        k3: k(1.96e5 / 60, 5.66e4),
        b: 0.47,
        changeAt: 0.3,
      },
      startCure: 0,
      heatJPerG: 474,
    },
  },
  {
    letter: 'B',
    short: 'toughened aerospace epoxy prepreg',
    full: 'Form of Hubert et al. 2001, parameters of Van Ee and Poursartip 2009, from memory.',
    kinetics: {
      law: {
        form: 'diffusion-limited',
        terms: [{ k: k(1.528e5, 6.65e4), m: 0.8129, n: 2.736, limited: true }],
        sharpness: 43.09,
        criticalCure: -1.684,
        criticalCurePerK: 5.475e-3,
      },
      startCure: 0.01,
      heatJPerG: 0,
    },
  },
  {
    letter: 'C',
    short: 'out-of-autoclave epoxy prepreg, first cures 80 to 130 °C, then 180 °C',
    full: 'Kratz et al., J. Compos. Mater. 47 (2013) 341; parameters from memory.',
    kinetics: {
      law: {
        form: 'diffusion-limited',
        terms: [
          { k: k(2.53e4, 60_628), m: 0.55, n: 21.11, limited: false },
          { k: k(4.84e4, 61_752), m: 0.8, n: 1.18, limited: true },
        ],
        sharpness: 44.3,
        criticalCure: -1.4,
        criticalCurePerK: 5.33e-3,
      },
      startCure: 0.01,
      heatJPerG: 0,
    },
  },
  {
    letter: 'D',
    short: 'second out-of-autoclave epoxy prepreg, 93 to 121 °C, then 177 °C',
    full: 'Kratz et al., J. Compos. Mater. 47 (2013) 341; parameters from memory.',
    kinetics: {
      law: {
        form: 'diffusion-limited',
        terms: [
          { k: k(8.23e7, 82_375), m: 0.75, n: 12.46, limited: false },
          { k: k(1.04e5, 62_355), m: 0.9, n: 2.07, limited: true },
        ],
        sharpness: 40.4,
        criticalCure: -1.12,
        criticalCurePerK: 4.53e-3,
      },
      startCure: 0.01,
      heatJPerG: 0,
    },
  },
  {
    letter: 'E',
    short: 'invented resin, not a material',
    full: 'Synthetic set for numerical tests; it describes no resin.',
    kinetics: {
      law: { form: 'autocatalytic', k1: k(4e4, 7e4), k2: k(8e6, 7e4), m: 1, n: 1.5 },
      startCure: 0,
      heatJPerG: 0,
    },
  },
];
