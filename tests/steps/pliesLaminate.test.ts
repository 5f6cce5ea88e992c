import { describe, expect, test } from 'vitest';
import { defaultMaterial, type Material } from '../../src/steps/inputs/material';
import { type PliesInputs } from '../../src/steps/inputs/plies';
import { pliesReport } from '../../src/steps/plies/report';
import { emptyContext, plyAt, trayContext } from './contexts';
import { figureOf, verdictOf } from './reportHelpers';

const own = {
  e1GPa: 62,
  e2GPa: 62,
  g12GPa: 4.5,
  nu12: 0.05,
  expansion1PpmPerK: 3,
  expansion2PpmPerK: 3,
  expansion3PpmPerK: 50,
} as const;
const woven: Material = { ...defaultMaterial, ...own };
const oneWay: Material = {
  ...defaultMaterial,
  id: 'ud',
  name: 'Tape',
  weave: 'unidirectional',
  resinMassFraction: 0.35,
};
const strengths = {
  tension1Mpa: 700,
  compression1Mpa: 560,
  tension2Mpa: 690,
  compression2Mpa: 550,
  shear12Mpa: 88,
} as const;

/** The laminate itself, whatever wall and oven it lies in: no voids, no bleed, free of stress 100 K over its use, as measured. */
const measured = { voidPercent: 0, resinLostPercent: 0, stressFreeC: 120, roomTemperatureC: 20 };
const reportWith = (plies: Partial<PliesInputs>) =>
  pliesReport(trayContext({ plies: { ...measured, ...plies } }));
const stackOf = (materialId: string, ...angles: number[]) =>
  angles.map((angleDeg, index) => plyAt(`p${index}`, angleDeg, { materialId }));
const tape = (...angles: number[]) => reportWith({ materials: [oneWay], stack: stackOf('ud', ...angles) });
const turnedOver = (faceDown: boolean) =>
  reportWith({
    materials: [oneWay],
    stack: [
      plyAt('a', 30, { materialId: 'ud' }),
      plyAt('b', 30, { materialId: 'ud', faceDown }),
      plyAt('c', 30, { materialId: 'ud', faceDown }),
      plyAt('d', 30, { materialId: 'ud' }),
    ],
  });
const roll = (hoursOutH: number, allowedOutTimeH: number | null, plannedLayupH = 6) =>
  reportWith({ materials: [{ ...defaultMaterial, hoursOutH, allowedOutTimeH }], plannedLayupH });
const value = (report: ReturnType<typeof pliesReport>, id: string) => Number(figureOf(report, id).value);

describe('stiffness', () => {
  test('of a card with its own constants is computed, without a band', () => {
    const report = reportWith({ materials: [woven], stack: stackOf('twill-200', 0, 45, 0, 45) });
    expect(value(report, 'plies.ex')).toBeCloseTo(44.729, 3);
    expect(value(report, 'plies.ey')).toBeCloseTo(44.729, 3);
    expect(value(report, 'plies.gxy')).toBeCloseTo(17.012, 3);
    expect(figureOf(report, 'plies.ex')).toMatchObject({ status: 'computed', unit: 'GPa' });
    expect(figureOf(report, 'plies.ex').band).toBeUndefined();
  });

  test('of a card without constants is from memory, inside a band', () => {
    const ex = figureOf(pliesReport(trayContext()), 'plies.ex');
    expect(ex.status).toBe('from memory');
    expect(ex.band?.[0]).toBeLessThan(Number(ex.value));
    expect(ex.band?.[1]).toBeGreaterThan(Number(ex.value));
  });

  test('one constant of its own is used, and leaves no band where it alone counts', () => {
    const card = { ...oneWay, e1GPa: 150 };
    const report = reportWith({ materials: [card], stack: stackOf('ud', 0) });
    expect(value(report, 'plies.ex')).toBeCloseTo(150, 9);
    const [low, high] = figureOf(report, 'plies.ex').band ?? [0, 0];
    expect(high - low).toBeCloseTo(0, 9);
    expect(value(report, 'plies.ey')).toBeLessThan(15);
  });

  test('against plates: a thin carbon wall is softer than steel and far stiffer than printed plastic', () => {
    const report = pliesReport(trayContext());
    expect(value(report, 'plies.bendingVsSteel')).toBeLessThan(1);
    expect(value(report, 'plies.bendingVsPrintedPlastic')).toBeGreaterThan(5);
  });

  test('impossible constants are a sentence, not a crash', () => {
    const report = reportWith({
      materials: [{ ...oneWay, nu12: 1, e1GPa: 10, e2GPa: 60 }],
      stack: stackOf('ud', 0),
    });
    expect(figureOf(report, 'plies.ex').value).toBeNull();
    expect(verdictOf(report, 'plies.constants')).toMatchObject({ word: 'look again' });
    expect(verdictOf(report, 'plies.constants').reason).toContain("Poisson's ratio");
    expect(value(report, 'plies.curedThicknessMm')).toBeGreaterThan(0);
  });
});

