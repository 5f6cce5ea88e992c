import { describe, expect, test } from 'vitest';
import { defaultClamp } from '../../src/steps/closing/inputs';
import { closingReport } from '../../src/steps/closing/report';
import { closingState } from '../../src/steps/closing/state';
import type { StepContext } from '../../src/steps/context';
import { inputSpecs, projectInputsSchema } from '../../src/steps/inputs';
import { defaultMaterial } from '../../src/steps/plies/inputs';
import { cup, histogramOf, plate } from '../support/closingHands';
import { emptyContext, inputsWith, trayContext, traySummary } from './contexts';
import { figureOf, numbersOf, verdictOf } from './reportHelpers';

const stackOf = (plies: number) =>
  Array.from({ length: plies }, (_, index) => ({
    ...inputsWith({}).plies.stack[0]!,
    id: `ply-${index + 1}`,
  }));
const valueOf = (context: StepContext, id: string) => figureOf(closingReport(context), id).value;
const flat = (wallMm: number) => ({ closing: histogramOf(plate(120, 64, 20, () => wallMm)) });
/** 0.55 mm face, 0.8 mm sides of 5°. */
const steepCup = { closing: histogramOf(cup(120, 60, 20, 5, 12, 0.55, 0.8)) };

const stableIds = [
  'closing.standOffMm',
  'closing.tiltDeg',
  'closing.clampForceN',
  'closing.laminateForceN',
  'closing.landForceN',
  'closing.looseShare',
  'closing.lightShare',
  'closing.packedShare',
  'closing.chokedShare',
  'closing.longestSlideMm',
  'closing.wantedWallMm',
  'closing.wantedPlies',
];

