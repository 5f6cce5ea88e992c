import { describe, expect, test } from 'vitest';
import { wallsReport } from '../../src/steps/walls/report';
import { emptyContext, lockPatch, thickPatch, trayContext, walls } from './contexts';
import { figureOf, verdictOf } from './reportHelpers';

/** Verdict on 10 000 mm² of show face of which some is far too thick. */
const wordWithWrong = (wrongMm2: number) =>
  verdictOf(
    wallsReport(trayContext({ summary: { showWall: walls([0.67, 10_000 - wrongMm2], [1.6, wrongMm2]) } })),
    'walls.band',
  ).word;
const wallAllOver = (wallMm: number) => {
  const showRayWall = { p5: wallMm, median: wallMm, p95: wallMm, min: wallMm, max: wallMm, hitShare: 1 };
  return verdictOf(
    wallsReport(trayContext({ summary: { showRayWall, showWall: walls([wallMm, 10_000]) } })),
    'walls.band',
  );
};

const drafted = (draftDeg: number, areaMm2: number) => ({
  draftDeg: Float32Array.of(draftDeg, 5),
  cumulativeAreaMm2: Float64Array.of(areaMm2, 100),
});
const corner = (changes: Parameters<typeof trayContext>[0]) =>
  verdictOf(wallsReport(trayContext(changes)), 'walls.corner');

