/** What is known of the part once it is out: trimmed, measured, coated, closed to a pair. */
import { sandingLadder } from '../../core/finish/sanding';
import { formatNumber } from '../../core/units/formatNumber';
import { dayAndTime, plannedJob } from '../../steps/finish/job';
import type { FinishCoatInput } from '../../steps/inputs/finish';
import { heldBack, isKnown, line, reading, stopsOf, value, type Material, type PhaseDraft } from '../lines';
import type { FactTable } from '../model';

type Lines = PhaseDraft['actions'];

const short = (amount: number) => formatNumber(amount, Number.isInteger(amount) ? 0 : 1);

export function finishPhase(material: Material): PhaseDraft {
  const { trimAllowanceMm } = material.context.inputs.finish;
  return {
    id: 'finish',
    title: 'Finish',
    stops: stopsOf(material, 'finish.'),
    table: calendarTable(material),
    actions: [
      line(
        'finish.trim',
        trimAllowanceMm > 0
          ? `Flash and the ${short(trimAllowanceMm)} mm of allowance at the rim trimmed to the line, edges sealed.`
          : 'Flash and rim trimmed, edges sealed.',
      ),
      ...reading(
        material,
        'finish.size',
        `Part measured; ${value(material, 'mold.wantedLengthMm')} wanted.`,
        ['finished.x', 'finished.y', 'finished.wall'],
        ['mold.wantedLengthMm'],
      ),
      ...reading(
        material,
        'finish.mass',
        'Part weighed before any coat.',
        ['finished.mass'],
        ['plies.partMassG'],
      ),
      ...rangeLines(material),
      ...coatLines(material),
      ...seamLines(material),
      line(
        'finish.enter',
        'All m numbers entered on the Bench page: it says what to change for the next half.',
      ),
    ],
  };
}

/** Only with a day that the maker gave: days counted from some Monday help nobody at the bench. */
function calendarTable({ context: { inputs }, reports, isHeld }: Material): FactTable | null {
  if (inputs.finish.startDate === null || isHeld) return null;
  const job = plannedJob(
    inputs,
    [...reports.values()].map((report) => ({ title: '', report })),
  );
  if (job === null) return null;
  return {
    caption: 'Calendar of the job, on your working hours',
    columns: ['Work', 'Begins', 'Done'],
    rows: job.scheduled.map(({ name, startMin, endMin }) => [
      name,
      dayAndTime(job, startMin),
      dayAndTime(job, endMin),
    ]),
  };
}

/** Before anything is glued shut. */
function rangeLines({ context: { inputs } }: Material): Lines {
  const { transmitters } = inputs.fit;
  if (transmitters.length === 0) return [];
  return [
    line(
      'finish.range',
      `Range test with the halves taped shut, and again open, at full distance: ${transmitters.map(({ name }) => name).join(', ')}. Both distances noted; too short: a window before anything is glued.`,
    ),
  ];
}

const windowOf = ({ recoatFromH, recoatToH }: FinishCoatInput): string =>
  recoatToH === null
    ? `next coat after ${short(recoatFromH)} h`
    : `next coat after ${short(recoatFromH)} h and within ${short(recoatToH)} h`;

function coatLines(material: Material): Lines {
  const { finish } = material.context.inputs;
  if (finish.coats.length === 0) return [];
  const amount = material.isHeld ? heldBack : value(material, 'finish.coatMl');
  return [
    line('finish.mix', `Coats at hand, all told: ${amount}.`, ['finish.coatMl']),
    ...finish.coats.map((coat, at) =>
      line(
        `finish.coat.${at + 1}`,
        `${coat.name}: ${coat.count} × ${formatNumber(coat.filmUm, 0)} µm dry; ${windowOf(coat)}; sanded after ${short(coat.dryH)} h.`,
      ),
    ),
    ...(isKnown(material, 'finish.marginUm')
      ? [
          line(
            'finish.sand',
            `Sanded ${sandingLadder(finish.firstGrit, finish.lastGrit)
              .map(({ grit, isWet }) => (isWet ? `${grit} wet` : grit))
              .join(
                ', ',
              )}; ${value(material, 'finish.sandedUm')} off in all. STOP where fiber shows: a coat, not a finer paper.`,
            ['finish.sandedUm', 'finish.marginUm'],
          ),
        ]
      : []),
  ];
}

function seamLines(material: Material): Lines {
  const { seam, contents } = material.context.inputs.fit;
  if (seam === 'none' || !isKnown(material, 'fit.gasketMl')) return [];
  const what = seam === 'bead' ? 'bead' : 'cord';
  const opens = contents.some(({ what: kind }) => kind === 'cell') ? ', the way to the cells left open' : '';
  return [
    line('finish.dryFit', `Halves closed dry: contents clear, ends the right way round, rims meet${opens}.`),
    line(
      'finish.seam',
      `Seam: ${what} of ${material.isHeld ? heldBack : value(material, 'fit.gasketMl')} along ${value(material, 'fit.rimLengthMm')} of rim${isKnown(material, 'fit.screws') ? `, ${value(material, 'fit.screws')} screws` : ''}.`,
      ['fit.gasketMl', 'fit.rimLengthMm'],
    ),
  ];
}
