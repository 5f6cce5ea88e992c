import { describe, expect, test } from 'vitest';
import { formatBand, formatFigure } from '../../src/core/units/formatFigure';
import { partReport } from '../../src/steps/part/report';
import { wallsReport } from '../../src/steps/walls/report';
import { emptyContext, trayContext, traySummary } from './contexts';
import { figureOf, verdictOf } from './reportHelpers';

describe('Part step', () => {
  test('a sound tray is go on every question', () => {
    const report = partReport(trayContext());
    expect(report.verdicts.map(({ word }) => word)).toEqual(report.verdicts.map(() => 'go'));
    expect(figureOf(report, 'part.boxMm').value).toEqual([120, 64, 18]);
    expect(figureOf(report, 'part.volumeMm3').value).toBe(9000);
    expect(figureOf(report, 'part.packErrorMm').value).toBeCloseTo(2e-4, 12);
  });

  test('without a pattern nothing is known and the way on is told', () => {
    const report = partReport(emptyContext());
    const verdict = verdictOf(report, 'part.sound');
    expect(verdict.word).toBe('not yet known');
    expect(verdict.fix).toContain('Import');
    expect(figureOf(report, 'part.volumeMm3')).toMatchObject({ value: null });
    expect(figureOf(report, 'part.volumeMm3').working[0]).toContain('No pattern');
  });

  test('an open surface has no volume, and its verdict says what that does to the walls', () => {
    const report = partReport(
      trayContext({
        mold: null,
        health: { watertight: false, openEdges: 3 },
        summary: { volumeMm3: null, rayWall: { p5: 1, median: 1, p95: 1, min: 1, max: 1, hitShare: 0.9 } },
      }),
    );
    expect(figureOf(report, 'part.volumeMm3').value).toBeNull();
    expect(figureOf(report, 'part.centroidMm').working).toContain(
      'Of the surface, because it is not closed.',
    );
    const verdict = verdictOf(report, 'part.sound');
    expect(verdict.word).toBe('look again');
    expect(verdict.reason).toContain('3 open edges');
    expect(verdict.reason).toContain('10.0 % of the area has no wall behind it');
  });

  test('a volume with holes carries what they could hold, in no more digits than that supports', () => {
    const open = trayContext({
      mold: null,
      health: { watertight: false, openEdges: 3 },
      summary: { volumeMm3: 9012.3, volumeBandMm3: [8900, 9124.6] },
    });
    const volume = figureOf(partReport(open), 'part.volumeMm3');
    expect(volume).toMatchObject({ value: 9012.3, band: [8900, 9124.6] });
    expect(formatFigure(volume)).toBe('9012\u202fmm³');
    expect(formatBand(volume)).toBe('8900 to 9125\u202fmm³');
    expect(verdictOf(partReport(open), 'part.sound').reason).toContain('what the holes could hold');
    expect(figureOf(partReport(trayContext()), 'part.volumeMm3').band).toBeUndefined();
  });

  test('a single skin stops: there is nothing to measure', () => {
    const hit = { p5: null, median: null, p95: null, min: null, max: null, hitShare: 0 };
    expect(verdictOf(partReport(trayContext({ summary: { rayWall: hit } })), 'part.sound').word).toBe('stop');
  });

  test.each([
    ['repair', 'turned right for measuring'],
    ['asFile', 'measured the wrong way round'],
  ] as const)('flipped facets under "%s" say what it means', (winding, words) => {
    const report = partReport(trayContext({ part: { winding }, health: { flippedFacets: 1 } }));
    expect(verdictOf(report, 'part.sound').reason).toContain('1 flipped facet');
    expect(verdictOf(report, 'part.sound').reason).toContain(words);
  });

  test('facets left out on reading stay in the count after a reload', () => {
    const report = partReport(
      trayContext({ pattern: { degenerateFacets: 4 }, health: { degenerateFacets: 1 } }),
    );
    expect(figureOf(report, 'part.degenerateFacets').value).toBe(5);
  });

  describe('unit', () => {
    const guess = { unit: 'in', sure: false, reason: 'As inches it is 184 mm.' } as const;

    test('a guess that nobody confirmed is not let through', () => {
      const report = partReport(trayContext({ measured: { unitGuess: guess } }));
      expect(verdictOf(report, 'part.unit')).toMatchObject({ word: 'look again' });
      expect(verdictOf(report, 'part.unit').reason).toContain('inches');
    });

    test('a confirmed unit is', () => {
      const report = partReport(trayContext({ part: { unit: 'in' }, measured: { unitGuess: guess } }));
      expect(verdictOf(report, 'part.unit').word).toBe('go');
      expect(figureOf(report, 'part.packErrorMm').value).toBeCloseTo(2e-4 * 25.4, 12);
    });

    test('a declared unit is named', () => {
      const report = partReport(trayContext({ pattern: { declaredUnit: 'mm' } }));
      expect(verdictOf(report, 'part.unit').reason).toContain('The file says');
    });
  });

  test('a part of the wrong size is questioned', () => {
    const report = partReport(trayContext({ summary: { boxMaxMm: [4.7, 2.5, 0.7] } }));
    expect(verdictOf(report, 'part.size').word).toBe('look again');
  });

  test('several bodies taken together are told; one chosen is not', () => {
    const bodies = [0, 1].map(() => ({
      facetCount: 600,
      closed: true,
      volume: 1,
      boxMin: [0, 0, 0] as const,
      boxMax: [1, 1, 1] as const,
    }));
    expect(verdictOf(partReport(trayContext({ health: { bodies } })), 'part.body').reason).toContain(
      '2 separate',
    );
    const chosen = partReport(trayContext({ health: { bodies }, part: { body: 1 } }));
    expect(chosen.verdicts.some(({ id }) => id === 'part.body')).toBe(false);
  });

  describe('a pattern drawn solid', () => {
    test('asks for the lines of the print', () => {
      const verdict = verdictOf(partReport(trayContext({ summary: { solid: true } })), 'part.solid');
      expect(verdict.word).toBe('look again');
      expect(verdict.fix).toContain('open face');
    });

    test('goes with them, marked as an entry', () => {
      const report = partReport(
        trayContext({ summary: { solid: true }, part: { nominalWall: 'print', printLines: 2 } }),
      );
      expect(verdictOf(report, 'part.solid').word).toBe('go');
      expect(figureOf(report, 'part.nominalWallMm')).toMatchObject({ value: 1, status: 'your entry' });
    });

    test('a shell with a print wall is questioned', () => {
      const report = partReport(trayContext({ part: { nominalWall: 'print' } }));
      expect(verdictOf(report, 'part.solid').word).toBe('look again');
    });
  });

  test('an undercut is told once, at Walls & draft', () => {
    const kindAreaMm2 = { ...traySummary.kindAreaMm2, trapped: 80 };
    const undercut = trayContext({ summary: { kindAreaMm2 } });
    const pull = verdictOf(partReport(undercut), 'part.pull');
    expect(pull.word).toBe('go');
    expect(pull.reason).toContain('Walls & draft');
    expect(verdictOf(wallsReport(undercut), 'walls.locks').word).toBe('stop');
    expect(verdictOf(partReport(trayContext()), 'part.pull').reason).toContain('reach the whole surface');
  });
});
