import { describe, expect, it } from 'vitest';
import { cureChoicesOf } from '../../src/steps/cure/cureChoicesOf';
import { serviceVerdict } from '../../src/steps/cure/opening';
import { closingReport } from '../../src/steps/closing/report';
import { moldReport } from '../../src/steps/mold/report';
import { cureReport } from '../../src/steps/cure/report';
import type { CureInputs } from '../../src/steps/inputs/cure';
import { blockPrediction, lowTemperatureCures } from '../support/curePrediction';
import { emptyContext, inputsWith, trayContext } from './contexts';
import { figureOf, numbersOf, verdictOf } from './reportHelpers';

function reportWith(cure: Partial<CureInputs>) {
  const prediction = blockPrediction(inputsWith({ cure }));
  return cureReport(trayContext({ cure, prediction }));
}
/** Without a prediction: what the inputs alone say. */
const inputsOnly = (cure: Partial<CureInputs>) => cureReport(trayContext({ cure }));

/** Share of the free water that the oven run starts with, %. */
const held = (inputs: ReturnType<typeof inputsWith>) => {
  const choices = cureChoicesOf(inputs);
  return choices.known ? 100 * choices.value.water.heldShare : null;
};
/** What the weighings alone say of dampness. */
const damp = (inputs: ReturnType<typeof inputsWith>) =>
  verdictOf(cureReport({ ...emptyContext(), inputs }), 'cure.damp');

/** Both halves weighed every twelve hours; 30 % typed. */
const weighed = (...negativeAndPositiveG: readonly (readonly [number, number | null])[]) =>
  inputsWith({
    cure: { freeWaterLeftPercent: 30 },
    moldInputs: {
      dryingLog: negativeAndPositiveG.map(([negativeG, positiveG], i) => ({
        hours: 12 * i,
        negativeG,
        positiveG,
      })),
    },
  });
const ramp = (cure: Partial<CureInputs>) => verdictOf(inputsOnly(cure), 'cure.ramp');

const targetG = (half: string) =>
  Number(figureOf(moldReport(trayContext()), `mold.${half}.dryTargetG`).value);

const cured = reportWith({ supplierCures: lowTemperatureCures });

