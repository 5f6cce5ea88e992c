import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { laminateOf } from '../../../src/core/laminate/lamination';
import { typicalPlyElastic, type Weave } from '../../../src/core/laminate/typicalPly';
import { Problem } from '../../../src/core/problem';
import { propertySeed } from '../../support/propertySeed';

const weaves: readonly Weave[] = ['woven', 'unidirectional', 'non-crimp'];
const anyFraction = fc.double({ min: 0.2, max: 0.75, noNaN: true });

describe(`typical constants of a card without measured ones (seed ${propertySeed})`, () => {
  test('every estimate lies within its band and makes a possible material', () => {
    fc.assert(
      fc.property(fc.constantFrom(...weaves), anyFraction, (weave, fraction) => {
        const { elastic, expansion3PerK, bands } = typicalPlyElastic(weave, fraction);
        for (const [key, [low, high]] of Object.entries(bands)) {
          const value = { ...elastic, expansion3PerK }[key as keyof typeof bands];
          expect(value, key).toBeGreaterThan(low);
          expect(value, key).toBeLessThan(high);
        }
        expect(() => laminateOf([{ elastic, angleDeg: 30, thicknessMm: 0.2 }])).not.toThrow();
      }),
    );
  });

  test('more fiber is stiffer along, across and in shear, and expands less through', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 0.7, noNaN: true }), (fraction) => {
        const lean = typicalPlyElastic('unidirectional', fraction);
        const full = typicalPlyElastic('unidirectional', fraction + 0.05);
        for (const key of ['e1GPa', 'e2GPa', 'g12GPa'] as const)
          expect(full.elastic[key]).toBeGreaterThan(lean.elastic[key]);
        expect(full.expansion3PerK).toBeLessThan(lean.expansion3PerK);
      }),
    );
  });

  test('fabrics are alike along warp and weft; a straight one is the stiffer', () => {
    const woven = typicalPlyElastic('woven', 0.5).elastic;
    const straight = typicalPlyElastic('non-crimp', 0.5).elastic;
    expect(woven.e1GPa).toBe(woven.e2GPa);
    expect(woven.expansion1PerK).toBe(woven.expansion2PerK);
    expect(straight.e1GPa).toBeGreaterThan(woven.e1GPa);
  });

  test('refuses a fiber fraction that no ply has', () => {
    expect(() => typicalPlyElastic('woven', 0.9)).toThrow(Problem);
    expect(() => typicalPlyElastic('woven', Number.NaN)).toThrow(Problem);
  });
});
