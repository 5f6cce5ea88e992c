/** What is read at the bench and has no place at another step; null until then. */
import { optional } from '../kit/inputTable';

const wall = (where: string) =>
  optional(`Printed wall ${where}`, 'mm', null, [0.05, 50, 2], {
    meaning: `Caliper on the printed pattern ${where} of the bench card.`,
  });
const finished = (what: string) =>
  optional(`Finished part, ${what}`, 'mm', null, [0.1, 10_000, 2], {
    meaning: `Caliper over the demolded and trimmed part, ${what}.`,
  });

export const benchTable = {
  wallTypicalMm: wall('at a typical place'),
  wallAMm: wall('at place A'),
  wallBMm: wall('at place B'),
  wallCMm: wall('at place C'),
  coldStandOffMm: optional('Stand-off, clamped cold', 'mm', null, [0, 20, 2], {
    meaning: 'Feeler gauge at the rim, the widest place, before the oven.',
  }),
  laminatePeakC: optional('Hottest reading at the laminate', '°C', null, [0, 300, 0], {
    meaning: 'Of the thermocouple at the coldest place of the laminate.',
  }),
  laminateHeldMin: optional('Laminate within 5 K of the last dwell for', 'min', null, [0, 10_000, 0], {
    meaning: 'By the thermocouple’s log, not by the clock of the oven.',
  }),
  finishedXMm: finished('along x'),
  finishedYMm: finished('along y'),
  finishedWallMm: optional('Finished wall', 'mm', null, [0.05, 50, 2], {
    meaning: 'Caliper on the trimmed part, at the typical place of the bench card.',
  }),
  finishedMassG: optional('Finished part, weighed', 'g', null, [0.01, 100_000, 1], {
    meaning: 'The trimmed part on the scale, before any coat.',
  }),
};
