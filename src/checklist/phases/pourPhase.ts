/** From the trial cup to two halves that are dry, sealed and released. */
import { dryToleranceG, steadyHours } from '../../core/stone/drying';
import { repairStepMm } from '../../core/stone/repairs';
import { formatNumber } from '../../core/units/formatNumber';
import { halves, type Half } from '../../steps/stone/work';
import {
  blanksOf,
  heldBack,
  line,
  millimeters,
  minutes,
  reading,
  stopsOf,
  value,
  type Material,
  type PhaseDraft,
  type Step,
} from '../lines';
import type { FactTable } from '../model';

export function pourPhase(material: Material): PhaseDraft {
  return {
    id: 'pour',
    title: 'Pour',
    stops: stopsOf(material, 'mold.mix', 'mold.layers', 'mold.float', 'mold.heat', 'mold.drying'),
    table: material.isHeld ? null : mixTable(material),
    actions: [
      ...reading(
        material,
        'pour.trial',
        `Before the pour: a trial cup as thick as the thickest stone, a scrap of the print in it; the print softens at ${value(material, 'mold.patternSoftensC')}.`,
        ['peak'],
        ['mold.patternSoftensC'],
      ),
      ...(material.isHeld
        ? [line('pour.held', `Powder, water and weight on top are ${heldBack}. See the Decision page.`)]
        : pourLines(material)),
      ...dryingLines(material),
      ...sealLines(material),
    ],
  };
}

function mixTable({ work: { half } }: Material): FactTable {
  return {
    caption: 'Mix, losses included',
    columns: ['Half', 'Batches', 'Powder of each, g', 'Water of each, g'],
    rows: halves.map((name) => {
      const answer = half[name];
      if (!answer.known) return [name, '–', '–', '–'];
      const { plan } = answer.value;
      return [
        name,
        String(plan.batches),
        formatNumber(plan.batchPowderG, 0),
        formatNumber(plan.batchWaterG, 0),
      ];
    }),
  };
}

function pourLines(material: Material): readonly Step[] {
  const { work, context } = material;
  const { mixingMin, pourMethod } = context.inputs.mold;
  const { workingMin, finalSetMin, demoldMin } = work.stone;
  const isPressedIn = pourMethod === 'pressed in';
  const times = `set after ${minutes(finalSetMin.value)}, box opened no sooner than ${minutes(demoldMin.value)}`;
  return [
    line(
      'pour.mix',
      `Each batch: powder strewn into the water, soaked, mixed ${minutes(mixingMin)}; in the box within ${minutes(workingMin.value)} of the water, thin stream into one corner, tapped.`,
      ['mold.workingMin'],
    ),
    ...reading(material, 'pour.slurry', 'Of the first batch: a cup of known volume, level full.', ['slurry']),
    ...(isPressedIn ? [] : [boardLine(material)]),
    line('pour.negative', `Negative poured to its mark${batchWords(material, 'negative')}.`, [
      'mold.negative.powderG',
      'mold.negative.waterG',
    ]),
    ...(isPressedIn
      ? [
          line(
            'pour.counterweight',
            `Pattern pressed in, rim flush; then ${value(material, 'mold.counterweightG')} spread over the rim.`,
            ['mold.counterweightG'],
          ),
        ]
      : []),
    line('pour.negative.set', `Negative: ${times}; cooled.`, ['mold.finalSetMin', 'mold.demoldMin']),
    line(
      'pour.land',
      isPressedIn
        ? 'Weight off. Land and keys cleaned, sealed and released; the pattern stays in.'
        : 'Turned over, board off, the pattern stays in. Land and keys cleaned, sealed and released.',
    ),
    line(
      'pour.thermocouple',
      'A released wire laid from T on the map to the outside: the channel for the thermocouple.',
    ),
    line('pour.positive', `Positive poured to its mark${batchWords(material, 'positive')}; ${times}.`, [
      'mold.positive.powderG',
      'mold.positive.waterG',
      'mold.finalSetMin',
      'mold.demoldMin',
    ]),
    line('pour.demold', 'Box off, halves parted with wooden wedges, negative first. Pattern and wire out.'),
    line(
      'pour.fresh',
      'Each half alone on the scale, at once: hour 0 of the drying.',
      [],
      blanksOf(material, 'log.0.'),
    ),
  ];
}

function boardLine(material: Material): Step {
  const sealed = material.context.inputs.mold.pourMethod === 'board, sealed';
  const id = sealed ? 'mold.leakCounterweightG' : 'mold.counterweightG';
  return line(
    'pour.counterweight',
    sealed
      ? `Pattern rim down on the board, sealed all round; ${value(material, id)} at hand should the seal let go.`
      : `Pattern rim down on the board, held down with ${value(material, id)} before the stone is in.`,
    [id],
  );
}

function batchWords({ work }: Material, half: Half): string {
  const answer = work.half[half];
  if (!answer.known) return ` (the mix is not known yet: ${answer.why})`;
  const { batches, joinAgeMin } = answer.value.plan;
  return batches === 1
    ? ' in one batch'
    : ` in ${batches} batches, each onto the one before while it still flows (at most ${minutes(joinAgeMin)} old)`;
}

function dryingLines(material: Material): readonly Step[] {
  const { context, work } = material;
  const { dryingC, dryingHours, scaleStepG, repairs } = context.inputs.mold;
  const steady = halves.flatMap((half) => {
    const answer = work.half[half];
    return answer.known ? [dryToleranceG(answer.value.stone.freeWaterG, scaleStepG)] : [];
  });
  const tolerance = steady.length === 0 ? '' : ` within ${formatNumber(Math.min(...steady), 1)} g`;
  return [
    line(
      'drying.rack',
      `On a rack before a fan at ${formatNumber(dryingC, 0)} °C, ${formatNumber(dryingHours, 0)} h planned; then weighed.`,
    ),
    line(
      'drying.first',
      'First dry weighing.',
      ['mold.negative.dryTargetG', 'mold.positive.dryTargetG'],
      blanksOf(material, 'log.1.'),
    ),
    line(
      'drying.gate',
      `GATE: again ${steadyHours} h later or more, steady${tolerance}. Not steady: not sealed.`,
      [],
      blanksOf(material, 'log.2.'),
    ),
    line(
      'drying.faces',
      'Faces looked over in slanting light: bubbles filled, fins scraped damp, both noted.',
    ),
    ...repairs.map((repair, at) =>
      line(
        `drying.repair.${at + 1}`,
        `Repair ${at + 1}, ${repair.half} at ${repair.atMm.map((one) => formatNumber(one, 0)).join(', ')}: ${repair.kind === 'filled' ? 'filled' : 'scraped'}, wall ${millimeters(repairStepMm(repair), 2)}.`,
        ['mold.repairCount'],
      ),
    ),
  ];
}

function sealLines(material: Material): readonly Step[] {
  const { sealerCoats, sealerWaitMin, releaseCoats, releaseWaitMin } = material.context.inputs.mold;
  return [
    line(
      'seal.sealer',
      `Sealer: ${sealerCoats} coats, ${value(material, 'mold.sealerMl')}, ${minutes(sealerWaitMin)} after each or as its sheet says; a drop of water must stand on the land.`,
      ['mold.sealerMl'],
    ),
    line(
      'seal.release',
      `Release: ${releaseCoats} coats, ${value(material, 'mold.releaseMl')}, ${minutes(releaseWaitMin)} after each, polished; lands, keys, steep walls too.`,
      ['mold.releaseMl'],
    ),
    line('seal.weight', 'Both weighed as sealed, written on the stone: the reference before layup.'),
  ];
}