describe('Mold closing step', () => {
  test('has its stable figures, with a working each, whatever is known', () => {
    const contexts = [
      emptyContext(),
      trayContext(),
      trayContext({ plies: { stack: [] } }),
      trayContext({ closing: { clamps: [] } }),
      trayContext({ closing: { clamps: [{ ...defaultClamp, placed: 'at a place', xMm: 200 }] } }),
      trayContext({ closing: { lands: 'none', resin: 'trapped' }, summary: steepCup }),
    ];
    const ids = closingReport(trayContext()).figures.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const context of contexts) {
      const report = closingReport(context);
      expect(report.figures.map(({ id }) => id)).toEqual(ids);
      expect(numbersOf(report).every(Number.isFinite)).toBe(true);
      for (const id of stableIds) expect(figureOf(report, id).working.join('')).not.toBe('');
      for (const figure of report.figures)
        if (figure.band !== undefined && typeof figure.value === 'number') {
          expect(figure.band[0]).toBeLessThanOrEqual(figure.value);
          expect(figure.band[1]).toBeGreaterThanOrEqual(figure.value);
        }
      for (const { reason } of report.verdicts) expect(reason).not.toMatch(/NaN|undefined|Infinity/u);
    }
  });

  test('wall 1.0 mm, three plies of 0.3 mm as laid: loose, with the numbers and what to change', () => {
    const context = trayContext({ summary: flat(1) });
    const report = closingReport(context);
    expect(figureOf(report, 'closing.looseShare').value).toBe(1);
    expect(figureOf(report, 'closing.laminateForceN').value).toBe(0);
    expect(figureOf(report, 'closing.landForceN').value).toBeCloseTo(1200, 6);
    const load = verdictOf(report, 'closing.load');
    expect(load.word).toBe('stop');
    expect(load.reason).toContain('Shut on the lands, laminate unloaded');
    expect(load.reason).toMatch(/1\.00 mm in the median against 0\.90 mm as laid/u);
    expect(load.fix).toContain('Lay 4 plies');
    expect(load.fix).toMatch(/make the wall 0\.80 mm/u);
    expect(figureOf(report, 'closing.wantedPlies').value).toBe(4);
    expect(figureOf(report, 'closing.wantedWallMm').value).toBeCloseTo((0.9 + 0.7011) / 2, 3);
  });

  test('six plies in a 1.0 mm wall with near-vertical sides: the sides hold the mold open, the face is loose', () => {
    const context = trayContext({
      plies: { stack: stackOf(6) },
      closing: { clamps: [{ ...defaultClamp, count: 4, forceN: 100 }] },
      summary: { closing: histogramOf(cup(120, 60, 40, 2, 16, 1, 1)) },
    });
    const report = closingReport(context);
    expect(figureOf(report, 'closing.restsOn').value).toBe('stands off on the laminate');
    expect(figureOf(report, 'closing.standOffMm').value).toBeGreaterThan(0.8);
    const face = (120 * 60) / (120 * 60 + (2 * 180 * 40) / Math.cos((2 * Math.PI) / 180));
    expect(figureOf(report, 'closing.looseShare').value).toBeCloseTo(face, 2);
    const closes = verdictOf(report, 'closing.closes');
    expect(closes.word).toBe('stop');
    expect(closes.reason).toMatch(/What holds it open: .*steep/u);
    expect(closes.fix).toContain('lay 4 plies there');
    expect(verdictOf(report, 'closing.load').word).toBe('stop');
    const state = closingState(context);
    if (!state.known) throw new Error(state.reason);
    expect(state.places[0]?.steep).toBe(true);
    expect(state.places.find(({ steep }) => !steep)?.mostly).toBe('loose');
  });

  test('the default tray shuts on lightly pressed plies', () => {
    const report = closingReport(trayContext());
    expect(verdictOf(report, 'closing.closes').word).toBe('go');
    expect(figureOf(report, 'closing.lightShare').value).toBeCloseTo(1, 9);
    expect(verdictOf(report, 'closing.load').reason).toContain('the more closed place is taken');
  });

  test('figures add up: clamps are laminate and lands; shares are the whole face', () => {
    const context = trayContext({ summary: steepCup });
    const clamps = Number(valueOf(context, 'closing.clampForceN'));
    const carried =
      Number(valueOf(context, 'closing.laminateForceN')) + Number(valueOf(context, 'closing.landForceN'));
    expect(carried / clamps).toBeCloseTo(1, 6);
    const shares = ['loose', 'light', 'packed', 'choked'].map((name) =>
      Number(valueOf(context, `closing.${name}Share`)),
    );
    expect(shares.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9);
  });

  test('clamps to one side tilt the mold and the verdict says which side stands off', () => {
    const clamps = [{ ...defaultClamp, placed: 'at a place' as const, xMm: 25, yMm: 0 }];
    const report = closingReport(trayContext({ closing: { clamps }, summary: flat(0.45) }));
    const tilt = verdictOf(report, 'closing.tilt');
    expect(Number(figureOf(report, 'closing.tiltDeg').value)).toBeGreaterThan(0);
    expect(tilt.word).toBe('look again');
    expect(tilt.reason).toContain('the −x side most');
    expect(tilt.fix).toContain('toward the −x side');
  });

  test('clamps outside the part tip it', () => {
    const clamps = [{ ...defaultClamp, placed: 'at a place' as const, xMm: 120, yMm: 0 }];
    const report = closingReport(trayContext({ closing: { clamps } }));
    expect(verdictOf(report, 'closing.closes').word).toBe('stop');
    expect(verdictOf(report, 'closing.closes').reason).toContain(
      'The clamps act outside the part: the mold tips.',
    );
    expect(figureOf(report, 'closing.standOffMm').value).toBeNull();
    expect(figureOf(report, 'closing.clampForceN').value).toBe(1200);
  });

  test('debulking, shims and a second measured clamp point are taken up', () => {
    const debulked = trayContext({ closing: { debulkedMm: 0.75 } });
    expect(valueOf(debulked, 'closing.looseShare')).toBe(1);
    expect(valueOf(trayContext({ closing: { debulkFactor: 0.8 } }), 'closing.looseShare')).toBe(1);
    expect(valueOf(trayContext({ closing: { shimMm: 0.3 } }), 'closing.standOffMm')).toBeCloseTo(0.3, 9);
    const clamps = [{ ...defaultClamp, secondForceN: 170, secondOpeningMm: 2 }];
    expect(valueOf(trayContext({ closing: { clamps } }), 'closing.followUpNPerMm')).toBeCloseTo(80, 9);
  });

  test('the choice of the bed curve matters and is named; two points of your own count as measured', () => {
    const aligned = trayContext({ closing: { bedLaw: 'aligned' }, summary: flat(0.6) });
    const woven = trayContext({ summary: flat(0.6) });
    expect(Number(valueOf(aligned, 'closing.landForceN'))).not.toBeCloseTo(
      Number(valueOf(woven, 'closing.landForceN')),
      0,
    );
    expect(figureOf(closingReport(aligned), 'closing.restsOn').working.join(' ')).toContain('aligned tows');
    const bedPoints = [
      { materialId: defaultMaterial.id, lightKpa: 20, lightPlyMm: 0.23, heavyKpa: 100, heavyPlyMm: 0.21 },
    ];
    const own = closingReport(trayContext({ closing: { bedPoints }, summary: flat(0.6) }));
    expect(figureOf(own, 'closing.landForceN').status).toBe('measured');
    expect(figureOf(own, 'closing.restsOn').working.join(' ')).toContain('your two points');
  });

  test('both limits of the resin are shown, and the verdicts use the chosen one', () => {
    const context = trayContext({ summary: flat(0.5) });
    const free = Number(valueOf(context, 'closing.freeStandOffMm'));
    expect(valueOf(context, 'closing.standOffMm')).toBe(free);
    expect(Number(valueOf(context, 'closing.trappedStandOffMm'))).toBeCloseTo(0.7011 - 0.5, 3);
    expect(verdictOf(closingReport(context), 'closing.resin').word).toBe('look again');
    const sealed = trayContext({ summary: flat(0.5), closing: { resin: 'trapped' } });
    expect(valueOf(sealed, 'closing.standOffMm')).toBe(valueOf(context, 'closing.trappedStandOffMm'));
  });

  test('both bounds of friction are shown', () => {
    const context = trayContext({ plies: { stack: stackOf(6) }, summary: steepCup });
    expect(Number(valueOf(context, 'closing.frictionStandOffMm'))).toBeGreaterThan(
      Number(valueOf(context, 'closing.freeStandOffMm')),
    );
    expect(verdictOf(closingReport(context), 'closing.friction').word).toBe('look again');
  });

  test('a nominal wall of the print takes the place of the measured one', () => {
    const context = trayContext({ part: { nominalWall: 'print', printLines: 2 } });
    expect(valueOf(context, 'closing.looseShare')).toBe(1);
  });
});

