import { describe, expect, test } from 'vitest';
import { defaultMaterial } from '../../src/steps/inputs/material';
import { closingReport } from '../../src/steps/closing/report';
import { cureReport } from '../../src/steps/cure/report';
import { pliesReport } from '../../src/steps/plies/report';
import { wallsReport } from '../../src/steps/walls/report';
import { histogramOf, plate } from '../support/closingHands';
import { emptyContext, plyAt, trayContext, trayMold, walls } from './contexts';
import { figureOf, verdictOf } from './reportHelpers';

const laidPlyWithCard = (laidThicknessMm: number | null) =>
  figureOf(
    pliesReport(trayContext({ plies: { materials: [{ ...defaultMaterial, laidThicknessMm }] } })),
    'plies.laidPlyMm',
  );

const wanted = (toleranceMm: number | null) =>
  figureOf(pliesReport(trayContext({ walls: { toleranceMm } })), 'plies.wantedWallMm').value;
const weighed = (massG: number, thicknessMm: number) =>
  pliesReport(
    trayContext({
      plies: { plateMassG: massG, plateAreaCm2: 100, plateThicknessMm: thicknessMm },
    }),
  );

describe('Ply schedule step', () => {
  test('stack figures with their working', () => {
    const report = pliesReport(trayContext());
    expect(figureOf(report, 'plies.plyCount').value).toBe(3);
    expect(figureOf(report, 'plies.laidThicknessMm').value).toBeCloseTo(0.75, 9);
    expect(figureOf(report, 'plies.curedThicknessMm').value).toBeCloseTo(0.7011, 3);
    expect(figureOf(report, 'plies.fiberVolumeFraction').value).toBeCloseTo(0.4835, 4);
    expect(figureOf(report, 'plies.fiberVolumeFraction').working[0]).toContain('0.580 / 1.77');
    expect(figureOf(report, 'plies.arealMassGsm').value).toBeCloseTo(600 / 0.58, 6);
  });

  test('the ready-made card counts as common practice, a caliper as measured, a bulk factor as an estimate', () => {
    expect(laidPlyWithCard(0.25).status).toBe('common practice');
    expect(laidPlyWithCard(0.28)).toMatchObject({ status: 'measured', value: 0.28 });
    expect(laidPlyWithCard(0.28).band).toBeUndefined();
    const estimate = laidPlyWithCard(null);
    expect(estimate.status).toBe('common practice');
    expect(estimate.value).toBeCloseTo(0.2337 * 1.07, 3);
    expect(estimate.band?.[0]).toBeLessThan(Number(estimate.value));
    expect(estimate.working.join(' ')).toContain('caliper');
  });

  test('area shares of walls that are right, too wide and too narrow', () => {
    const showWall = walls([0.6, 100], [0.67, 700], [0.92, 200]);
    const report = pliesReport(trayContext({ summary: { showWall } }));
    expect(figureOf(report, 'plies.loosePercent').value).toBeCloseTo(20, 9);
    expect(figureOf(report, 'plies.betweenPercent').value).toBeCloseTo(70, 9);
    expect(figureOf(report, 'plies.underPercent').value).toBeCloseTo(10, 9);
  });

  test('Walls, Ply schedule and Closing take the same walls and the same word', () => {
    for (const wallMm of [0.6, 0.63, 0.67, 0.715, 0.9]) {
      const showRayWall = { p5: wallMm, median: wallMm, p95: wallMm, min: wallMm, max: wallMm, hitShare: 1 };
      const context = trayContext({
        summary: {
          showRayWall,
          showWall: walls([wallMm, 10_000]),
          closing: histogramOf(plate(125, 80, 16, () => wallMm)),
        },
      });
      const plies = pliesReport(context);
      expect(verdictOf(plies, 'plies.fit').word).toBe(verdictOf(wallsReport(context), 'walls.band').word);
      expect(figureOf(plies, 'plies.wantedWallMm').value).toBe(
        figureOf(closingReport(context), 'closing.wantedWallMm').value,
      );
      expect(figureOf(plies, 'plies.wantedPlies').value).toBe(
        figureOf(closingReport(context), 'closing.wantedPlies').value,
      );
    }
  });

  test('the tolerance of print and stone is an input: 4 % until it is given', () => {
    expect(wanted(null)).toBeCloseTo(0.96 * 0.701052, 6);
    expect(wanted(0.05)).toBeCloseTo(0.651052, 6);
    expect(wanted(0)).toBeCloseTo(0.701052, 6);
  });

  test('two beads of 0.5 mm round three plies leave air; beads of 0.335 fit', () => {
    const report = pliesReport(trayContext({ part: { nominalWall: 'print', printLines: 2 } }));
    const pairing = verdictOf(report, 'plies.pairing');
    expect(pairing.word).toBe('look again');
    expect(pairing.reason).toContain('29.9 % of it would be air');
    expect(verdictOf(report, 'plies.fit').word).toBe('stop');
    const fitting = pliesReport(
      trayContext({ part: { nominalWall: 'print', printLines: 2 }, plies: { lineWidthMm: 0.335 } }),
    );
    expect(verdictOf(fitting, 'plies.pairing').word).toBe('go');
    expect(verdictOf(fitting, 'plies.fit').word).toBe('go');
  });

  test('a stack that holds more fiber than it lets through has no right wall', () => {
    const lean = { ...defaultMaterial, resinMassFraction: 0.32 };
    const fit = verdictOf(pliesReport(trayContext({ plies: { materials: [lean] } })), 'plies.fit');
    expect(fit.word).not.toBe('go');
  });

  describe('doublers and overlaps count into the stack there', () => {
    const overlap = {
      id: 'x',
      kind: 'overlap' as const,
      place: 'corner',
      materialId: 'twill-200',
      angleDeg: 0,
      faceDown: false,
      areaCm2: 2,
      afterPly: 1,
      wallMm: null,
    };
    const local = (changes: object) =>
      verdictOf(
        pliesReport(trayContext({ plies: { patches: [{ ...overlap, ...changes }] } })),
        'plies.local',
      );

    test('an overlap of 0.23 mm in a gap of 0.67 is a stop', () => {
      const verdict = local({});
      expect(verdict.word).toBe('stop');
      expect(verdict.reason).toContain('the plies fill 0.93 mm and the wall is 0.67 mm');
      expect(verdict.reason).toContain('fiber would fill 67 % of it');
    });

    test('with the wall drawn for it it is go', () => {
      expect(local({ wallMm: 0.9 }).word).toBe('go');
    });
  });

  describe('a cured plate on the scale', () => {
    test('replaces what the cards fill, and its caliper tells the voids', () => {
      // 6 g of fiber and 4 g of resin on 100 cm²: 0.338983 + 0.333333 mm; a caliper of 0.70 mm finds 4.0 % voids.
      const report = weighed(10, 0.7);
      expect(figureOf(report, 'plies.curedThicknessMm')).toMatchObject({ status: 'measured' });
      expect(figureOf(report, 'plies.curedThicknessMm').value).toBeCloseTo(0.672316, 6);
      expect(figureOf(report, 'plies.curedThicknessMm').working.join(' ')).toContain('4.0 % voids');
    });

    test('is refused when it weighs less than its fiber, or is given by halves', () => {
      expect(verdictOf(weighed(5, 0.7), 'plies.fit').reason).toContain('weighs less than its dry fiber');
      const halves = pliesReport(trayContext({ plies: { plateMassG: 10 } }));
      expect(verdictOf(halves, 'plies.fit').reason).toContain('needs its mass, its area and its thickness');
    });
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
        kind: 'doubler' as const,
        wallMm: null,
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
    expect(figureOf(report, 'plies.laidThicknessMm').value).toBeCloseTo(0.8, 9);
    expect(figureOf(report, 'plies.fiberVolumeFraction').value).toBeCloseTo(0.4835, 4);
    expect(figureOf(report, 'plies.laidPlyMm').value).toBeCloseTo(0.4, 9);
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
    expect(figureOf(report, 'plies.laidThicknessMm').value).toBeCloseTo(0.75, 9);
    expect(figureOf(report, 'plies.loosePercent').value).toBeNull();
    expect(verdictOf(report, 'plies.fit').word).toBe('not yet known');
  });

  describe('separator film', () => {
    const films = { filmFaces: 'both' as const, filmMm: 0.05 };

    test('takes its part of the wall: of the wanted one, of the gap and of the balance', () => {
      const bare = trayContext();
      const filmed = trayContext({ walls: films });
      const wantedOf = (context: typeof bare) =>
        Number(figureOf(pliesReport(context), 'plies.wantedWallMm').value);
      expect(wantedOf(filmed) - wantedOf(bare)).toBeCloseTo(0.1, 9);
      // 0.67 mm less 0.10 mm of film are 0.57 for plies that fill 0.70: short of resin.
      expect(verdictOf(wallsReport(filmed), 'walls.band').word).toBe('stop');
      const standOff = (context: typeof bare) =>
        Number(figureOf(closingReport(context), 'closing.standOffMm').value);
      expect(standOff(filmed) - standOff(bare)).toBeCloseTo(0.1, 6);
    });

    test('in a wall drawn for it all is go', () => {
      const wallMm = 0.773;
      const showRayWall = { p5: wallMm, median: wallMm, p95: wallMm, min: wallMm, max: wallMm, hitShare: 1 };
      const context = trayContext({
        walls: films,
        summary: {
          showRayWall,
          showWall: walls([wallMm, 10_000]),
          closing: histogramOf(plate(125, 80, 16, () => wallMm)),
        },
      });
      expect(verdictOf(wallsReport(context), 'walls.band').word).toBe('go');
      expect(verdictOf(closingReport(context), 'closing.load').word).toBe('go');
      expect(verdictOf(closingReport(context), 'closing.closes').word).toBe('go');
    });

    test.each([
      [0, 'not yet known'],
      [110, 'stop'],
      [180, 'go'],
    ])('that bears %d °C (0: not read) under an oven of 120 is %s', (filmLimitC, word) => {
      const report = cureReport(trayContext({ walls: { ...films, filmLimitC } }));
      expect(verdictOf(report, 'cure.film').word).toBe(word);
    });
  });
});
