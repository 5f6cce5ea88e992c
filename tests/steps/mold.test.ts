import { defaultProjectInputs } from '../../src/steps/inputs/project';
import { describe, expect, test } from 'vitest';
import type { MoldInputs } from '../../src/steps/inputs/mold';
import { moldReport } from '../../src/steps/mold/report';
import { pourChoicesOf } from '../../src/steps/mold/pourChoicesOf';
import { finishedRim } from '../../src/steps/mold/sizes';
import type { PourFindings } from '../../src/core/stone/pours/castHalves';
import { checkPourChoices } from '../../src/core/stone/pours/pourChoices';
import { emptyContext, inputsWith, trayContext, trayMold } from './contexts';
import { figureOf, numbersOf, verdictOf } from './reportHelpers';

const { bag, measured, wanted } = defaultProjectInputs.mold;
const reportWith = (moldInputs: Partial<MoldInputs>) => moldReport(trayContext({ moldInputs }));
const figureWith = (id: string, moldInputs: Partial<MoldInputs>) => figureOf(reportWith(moldInputs), id);
const verdictWith = (id: string, moldInputs: Partial<MoldInputs>) => verdictOf(reportWith(moldInputs), id);

/** Ids that pages, paper and headless readers rely on. */
const stableIds = [
  'mold.boxMm',
  'mold.negative.volumeMl',
  'mold.positive.volumeMl',
  'mold.envelopeMl',
  'mold.cavityMl',
  'mold.slurryDensityGMl',
  'mold.dryDensityGMl',
  'mold.negative.powderG',
  'mold.negative.waterG',
  'mold.positive.powderG',
  'mold.positive.waterG',
  'mold.batches',
  'mold.floatUpForceN',
  'mold.counterweightG',
  'mold.negative.freeWaterG',
  'mold.positive.freeWaterG',
  'mold.negative.dryTargetG',
  'mold.positive.dryTargetG',
  'mold.thinnestStoneMm',
  'mold.printScale',
  'mold.finishedLengthMm',
];

