import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { valueAt } from '../../../src/core/cure/curve';
import { parseLog } from '../../../src/core/cure/parseLog';
import { propertySeed } from '../../support/propertySeed';

/** An hour of readings every 30 s from 20 °C up, one line each. */
const lines = (line: (minute: number, celsius: number) => string) =>
  Array.from({ length: 121 }, (_, i) => line(i / 2, 20 + i / 2)).join('\n');

const fahrenheit = (celsius: number) => celsius * 1.8 + 32;
const two = (value: number) => String(Math.floor(value)).padStart(2, '0');
const clock = (minute: number, fromHour = 9) => {
  const seconds = fromHour * 3600 + minute * 60;
  return `${two((seconds / 3600) % 24)}:${two((seconds / 60) % 60)}:${two(seconds % 60)}`;
};

describe('logs that can be read', () => {
  test.each([
    ['seconds and °C', `Time (s),Air (°C),Laminate (°C)\n${lines((m, c) => `${m * 60},${c + 10},${c}`)}`],
    [
      'minutes, semicolons, decimal commas',
      `Zeit [min];Luft [°C];Laminat [°C]\n${lines((m, c) => `${m};${c + 10};${c}`).replaceAll('.', ',')}`,
    ],
    ['hours and tabs', `elapsed h\tair C\tlam C\n${lines((m, c) => `${m / 60}\t${c + 10}\t${c}`)}`],
    ['clock times', `Time,Air (C),Lam (C)\n${lines((m, c) => `${clock(m)},${c + 10},${c}`)}`],
    [
      'clock times over midnight',
      `Time,Air (C),Lam (C)\n${lines((m, c) => `${clock(m, 23.5)},${c + 10},${c}`)}`,
    ],
    [
      'dates with clock times',
      `Stamp,Air (C),Lam (C)\n${lines((m, c) => `2031-03-09 ${clock(m)},${c + 10},${c}`)}`,
    ],
    [
      'fahrenheit',
      `Time (s),Air (°F),Lam (°F)\n${lines((m, c) => `${m * 60},${fahrenheit(c + 10)},${fahrenheit(c)}`)}`,
    ],
    ['kelvin', `Time (s),Air (K),Lam (K)\n${lines((m, c) => `${m * 60},${c + 283.15},${c + 273.15}`)}`],
    [
      'lines above the heading',
      `Logger 7\nstarted;today\n\nTime (s);Air (°C);Lam (°C)\n${lines((m, c) => `${m * 60};${c + 10};${c}`)}`,
    ],
    [
      'quoted cells with decimal commas',
      `"Time (s)","Air (°C)","Lam (°C)"\n${lines((m, c) => `"${m * 60}","${c + 10}","${c}"`.replaceAll('.', ','))}`,
    ],
    [
      'a byte-order mark and Windows line ends',
      `\uFEFFTime (s),Air (°C),Lam (°C)\r\n${lines((m, c) => `${m * 60},${c + 10},${c}`).replaceAll('\n', '\r\n')}`,
    ],
    [
      'a humidity column and a line number',
      `No,Time (s),RH (%),Air (°C),Lam (°C)\n${lines((m, c) => `${m},${m * 60},40,${c + 10},${c}`)}`,
    ],
  ])('%s', (_, text) => {
    const { columns } = parseLog(text);
    expect(columns).toHaveLength(2);
    const [air, laminate] = columns;
    for (const minute of [0, 7, 30, 60]) {
      expect(valueAt(laminate!.curve, minute * 60)).toBeCloseTo(20 + minute, 1);
      expect(valueAt(air!.curve, minute * 60)).toBeCloseTo(30 + minute, 1);
    }
    expect(laminate!.lostReadings).toBe(0);
    expect(laminate!.gaps).toEqual([]);
  });

  test('no headings: times and temperatures are found, and what was guessed is said', () => {
    const { columns, notes, timeUnitSaid } = parseLog(
      lines((m, c) => `${m * 60},${fahrenheit(c)}`) + `\n7200,${fahrenheit(120)}`,
    );
    expect(timeUnitSaid).toBe(false);
    expect(columns[0]).toMatchObject({ unit: '°F', unitSaid: false });
    expect(valueAt(columns[0]!.curve, 1800)).toBeCloseTo(50, 1);
    expect(notes.some((note) => note.includes('taken as °F'))).toBe(true);
    expect(notes.some((note) => note.includes('taken as s'))).toBe(true);
  });

  test('the maker may overrule what was guessed', () => {
    const { columns } = parseLog(`t,x\n${lines((m, c) => `${m},${c}`)}`, {
      timeUnit: 'min',
      temperatureUnit: '°C',
    });
    expect(valueAt(columns[0]!.curve, 1800)).toBeCloseTo(50, 6);
  });

  test('open thermocouples, empty cells and pauses become gaps', () => {
    const text = `Time (s),Lam (°C)\n${lines((m, c) => {
      if (m > 20 && m < 30) return `${m * 60},1372`;
      if (m > 40 && m < 42) return `${m * 60},`;
      return m > 50 && m < 55 ? '' : `${m * 60},${c}`;
    })}`;
    const [laminate] = parseLog(text).columns;
    expect(laminate!.gaps).toEqual([
      { fromS: 1200, untilS: 1800 },
      { fromS: 3000, untilS: 3300 },
    ]);
    expect(laminate!.lostReadings).toBe(22);
    expect(valueAt(laminate!.curve, 1500)).toBeCloseTo(45, 6);
  });

  test(`any even log is read back (seed ${propertySeed})`, () => {
    const reading = fc.integer({ min: 200, max: 1300 }).map((tenth) => tenth / 10);
    const unit = fc.constantFrom('s', 'min', 'h');
    const parting = fc.constantFrom(',', ';', '\t');
    fc.assert(
      fc.property(
        fc.array(reading, { minLength: 5, maxLength: 60 }),
        unit,
        parting,
        (values, timeUnit, cut) => {
          const per = { s: 1, min: 60, h: 3600 }[timeUnit];
          const text = [
            `Time (${timeUnit})${cut}Laminate (°C)`,
            ...values.map((c, i) => `${(i * 60) / per}${cut}${c}`),
          ].join('\n');
          const [column] = parseLog(text).columns;
          expect(column!.curve.valuesC).toEqual(values);
          column!.curve.timesS.forEach((timeS, i) => expect(timeS).toBeCloseTo(60 * i, 6));
        },
      ),
    );
  });
});

describe('logs that cannot', () => {
  test.each([
    ['log.empty', '  \n '],
    ['log.notCsv', 'solid part\nfacet normal 0 0 1\nouter loop\n'],
    ['log.notCsv', '<!doctype html><html><body>Sign in</body></html>'],
    ['log.notCsv', 'PK\u0003\u0004\u0000\u0000binary'],
    ['log.notCsv', 'Time,Lam\nnine,hot\nten,hotter\neleven,hottest'],
    ['log.decimals', `Time,Lam °C\n${lines((m, c) => `${m},${c},5`)}`],
    ['log.noTime', 'a,b\n5,20\n3,21\n4,19\n1,23'],
    ['log.noTemperature', `Time (s),RH (%)\n${lines((m, c) => `${m * 60},${c}`)}`],
    ['log.timeBackward', 'Time (s),Lam (°C)\n0,20\n60,21\n30,22\n120,23'],
    ['log.tooShort', `Time (s),Lam (°C)\n${lines((m) => `${m * 60},1372`)}`],
  ])('%s: %j', (code, text) => {
    expect(() => parseLog(text)).toThrow(expect.objectContaining({ code }));
  });
});
