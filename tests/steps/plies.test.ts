import { describe, expect, test } from 'vitest';
import { wantedPlies } from '../../src/core/laminate/wantedPlies';
import { defaultMaterial } from '../../src/steps/plies/inputs';
import { pliesReport } from '../../src/steps/plies/report';
import { emptyContext, plyAt, trayContext, trayMold, walls } from './contexts';
import { figureOf, verdictOf } from './reportHelpers';

const laidPlyWithCard = (laidThicknessMm: number | null) =>
  figureOf(
    pliesReport(trayContext({ plies: { materials: [{ ...defaultMaterial, laidThicknessMm }] } })),
    'plies.laidPlyMm',
  );

describe('Ply schedule step', () => {
  test('stack figures with their working', () => {
    const report = pliesReport(trayContext());
    expect(figureOf(report, 'plies.plyCount').value).toBe(3);
    expect(figureOf(report, 'plies.laidThicknessMm').value).toBeCloseTo(0.9, 9);
    expect(figureOf(report, 'plies.curedThicknessMm').value).toBeCloseTo(0.7011, 3);
    expect(figureOf(report, 'plies.fiberVolumeFraction').value).toBeCloseTo(0.4835, 4);
    expect(figureOf(report, 'plies.fiberVolumeFraction').working[0]).toContain('0.580 / 1.77');
    expect(figureOf(report, 'plies.arealMassGsm').value).toBeCloseTo(600 / 0.58, 6);
  });

  test('the ready-made card counts as common practice, a caliper as measured, a bulk factor as an estimate', () => {
    expect(laidPlyWithCard(0.3).status).toBe('common practice');
    expect(laidPlyWithCard(0.28)).toMatchObject({ status: 'measured', value: 0.28 });
    expect(laidPlyWithCard(0.28).band).toBeUndefined();
    const estimate = laidPlyWithCard(null);
    expect(estimate.status).toBe('common practice');
    expect(estimate.value).toBeCloseTo(0.2337 * 1.3, 3);
    expect(estimate.band?.[0]).toBeLessThan(Number(estimate.value));
    expect(estimate.working.join(' ')).toContain('caliper');
  });

  test('area shares against the stack, without tolerances', () => {
    const showWall = walls([0.6, 100], [0.8, 700], [0.92, 200]);
    const report = pliesReport(trayContext({ summary: { showWall } }));
    expect(figureOf(report, 'plies.loosePercent').value).toBeCloseTo(20, 9);
    expect(figureOf(report, 'plies.betweenPercent').value).toBeCloseTo(70, 9);
    expect(figureOf(report, 'plies.underPercent').value).toBeCloseTo(10, 9);
  });

  test('a wall drawn exactly at the stack as laid is not called loose for its last decimal', () => {
    const showWall = walls([0.8999, 5000], [0.9002, 4000], [0.91, 1000]);
    const report = pliesReport(trayContext({ summary: { showWall } }));
    expect(figureOf(report, 'plies.loosePercent').value).toBeCloseTo(10, 9);
  });

  test('two lines of 0.5 mm against three plies of 0.3 mm: 0.10 mm loose, common practice', () => {
    const report = pliesReport(trayContext({ part: { nominalWall: 'print', printLines: 2 } }));
    const pairing = verdictOf(report, 'plies.pairing');
    expect(pairing.word).toBe('look again');
    expect(pairing.reason).toMatch(/1\.00\smm against 0\.90\smm/u);
    expect(pairing.reason).toMatch(/0\.10\smm loose \(common practice, no source\)/u);
    expect(pairing.fix).toContain('3 lines and 5 plies');
    expect(verdictOf(report, 'plies.fit').word).toBe('stop');
  });

  test('three lines and five plies are an exact pair', () => {
    const stack = [1, 2, 3, 4, 5].map((n) => plyAt(`p${n}`));
    const report = pliesReport(
      trayContext({ part: { nominalWall: 'print', printLines: 3 }, plies: { stack } }),
    );
    expect(verdictOf(report, 'plies.pairing')).toMatchObject({ word: 'go' });
    expect(verdictOf(report, 'plies.pairing').reason).toContain('an exact pair');
    expect(verdictOf(report, 'plies.fit').word).toBe('go');
  });

  test('the fewest plies that fill a wall are wanted', () => {
    expect(wantedPlies(1.5, 0.2337, 0.3, 0.05)).toBe(5);
    expect(wantedPlies(1, 0.2337, 0.3, 0.05)).toBe(4);
    expect(wantedPlies(0.94, 0.2337, 0.3, 0.05)).toBe(3);
    expect(wantedPlies(0.05, 0.2337, 0.3, 0.05)).toBe(1);
    // Between one ply (at most 0.30) and two (at least 0.46) no number fits; 0.33 is nearer to one.
    expect(wantedPlies(0.36, 0.23, 0.3, 0.05)).toBe(1);
    expect(wantedPlies(0.42, 0.23, 0.3, 0.05)).toBe(2);
  });

  test('prepreg is an estimate with a band', () => {
    const report = pliesReport(trayContext());
    const area = figureOf(report, 'plies.prepregAreaCm2');
    expect(area.value).toBeCloseTo(100 * 3 * 1.3, 9);
    expect(area.band).toEqual([expect.closeTo(345, 9), expect.closeTo(480, 9)]);
    expect(area.status).toBe('common practice');
    expect(figureOf(report, 'plies.prepregMassG').value).toBeCloseTo(0.01 * (600 / 0.58) * 1.3, 9);
  });

  describe('prepreg to buy', () => {
    /** A tray of 100 × 60 × 20 mm, drawn turned by 30°, in a box with 10 mm of cover over and under it. */
    const [cos, sin] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    const mold = {
      ...trayMold,
      box: { ...trayMold.box, innerMm: [120, 80, 40] as const },
      rimOutlineMm: (
        [
          [0, 0],
          [100, 0],
          [100, 60],
          [0, 60],
        ] as const
      ).map(([x, y]) => [x * cos - y * sin, x * sin + y * cos] as const),
    };
    const buy = (angles: readonly number[]) =>
      figureOf(
        pliesReport(trayContext({ mold, plies: { stack: angles.map((angle, n) => plyAt(`p${n}`, angle)) } })),
        'plies.prepregBuyCm2',
      );

    test('by hand: blanks of 160 × 120 mm, the one at 45° on a square of 198 mm', () => {
      expect(buy([0, 0, 0]).value).toBeCloseTo(3 * 192, 9);
      expect(buy([0, 0, 90]).value).toBeCloseTo(3 * 192, 9);
      expect(buy([0, 0, 90]).band).toBeUndefined();
      const mixed = buy([0, 45, 0]);
      expect(mixed.value).toBeCloseTo(2 * 192 + 392, 9);
      expect(mixed.band).toEqual([expect.closeTo(576, 9), expect.closeTo(776, 9)]);
      expect(mixed.working.join(' ')).toContain('160 × 120 mm');
      expect(mixed.working.join(' ')).toContain('198 × 198 mm of roll for 45°');
      expect(buy([-45, 45]).value).toBeCloseTo(2 * 392, 9);
    });

    test('is never less than what lies in the part, and a patch comes as a square', () => {
      const net = figureOf(pliesReport(trayContext({ mold })), 'plies.prepregAreaCm2');
      expect(buy([0, 45, 0]).value).toBeGreaterThan(Number(net.value));
      const patch = {
        id: 'x',
        place: 'boss',
        materialId: 'twill-200',
        angleDeg: 45,
        faceDown: false,
        areaCm2: 10,
        afterPly: 1,
      };
      const patched = pliesReport(trayContext({ mold, plies: { patches: [patch] } }));
      expect(figureOf(patched, 'plies.prepregBuyCm2').value).toBeCloseTo(776 + 20, 9);
    });

    test('before the pours are worked out the box of the file stands in', () => {
      const early = figureOf(pliesReport(trayContext({ mold: null })), 'plies.prepregBuyCm2');
      expect(early.value).toBeCloseTo((2 * 176 * 120 + (176 + 120) ** 2 / 2) / 100, 9);
      expect(early.working.join(' ')).toContain('until the two pours are worked out');
    });
  });

  test('plies of two cards are summed, not averaged away', () => {
    const heavy = { ...defaultMaterial, id: 'heavy', arealWeightGsm: 400, laidThicknessMm: 0.55 };
    const stack = [plyAt('a'), plyAt('b', 0, { materialId: 'heavy' })];
    const report = pliesReport(trayContext({ plies: { materials: [defaultMaterial, heavy], stack } }));
    expect(figureOf(report, 'plies.laidThicknessMm').value).toBeCloseTo(0.85, 9);
    expect(figureOf(report, 'plies.fiberVolumeFraction').value).toBeCloseTo(0.4835, 4);
    expect(figureOf(report, 'plies.laidPlyMm').value).toBeCloseTo(0.425, 9);
  });

  test('no plies: a clear verdict, null figures with the reason, no crash', () => {
    const report = pliesReport(trayContext({ plies: { stack: [] } }));
    expect(report.verdicts).toEqual([expect.objectContaining({ id: 'plies.fit', word: 'not yet known' })]);
    for (const figure of report.figures) {
      expect(figure.value, figure.id).toBeNull();
      expect(figure.working.join(' '), figure.id).toContain('no plies');
    }
  });

  test('a ply without a card is named by its number', () => {
    const stack = [plyAt('a', 0, { materialId: 'gone' })];
    const report = pliesReport(trayContext({ plies: { stack } }));
    expect(verdictOf(report, 'plies.fit')).toMatchObject({ word: 'not yet known' });
    expect(verdictOf(report, 'plies.fit').reason).toContain('Ply 1');
  });

  test('without a pattern the stack is still worked out', () => {
    const report = pliesReport(emptyContext());
    expect(figureOf(report, 'plies.laidThicknessMm').value).toBeCloseTo(0.9, 9);
    expect(figureOf(report, 'plies.loosePercent').value).toBeNull();
    expect(verdictOf(report, 'plies.fit').word).toBe('not yet known');
  });
});
