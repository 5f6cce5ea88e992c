/** Coats, papers and the calendar, by hand. */
import { describe, expect, it } from 'vitest';
import * as fc from 'fast-check';
import { coatAmount, type FinishCoat } from '../../../src/core/finish/coats';
import { missedWindows, schedule, type Activity, type WorkingHours } from '../../../src/core/finish/calendar';
import {
  clockText,
  dateOfDay,
  dateText,
  dayNumber,
  readDate,
  weekday,
} from '../../../src/core/finish/civilTime';
import { marginUm, sandingLadder } from '../../../src/core/finish/sanding';
import { fastenersAlong, seamOf } from '../../../src/core/fit/seam';
import { toleranceStack } from '../../../src/core/fit/stack';
import {
  nearFieldMm,
  openWindowMm,
  sheetOhm,
  slotLossDb,
  wavelengthMm,
} from '../../../src/core/radio/shielding';
import { transmitterFinding } from '../../../src/core/radio/transmitterVerdict';
import { propertySeed } from '../../support/propertySeed';
import { codeOf } from '../../support/codeOf';

const clear: FinishCoat = {
  name: 'Clear coat',
  count: 2,
  filmUm: 50,
  solidsShare: 0.5,
  lossShare: 0.5,
  densityGCm3: 1.1,
  recoatFromH: 4,
  recoatToH: 24,
  dryH: 12,
};

describe('coats', () => {
  it('200 cm², twice 50 µm dry of half solids, half lost: 2 mL of wet film each, 8 mL mixed; 2.2 g dry', () => {
    const amount = coatAmount(clear, 200);
    expect(amount.wetUm).toBe(100);
    expect(amount.spreadM2PerL).toBeCloseTo(10, 9);
    expect(amount.mixedMl).toBeCloseTo(8, 9);
    expect(amount.filmUm).toBe(100);
    expect(amount.dryG).toBeCloseTo(2.2, 9);
  });

  it('without solids, or all lost: a sentence', () => {
    expect(codeOf(() => coatAmount({ ...clear, solidsShare: 0 }, 10))).toBe('finish.solids');
    expect(codeOf(() => coatAmount({ ...clear, lossShare: 1 }, 10))).toBe('finish.solids');
  });
});

describe('sanding', () => {
  it('P240 to P400 in two papers: 117 + 58.5 µm; of 300 µm over a print-through of 40 are left 84.5', () => {
    const ladder = sandingLadder('P240', 'P400');
    expect(ladder.map(({ grit }) => grit)).toEqual(['P240', 'P400']);
    expect(ladder.map(({ takesOffUm }) => takesOffUm)).toEqual([117, 58.5]);
    expect(marginUm(300, 40, ladder)).toBeCloseTo(84.5, 9);
  });

  it('goes from coarse to fine', () => {
    expect(codeOf(() => sandingLadder('P400', 'P240'))).toBe('finish.grits');
    expect(sandingLadder('P400', 'P400')).toHaveLength(1);
  });

  it('takes off three to five grains of the first paper where there are three papers or more', () => {
    for (const last of ['P240', 'P320', 'P400'] as const) {
      const ladder = sandingLadder('P120', last);
      const grains = ladder.reduce((sum, { takesOffUm }) => sum + takesOffUm, 0) / ladder[0]!.grainUm;
      expect(grains, last).toBeGreaterThan(3);
      expect(grains, last).toBeLessThan(5);
    }
  });
});

const weekdays: WorkingHours = { fromMin: 9 * 60, toMin: 17 * 60, weekdays: [0, 1, 2, 3, 4] };
const act = (id: string, workMin: number, waitMin = 0, startWithinMin: number | null = null): Activity => ({
  id,
  name: id,
  workMin,
  waitMin,
  startWithinMin,
});

