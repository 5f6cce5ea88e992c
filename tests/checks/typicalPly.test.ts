/**
 * The estimated constants against ranges that are remembered for such plies, and a published woven ply against the bands
 * of the estimate. A range is wide: this catches a wrong relation or unit, it proves no material.
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

/**
 * Published (`wovenPly` in core/sources): a maker's table, standard-modulus carbon fabric in epoxy, fiber fraction 0.50,
 * cured at 120 °C; http://performance-composites.com/carbonfibre/mechanicalproperties_2.asp.
 */
test.each([
  ['e1GPa', 70],
  ['e2GPa', 70],
  ['g12GPa', 5],
  ['nu12', 0.1],
  ['expansion1PerK', 2.1e-6],
  ['expansion2PerK', 2.1e-6],
] as const)('the band of a woven ply holds the published %s of %f', (constant, published) => {
  const [low, high] = typicalPlyElastic('woven', 0.5).bands[constant];
  expect(published).toBeGreaterThan(low);
  expect(published).toBeLessThan(high);
});

/** Published, same table: unidirectional at 0.60, E1 135, E2 10, G12 5 GPa, ν12 0.30, −0.30 and 28e-6/K. */
test.each([
  ['e1GPa', 135],
  ['e2GPa', 10],
  ['g12GPa', 5],
  ['nu12', 0.3],
  ['expansion1PerK', -0.3e-6],
  ['expansion2PerK', 28e-6],
] as const)('the band of a unidirectional ply holds the published %s of %f', (constant, published) => {
  const [low, high] = typicalPlyElastic('unidirectional', 0.6).bands[constant];
  expect(published).toBeGreaterThan(low);
  expect(published).toBeLessThan(high);
});