describe('the clamp and cure report', () => {
  it('knows every stable figure once the supplier is known, without kinetics', () => {
    for (const id of [
      'cure.coldest.peakC',
      'cure.hottest.peakC',
      'cure.coldest.lagS',
      'cure.coldest.timeAtDwellS',
      'cure.coldest.dose',
      'cure.neededDwellS',
      'cure.stoneTurnedMm',
      'cure.waterLeftG',
      'cure.resinPressureNeededKPa',
      'cure.demoldAfterS',
    ])
      expect(figureOf(cured, id).value, id).not.toBeNull();
    expect(figureOf(cured, 'cure.coldest.degreeOfCure').value).toBeNull();
    expect(figureOf(cured, 'cure.coldest.tgC').value).toBeNull();
    expect(numbersOf(cured).every(Number.isFinite)).toBe(true);
  });

  it('shows the band: three peaks, the two bounds round the middle', () => {
    const peak = figureOf(cured, 'cure.coldest.peakC');
    const [low, high] = peak.band ?? [0, 0];
    expect(high).toBeGreaterThan(115);
    expect(low).toBeLessThan(95);
    expect(peak.value).toBeGreaterThan(low);
    expect(peak.value).toBeLessThan(high);
    expect(peak.working.filter((line) => line.startsWith('If '))).toHaveLength(3);
  });

  it('says that it cures if the stone keeps its water, not if it lets go', () => {
    const verdict = verdictOf(cured, 'cure.cures');
    expect(verdict.word).toBe('look again');
    expect(verdict.reason).toMatch(
      /^Cures if the stone keeps its water \(dose .*does not if the stone lets it go/u,
    );
    expect(verdict.fix).toContain('A thermocouple at the laminate is the test');
    expect(verdictOf(cured, 'cure.stone').word).toBe('look again');
  });

  it('says in one place what the program does to the stone', () => {
    const hot = reportWith({ supplierCures: lowTemperatureCures, clampLimitFrom: 'read' });
    expect(verdictOf(hot, 'cure.program').reason).not.toContain('stone');
    expect(verdictOf(hot, 'cure.stone').reason).toMatch(
      /^This program uses the mold up\. .* turns to weak plaster/u,
    );
    const cool = reportWith({
      supplierCures: lowTemperatureCures,
      stages: [{ targetC: 75, rampKPerMin: 1, dwellHours: 14 }],
    });
    expect(verdictOf(cool, 'cure.stone')).toMatchObject({ word: 'go' });
    expect(verdictOf(cool, 'cure.stone').reason).toContain('keeps the mold');
  });

  it('estimates what opening the hot oven does to the stone, and says to cool it with the door shut', () => {
    const tension = figureOf(cured, 'cure.openingTensionMPa');
    expect(tension.value).toBeGreaterThan(2.5);
    expect(tension.value).toBeLessThan(6);
    expect(tension.status).toBe('from memory');
    expect(tension.band?.[0]).toBeLessThan(Number(tension.value));
    expect(tension.working.join(' ')).toMatch(/core over skin .* = [12]\d\.\d K.*from memory/u);
    const opening = verdictOf(cured, 'cure.opening');
    expect(opening.reason).toContain('door shut until 60 °C, falling by at most 1 K/min');
    expect(opening.reason).toContain('2.5 to 3');
    expect(verdictOf(cured, 'cure.cures').fix).toContain('at the coldest place worked out: cast its wire in');
  });

  it('ramps at 1 K/min and asks what the supplier allows', () => {
    expect(inputsWith({}).cure.stages.map(({ rampKPerMin }) => rampKPerMin)).toEqual([1, 1]);
    const atOnce = [{ targetC: 80, rampKPerMin: null, dwellHours: 12 }];
    expect(ramp({})).toMatchObject({ word: 'not yet known', fix: expect.stringContaining('data sheet') });
    expect(ramp({ supplierRampKPerMin: 2 }).word).toBe('go');
    expect(ramp({ supplierRampKPerMin: 0.5 }).word).toBe('look again');
    expect(ramp({ stages: atOnce }).word).toBe('look again');
    expect(ramp({ stages: atOnce, supplierRampKPerMin: 2 }).word).toBe('look again');
  });

  it.each([
    [60, 'go'],
    [100, 'look again'],
    [130, 'stop'],
  ])('holds %d °C in use against a Tg of 110 °C', (serviceC, word) => {
    expect(serviceVerdict(inputsWith({ cure: { serviceC } }), 110)[0]?.word).toBe(word);
    expect(serviceVerdict(inputsWith({ cure: { serviceC } }), null)).toEqual([]);
  });

  it('names the dwell that cures in every case as longer than the one without dehydration', () => {
    const dwell = figureOf(cured, 'cure.neededDwellS');
    const [shortest, longest] = dwell.band ?? [0, 0];
    expect(shortest).toBeGreaterThan(0);
    expect(longest).toBeGreaterThan(1.5 * 3600);
  });

  it('gives temperatures only without a supplier, and stops when no way cures', () => {
    const unknown = verdictOf(reportWith({}), 'cure.cures');
    expect(unknown.word).toBe('look again');
    expect(unknown.fix).toContain("supplier's data sheet");
    const short = reportWith({
      supplierCures: lowTemperatureCures,
      stages: [{ targetC: 70, rampKPerMin: null, dwellHours: 3 }],
    });
    expect(verdictOf(short, 'cure.cures').word).toBe('stop');
  });

  it('takes kinetics and Tg constants of the maker alone', () => {
    const report = reportWith({
      kineticsForm: 'autocatalytic',
      kinetics: {
        ...inputsWith({}).cure.kinetics,
        k2PerS: 2e5,
        k2EnergyKJPerMol: 60,
        m: 0.5,
        n: 1.5,
        startCure: 0.02,
        tgUncuredC: -10,
        tgCuredC: 130,
        lambda: 0.5,
      },
    });
    const degree = figureOf(report, 'cure.coldest.degreeOfCure');
    expect(degree.value).toBeGreaterThan(0.05);
    expect(degree.value).toBeLessThan(1);
    expect(degree.status).toBe('your entry');
    expect(figureOf(report, 'cure.coldest.tgC').value).toBeLessThan(130);
  });

  it('holds damp stone back', () => {
    const weights = { negativeG: targetG('negative'), positiveG: targetG('positive') };
    const dryingLog = [48, 54, 60].map((hours) => ({ hours, ...weights }));
    const dry = cureReport(trayContext({ cure: { freeWaterLeftPercent: 5 }, moldInputs: { dryingLog } }));
    expect(verdictOf(dry, 'cure.damp').word).toBe('go');
    expect(verdictOf(inputsOnly({ freeWaterLeftPercent: 15 }), 'cure.damp').word).toBe('look again');
    expect(verdictOf(inputsOnly({ freeWaterLeftPercent: 100 }), 'cure.damp').reason).toContain(
      'spall or burst',
    );
  });

  it('starts the run with what was weighed, and with what was typed only where nothing was', () => {
    expect(held(inputsWith({ cure: { freeWaterLeftPercent: 30 } }))).toBe(30);
    // 935 g fresh hold 33.3 g of free water: 925 g are 70 % of it, 901.7 g none.
    const wet = weighed([935, 935], [925, 901.7], [925, 901.7]);
    expect(held(wet)).toBeCloseTo(70, 0);
    expect(damp(wet).word).toBe('stop');
    expect(damp(wet).reason).toContain('negative 70 % by weighing, expected weight from its fresh weight');
    const dry = weighed([935, 935], [902, 902], [902, 902]);
    expect(held(dry)).toBeCloseTo(1, 0);
    expect(damp(dry)).toMatchObject({ word: 'go' });
    expect(damp(weighed([935, 935], [902, 902])).word).toBe('look again');
    const one = weighed([935, null], [902, null], [902, null]);
    expect(held(one)).toBe(30);
    expect(damp(one).reason).toContain('positive not weighed, the 30 % entered');
    expect(held(weighed([935, 935], [940, 800]))).toBe(100);
    expect(held(weighed([935, 935], [890, 890]))).toBe(0);
  });

  it('lifts the positive first where the negative grips, at jacking points', () => {
    const cure = { gelC: 120 };
    const prediction = blockPrediction(inputsWith({ cure }));
    const cool = verdictOf(cureReport(trayContext({ cure, prediction })), 'cure.cool');
    expect(cool.word).toBe('look again');
    expect(cool.fix).toContain('lift the positive first, then ease the part out');
    expect(cool.fix).toContain('free after about 0.9 mm');
    expect(cool.fix).toContain('2 pry slots');
    expect(cool.fix).not.toContain('negative first');
    const without = trayContext({ moldInputs: { prySlotCount: 0 }, cure, prediction });
    expect(verdictOf(cureReport(without), 'cure.cool').fix).toContain('none is planned');
  });

  it('knows neither dry stone nor fit clamps before somebody looked, and says what tells', () => {
    const unseen = verdictOf(inputsOnly({}), 'cure.damp');
    expect(unseen.word).toBe('not yet known');
    expect(unseen.fix).toContain('Weigh both halves twice');
    const program = verdictOf(inputsOnly({}), 'cure.program');
    expect(program.word).toBe('not yet known');
    expect(program.fix).toContain('an hour in the oven at 120 °C');
    expect(verdictOf(inputsOnly({ clampLimitFrom: 'read' }), 'cure.program').word).toBe('go');
    expect(verdictOf(inputsOnly({ clampLimitC: 160 }), 'cure.program').word).toBe('go');
  });

  it('asks damp stone for more resin pressure against voids', () => {
    const damper = reportWith({ freeWaterLeftPercent: 100, supplierCures: lowTemperatureCures });
    const needed = (report: typeof damper) => Number(figureOf(report, 'cure.resinPressureNeededKPa').value);
    expect(needed(damper)).toBeCloseTo(2 * needed(cured), 6);
    // One need, on both pages.
    const context = trayContext({ cure: { freeWaterLeftPercent: 100 } });
    expect(needed(damper)).toBe(figureOf(closingReport(context), 'closing.voidFreeKpa').value);
  });

  it.each([
    [
      'a program that never heats',
      { stages: [{ targetC: 15, rampKPerMin: null, dwellHours: 3 }] },
      'never heats',
    ],
    ['no program', { stages: [] }, 'has no stages'],
    ['over the stone', { stoneLimitC: 110 }, 'over the limit of 110 °C for the stone'],
    ['over the clamps', { clampLimitC: 80 }, 'over the limit of 80 °C for the clamps'],
    ['over the pattern', { patternInside: 'in' as const }, 'over the limit of 50 °C for the printed pattern'],
    ['kinetics without numbers', { kineticsForm: 'autocatalytic' as const }, 'need A2, E2, m and n'],
    [
      'cures that contradict',
      {
        supplierCures: [
          { hours: 1, temperatureC: 70 },
          { hours: 2, temperatureC: 120 },
        ],
      },
      'contradict each other',
    ],
  ])('stops at %s with a sentence', (_, cure, words) => {
    const verdict = verdictOf(inputsOnly(cure), 'cure.program');
    expect(verdict.word).toBe('stop');
    expect(verdict.reason).toContain(words);
  });

  it('says what is missing before anything is measured', () => {
    const verdict = verdictOf(cureReport(emptyContext()), 'cure.cures');
    expect(verdict.word).toBe('not yet known');
    expect(verdict.reason).toBe('No pattern is imported yet.');
  });

  it('takes the sentence of a failed prediction', () => {
    const context = { ...trayContext(), cureProblem: 'These kinetics blow up.' };
    expect(verdictOf(cureReport(context), 'cure.cures').reason).toBe('These kinetics blow up.');
  });

  it('cautions about oven, damp stone, hot mold, clamps and fumes', () => {
    expect(cured.cautions.map(({ id }) => id)).toEqual([
      'cure.oven',
      'cure.dampStone',
      'cure.hotMold',
      'cure.hotClamps',
      'cure.fumes',
    ]);
  });
});
