import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatBand, formatFigure, shownDecimals } from '../../../src/core/units/formatFigure';
import { formatNumber, formatQuantity, notKnown } from '../../../src/core/units/formatNumber';
import { mmPerUnit } from '../../../src/core/units/length';
import { parseNumber } from '../../../src/core/units/parseNumber';
import { propertySeed } from '../../support/propertySeed';

describe('reading a typed number', () => {
  test.each([
    ['0.25', '', 0.25],
    ['0,25', '', 0.25],
    [' 12 ', '', 12],
    ['.5', 'mm', 0.5],
    ['-3', '°', -3],
    ['−3', '°', -3],
    ['+4.0', '', 4],
    ['1e-3', '', 0.001],
    ['0.5 mm', 'mm', 0.5],
    ['0,5mm', 'mm', 0.5],
    ['200 g/m2', 'g/m²', 200],
    ['200 gsm', 'g/m²', 200],
    ['45 deg', '°', 45],
    ['12 345.5', '', 12345.5],
    ['0,250', 'mm', 0.25],
    ['1.234', '', 1.234],
    ['-0', '', 0],
  ])('%s (%s) is %d', (text, unit, value) => {
    expect(parseNumber(text, unit)).toEqual({ ok: true, value });
  });

  test.each([
    ['', '', 'Enter a number'],
    ['   ', '', 'Enter a number'],
    ['1.234,5', '', 'more than one separator'],
    ['1,234.5', '', 'more than one separator'],
    ['1.2.3', '', 'more than one separator'],
    ['1,234', '', 'two ways'],
    ['-12,500', '', 'two ways'],
    ['abc', 'mm', 'not a number in mm'],
    ['0.5 cm', 'mm', 'not a number in mm'],
    ['5 mm', '', 'not a number'],
    ['mm', 'mm', 'not a number'],
    ['1 2', '', 'not a number'],
    ['12 34', '', 'not a number'],
    ['--3', '', 'not a number'],
    ['NaN', '', 'not a number'],
    ['Infinity', '', 'not a number'],
    ['1e999', '', 'too large'],
    ['.', '', 'not a number'],
  ])('%s (%s) is refused', (text, unit, message) => {
    const parsed = parseNumber(text, unit);
    expect(parsed.ok).toBe(false);
    expect(parsed.ok ? '' : parsed.message).toContain(message);
  });

  test(`reads back whatever it shows (seed ${propertySeed})`, () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e12, max: 1e12, noNaN: true }),
        fc.integer({ min: 0, max: 6 }),
        (x, places) => {
          expect(parseNumber(formatNumber(x, places))).toEqual({
            ok: true,
            value: Number(x.toFixed(places)) + 0,
          });
        },
      ),
    );
  });

  test(`never answers with something that is not finite, whatever is typed (seed ${propertySeed})`, () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const parsed = parseNumber(text, 'mm');
        expect(parsed.ok ? Number.isFinite(parsed.value) : parsed.message.length > 5).toBe(true);
      }),
    );
  });
});

describe('showing a number', () => {
  test.each([
    [0.25, 2, '0.25'],
    [-0.1, 1, '−0.1'],
    [-0.001, 2, '0.00'],
    [1234, 0, '1234'],
    [12345, 0, '12\u202f345'],
    [1234567.891, 2, '1\u202f234\u202f567.89'],
    [1e21, 0, '1\u202f000\u202f000\u202f000\u202f000\u202f000\u202f000\u202f000'],
  ])('%d with %d places is %s', (value, places, text) => {
    expect(formatNumber(value, places)).toBe(text);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY])('%d is never shown', (value) => {
    expect(() => formatNumber(value, 2)).toThrow(RangeError);
  });

  test('units, lists, words and what is not known', () => {
    expect(formatQuantity(null, 2, 'mm')).toBe(notKnown);
    expect(formatQuantity(2, 1, '°')).toBe('2.0°');
    expect(formatFigure({ value: [1, 2.5, 3], unit: 'mm', decimals: 1 })).toBe('1.0 × 2.5 × 3.0\u202fmm');
    expect(formatFigure({ value: 'two', unit: '', decimals: 0 })).toBe('two');
    expect(formatFigure({ value: null, unit: 'mm', decimals: 1 })).toBe(notKnown);
    expect(formatBand({ value: null, band: [0.2, 0.27], unit: 'mm', decimals: 2 })).toBe(
      '0.20 to 0.27\u202fmm',
    );
    expect(formatBand({ value: null, unit: 'mm', decimals: 2 })).toBe('');
    expect(formatBand({ value: null, band: [0.201, 0.204], unit: 'mm', decimals: 2 })).toBe('');
  });

  test('an inch is exactly 25.4 mm', () => {
    expect(mmPerUnit).toEqual({ mm: 1, cm: 10, m: 1000, in: 25.4 });
  });
});

/** A scale with a band, four decimals wanted. */
const bandedScale = (low: number, high: number) => ({
  value: 0.99843,
  band: [low, high] as [number, number],
  unit: '',
  decimals: 4,
});

describe('digits follow the band', () => {
  test('no more are shown than it supports, of the value and of its ends', () => {
    expect(formatFigure(bandedScale(0.9978, 0.999))).toBe('0.9984');
    expect(formatFigure(bandedScale(0.996, 1.001))).toBe('0.998');
    expect(formatBand(bandedScale(0.996, 1.001))).toBe('0.996 to 1.001');
    const volume = { value: 32_530.28, unit: 'mm³', decimals: 1 };
    expect(formatFigure(volume)).toContain('530.3');
    expect(formatFigure({ ...volume, band: [32_520, 32_540] as const })).not.toContain('.');
  });

  test('a band that reaches much further up than down keeps the digits of its near end', () => {
    const skewed = { value: 1.2, band: [0.3, 5] as const, unit: 'h', decimals: 2 };
    expect(formatBand(skewed)).toContain('0.3 to 5.0');
  });

  test('a value on the end of its band goes by the width, and one without a band keeps its decimals', () => {
    expect(shownDecimals({ value: 1, band: [1, 1.4], decimals: 3 })).toBe(1);
    expect(shownDecimals({ value: 1, band: [1, 1], decimals: 3 })).toBe(3);
    expect(shownDecimals({ value: 1, decimals: 3 })).toBe(3);
    expect(shownDecimals({ value: 'a word', band: [1, 2], decimals: 2 })).toBe(2);
  });
});