describe('warp', () => {
  // Mallick, Fiber-Reinforced Composites, 3rd ed., example 3.15: [0/90], plies of 1 mm, −100 K.
  test('of a 0/90 pair as the book prints it', () => {
    const card: Material = {
      ...oneWay,
      e1GPa: 133.4,
      e2GPa: 8.784,
      g12GPa: 3.254,
      nu12: 0.26,
      expansion1PpmPerK: -0.5,
      expansion2PpmPerK: 12,
      expansion3PpmPerK: 12,
      fiberDensityGCm3: 2,
      resinDensityGCm3: 1,
      // As much volume of fiber as of resin: 1000 g/m² of fiber make 1 mm.
      resinMassFraction: 1 / 3,
      arealWeightGsm: 1000,
    };
    const report = reportWith({ materials: [card], stack: stackOf('ud', 0, 90) });
    expect(value(report, 'plies.curedThicknessMm')).toBeCloseTo(2, 12);
    expect(value(report, 'plies.curvaturePerM')).toBeCloseTo(0.511739, 6);
    expect(figureOf(report, 'plies.curvaturePerM').status).toBe('computed');
    // |κ| L² / 8 over 120 mm.
    expect(value(report, 'plies.bowMm')).toBeCloseTo((0.511739 * 0.12 ** 2 * 1000) / 8, 4);
    const warp = verdictOf(report, 'plies.warp');
    expect(warp.word).toBe('look again');
  });

  test('is silent for four plies of one balanced fabric, symmetric or not', () => {
    for (const angles of [
      [0, 0, 0, 0],
      [0, 45, 0, 45],
      [0, 0, 45, 45],
    ]) {
      const report = reportWith({ stack: stackOf('twill-200', ...angles) });
      expect(value(report, 'plies.curvaturePerM')).toBe(0);
      expect(verdictOf(report, 'plies.warp')).toMatchObject({ word: 'go', fix: '' });
      expect(verdictOf(report, 'plies.balance').word).toBe('go');
    }
  });

  test('is warned of for a woven ply on one side of tapes', () => {
    const materials = [defaultMaterial, oneWay];
    const stack = [plyAt('a'), plyAt('b', 0, { materialId: 'ud' }), plyAt('c', 0, { materialId: 'ud' })];
    expect(verdictOf(reportWith({ materials, stack }), 'plies.warp').word).toBe('look again');
  });

  test('of a coat counts from where the coat set: none at room, about 2.2 m radius for one set 60 K hotter', () => {
    const coat = { coatFace: 'show', coatThicknessMm: 0.15, materials: [woven] } as const;
    const cold = reportWith({ ...coat, materials: [woven], coatSetC: 20 });
    expect(value(cold, 'plies.curvaturePerM')).toBe(0);
    expect(verdictOf(cold, 'plies.warp').word).toBe('go');
    const hot = reportWith({ ...coat, materials: [woven], coatSetC: 80 });
    const radiusM = 1 / Math.abs(value(hot, 'plies.curvaturePerM'));
    expect(radiusM).toBeGreaterThan(1.8);
    expect(radiusM).toBeLessThan(2.6);
    // The coat shrinks more than the laminate and hollows its own face.
    expect(value(hot, 'plies.curvaturePerM')).toBeGreaterThan(0);
    expect(figureOf(hot, 'plies.curvaturePerM').status).toBe('from memory');
    expect(verdictOf(hot, 'plies.warp').word).toBe('look again');
    const onCore = reportWith({ ...coat, materials: [woven], coatFace: 'core', coatSetC: 80 });
    expect(value(onCore, 'plies.curvaturePerM')).toBeCloseTo(-value(hot, 'plies.curvaturePerM'), 9);
  });

  test('bow is not known without a part, and the verdict takes a strip', () => {
    const report = pliesReport(emptyContext({ plies: { materials: [oneWay], stack: stackOf('ud', 0, 90) } }));
    expect(figureOf(report, 'plies.bowMm').value).toBeNull();
    expect(verdictOf(report, 'plies.warp').reason).toContain('of strip');
  });

  test('spring-in grows with cure shrinkage and keeps its estimate mark', () => {
    const shrinkage = (cureShrinkagePercent: number) =>
      value(reportWith({ materials: [woven], cureShrinkagePercent }), 'plies.springInDeg');
    // 90°, 3 and 50 × 10⁻⁶/K, −100 K: arc geometry by hand.
    expect(shrinkage(0)).toBeCloseTo(0.4251, 4);
    expect(shrinkage(0.5)).toBeCloseTo(0.877, 2);
    expect(figureOf(reportWith({}), 'plies.springInDeg').status).toBe('from memory');
  });
});