const closes = (context: StepContext) => verdictOf(closingReport(context), 'closing.closes');

describe('what cannot be used is told in one sentence', () => {
  test.each([
    ['no pattern', emptyContext(), /No pattern is imported/u],
    ['no plies', trayContext({ plies: { stack: [] } }), /The stack has no plies/u],
    ['no clamps', trayContext({ closing: { clamps: [] } }), /No clamp presses on the mold/u],
    [
      'clamps without force',
      trayContext({ closing: { clamps: [{ ...defaultClamp, forceN: 0 }] } }),
      /No clamp presses on the mold/u,
    ],
    [
      'two clamp points that contradict each other',
      trayContext({ closing: { clamps: [{ ...defaultClamp, secondForceN: 100, secondOpeningMm: 5 }] } }),
      /more force at the wider one/u,
    ],
    [
      'two bed points that do not stiffen',
      trayContext({
        closing: {
          bedPoints: [
            {
              materialId: defaultMaterial.id,
              lightKpa: 20,
              lightPlyMm: 0.2,
              heavyKpa: 100,
              heavyPlyMm: 0.25,
            },
          ],
        },
      }),
      /do not stiffen/u,
    ],
    [
      'an absurd material',
      trayContext({ plies: { materials: [{ ...defaultMaterial, arealWeightGsm: -200 }] } }),
      /areal weight must be more than zero|holds no fiber/u,
    ],
    [
      'a model drawn solid',
      trayContext({ summary: { solid: true } }),
      /The show face has no wall behind it/u,
    ],
    [
      'no show face',
      trayContext({ summary: { closing: histogramOf(plate(1, 1, 0, () => 1)) } }),
      /No show face was found/u,
    ],
  ] as const)('%s', (_what, context, sentence) => {
    const verdict = closes(context);
    expect(verdict.word).toBe('not yet known');
    expect(verdict.reason).toMatch(sentence);
    expect(verdict.fix).not.toBe('');
  });

  test('a wall that is missing in places is told beside the balance', () => {
    const kindAreaMm2 = { ...traySummary.kindAreaMm2, unmeasured: 800 };
    const report = closingReport(trayContext({ summary: { kindAreaMm2 } }));
    expect(verdictOf(report, 'closing.coverage').reason).toContain('have no wall behind them');
    expect(verdictOf(report, 'closing.closes').word).toBe('go');
  });

  test('inputs have a spec each, and out-of-range values are refused', () => {
    const inputs = inputsWith({});
    for (const field of Object.keys(inputs.closing)) expect(inputSpecs[`closing.${field}`]).toBeDefined();
    const changed = { ...inputs, closing: { ...inputs.closing, clamps: [{ ...defaultClamp, forceN: -1 }] } };
    expect(projectInputsSchema.safeParse(changed).success).toBe(false);
  });
});