describe('the calendar', () => {
  const friday = dayNumber({ year: 2026, month: 5, day: 1 });

  it('2026-05-01 is a Friday, day 20574', () => {
    expect(friday).toBe(20_574);
    expect(weekday(friday)).toBe(4);
    expect(readDate('2026-05-01')).toEqual({ year: 2026, month: 5, day: 1 });
    expect(readDate('2026-02-29')).toBeNull();
    expect(readDate('1.5.2026')).toBeNull();
    expect(clockText(570)).toBe('09:30');
  });

  it(`days and dates are one (seed ${propertySeed})`, () => {
    fc.assert(
      fc.property(fc.integer({ min: -700_000, max: 2_000_000 }), (day) => {
        expect(dayNumber(dateOfDay(day))).toBe(day);
      }),
      { seed: propertySeed },
    );
    expect(dateText(dateOfDay(0))).toBe('1970-01-01');
  });

  it('work waits for Monday, a cure runs over the weekend, and long work goes on the next day', () => {
    const [mix, lay, trim] = schedule(
      [act('mix', 7 * 60, 20 * 60), act('lay', 10 * 60), act('trim', 60)],
      friday,
      weekdays,
    );
    expect(mix).toMatchObject({ startMin: 540, workEndMin: 960, endMin: 2160 });
    const monday = 3 * 1440;
    expect(lay).toMatchObject({ startMin: monday + 540, workEndMin: monday + 1440 + 540 + 120 });
    expect(trim!.startMin).toBe(monday + 1440 + 660);
  });

  it('a coat that would wait over the weekend misses its window', () => {
    const planned = schedule([act('first', 60, 8 * 60), act('second', 60, 0, 24 * 60)], friday, weekdays);
    expect(missedWindows(planned).map(({ id }) => id)).toEqual(['second']);
    const monday = schedule([act('first', 60, 8 * 60), act('second', 60, 0, 24 * 60)], friday + 3, weekdays);
    expect(missedWindows(monday)).toEqual([]);
  });

  it('without hours, or without end: a sentence', () => {
    expect(codeOf(() => schedule([act('a', 1)], 0, { ...weekdays, toMin: 0 }))).toBe('finish.hours');
    expect(codeOf(() => schedule([act('a', 1)], 0, { ...weekdays, weekdays: [] }))).toBe('finish.hours');
    expect(codeOf(() => schedule([act('a', 0, 6e6), act('b', 1)], 0, weekdays))).toBe('finish.tooLong');
  });
});

describe('seam and stack', () => {
  it('a bead of 2 mm along 300 mm is 0.942 mL; with a tenth lost 1.047, a tenth of a cartridge of 10 mL and 0.342 mL too much', () => {
    const seam = seamOf({ lengthMm: 300, landMm: 2, gapMm: 1, beadMm: 2, lossShare: 0.1, cartridgeMl: 10 });
    expect(seam.beadMl).toBeCloseTo(0.3 * Math.PI, 9);
    expect(seam.takenMl).toBeCloseTo((0.3 * Math.PI) / 0.9, 9);
    expect(seam.cartridgeShare).toBeCloseTo((0.03 * Math.PI) / 0.9, 9);
    expect(seam.squeezedMl).toBeCloseTo(0.3 * Math.PI - 0.6, 9);
    expect(seam.pressedShare).toBe(0.5);
  });

  it('screws of 3 mm every 40 mm: 8 along 300, 9 mm from an edge, lugs of 18', () => {
    expect(fastenersAlong(300, 40, 3)).toEqual({ count: 8, pitchMm: 37.5, edgeMm: 9, lugMm: 18 });
  });

  it('0.3, 0.4 and 1.2 mm: 1.9 at worst, 1.3 by root sum square', () => {
    const items = [0.3, 0.4, 1.2].map((plusMinusMm) => ({ name: 'item', plusMinusMm }));
    expect(toleranceStack(items).worstMm).toBeCloseTo(1.9, 12);
    expect(toleranceStack(items).rssMm).toBeCloseTo(1.3, 12);
    expect(toleranceStack([])).toEqual({ worstMm: 0, rssMm: 0 });
  });
});

describe('radio', () => {
  const sheet = { conductivitySPerM: 6000, thicknessMm: 0.7 };

  it('by hand: 0.24 ohm, 122 mm and 19.5 mm at 2.45 GHz; a slot of 12.2 mm leaves 14 dB', () => {
    expect(sheetOhm(sheet)).toBeCloseTo(1 / 4.2, 9);
    expect(wavelengthMm(2.45e9)).toBeCloseTo(122.364, 3);
    expect(nearFieldMm(2.45e9)).toBeCloseTo(19.475, 3);
    expect(slotLossDb(12.2364, 2.45e9)).toBeCloseTo(20 * Math.log10(5), 3);
    expect(slotLossDb(200, 2.45e9)).toBe(0);
    expect(openWindowMm(2.45e9)).toBeCloseTo(61.182, 3);
  });

  it('a coil at 125 kHz gets out of the very shell that blocks an antenna at 2.45 GHz; a window lets that out', () => {
    const coil = transmitterFinding(sheet, 25, {
      name: 'reader',
      frequencyMHz: 0.125,
      works: 'coil',
      windowMm: 0,
    });
    expect(coil).toMatchObject({ field: 'near', outcome: 'gets out', proposedWindowMm: null });
    expect(coil.lossDb).toBeLessThan(0.1);
    const antenna = { name: 'radio', frequencyMHz: 2450, works: 'antenna' as const, windowMm: 0 };
    expect(transmitterFinding(sheet, 25, antenna)).toMatchObject({ field: 'far', outcome: 'blocked' });
    expect(transmitterFinding(sheet, 25, { ...antenna, windowMm: 62 }).outcome).toBe('gets out');
    expect(transmitterFinding(sheet, 25, { ...antenna, windowMm: 12 }).outcome).toBe('weakened');
  });
});