describe('Stone mold step', () => {
  test.each(stableIds)('%s is there and known for a sound tray', (id) => {
    expect(figureOf(moldReport(trayContext()), id).value).not.toBeNull();
    expect(figureOf(moldReport(emptyContext()), id).working.length).toBeGreaterThan(0);
  });

  test('by hand: 203.28 mL of negative at W/P 0.24, nothing lost', () => {
    const report = reportWith({ bag: { ...bag, waterPowderRatio: 0.24 }, lossPercent: 0 });
    const perG = 1 / 2.757 + 0.24 / 0.9982;
    const powderG = 203.28 / perG;
    expect(figureOf(report, 'mold.negative.powderG').value).toBeCloseTo(powderG, 9);
    expect(figureOf(report, 'mold.negative.waterG').value).toBeCloseTo(0.24 * powderG, 9);
    expect(figureOf(report, 'mold.negative.freeWaterG').value).toBeCloseTo(
      powderG * (0.24 - 0.186180382592),
      6,
    );
    expect(figureOf(report, 'mold.negative.dryTargetG').value).toBeCloseTo(powderG * 1.186180382592, 6);
    expect(figureOf(report, 'mold.waterPowderRatio').status).toBe('your entry');
  });

  test('by hand: 126 mL of envelope in slurry, a pattern of 9 mL at 1.24', () => {
    const report = reportWith({ counterweightMargin: 1.3 });
    const slurry = Number(figureOf(report, 'mold.slurryDensityGMl').value);
    const upG = slurry * 126 - 9 * 1.24;
    expect(figureOf(report, 'mold.floatUpForceN').value).toBeCloseTo((upG * 9.80665) / 1000, 9);
    expect(figureOf(report, 'mold.counterweightG').value).toBeCloseTo(1.3 * upG, 6);
    expect(figureWith('mold.patternG', { measured: { ...measured, patternG: 14 } })).toMatchObject({
      value: 14,
      status: 'measured',
    });
  });

  test('what comes from memory or habit is marked so, what was measured too', () => {
    const report = moldReport(trayContext());
    expect(figureOf(report, 'mold.settingExpansionPercent')).toMatchObject({
      status: 'from memory',
      source: 'iso6873',
      band: [0, 0.15],
    });
    expect(figureOf(report, 'mold.strengthMPa')).toMatchObject({ status: 'published', source: 'iso6873' });
    expect(figureOf(report, 'mold.settingExpansionPercent').working.join(' ')).toContain(
      '0.00 to 0.18 % after a day',
    );
    expect(figureOf(report, 'mold.waterPowderRatio').status).toBe('published');
    expect(figureOf(report, 'mold.finishedLengthMm').status).toBe('from memory');
    expect(figureOf(report, 'mold.settingPeakC').status).toBe('from memory');
    expect(figureOf(report, 'mold.counterweightG').status).toBe('common practice');
    const own = reportWith({ measured: { ...measured, settingExpansionPercent: 0.08, peakC: 41 } });
    expect(figureOf(own, 'mold.settingExpansionPercent')).toMatchObject({ status: 'measured', value: 0.08 });
    expect(figureOf(own, 'mold.settingPeakC')).toMatchObject({ status: 'measured', value: 41 });
    expect(verdictOf(own, 'mold.heat').word).toBe('go');
  });

  test('water is not offered as a way to tune size', () => {
    const report = reportWith({ bag: { ...bag, waterPowderRatio: 0.28 } });
    expect(verdictOf(report, 'mold.mix')).toMatchObject({ word: 'look again' });
    expect(verdictOf(report, 'mold.mix').reason).toContain('no way to tune expansion');
    expect(figureOf(report, 'mold.finishedLengthMm').value).toEqual(
      figureWith('mold.finishedLengthMm', {}).value,
    );
    expect(figureOf(report, 'mold.waterPowderRatio').working.join(' ')).toContain('No knob for expansion');
  });

  test('too little water stops the mix with a sentence, and what needs it is not known', () => {
    const report = reportWith({ bag: { ...bag, waterPowderRatio: 0.15 } });
    expect(verdictOf(report, 'mold.mix').word).toBe('stop');
    expect(verdictOf(report, 'mold.mix').reason).toContain('less water than');
    expect(figureOf(report, 'mold.negative.powderG').value).toBeNull();
    expect(numbersOf(report).every(Number.isFinite)).toBe(true);
  });

  test('mixing longer than the stone flows is told', () => {
    const report = reportWith({ mixingMin: 5 });
    expect(verdictOf(report, 'mold.layers').reason).toContain('nothing can be poured');
  });

  test('small bowls: layers join wet on wet, stiffen, or no longer join', () => {
    const small = { bowlMl: 300, bowlFillPercent: 50 };
    expect(verdictWith('mold.layers', small).word).toBe('go');
    expect(verdictWith('mold.layers', { ...small, mixingMin: 2.5 }).word).toBe('look again');
    expect(
      verdictWith('mold.layers', {
        ...small,
        mixingMin: 3.5,
        bag: { ...bag, workingMin: 4.5, initialSetMin: 5 },
      }).word,
    ).toBe('stop');
  });

  test('a board that must be tight names what happens when it is not', () => {
    const sealed = verdictWith('mold.float', { pourMethod: 'board, sealed' });
    expect(sealed.word).toBe('look again');
    expect(sealed.reason).toContain('relies on the seal');
    expect(figureWith('mold.counterweightG', { pourMethod: 'board, sealed' }).value).toBe(0);
    expect(figureWith('mold.leakCounterweightG', { pourMethod: 'board, sealed' }).value).toBeGreaterThan(0);
    expect(verdictWith('mold.float', { measured: { ...measured, patternG: 500 } }).reason).toContain('sinks');
  });

  test('a peak over the softening point stops only when it was measured', () => {
    expect(verdictWith('mold.heat', {}).word).toBe('look again');
    expect(verdictWith('mold.heat', {}).fix).toContain('Cheap test');
    expect(verdictWith('mold.heat', { measured: { ...measured, peakC: 60 } }).word).toBe('stop');
    expect(verdictWith('mold.heat', { patternSoftensC: 150 }).word).toBe('go');
  });

  test('wanted lengths: off by more than allowed is looked at again, and the print scale worked out hits', () => {
    const off = { wanted: { ...wanted, xMm: 118.8, yMm: 63.36, zMm: 17.82 } };
    const verdict = verdictWith('mold.size', off);
    expect(verdict.word).toBe('look again');
    const printScale = Number(figureWith('mold.printScale', off).value);
    expect(verdictWith('mold.size', { ...off, printScale }).word).toBe('go');
    const finished = figureWith('mold.finishedLengthMm', { ...off, printScale }).value as readonly number[];
    expect(finished[0]).toBeCloseTo(118.8, 9);
  });

  test('a measured print replaces scale and shrinkage along its axis', () => {
    const moldInputs = { measured: { ...measured, printXMm: 119, settingExpansionPercent: 0 } };
    const report = moldReport(trayContext({ moldInputs, cure: { gelC: 21 } }));
    expect(figureOf(report, 'mold.finishedLengthMm').value).toEqual([119, 64, 18]);
  });

  test('the two halves of one enclosure are held rim to rim', () => {
    const context = trayContext();
    const rim = finishedRim(context);
    if (rim === null) throw new Error('the tray has a rim');
    const same = moldReport({ ...context, otherHalf: { name: 'Lower half', rim } });
    expect(verdictOf(same, 'mold.rims').word).toBe('go');
    const longer = { outlineMm: rim.outlineMm.map(([x, y]) => [x * 1.01, y] as const) };
    const off = moldReport({ ...context, otherHalf: { name: 'Lower half', rim: longer } });
    expect(verdictOf(off, 'mold.rims').word).toBe('look again');
    expect(figureOf(off, 'mold.rimLengthOffMm').value).toBeCloseTo(-1.2, 2);
    expect(moldReport(context).verdicts.some(({ id }) => id === 'mold.rims')).toBe(false);
  });
});

