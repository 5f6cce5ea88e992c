import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { defaultClamp } from '../../src/steps/inputs/clamp';
import { closingReport } from '../../src/steps/closing/report';
import { closingState } from '../../src/steps/closedMold/state';
import type { StepContext } from '../../src/steps/shared/context';
import { inputSpecs, projectInputsSchema } from '../../src/steps/inputs/project';
import { defaultMaterial } from '../../src/steps/inputs/material';
import { pliesReport } from '../../src/steps/plies/report';
import { cup, histogramOf, plate } from '../support/closingHands';
import { propertySeed } from '../support/propertySeed';
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

const reportGelledHot = (moldInputs: object, closing: object = {}) =>
  closingReport(trayContext({ moldInputs, closing, cure: { gelC: 110 } }));

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

  test('wall 1.0 mm round plies that fill 0.70: air, with the numbers and what to change', () => {
    const context = trayContext({ summary: flat(1) });
    const report = closingReport(context);
    expect(figureOf(report, 'closing.looseShare').value).toBe(1);
    expect(figureOf(report, 'closing.laminateForceN').value).toBe(0);
    expect(figureOf(report, 'closing.landForceN').value).toBeCloseTo(1200, 6);
    expect(figureOf(report, 'closing.voidPercent').value).toBeCloseTo(100 * (1 - 0.701052), 3);
    const load = verdictOf(report, 'closing.load');
    expect(load.word).toBe('stop');
    expect(load.reason).toContain('Your plies fill 0.70 mm. The wall is 1.00 mm');
    expect(load.reason).toContain('29.9 % voids');
    expect(load.fix).toBe('');
    expect(figureOf(report, 'closing.wantedPlies').value).toBe(5);
    expect(figureOf(report, 'closing.wantedWallMm').value).toBeCloseTo(0.96 * 0.701052, 6);
    // Nothing presses on the resin, and that is a stop of its own.
    expect(figureOf(report, 'closing.resinAtGelKPa').value).toBe(0);
    expect(verdictOf(report, 'closing.resin').word).toBe('stop');
  });

  test('six plies in a 1.0 mm wall with near-vertical sides: the sides hold the mold open, the face is loose', () => {
    const context = trayContext({
      plies: { stack: stackOf(6) },
      closing: { clamps: [{ ...defaultClamp, count: 4, forceN: 100 }], resin: 'free' },
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
    expect(closes.fix).toBe('');
    expect(verdictOf(report, 'closing.load').word).toBe('stop');
    const state = closingState(context);
    if (!state.known) throw new Error(state.reason);
    expect(state.places[0]?.steep).toBe(true);
    expect(state.places.find(({ steep }) => !steep)?.mostly).toBe('loose');
  });

  test('the tray with the wall wanted stands on its resin, filled and pressed', () => {
    const report = closingReport(trayContext());
    expect(report.verdicts.map(({ word }) => word)).toEqual(report.verdicts.map(() => 'go'));
    expect(verdictOf(report, 'closing.closes').reason).toContain('stands on its resin, as it should');
    expect(figureOf(report, 'closing.packedShare').value).toBeCloseTo(1, 9);
    expect(figureOf(report, 'closing.standOffMm').value).toBeCloseTo(0.701052 - 0.67, 6);
    expect(figureOf(report, 'closing.voidPercent').value).toBe(0);
  });

  test('resin that has no time or no way to travel leaves wide places empty', () => {
    const halfWide = { closing: histogramOf(plate(125, 80, 16, (u) => (u < 0 ? 0.58 : 0.76))) };
    const slow = closingReport(trayContext({ summary: halfWide, closing: { timeToGelMin: 1 } }));
    const quick = closingReport(trayContext({ summary: halfWide, closing: { timeToGelMin: 6000 } }));
    expect(figureOf(quick, 'closing.worstVoidPercent').value).toBe(0);
    expect(Number(figureOf(slow, 'closing.worstVoidPercent').value)).toBeGreaterThan(5);
    expect(verdictOf(slow, 'closing.load').word).not.toBe('go');
  });

  test('unsealed stone steams against the resin, a bag adds the air', () => {
    const dry = { humidityPercent: 0 };
    expect(figureOf(reportGelledHot({ sealerCoats: 2 }, dry), 'closing.voidFreeKpa').value).toBe(0);
    // Gypsum and its vapor balance at one atmosphere near 107.5 °C.
    expect(
      Number(figureOf(reportGelledHot({ sealerCoats: 0 }, dry), 'closing.voidFreeKpa').value),
    ).toBeGreaterThan(101.325);
    const atGel = (closing: object) =>
      Number(figureOf(reportGelledHot({}, closing), 'closing.resinAtGelKPa').value);
    expect(atGel({ bagged: 'bagged' }) - atGel({})).toBeCloseTo(101.325, 9);
  });

  test('an open rim loses the pressure: a warning where it is dammed, a stop where it is not', () => {
    const dammed = verdictOf(closingReport(trayContext()), 'closing.resin');
    expect(dammed.word).toBe('go');
    const open = closingReport(trayContext({ closing: { resin: 'free', timeToGelMin: 6000 } }));
    expect(verdictOf(open, 'closing.resin').word).toBe('stop');
  });

  test(`mass over density and the air are the cavity, on every page (seed ${propertySeed})`, () => {
    const walls = fc.double({ min: 0.55, max: 1.2, noNaN: true });
    fc.assert(
      fc.property(walls, fc.integer({ min: 2, max: 5 }), fc.boolean(), (wallMm, plies, free) => {
        const context = trayContext({
          plies: { stack: stackOf(plies) },
          closing: { resin: free ? 'free' : 'trapped' },
          summary: { closing: histogramOf(cup(120, 60, 20, 8, 8, wallMm, wallMm * 1.02)) },
        });
        const closing = closingReport(context);
        const laminate = pliesReport(context);
        const cavity = Number(figureOf(closing, 'closing.cavityCm3').value);
        const air = Number(figureOf(closing, 'closing.airCm3').value);
        const massG = Number(figureOf(laminate, 'plies.partMassG').value);
        const density = Number(figureOf(laminate, 'plies.densityGCm3').value);
        const voids = Number(figureOf(laminate, 'plies.moldedVoidPercent').value) / 100;
        expect(massG / density).toBeCloseTo(cavity, 6);
        expect(massG / (density / (1 - voids)) + air).toBeCloseTo(cavity, 6);
        expect(100 * voids).toBeCloseTo(Number(figureOf(closing, 'closing.voidPercent').value), 9);
        expect(Number(figureOf(laminate, 'plies.resinLostG').value)).toBeCloseTo(
          Number(figureOf(closing, 'closing.resinOverRimG').value),
          6,
        );
      }),
      { numRuns: 15 },
    );
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
    const debulked = trayContext({ closing: { debulkedMm: 0.85 } });
    expect(valueOf(debulked, 'closing.coldStandOffMm')).toBeCloseTo(0.85 - 0.67, 3);
    // As laid times 0.9 would be less than fiber and resin fill, which no press reaches.
    expect(valueOf(trayContext(), 'closing.coldStandOffMm')).toBeCloseTo(0.701052 - 0.67, 3);
    expect(valueOf(trayContext({ closing: { debulkFactor: 1 } }), 'closing.coldStandOffMm')).toBeCloseTo(
      0.75 - 0.67,
      3,
    );
    expect(valueOf(trayContext({ closing: { shimMm: 0.3 } }), 'closing.standOffMm')).toBeCloseTo(0.3, 9);
    const clamps = [{ ...defaultClamp, secondForceN: 170, secondOpeningMm: 2 }];
    expect(valueOf(trayContext({ closing: { clamps } }), 'closing.followUpNPerMm')).toBeCloseTo(80, 9);
  });

  test('the choice of the bed curve matters and is named; two points of your own count as measured', () => {
    const aligned = trayContext({ closing: { bedLaw: 'aligned', resin: 'free' }, summary: flat(0.6) });
    const woven = trayContext({ closing: { resin: 'free' }, summary: flat(0.6) });
    expect(Number(valueOf(aligned, 'closing.landForceN'))).not.toBeCloseTo(
      Number(valueOf(woven, 'closing.landForceN')),
      0,
    );
    expect(figureOf(closingReport(aligned), 'closing.restsOn').working.join(' ')).toContain('aligned tows');
    const bedPoints = [
      { materialId: defaultMaterial.id, lightKpa: 20, lightPlyMm: 0.23, heavyKpa: 100, heavyPlyMm: 0.21 },
    ];
    const own = closingReport(trayContext({ closing: { bedPoints, resin: 'free' }, summary: flat(0.6) }));
    expect(figureOf(own, 'closing.landForceN').status).toBe('measured');
    expect(figureOf(own, 'closing.restsOn').working.join(' ')).toContain('your two points');
  });

  test('both cases of the resin are shown, and the verdicts use the chosen one', () => {
    const held = trayContext({ summary: flat(0.62) });
    const trappedMm = Number(valueOf(held, 'closing.trappedStandOffMm'));
    expect(trappedMm).toBeCloseTo(0.701052 - 0.62, 6);
    expect(valueOf(held, 'closing.standOffMm')).toBe(trappedMm);
    const free = trayContext({ summary: flat(0.62), closing: { resin: 'free' } });
    expect(valueOf(free, 'closing.standOffMm')).toBe(valueOf(held, 'closing.freeStandOffMm'));
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