describe('balance', () => {
  test('a tape at one angle shears, with its mirror it does not', () => {
    expect(verdictOf(tape(0, 30, 30, 0), 'plies.balance').word).toBe('look again');
    expect(verdictOf(tape(30, -30, -30, 30), 'plies.balance').word).toBe('go');
  });

  test('a ply turned over lies at minus its angle', () => {
    expect(verdictOf(turnedOver(false), 'plies.balance').word).toBe('look again');
    expect(verdictOf(turnedOver(true), 'plies.balance').word).toBe('go');
    expect(figureOf(turnedOver(true), 'plies.ex').working.join(' ')).toContain('30/−30/−30/30');
  });

  test('the half with mirrored pieces is looked at too', () => {
    const stack = [
      plyAt('a', 30, { materialId: 'ud' }),
      plyAt('b', -30, { materialId: 'ud', mirroredPair: true }),
      plyAt('c', -30, { materialId: 'ud', mirroredPair: true }),
      plyAt('d', 30, { materialId: 'ud' }),
    ];
    const report = reportWith({ materials: [oneWay], stack });
    // Balanced in the first half, four plies at 30° in the second.
    expect(verdictOf(report, 'plies.balance').word).toBe('look again');
    expect(figureOf(report, 'plies.gxy').working.join(' ')).toContain('mirrored pieces');
  });
});

describe('content and mass', () => {
  test('bleed thins the laminate and raises its fiber content, voids do the opposite', () => {
    const none = reportWith({});
    const bled = reportWith({ resinLostPercent: 10 });
    const porous = reportWith({ voidPercent: 3 });
    expect(value(bled, 'plies.moldedThicknessMm')).toBeLessThan(value(none, 'plies.moldedThicknessMm'));
    expect(value(bled, 'plies.moldedFiberFraction')).toBeGreaterThan(
      value(none, 'plies.moldedFiberFraction'),
    );
    // What the plies fill is theirs, whatever becomes of them.
    expect(value(bled, 'plies.curedThicknessMm')).toBe(value(none, 'plies.curedThicknessMm'));
    expect(value(bled, 'plies.arealMassGsm')).toBeCloseTo(600 + 0.9 * (600 / 0.58 - 600), 6);
    expect(value(bled, 'plies.prepregGsm')).toBeCloseTo(600 / 0.58, 6);
    expect(value(porous, 'plies.moldedThicknessMm')).toBeCloseTo(
      value(none, 'plies.moldedThicknessMm') / 0.97,
      9,
    );
    expect(value(porous, 'plies.densityGCm3')).toBeCloseTo(0.97 * value(none, 'plies.densityGCm3'), 9);
    expect(verdictOf(porous, 'plies.content').word).toBe('stop');
    expect(verdictOf(reportWith({ voidPercent: 2 }), 'plies.content').word).toBe('look again');
  });

  test('the part weighs its mid-surface times the laminate, plus its patches', () => {
    const bare = reportWith({});
    expect(value(bare, 'plies.midSurfaceCm2')).toBeCloseTo(100, 6);
    expect(value(bare, 'plies.partMassG')).toBeCloseTo(0.01 * (600 / 0.58), 6);
    const patch = {
      id: 'x',
      kind: 'doubler' as const,
      wallMm: null,
      place: 'hinge',
      materialId: 'twill-200',
      angleDeg: 45,
      faceDown: false,
      areaCm2: 10,
      afterPly: 2,
    };
    const doubled = reportWith({
      patches: [patch, { ...patch, id: 'y' }, { ...patch, id: 'z', place: 'boss' }],
    });
    expect(value(doubled, 'plies.partMassG') - value(bare, 'plies.partMassG')).toBeCloseTo(
      3 * 0.001 * (200 / 0.58),
      6,
    );
    // Two patches of one place lie on each other.
    expect(value(doubled, 'plies.patchLaidMm')).toBeCloseTo(1.25, 9);
    expect(value(doubled, 'plies.prepregAreaCm2')).toBeCloseTo(1.3 * 330, 9);
  });

  test('fiber past the usual most is looked at again, past touching fibers it stops', () => {
    expect(verdictOf(reportWith({}), 'plies.content').word).toBe('go');
    const dry = reportWith({ materials: [{ ...defaultMaterial, resinMassFraction: 0.3 }] });
    expect(verdictOf(dry, 'plies.content')).toMatchObject({ word: 'look again' });
    expect(verdictOf(dry, 'plies.content').reason).toContain('0.55');
    const bone = reportWith({ materials: [{ ...defaultMaterial, resinMassFraction: 0.1 }] });
    expect(verdictOf(bone, 'plies.content').word).toBe('stop');
    const rich = reportWith({ materials: [{ ...defaultMaterial, resinMassFraction: 0.6 }] });
    expect(verdictOf(rich, 'plies.content').word).toBe('look again');
  });
});