describe('opening the cured mold', () => {
  test('by hand: (16 − 3) × 10⁻⁶ × 49 K over 120 mm across the pull, walls of 5°', () => {
    const lift = figureWith('mold.liftToFreeMm', {});
    const lengths = figureWith('mold.finishedLengthMm', {}).value as readonly number[];
    const mismatchMm = 13e-6 * 49 * lengths[0]!;
    expect(lift.value).toBeCloseTo(mismatchMm / (2 * Math.tan(Math.PI / 36)), 9);
    expect(lift.value).toBeCloseTo(0.438, 3);
    expect(lift.working.join(' ')).toContain('lift the positive first, then ease the part out');
    expect(figureWith('mold.coolingMismatchMm', {}).working.join(' ')).toContain('lift the positive first');
  });

  test('a laminate that shrinks more than the stone grips the positive', () => {
    const other = figureWith('mold.liftToFreeMm', { laminateExpansionPerMK: 30 });
    expect(other.working.join(' ')).toContain('lift the negative first, then ease the part off');
  });

  test('the length along the pull does not count, and walls without draft say so', () => {
    const across = moldReport(trayContext({ part: { pull: [1, 0, 0] } }));
    expect(figureOf(across, 'mold.liftToFreeMm').value).toBeCloseTo((0.438 * 64) / 120, 2);
    const upright = moldReport(
      trayContext({
        summary: {
          releaseDraft: { draftDeg: Float32Array.of(0), cumulativeAreaMm2: Float64Array.of(19_600) },
        },
      }),
    );
    expect(figureOf(upright, 'mold.liftToFreeMm').value).toBeNull();
    expect(figureOf(upright, 'mold.liftToFreeMm').working.join(' ')).toContain('Give them draft');
  });
});

/** Weighings of the negative every six hours. */
const log = (...grams: readonly number[]) => ({
  dryingLog: grams.map((negativeG, i) => ({ hours: 6 * i, negativeG, positiveG: null })),
});

/** 935 g fresh: 901.7 g dry, 33.3 g of free water, of which 70 % make 925 g. */
const wetLog = (...hours: readonly number[]) => ({
  dryingLog: [
    { hours: 0, negativeG: 935, positiveG: 935 },
    ...hours.map((at) => ({ hours: at, negativeG: 925, positiveG: 925 })),
  ],
});

