/** Inputs of the Finish step: coats, papers, the calendar of the job. */
import * as z from 'zod/mini';
import { grits, type Grit } from '../../core/finish/sanding';
import { choice, folded, list, number, optional, other, plain, type InputsOf } from '../kit/inputTable';

/** One coat card; paths are `finish.coats.N.<field>`. */
export const finishCoatTable = {
  id: plain(z.string().check(z.minLength(1)), ''),
  name: plain(z.string().check(z.maxLength(80)), 'Clear coat'),
  kind: choice('Kind', 'clear', {
    meaning: 'Two-part sprays get their own caution.',
    choices: {
      filler: 'filler',
      primer: 'primer',
      paint: 'paint',
      clear: 'clear coat',
      'two-part spray': 'two-part spray',
    },
  }),
  count: number('Coats', '', 2, [1, 20, 0], { meaning: 'One on the other.', whole: true }),
  filmUm: number('Dry film of one coat', 'µm', 50, [1, 5000, 0], { meaning: 'From its data sheet.' }),
  solidsPercent: number('Solids by volume', '%', 100, [1, 100, 0], {
    meaning: 'From its data sheet; 100 for epoxy without solvent.',
  }),
  lossPercent: number('Loss', '%', 35, [0, 95, 0], {
    meaning: 'Left in pot and tool; 20 to 50 when brushed (common practice), more when sprayed.',
  }),
  densityGCm3: number('Density, dry', 'g/cm³', 1.15, [0.3, 5, 2], { meaning: 'Of the dry film.' }),
  recoatFromH: number('Next coat after', 'h', 4, [0, 1000, 1], { meaning: 'From its data sheet.' }),
  recoatToH: optional('Next coat within', 'h', 24, [0, 10_000, 1], {
    meaning: 'Without sanding, from its data sheet; empty when it names no end.',
  }),
  dryH: number('To be sanded after', 'h', 24, [0, 2000, 1], {
    meaning: 'Hard enough to be sanded and handled, from its data sheet.',
  }),
};
export type FinishCoatInput = InputsOf<typeof finishCoatTable>;

const grit = (label: string, start: Grit, meaning: string) =>
  choice<Grit>(label, start, {
    meaning,
    choices: Object.fromEntries(grits.map((one) => [one, one])) as Record<Grit, string>,
  });

export const finishTable = {
  coats: list('Coats', finishCoatTable, [], {
    meaning: `In the order of the work: ${Object.keys(finishCoatTable).join(', ')}.`,
    startWords: 'none',
  }),
  printThroughUm: number('Print-through of the weave', 'µm', 30, [0, 2000, 0], {
    meaning: 'How deep the weave shows in the cured face; a fingernail feels about 10.',
  }),
  firstGrit: grit('First paper', 'P240', 'P scale; the CAMI scale differs: CAMI 400 is about P800.'),
  lastGrit: grit('Last paper', 'P400', 'Under a gloss coat 220 to 400; finer gives too little hold.'),
  trimAllowanceMm: number('Trim allowance', 'mm', 2, [0, 30, 1], {
    meaning: 'Of laminate that is cut off at the rim.',
  }),
  startDate: other(
    'Start of the job',
    z.nullable(z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/u))),
    null,
    'Day on which the print begins, as 2026-05-04; null counts days from a Monday.',
  ),
  ...folded('Working hours', {
    dayFromH: number('Day begins', 'h', 9, [0, 23, 1], {
      meaning: 'Hour of the day, 9.5 is half past nine.',
    }),
    dayToH: number('Day ends', 'h', 17, [1, 24, 1], { meaning: 'Hour of the day.' }),
    workdays: choice('Days', 'Monday to Friday', {
      meaning: 'On which there is work at the bench; waiting goes on all days.',
      choices: {
        'Monday to Friday': 'Monday to Friday',
        'Saturday and Sunday': 'Saturday and Sunday',
        'every day': 'every day',
      },
    }),
    printH: number('Print', 'h', 12, [0, 1000, 1], { meaning: 'Of the pattern, from the printer.' }),
    dryingH: optional('Stone drying', 'h', null, [0, 5000, 0], {
      meaning: 'Empty takes the drying log, or 48 h.',
    }),
    layupH: number('Layup and closing', 'h', 4, [0, 100, 1], { meaning: 'Your own time.' }),
    trimH: number('Demolding and trimming', 'h', 2, [0, 100, 1], { meaning: 'Your own time.' }),
    coatH: number('One coat', 'h', 1, [0, 24, 1], { meaning: 'Mixing, coating and cleaning.' }),
    sandH: number('One paper', 'h', 0.5, [0, 24, 1], { meaning: 'Sanding with one grit, and washing.' }),
  }),
};
export type FinishInputs = InputsOf<typeof finishTable>;
