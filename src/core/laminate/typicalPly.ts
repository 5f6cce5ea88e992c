/**
 * Elastic constants for a card that has none measured: a typical standard-modulus carbon fiber in epoxy at the card's
 * fiber volume fraction. Fiber and resin constants are from memory (`materialsFromMemory` in core/sources), the bands
 * too, widened for woven plies to hold a published one (`wovenPly`); the relations are `halpinTsai` and `schapery`. Good for comparing stacks, not for a strength claim;
 * wrong for glass, aramid or high-modulus carbon.
 */
import { Problem } from '../problem';
import { effectiveModuli } from './effectiveModuli';
import { laminateOf } from './lamination';
import type { PlyElastic } from './plyElastic';
import { laminateExpansionPerK } from './thermalResponse';

export type Weave = 'woven' | 'unidirectional' | 'non-crimp';

type Band = readonly [number, number];

export interface TypicalPly {
  readonly elastic: PlyElastic;
  /** Through the thickness. */
  readonly expansion3PerK: number;
  /** Lowest and highest plausible value of each constant. */
  readonly bands: Readonly<Record<keyof PlyElastic | 'expansion3PerK', Band>>;
}

const fiber = {
  e1GPa: 230,
  e2GPa: 15,
  g12GPa: 24,
  nu12: 0.2,
  expansion1PerK: -0.5e-6,
  expansion2PerK: 10e-6,
};
const epoxy = { eGPa: 3.5, nu: 0.35, expansionPerK: 55e-6 };

/** Halpin-Tsai shape factor across and in shear. In shear 1 is usual; it comes out under the moduli remembered. */
const shapeFactor = 2;

/** Share of the straight fiber's stiffness that a woven ply keeps: its yarns run over and under. */
const crimpShare = { woven: 0.96, 'non-crimp': 1 } as const;

/** Through the thickness of a ply whose fibers cross, 1/K; from memory. */
const crossedThrough: { readonly valuePerK: number; readonly band: Band } = {
  valuePerK: 50e-6,
  band: [40e-6, 60e-6],
};

/**
 * A woven or non-crimp ply counts as half its fiber along 1 and half along 2, alike on both faces (a ±45 non-crimp
 * fabric is laid at 45). Valid for fiber volume fractions from 0.2 to 0.75; a `Problem` outside.
 */
export function typicalPlyElastic(weave: Weave, fiberVolumeFraction: number): TypicalPly {
  if (!(fiberVolumeFraction >= 0.2 && fiberVolumeFraction <= 0.75))
    throw new Problem(
      'laminate.fiberFraction',
      'Typical stiffness is known for fiber volume fractions from 0.20 to 0.75 only: check the resin content and the densities on the card.',
    );
  const straight = straightPly(fiberVolumeFraction);
  if (weave === 'unidirectional') {
    const { expansion2PerK: expansion3PerK } = straight;
    const expansionBand = spread(expansion3PerK, 8e-6);
    return {
      elastic: straight,
      expansion3PerK,
      bands: {
        e1GPa: scatter(straight.e1GPa, 0.12),
        e2GPa: scatter(straight.e2GPa, 0.25),
        g12GPa: scatter(straight.g12GPa, 0.25),
        nu12: spread(straight.nu12, 0.05),
        expansion1PerK: spread(straight.expansion1PerK, 0.7e-6),
        expansion2PerK: expansionBand,
        expansion3PerK: expansionBand,
      },
    };
  }
  const elastic = crossedPly(straight, crimpShare[weave]);
  // The published woven ply of fiber fraction 0.5 has 70 GPa, ν12 0.10 and 2.1e-6/K: 17 % over, and 1.2e-6/K under, these.
  const modulusBand: Band = [elastic.e1GPa * (1 - 0.12), elastic.e1GPa * (1 + 0.2)];
  const expansionBand = spread(elastic.expansion1PerK, 1.3e-6);
  return {
    elastic,
    expansion3PerK: crossedThrough.valuePerK,
    bands: {
      e1GPa: modulusBand,
      e2GPa: modulusBand,
      g12GPa: scatter(elastic.g12GPa, 0.25),
      nu12: [Math.min(0.03, 0.8 * elastic.nu12), 0.12],
      expansion1PerK: expansionBand,
      expansion2PerK: expansionBand,
      expansion3PerK: crossedThrough.band,
    },
  };
}

const scatter = (value: number, share: number): Band => [value * (1 - share), value * (1 + share)];
const spread = (value: number, by: number): Band => [value - by, value + by];

/** All fiber along 1: mixture along the fiber, Halpin-Tsai across and in shear, Schapery's expansions. */
function straightPly(fiberFraction: number): PlyElastic {
  const resinFraction = 1 - fiberFraction;
  const mix = (ofFiber: number, ofResin: number) => fiberFraction * ofFiber + resinFraction * ofResin;
  const e1GPa = mix(fiber.e1GPa, epoxy.eGPa);
  const nu12 = mix(fiber.nu12, epoxy.nu);
  const expansion1PerK = mix(fiber.e1GPa * fiber.expansion1PerK, epoxy.eGPa * epoxy.expansionPerK) / e1GPa;
  return {
    e1GPa,
    e2GPa: halpinTsaiGPa(fiber.e2GPa, epoxy.eGPa, fiberFraction),
    g12GPa: halpinTsaiGPa(fiber.g12GPa, epoxy.eGPa / (2 * (1 + epoxy.nu)), fiberFraction),
    nu12,
    expansion1PerK,
    expansion2PerK:
      mix(fiber.expansion2PerK + fiber.nu12 * fiber.expansion1PerK, (1 + epoxy.nu) * epoxy.expansionPerK) -
      nu12 * expansion1PerK,
  };
}

/** P = Pm (1 + ξ η Vf) / (1 − η Vf), η = (Pf/Pm − 1) / (Pf/Pm + ξ). */
function halpinTsaiGPa(ofFiberGPa: number, ofResinGPa: number, fiberFraction: number): number {
  const ratio = ofFiberGPa / ofResinGPa;
  const efficiency = (ratio - 1) / (ratio + shapeFactor);
  return (ofResinGPa * (1 + shapeFactor * efficiency * fiberFraction)) / (1 - efficiency * fiberFraction);
}

/** Two equal halves at right angles, held flat against each other as the fabric holds them. */
function crossedPly(straight: PlyElastic, kept: number): PlyElastic {
  const crossed = laminateOf([
    { elastic: straight, angleDeg: 0, thicknessMm: 1 },
    { elastic: straight, angleDeg: 90, thicknessMm: 1 },
  ]);
  const { exGPa, gxyGPa, nuXy } = effectiveModuli(crossed).heldFlat;
  const [expansionPerK] = laminateExpansionPerK(crossed);
  return {
    e1GPa: kept * exGPa,
    e2GPa: kept * exGPa,
    g12GPa: gxyGPa,
    nu12: nuXy,
    expansion1PerK: expansionPerK,
    expansion2PerK: expansionPerK,
  };
}