describe('drying', () => {
  test('targets come from the volume, and from the fresh weight once it was weighed', () => {
    expect(figureWith('mold.negative.dryTargetG', {}).status).toBe('computed');
    expect(figureWith('mold.negative.dryTargetG', {}).band).toHaveLength(2);
    expect(figureWith('mold.negative.waterLeftPercent', log(430)).value).toBeCloseTo(100, 6);
    const weighed = figureWith('mold.negative.dryTargetG', log(430));
    expect(weighed.status).toBe('measured');
    expect(weighed.value).toBeCloseTo((430 * 1.18618) / 1.23, 2);
  });

  test('not yet, dry, and lighter than dry stone can be', () => {
    expect(verdictWith('mold.negative.dry', log(421, 414)).word).toBe('not yet known');
    const notYet = verdictWith('mold.negative.dry', log(421, 413.4, 410.2, 408.5));
    expect(notYet.word).toBe('look again');
    expect(notYet.reason).toContain('not dry yet');
    expect(verdictWith('mold.negative.dry', log(421, 408, 406, 406, 406)).word).toBe('go');
    const light = verdictWith('mold.negative.dry', log(421, 390, 380, 380, 380));
    expect(light.reason).toContain('crystal water');
    const held = verdictWith('mold.negative.dry', log(421, 421, 421));
    expect(held.word).toBe('look again');
    expect(held.reason).toContain('water is still held');
    expect(reportWith({}).verdicts.some(({ id }) => id === 'mold.negative.dry')).toBe(false);
  });

  test('70 % of the free water still in is not dry, six minutes apart or nine hours', () => {
    const quick = verdictWith('mold.negative.dry', wetLog(24, 24.1, 24.2));
    expect(quick.word).toBe('look again');
    expect(quick.reason).toContain('70 % of its free water is still in');
    const held = verdictWith('mold.negative.dry', wetLog(24, 28.5, 33));
    expect(held.word).toBe('look again');
    expect(held.reason).toContain('water is still held');
    expect(figureWith('mold.negative.waterLeftPercent', wetLog(24)).value).toBeCloseTo(70, 0);
    expect(figureWith('mold.negative.hoursToDry', wetLog(24, 28.5, 33)).value).toBeNull();
    // Without the fresh weight nothing tells that those 925 g are dry.
    const { dryingLog } = wetLog(24, 24.1, 24.2);
    expect(verdictWith('mold.negative.dry', { dryingLog: dryingLog.slice(1) }).word).not.toBe('go');
  });

  test('dry lies within 15 % of the free water of the expected weight, on a scale that can tell', () => {
    // 421 g fresh: 406.0 g dry, 15.0 g of free water, 15 % of which are 2.25 g.
    const steadyAt = (grams: number) => verdictWith('mold.negative.dry', log(421, 412, grams, grams));
    expect(steadyAt(408.2).word).toBe('go');
    expect(steadyAt(408.4).word).toBe('look again');
    expect(steadyAt(403.8).word).toBe('go');
    expect(steadyAt(403.6).reason).toContain('crystal water');
    const coarse = verdictWith('mold.negative.dry', { ...log(421, 412, 406, 406), scaleStepG: 5 });
    expect(coarse).toMatchObject({ word: 'not yet known' });
    expect(coarse.fix).toContain('finer steps');
  });

  test('a volume alone is said to be unsure', () => {
    const byVolume = verdictWith('mold.negative.dry', {
      dryingLog: [24, 30].map((hours) => ({ hours, negativeG: 460, positiveG: null })),
    });
    expect(byVolume.word).toBe('look again');
    expect(byVolume.reason).toContain('a volume tells its weight to 2 % only');
  });

  test('wrong lines of the log are told, not worked with', () => {
    const wrong = reportWith({
      dryingLog: [
        { hours: 5, negativeG: 400, positiveG: null },
        { hours: 2, negativeG: 390, positiveG: null },
      ],
    });
    expect(verdictOf(wrong, 'mold.negative.dry').reason).toContain('Weighing 2');
  });

  test('too hot is a stop; the skin it costs is an upper bound', () => {
    expect(verdictWith('mold.drying', {}).word).toBe('go');
    expect(verdictWith('mold.drying', { dryingC: 60 }).word).toBe('look again');
    expect(verdictWith('mold.drying', { dryingC: 110 }).word).toBe('stop');
    expect(figureWith('mold.chalkySkinMm', {}).value).toBe(0);
    expect(figureWith('mold.chalkySkinMm', { dryingC: 110, dryingHours: 4 }).value).toBeGreaterThan(1);
  });
});

/** The verdict on a tray whose thinnest stone stands at its low x side. */
const thin = (mm: number) =>
  verdictOf(
    moldReport(
      trayContext({
        mold: {
          ...trayMold,
          thinnest: { negative: { mm, atMm: [0, 32, 2] }, positive: { mm: 12, atMm: [0, 0, 0] } },
        },
      }),
    ),
    'mold.thinnest',
  );

