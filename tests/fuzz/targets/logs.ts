/** Thermocouple logs in every manner of writing, and hurt. */
import { parseLog } from '../../../src/core/cure/parseLog';
import type { Chance } from '../chance';
import { Finding, lostNumber, orRefused, type FuzzTarget } from '../fuzzTarget';
import { mutatedText } from '../mutate';

function anyLog(chance: Chance): string {
  const parting = chance.pick([',', ';', '\t', '|']);
  const comma = parting !== ',' && chance.below(2) === 0;
  const number = (value: number) => (comma ? value.toFixed(1).replace('.', ',') : value.toFixed(1));
  const time = chance.pick([
    (at: number) => String(60 * at),
    (at: number) => number(at),
    (at: number) => `${8 + Math.floor(at / 60)}:${String(at % 60).padStart(2, '0')}:00`,
    (at: number) => `2031-05-06 ${8 + Math.floor(at / 60)}:${String(at % 60).padStart(2, '0')}`,
  ]);
  const heading = chance.pick([
    ['Time (s)', 'T1 (°C)', 'air'],
    ['time', 'temp F', 'x'],
    ['min', 'K', ''],
    [],
  ]);
  const rows = Array.from({ length: 3 + chance.below(40) }, (_, at) =>
    [time(at), number(20 + at), chance.below(9) === 0 ? '' : number(25 + 2 * at)].join(parting),
  );
  return [...(heading.length === 0 ? [] : [heading.join(parting)]), ...rows].join(
    chance.pick(['\n', '\r\n']),
  );
}

export const logs: FuzzTarget = {
  name: 'logs',
  run(chance) {
    const text = anyLog(chance);
    const log = orRefused(() => parseLog(chance.below(3) === 0 ? text : mutatedText(chance, text)));
    if (log === null) return;
    const lost = lostNumber(log);
    if (lost !== null) throw new Finding(lost);
    for (const { name, curve } of log.columns)
      curve.timesS.forEach((at, i) => {
        if (i > 0 && at <= curve.timesS[i - 1]!)
          throw new Finding(`${name}: time ${at} s after ${curve.timesS[i - 1]} s`);
      });
  },
};
