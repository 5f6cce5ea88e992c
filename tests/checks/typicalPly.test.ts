/**
 * The estimated constants against ranges that are remembered for such plies (status: from memory, no source opened).
 * A range is wide: this catches a wrong relation or unit, it proves no material.
 */
import { expect, test } from 'vitest';
import { typicalPlyElastic } from '../../src/core/laminate/typicalPly';

test('woven standard-modulus carbon in epoxy, fiber fraction 0.5: E 55-70, G 4-5 GPa, expansion 2-4e-6/K (from memory)', () => {
  const { elastic, expansion3PerK } = typicalPlyElastic('woven', 0.5);
  expect(elastic.e1GPa).toBeGreaterThan(55);
  expect(elastic.e1GPa).toBeLessThan(70);
  expect(elastic.g12GPa).toBeGreaterThan(4);
  expect(elastic.g12GPa).toBeLessThan(5);
  expect(elastic.nu12).toBeGreaterThan(0.02);
  expect(elastic.nu12).toBeLessThan(0.08);
  expect(elastic.expansion1PerK).toBeGreaterThan(2e-6);
  expect(elastic.expansion1PerK).toBeLessThan(4e-6);
  expect(expansion3PerK).toBeGreaterThanOrEqual(40e-6);
  expect(expansion3PerK).toBeLessThanOrEqual(60e-6);
});

test('unidirectional, fiber fraction 0.6: E1 125-150, E2 7.5-10.5, G12 4-7 GPa, nu12 0.24-0.32 (from memory)', () => {
  const { elastic } = typicalPlyElastic('unidirectional', 0.6);
  expect(elastic.e1GPa).toBeGreaterThan(125);
  expect(elastic.e1GPa).toBeLessThan(150);
  expect(elastic.e2GPa).toBeGreaterThan(7.5);
  expect(elastic.e2GPa).toBeLessThan(10.5);
  expect(elastic.g12GPa).toBeGreaterThan(4);
  expect(elastic.g12GPa).toBeLessThan(7);
  expect(elastic.nu12).toBeGreaterThan(0.24);
  expect(elastic.nu12).toBeLessThan(0.32);
});
