import { expect, it } from 'vitest';
import { evaporationTable, lookUpEvaporation } from '../../../src/core/cure/evaporationTable';
import { evaporation } from '../../../src/core/cure/waterVapor';

const looked = { wPerM2: 0, perK: 0 };
const worked = { wPerM2: 0, perK: 0 };

it('gives the heat of evaporation within 0.01 % and its slope within 2 % from 40 to 95 °C', () => {
  for (const [film, vaporPa] of [
    [8, 1200],
    [18, 1200],
    [30, 4000],
  ] as const) {
    const table = evaporationTable(film, vaporPa);
    for (let faceC = 40.03; faceC < 95; faceC += 0.29) {
      evaporation(faceC, film, vaporPa, worked);
      lookUpEvaporation(table, faceC, looked);
      expect(Math.abs(looked.wPerM2 / worked.wPerM2 - 1)).toBeLessThan(1e-4);
      expect(Math.abs(looked.perK / worked.perK - 1)).toBeLessThan(0.02);
    }
  }
});

it('gives none to a face under the dew point, and stays finite beyond its ends', () => {
  const table = evaporationTable(18, 1200);
  for (const faceC of [-80, 5]) {
    lookUpEvaporation(table, faceC, looked);
    expect(looked).toEqual({ wPerM2: 0, perK: 0 });
  }
  lookUpEvaporation(table, 400, looked);
  expect(Number.isFinite(looked.wPerM2)).toBe(true);
});
