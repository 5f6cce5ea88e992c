/** Somebody else's numbers for radio, coats and abrasives, and the printed rules of the two text formats. */
import { describe, expect, test } from 'vitest';
import * as fc from 'fast-check';
import { coatAmount } from '../../src/core/finish/coats';
import { csvText } from '../../src/core/finish/csvText';
import { escapedText, foldedLine, icsText } from '../../src/core/finish/icsText';
import { grainUm, type Grit } from '../../src/core/finish/sanding';
import { magneticLossDb, planeWaveLossDb, skinDepthMm } from '../../src/core/radio/shielding';
import { wovenConductivitySPerM } from '../../src/core/radio/conductivity';
import { expectRow, inputOf, type CheckRow } from '../support/checkRows';
import { propertySeed } from '../support/propertySeed';
import rows from './finish-rows.json';

const all = rows as unknown as readonly CheckRow[];

function answer(row: CheckRow): Readonly<Record<string, number | readonly number[]>> {
  const has = (key: string) => row.inputs[key] !== undefined;
  if (has('grade')) return { grain_um: grainUm[row.inputs['grade'] as Grit] };
  if (has('thickness_um')) {
    const coat = {
      name: 'coat',
      count: 1,
      filmUm: inputOf(row, 'thickness_um'),
      solidsShare: 1,
      lossShare: 0,
      densityGCm3: 1.1,
      recoatFromH: 0,
      recoatToH: null,
      dryH: 1,
    };
    const { mixedMl, spreadM2PerL } = coatAmount(coat, has('area_m2') ? 1e4 * inputOf(row, 'area_m2') : 1);
    return { volume_mL: mixedMl, spread_m2_per_L: spreadM2PerL };
  }
  if (has('laminate_thickness_mm')) return { in_plane_range_S_per_m: wovenConductivitySPerM };
  const [sigma, hz] = [inputOf(row, 'sigma_S_per_m'), inputOf(row, 'f_Hz')];
  const depth = skinDepthMm(sigma, hz);
  if (!has('thickness_m')) return { skin_depth_m: depth / 1000 };
  const sheet = { conductivitySPerM: sigma, thicknessMm: 1000 * inputOf(row, 'thickness_m') };
  if (has('inner_radius_m'))
    return { attenuation_dB: magneticLossDb(sheet, hz, 1000 * inputOf(row, 'inner_radius_m')) };
  return { skin_depth_mm: depth, SE_dB: planeWaveLossDb(sheet, hz) };
}

describe('radio, coats and abrasives', () => {
  test.each(all.map((row) => [row.id, row] as const))('%s', (_, row) => expectRow(row, answer(row)));
});

/** What a reader does: RFC 5545, 3.1, "unfolding is accomplished by removing the CRLF and the linear white-space character". */
const unfolded = (text: string) => text.replaceAll('\r\n ', '');

describe('RFC 5545', () => {
  const text = icsText(
    [
      {
        id: 'pour',
        name: 'Pour; both halves, "slowly"',
        startMin: 540,
        workEndMin: 600,
        endMin: 660,
        latestMin: null,
      },
      { id: 'cure', name: 'é'.repeat(80), startMin: 2000, workEndMin: 2010, endMin: 2010, latestMin: null },
    ],
    { title: 'Lamp\nhead', jobId: 'a b', startDay: 20_575 },
  );

  test('3.1: lines end in CRLF and are no longer than 75 octets, also of letters of two octets', () => {
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/u);
    expect(text.endsWith('\r\n')).toBe(true);
    for (const line of text.split('\r\n'))
      expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  });

  test('3.1: the example of a folded line reads back as the line', () => {
    const line = 'DESCRIPTION:This is a long description that exists on a long line, and goes on after it.';
    expect(foldedLine(line)).toContain('\r\n ');
    expect(unfolded(foldedLine(line))).toBe(line);
  });

  test(`3.1: any text reads back, whatever its letters (seed ${propertySeed})`, () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (some) => {
        const line = `SUMMARY:${escapedText(some)}`;
        const folded = foldedLine(line);
        expect(unfolded(folded)).toBe(line);
        for (const one of folded.split('\r\n'))
          expect(new TextEncoder().encode(one).length).toBeLessThanOrEqual(75);
      }),
      { seed: propertySeed },
    );
  });

  test('3.3.11: backslash, semicolon, comma and line end are escaped; the example of the standard', () => {
    expect(escapedText('Project XYZ Final Review\nConference Room - 3B\nCome Prepared.')).toBe(
      String.raw`Project XYZ Final Review\nConference Room - 3B\nCome Prepared.`,
    );
    expect(escapedText(String.raw`a\b;c,d`)).toBe(String.raw`a\\b\;c\,d`);
    expect(escapedText('a\u0000b\u001Bc')).toBe('abc');
  });

  test('3.4, 3.6: a calendar with its version, its maker and events that each have UID and DTSTAMP, ends after starts', () => {
    const lines = unfolded(text).split('\r\n');
    expect(lines.slice(0, 3)).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Mold and Layup Workbook//EN',
    ]);
    const count = (line: RegExp) => lines.filter((one) => line.test(one)).length;
    expect(count(/^BEGIN:VEVENT$/u)).toBe(3);
    expect(count(/^END:VEVENT$/u)).toBe(3);
    expect(count(/^DTSTAMP:\d{8}T\d{6}Z$/u)).toBe(3);
    expect(count(/^DTSTART:\d{8}T\d{6}$/u)).toBe(3);
    const ids = lines.filter((one) => one.startsWith('UID:'));
    expect(new Set(ids).size).toBe(3);
    // 20 575 days after 1 January 1970 is 2 May 2026.
    expect(lines).toContain('DTSTART:20260502T090000');
    expect(lines).toContain('DTEND:20260502T100000');
    expect(lines).toContain(String.raw`SUMMARY:Lamp\nhead: Pour\; both halves\, "slowly"`);
  });
});

describe('RFC 4180', () => {
  test('2.1, 2.5 to 2.7: CRLF, fields with commas, quotes and line ends quoted, quotes doubled; its own examples', () => {
    expect(
      csvText([
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ]),
    ).toBe('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n');
    expect(csvText([['aaa', 'b\r\nbb', 'ccc']])).toBe('aaa,"b\r\nbb",ccc\r\n');
    expect(csvText([['aaa', 'b"bb', 'ccc']])).toBe('aaa,"b""bb",ccc\r\n');
  });
});
