/** Sealer and release against the oven program, and the stones side by side. */
import { defaultProjectInputs } from '../../src/steps/inputs/project';
import { describe, expect, test } from 'vitest';
import { cureVerdicts } from '../../src/steps/cure/verdicts';
import type { MoldInputs } from '../../src/steps/inputs/mold';
import { moldReport } from '../../src/steps/mold/report';
import { stoneRows } from '../../src/steps/mold/stoneTable';
import { inputsWith, trayContext } from './contexts';
import { figureOf } from './reportHelpers';

const { coatSheet, bag } = defaultProjectInputs.mold;
const verdictWith = (moldInputs: Partial<MoldInputs>) =>
  cureVerdicts(trayContext({ moldInputs })).find(({ id }) => id === 'cure.coats');

describe('coats in the oven', () => {
  test('nothing said: not yet known, and what would tell', () => {
    expect(verdictWith({})).toMatchObject({ word: 'not yet known' });
    expect(verdictWith({})?.reason).toContain('which sealer and which release');
    expect(verdictWith({ sealer: 'post-cured epoxy' })?.reason).toContain('which release is on the stone');
  });

  test('a sealer that softens under the program stops it, whatever the release', () => {
    const verdict = verdictWith({ sealer: 'shellac' });
    expect(verdict).toMatchObject({ word: 'stop' });
    expect(verdict?.reason).toContain(
      'shellac, bears 60 to 75 °C (from memory) and softens and sticks over it',
    );
  });

  test('between the ends of a card the sheet decides', () => {
    const both = { sealer: 'post-cured epoxy', release: 'semi-permanent' } as const;
    expect(verdictWith(both)).toMatchObject({ word: 'look again' });
    const sheet = (sealerLimitC: number) => ({ ...both, coatSheet: { ...coatSheet, sealerLimitC } });
    expect(verdictWith(sheet(150))).toMatchObject({ word: 'go' });
    expect(verdictWith(sheet(100))).toMatchObject({ word: 'stop' });
    expect(verdictWith({ ...sheet(150), sealer: 'not said' })).toMatchObject({ word: 'go' });
  });

  test('a coat that is not laid on is not asked for', () => {
    expect(verdictWith({ sealerCoats: 0, release: 'PTFE' })).toMatchObject({ word: 'go' });
    expect(verdictWith({ sealerCoats: 0, releaseCoats: 0 })).toBeUndefined();
  });

  test('by hand: two coats at 8 m²/L and 40 %, three at 15 and 5 % dry to 110 µm', () => {
    const report = moldReport(trayContext({ moldInputs: { sealer: 'polyurethane' } }));
    expect(figureOf(report, 'mold.coatFilmUm').value).toBeCloseTo(2 * 50 + 3 * (50 / 15), 9);
    expect(figureOf(report, 'mold.sealerLimitC')).toMatchObject({
      value: 100,
      band: [100, 130],
      status: 'from memory',
    });
    expect(figureOf(report, 'mold.releaseLimitC').value).toBeNull();
  });
});

const rowsWith = (moldInputs: Partial<MoldInputs>) => stoneRows(inputsWith({ moldInputs }));

describe('stones side by side', () => {
  test('five types and the own one, with limits of the standard', () => {
    const rows = rowsWith({});
    expect(rows.map(({ own }) => own)).toEqual([false, false, false, false, false, true]);
    expect(rows.map(({ strength }) => strength)).toEqual([
      '4 to 8 MPa',
      'at least 9 MPa',
      'at least 20 MPa',
      'at least 35 MPa',
      'at least 35 MPa',
      '35 MPa, usual for type 4',
    ]);
    expect(rows[3]).toMatchObject({ expansion: '0.00 to 0.15 %', settingHeat: '118 J/g, up to 80 K' });
    for (const row of rows)
      for (const cell of Object.values(row)) expect(String(cell)).not.toMatch(/NaN|null/u);
  });

  test('the own row follows bag, price and limit; too little water leaves the rise out', () => {
    const own = rowsWith({
      stoneType: '3',
      bag: {
        ...bag,
        strengthMPa: 52,
        pricePerKg: 7.5,
        settingExpansionPercent: 0.07,
        waterPowderRatio: 0.15,
      },
    }).at(-1)!;
    expect(own).toMatchObject({
      name: 'Yours, on type 3',
      heat: '130 °C, by your limit',
      strength: '52 MPa, from your bag',
      expansion: '0.07 %, from your bag',
      settingHeat: '118 J/g',
      price: '7.50 per kg',
    });
  });
});