describe('Walls & draft step', () => {
  test('the wall wanted is go, with the walls that are right worked out', () => {
    const report = wallsReport(trayContext());
    expect(report.verdicts.map(({ word }) => word)).toEqual(['go', 'go', 'go', 'go']);
    // Three plies hold 0.339 mm of fiber and 0.362 mm of resin.
    expect(figureOf(report, 'walls.bandLowMm').value).toBeCloseTo(0.338983 / 0.53, 6);
    expect(figureOf(report, 'walls.bandHighMm').value).toBeCloseTo(0.701052 / 0.99, 6);
    expect(figureOf(report, 'walls.bandHighMm').working[0]).toContain('0.701 mm');
    expect(figureOf(report, 'walls.inBandPercent').value).toBe(100);
  });

  test('shares come from the area, limits included', () => {
    const high = 0.701052 / 0.99;
    const report = wallsReport(
      trayContext({ summary: { showWall: walls([0.5, 100], [0.67, 500], [high, 200], [1.6, 200]) } }),
    );
    expect(figureOf(report, 'walls.underPercent').value).toBeCloseTo(10, 9);
    expect(figureOf(report, 'walls.inBandPercent').value).toBeCloseTo(70, 9);
    expect(figureOf(report, 'walls.overPercent').value).toBeCloseTo(20, 9);
  });

  test('more bad wall than allowed stops and names the place of the worst wall, not of its whole patch', () => {
    const report = wallsReport(
      trayContext({
        summary: { showWall: walls([0.67, 8800], [1.6, 1200]) },
        measured: { patches: [thickPatch] },
      }),
    );
    const verdict = verdictOf(report, 'walls.band');
    expect(verdict.word).toBe('stop');
    expect(verdict.reason).toContain('12.0 % thicker');
    expect(verdict.reason).toContain('show face, −y side');
    expect(verdict.fix).toBe('');
  });

  test('a little wrong wall is looked at again, next to none is go', () => {
    expect(wordWithWrong(300)).toBe('look again');
    expect(wordWithWrong(20)).toBe('go');
  });

  test.each([
    [0.6, 'stop', 'fiber would fill 56 % of it'],
    [0.63, 'look again', 'fiber would fill 54 % of it'],
    [0.64, 'go', 'it is filled, with 53 % fiber'],
    [0.7, 'go', 'it is filled'],
    [0.705, 'go', '0.6 % of it would be air, which is within what you accept'],
    [0.715, 'look again', '2.0 % of it would be air'],
    [0.8, 'stop', 'about one eighth (12 %) of it would be air'],
    [0.9, 'stop', 'about one fifth (22 %) of it would be air'],
  ])('a wall of %d mm round plies that fill 0.70 mm is %s', (wallMm, word, said) => {
    const verdict = wallAllOver(wallMm);
    expect(verdict.word).toBe(word);
    expect(verdict.reason).toContain('Your plies fill 0.70 mm.');
    expect(verdict.reason).toContain(said);
  });

  test('the ball wall is used when the maker says so', () => {
    const summary = { showWallByBall: walls([0.4, 10_000]) };
    const report = wallsReport(trayContext({ walls: { measure: 'ball' }, summary }));
    expect(figureOf(report, 'walls.underPercent').value).toBe(100);
    expect(figureOf(report, 'walls.underPercent').working[0]).toContain('largest sphere');
  });

  test('an undercut stops and says where; a speck does not', () => {
    const kindAreaMm2 = { show: 9000, core: 9000, rim: 0, detail: 0, trapped: 12, unmeasured: 0 };
    const report = wallsReport(trayContext({ summary: { kindAreaMm2 }, measured: { patches: [lockPatch] } }));
    expect(verdictOf(report, 'walls.locks')).toMatchObject({ word: 'stop' });
    expect(verdictOf(report, 'walls.locks').reason).toContain('undercut, +x side');
    const speck = wallsReport(trayContext({ summary: { kindAreaMm2: { ...kindAreaMm2, trapped: 0.4 } } }));
    expect(verdictOf(speck, 'walls.locks').word).toBe('go');
  });

  test('draft under the least drags; under 1° over a deep part it is a stop', () => {
    const releaseDraft = drafted(1.5, 30);
    const report = wallsReport(trayContext({ summary: { releaseDraft } }));
    expect(figureOf(report, 'walls.dragsPercent').value).toBeCloseTo(30, 9);
    expect(verdictOf(report, 'walls.draft').word).toBe('look again');
    const accepted = wallsReport(trayContext({ summary: { releaseDraft }, walls: { leastDraftDeg: 0.5 } }));
    expect(verdictOf(accepted, 'walls.draft').word).toBe('go');
    const wordOf = (share: number, highMm: number) =>
      verdictOf(
        wallsReport(
          trayContext({
            summary: { releaseDraft: drafted(0.5, share), boxMaxMm: [120, 64, highMm] },
          }),
        ),
        'walls.draft',
      ).word;
    expect(wordOf(30, 18)).toBe('stop');
    expect(wordOf(30, 4)).toBe('look again');
    expect(wordOf(4, 18)).toBe('look again');
  });

  test('plies must reach the hollow corners of the half they are laid in', () => {
    expect(corner({ summary: { insideCornerRadiusMm: { p5: 0.3, min: 0 } } }).word).toBe('look again');
    const tight = { summary: { outerEdgeRadiusMm: { p5: 2, min: 1.8 } } };
    // 2 mm are too tight for a female corner of the negative, and enough over an inside radius of 1 mm plus the plies.
    expect(corner(tight).word).toBe('look again');
    expect(corner(tight).reason).toContain('hollow corners of the negative');
    expect(corner({ ...tight, walls: { laidIn: 'positive' } }).word).toBe('go');
    expect(
      corner({ walls: { laidIn: 'positive' }, summary: { outerEdgeRadiusMm: { p5: 1.5, min: 1 } } }).word,
    ).toBe('look again');
    const none = { p5: null, min: null };
    const noCorner = wallsReport(
      trayContext({ summary: { insideCornerRadiusMm: none, outerEdgeRadiusMm: none } }),
    );
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
          plies: { lineWidthMm: 0.335 },
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
  });

  test('without a pattern there is one verdict and no number', () => {
    const report = wallsReport(emptyContext());
    expect(report.verdicts).toHaveLength(1);
    expect(figureOf(report, 'walls.showAreaMm2').value).toBeNull();
    expect(figureOf(report, 'walls.bandHighMm').value).toBeCloseTo(0.708133, 6);
  });
});
