import { describe, expect, test } from 'vitest';
import { wantedPlies } from '../../src/core/laminate/wantedPlies';
import { defaultMaterial } from '../../src/steps/plies/inputs';
import { pliesReport } from '../../src/steps/plies/report';
import { emptyContext, plyAt, trayContext, walls } from './contexts';
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