describe('the box', () => {
  test('thin cover, knife edges and halves that do not add up', () => {
    expect(verdictWith('mold.box', { coverYLowMm: 6 })).toMatchObject({ word: 'look again' });
    const lost = moldReport(trayContext({ mold: { ...trayMold, volumeCheck: 0.99 } }));
    expect(verdictOf(lost, 'mold.box').word).toBe('stop');
    expect(thin(3)).toMatchObject({ word: 'look again' });
    expect(thin(3).reason).toContain('−x side');
    expect(thin(0.4)).toMatchObject({ word: 'look again' });
    expect(thin(0.4).reason).toContain('an edge, not a wall');
  });

  test('a box that is turned to the part says so', () => {
    const askew = moldReport(trayContext({ mold: { ...trayMold, boxTurnDeg: 30 } }));
    expect(figureOf(askew, 'mold.boxTurnDeg')).toMatchObject({ value: 30, unit: '°' });
    expect(figureOf(askew, 'mold.boxTurnDeg').working.join(' ')).toContain(
      'least rectangle round the outline',
    );
    expect(verdictOf(askew, 'mold.box').reason).toContain('turned by 30.0° against the file’s axes');
    expect(figureWith('mold.boxTurnDeg', {}).value).toBe(0);
    expect(verdictWith('mold.box', {}).reason).not.toContain('turned');
  });

  test('a box that cannot be, a solid model and a rim that no board seals are told', () => {
    const none = moldReport({ ...trayContext({ mold: null }), moldProblem: 'The covers leave no box.' });
    expect(verdictOf(none, 'mold.box')).toMatchObject({
      word: 'not yet known',
      reason: 'The covers leave no box.',
    });
    expect(verdictOf(moldReport(trayContext({ summary: { solid: true } })), 'mold.box').reason).toContain(
      'drawn solid',
    );
    const findings: PourFindings = {
      lockingMm3: 40,
      lockingAtMm: [60, 0, 4],
      knifeEdges: { negative: null, positive: { lengthMm: 12, sharpestDeg: 31, atMm: [60, 64, 0] } },
      keysPlaced: 3,
      strayPieces: 0,
      flatRim: false,
    };
    const context = {
      ...trayContext({ moldInputs: { pourMethod: 'board, sealed' } }),
      pourFindings: findings,
    };
    const found = moldReport(context);
    expect(verdictOf(found, 'mold.locking')).toMatchObject({ word: 'stop' });
    expect(verdictOf(found, 'mold.keys').reason).toContain('3 of 4 keys');
    expect(verdictOf(found, 'mold.positive.knifeEdge').reason).toContain('31°');
    expect(verdictOf(found, 'mold.rimOnBoard').word).toBe('look again');
    expect(figureOf(found, 'mold.lockingMl').value).toBeCloseTo(0.04, 12);
    expect(figureOf(found, 'mold.keysPlaced').value).toBe(3);
  });

  test('integration along the pull says why, and leaves the thinnest stone open', () => {
    const report = moldReport(
      trayContext({
        mold: { ...trayMold, method: 'integration along the pull', why: '4 open edges.', thinnest: null },
      }),
    );
    expect(verdictOf(report, 'mold.box')).toMatchObject({ word: 'look again' });
    expect(verdictOf(report, 'mold.box').reason).toContain('4 open edges');
    expect(verdictOf(report, 'mold.thinnest').word).toBe('not yet known');
    expect(figureOf(report, 'mold.thinnestStoneMm').value).toBeNull();
  });

  test('the cut list is the inside, the ends as much longer as two sheets are thick', () => {
    expect(figureWith('mold.boxSheets', {}).value).toBe(
      '2 × 140.0 × 58.0 mm; 2 × 94.0 × 58.0 mm; 1 × 170.0 × 114.0 mm',
    );
  });

  test('the ready-made choices pass the pour geometry', () => {
    const choices = pourChoicesOf(inputsWith({}));
    expect(() => checkPourChoices(choices)).not.toThrow();
    expect(choices.coverMm.underRimMm).toBe(10);
  });
});

describe('repairs', () => {
  const repair = {
    id: 'repair-1',
    half: 'negative',
    kind: 'scraped',
    atMm: [60, 32, 18],
    radiusMm: 4,
    depthMm: 0.2,
    note: '',
  } as const;
  const repairs = (kind: 'scraped' | 'filled', depthMm: number) => ({
    repairs: [{ ...repair, atMm: [60, 32, 18] as [number, number, number], kind, depthMm }],
  });

  test('flush fills go, deep scrapes look again, filler through the wall stops', () => {
    expect(verdictWith('mold.repairs', repairs('filled', 0)).word).toBe('go');
    expect(verdictWith('mold.repairs', repairs('scraped', 0.2)).word).toBe('look again');
    expect(verdictWith('mold.repairs', repairs('filled', 0.9)).word).toBe('stop');
    expect(figureWith('mold.repairThickerMm', repairs('scraped', 0.2)).value).toBe(0.2);
    expect(reportWith({}).verdicts.some(({ id }) => id === 'mold.repairs')).toBe(false);
  });
});

test('dust, setting heat, drain, damp stone, opening and coats carry their cautions', () => {
  const cautions = moldReport(trayContext()).cautions.map(({ text }) => text);
  for (const word of [
    'respirator',
    'hot enough to burn',
    'down the drain',
    'Damp stone',
    'wedges',
    'solvents',
  ])
    expect(cautions.join(' ')).toContain(word);
  expect(cautions[0]).toContain('safety data sheet');
});