describe('what was measured', () => {
  test('a caliper over plies as laid replaces the card and is marked', () => {
    const report = reportWith({ materials: [{ ...defaultMaterial, caliperTotalMm: 1.4, caliperPlies: 5 }] });
    expect(figureOf(report, 'plies.laidPlyMm')).toMatchObject({ status: 'measured' });
    expect(value(report, 'plies.laidPlyMm')).toBeCloseTo(0.28, 12);
    expect(value(report, 'plies.laidThicknessMm')).toBeCloseTo(0.84, 12);
  });

  test('a weighed offcut replaces the resin content', () => {
    // 100 cm² of 200 g/m² fiber are 2 g; 3.2 g in all are 37.5 % resin.
    const report = reportWith({ materials: [{ ...defaultMaterial, offcutMassG: 3.2, offcutAreaCm2: 100 }] });
    expect(value(report, 'plies.fiberMassFraction')).toBeCloseTo(0.625, 12);
    expect(figureOf(report, 'plies.resinGsm').working.join(' ')).toContain('by the scale');
  });

  test.each([
    [{ offcutMassG: 3 }, 'needs both its mass and its area'],
    [{ offcutMassG: 1.5, offcutAreaCm2: 100 }, 'weighs less than its dry fiber'],
  ])('%j says what is wrong', (change, sentence) => {
    const report = reportWith({ materials: [{ ...defaultMaterial, ...change }] });
    expect(verdictOf(report, 'plies.fit').reason).toContain(sentence);
    expect(verdictOf(report, 'plies.fit').reason).toContain(defaultMaterial.name);
  });

  test('a patch without a card, or on a ply that is not there, is named by its number', () => {
    const patch = {
      id: 'x',
      kind: 'doubler' as const,
      wallMm: null,
      place: 'hinge',
      materialId: 'gone',
      angleDeg: 0,
      faceDown: false,
      areaCm2: 4,
      afterPly: 1,
    };
    expect(verdictOf(reportWith({ patches: [patch] }), 'plies.fit').reason).toContain('Patch 1');
    const high = { ...patch, materialId: 'twill-200', afterPly: 9 };
    expect(verdictOf(reportWith({ patches: [high] }), 'plies.fit').reason).toContain('lies on ply 9');
  });
});

describe('strength', () => {
  test('is not spoken of without strengths, and is an estimate with them', () => {
    expect(figureOf(reportWith({}), 'plies.firstFailureXNPerMm').value).toBeNull();
    const card = { ...woven, ...strengths };
    const report = reportWith({ materials: [card], stack: stackOf('twill-200', 0) });
    // One ply of 0.2337 mm, along its warp, with no residual stress: strength times thickness.
    expect(value(report, 'plies.firstFailureXNPerMm')).toBeCloseTo(
      700 * value(report, 'plies.curedThicknessMm'),
      6,
    );
    const { working, label } = figureOf(report, 'plies.firstFailureXNPerMm');
    expect(label).toContain('estimate');
    expect(working.join(' ')).toContain('Never the proof');
  });
});

describe('out-time', () => {
  test('is not judged until a card says what is allowed', () => {
    const report = roll(100, null);
    expect(report.verdicts.map(({ id }) => id)).not.toContain('plies.outTime');
    expect(figureOf(report, 'plies.outTimeLeftH').value).toBeNull();
  });

  test.each([
    [100, 720, 'go'],
    [660, 720, 'look again'],
    [717, 720, 'stop'],
    [730, 720, 'stop'],
  ] as const)('%d h out of %d h: %s', (out, allowed, word) => {
    const report = roll(out, allowed);
    expect(verdictOf(report, 'plies.outTime').word).toBe(word);
    expect(value(report, 'plies.outTimeLeftH')).toBe(allowed - out - 6);
  });

  test('the roll with the least left counts, a roll that no ply uses does not', () => {
    const other = { ...defaultMaterial, id: 'other', name: 'Old roll', hoursOutH: 700, allowedOutTimeH: 720 };
    const fresh = { ...defaultMaterial, allowedOutTimeH: 720 };
    expect(verdictOf(reportWith({ materials: [fresh, other] }), 'plies.outTime').word).toBe('go');
    const both = reportWith({
      materials: [fresh, other],
      stack: [plyAt('a'), plyAt('b', 0, { materialId: 'other' })],
      plannedLayupH: 30,
    });
    expect(verdictOf(both, 'plies.outTime')).toMatchObject({ word: 'stop' });
    expect(verdictOf(both, 'plies.outTime').reason).toContain('Old roll');
  });
});
