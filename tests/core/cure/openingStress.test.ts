import { expect, test } from 'vitest';
import { openedDifferenceK, skinTensionMPa, steadyDifferenceK } from '../../../src/core/cure/openingStress';

/** 40 mm of stone, film and radiation 20 W/(m² K). */
const stone = {
  thicknessMm: 40,
  conductivityWPerMK: 0.8,
  capacityJPerM3K: 1.6e6,
  filmWPerM2K: 20,
  expansionPerK: 16e-6,
  modulusGPa: 15,
};

test('opened at 100 K over the room: Bi 0.5, 20 K from core to skin, 4.3 MPa', () => {
  expect(openedDifferenceK(stone, 100)).toBeCloseTo(20, 9);
  // 15 000 MPa × 16e-6 × 13.33 K / 0.75
  expect(skinTensionMPa(stone, 20)).toBeCloseTo(4.267, 3);
});

test('at 1 K/min: 6.7 K, under half of what the stone bears', () => {
  expect(steadyDifferenceK(stone, 1)).toBeCloseTo((1.6e6 * 4e-4) / 60 / 1.6, 9);
  expect(skinTensionMPa(stone, steadyDifferenceK(stone, 1))).toBeLessThan(1.5);
});

test('grows with thickness and heat, goes with neither of them to less', () => {
  for (const more of [1.5, 2, 4]) {
    const thick = { ...stone, thicknessMm: 40 * more };
    expect(openedDifferenceK(thick, 100)).toBeGreaterThan(openedDifferenceK(stone, 100));
    expect(openedDifferenceK(thick, 100)).toBeLessThan(100);
    expect(steadyDifferenceK(thick, 1)).toBeCloseTo(more * more * steadyDifferenceK(stone, 1), 9);
  }
});
