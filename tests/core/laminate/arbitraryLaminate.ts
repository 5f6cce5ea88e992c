/** Stacks that a property test may meet, and short cuts to well-known ones. */
import * as fc from 'fast-check';
import type { LaminateLayer } from '../../../src/core/laminate/lamination';
import type { PlyElastic } from '../../../src/core/laminate/plyElastic';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

export const arbitraryElastic: fc.Arbitrary<PlyElastic> = fc.record({
  e1GPa: between(2, 300),
  e2GPa: between(2, 100),
  g12GPa: between(0.5, 30),
  nu12: between(0, 0.14),
  expansion1PerK: between(-1e-6, 80e-6),
  expansion2PerK: between(-1e-6, 80e-6),
});

export const arbitraryLayers: fc.Arbitrary<readonly LaminateLayer[]> = fc.array(
  fc.record({ elastic: arbitraryElastic, angleDeg: between(-90, 90), thicknessMm: between(0.05, 2) }),
  { minLength: 1, maxLength: 8 },
);

export const unidirectional: PlyElastic = {
  e1GPa: 133.4,
  e2GPa: 8.784,
  g12GPa: 3.254,
  nu12: 0.26,
  expansion1PerK: -0.5e-6,
  expansion2PerK: 12e-6,
};

export const fabric: PlyElastic = {
  e1GPa: 62,
  e2GPa: 62,
  g12GPa: 4.5,
  nu12: 0.05,
  expansion1PerK: 3e-6,
  expansion2PerK: 3e-6,
};

/** Plies of one card, 0.25 mm each. */
export function stackOf(elastic: PlyElastic, ...anglesDeg: readonly number[]): readonly LaminateLayer[] {
  return anglesDeg.map((angleDeg) => ({ elastic, angleDeg, thicknessMm: 0.25 }));
}
