import { describe, expect, test } from 'vitest';
import { wallsReport } from '../../src/steps/walls/report';
import { emptyContext, lockPatch, thickPatch, trayContext, walls } from './contexts';
import { figureOf, verdictOf } from './reportHelpers';

/** Verdict on 10 000 mm² of show face of which some is far too thick. */
const wordWithWrong = (wrongMm2: number) =>
  verdictOf(
    wallsReport(trayContext({ summary: { showWall: walls([0.8, 10_000 - wrongMm2], [1.6, wrongMm2]) } })),
    'walls.band',
  ).word;

describe('Walls & draft step', () => {
  test('a wall between cured and laid is go, with the band worked out', () => {
    const report = wallsReport(trayContext());
    expect(report.verdicts.map(({ word }) => word)).toEqual(['go', 'go', 'go', 'go']);
    expect(figureOf(report, 'walls.bandHighMm').value).toBeCloseTo(0.95, 9);
    expect(figureOf(report, 'walls.bandLowMm').value).toBeCloseTo(3 * 0.2337 - 0.05, 3);
    expect(figureOf(report, 'walls.bandHighMm').working[0]).toContain('0.90 mm');
    expect(figureOf(report, 'walls.inBandPercent').value).toBe(100);
  });

  test('shares come from the area, limits included', () => {
    const report = wallsReport(
      trayContext({ summary: { showWall: walls([0.5, 100], [0.8, 500], [0.95, 200], [1.6, 200]) } }),
    );
    expect(figureOf(report, 'walls.underPercent').value).toBeCloseTo(10, 9);
    expect(figureOf(report, 'walls.inBandPercent').value).toBeCloseTo(70, 9);
    expect(figureOf(report, 'walls.overPercent').value).toBeCloseTo(20, 9);
  });

  test('more wrong wall than allowed stops and names the worst place and its wanted wall', () => {
    const report = wallsReport(
      trayContext({
        summary: { showWall: walls([0.8, 8800], [1.6, 1200]) },
        measured: { patches: [thickPatch] },
      }),
    );
    const verdict = verdictOf(report, 'walls.band');
    expect(verdict.word).toBe('stop');
    expect(verdict.reason).toContain('12.0 % is over');
    expect(verdict.reason).toContain('show face, −y side');
    expect(verdict.fix).toMatch(/−y side to 0\.70\smm to 0\.90\smm/u);
  });

  test('a little wrong wall is looked at again, next to none is go', () => {
    expect(wordWithWrong(300)).toBe('look again');
    expect(wordWithWrong(20)).toBe('go');
  });

  test('a wall wrong all over gives plies and wall to change to', () => {
    const showRayWall = { p5: 1, median: 1, p95: 1, min: 1, max: 1, hitShare: 1 };
    const report = wallsReport(trayContext({ summary: { showRayWall, showWall: walls([1, 10_000]) } }));
    const { fix } = verdictOf(report, 'walls.band');
    expect(fix).toContain('Lay 4 plies for a wall of 1.00');
    expect(fix).toMatch(/make the wall 0\.80/u);
    expect(fix).toContain('5 plies');
  });

  test('the ball wall is used when the maker says so', () => {
    const summary = { showWallByBall: walls([0.4, 10_000]) };
    const report = wallsReport(trayContext({ walls: { measure: 'ball' }, summary }));
    expect(figureOf(report, 'walls.underPercent').value).toBe(100);
    expect(figureOf(report, 'walls.underPercent').working[0]).toContain('touching ball');
  });

  test('an undercut stops and says where; a speck does not', () => {
    const kindAreaMm2 = { show: 9000, core: 9000, rim: 0, detail: 0, trapped: 12, unmeasured: 0 };
    const report = wallsReport(trayContext({ summary: { kindAreaMm2 }, measured: { patches: [lockPatch] } }));
    expect(verdictOf(report, 'walls.locks')).toMatchObject({ word: 'stop' });
    expect(verdictOf(report, 'walls.locks').reason).toContain('undercut, +x side');
    const speck = wallsReport(trayContext({ summary: { kindAreaMm2: { ...kindAreaMm2, trapped: 0.4 } } }));
    expect(verdictOf(speck, 'walls.locks').word).toBe('go');
  });

  test('draft under the least drags', () => {
    const releaseDraft = { draftDeg: Float32Array.of(0.5, 5), cumulativeAreaMm2: Float64Array.of(30, 100) };
    const report = wallsReport(trayContext({ summary: { releaseDraft } }));
    expect(figureOf(report, 'walls.dragsPercent').value).toBeCloseTo(30, 9);
    expect(verdictOf(report, 'walls.draft').word).toBe('look again');
    const loose = wallsReport(trayContext({ summary: { releaseDraft }, walls: { leastDraftDeg: 0.5 } }));
    expect(verdictOf(loose, 'walls.draft').word).toBe('go');
  });

  test('an inside corner tighter than the stack is looked at again', () => {
    const report = wallsReport(trayContext({ summary: { insideCornerRadiusMm: { p5: 0.3, min: 0 } } }));
    expect(verdictOf(report, 'walls.corner').word).toBe('look again');
    const noCorner = wallsReport(trayContext({ summary: { insideCornerRadiusMm: { p5: null, min: null } } }));
    expect(verdictOf(noCorner, 'walls.corner').word).toBe('go');
    expect(figureOf(noCorner, 'walls.insideCornerMm').value).toBeNull();
  });

  describe('the print’s nominal wall', () => {
    test('is one number, marked as an entry, and stops when it misses the band', () => {
      const report = wallsReport(trayContext({ summary: { solid: true }, part: { nominalWall: 'print' } }));
      expect(figureOf(report, 'walls.overPercent')).toMatchObject({ value: 100, status: 'your entry' });
      expect(verdictOf(report, 'walls.band').word).toBe('stop');
      expect(verdictOf(report, 'walls.band').reason).toContain('your entry');
    });

    test('goes when it meets the band', () => {
      const report = wallsReport(
        trayContext({
          summary: { solid: true },
          part: { nominalWall: 'print' },
          plies: { lineWidthMm: 0.4 },
        }),
      );
      expect(verdictOf(report, 'walls.band').word).toBe('go');
    });
  });

  test('a solid without a print wall has no wall figures and no wall verdict', () => {
    const report = wallsReport(trayContext({ summary: { solid: true } }));
    expect(verdictOf(report, 'walls.band').word).toBe('not yet known');
    expect(figureOf(report, 'walls.rayMedianMm').value).toBeNull();
    expect(figureOf(report, 'walls.inBandPercent').value).toBeNull();
  });

  test('no plies, no band: the reason is the stack’s', () => {
    const report = wallsReport(trayContext({ plies: { stack: [] } }));
    expect(figureOf(report, 'walls.bandLowMm').value).toBeNull();
    expect(verdictOf(report, 'walls.band').reason).toContain('no plies');
    expect(verdictOf(report, 'walls.corner').word).toBe('not yet known');
  });

  test('without a pattern there is one verdict and no number', () => {
    const report = wallsReport(emptyContext());
    expect(report.verdicts).toHaveLength(1);
    expect(figureOf(report, 'walls.showAreaMm2').value).toBeNull();
    expect(figureOf(report, 'walls.bandHighMm').value).toBeCloseTo(0.95, 9);
  });
});
