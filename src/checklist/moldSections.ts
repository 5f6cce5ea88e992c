/** The checklist from the mold box to two halves that are dry, sealed and released. */
import { boxSheets } from '../core/stone/boxSheets';
import { dryToleranceG, expectedShare, steadyHours } from '../core/stone/drying';
import { repairStepMm } from '../core/stone/repairs';
import { formatNumber } from '../core/units/formatNumber';
import type { StepContext } from '../steps/shared/context';
import { stripOverlapMm } from '../steps/mold/boxFigures';
import { moldWork, halves, type Half, type MoldWork } from '../steps/stone/work';
import {
  cautionsOf,
  known,
  line,
  measuring,
  value,
  type Figures,
  type LineDraft,
  type Reports,
  type SectionDraft,
} from './lineDrafts';
import type { ChecklistFactTable } from './model';

/** Room for weighings on paper, those already noted among them. */
const weighingRows = 8;

export function moldSections(
  context: StepContext,
  reports: Reports,
  figures: Figures,
): readonly SectionDraft[] {
  const work = moldWork(context);
  return [
    boxSection(context, reports, figures, work),
    pourSection('negative', context, reports, figures, work),
    pourSection('positive', context, reports, figures, work),
    dryingSection(context, reports, figures, work),
    sealSection(context, reports, figures),
  ];
}

/** What is not "go" among the mold's verdicts, for the section that it belongs to. */
function moldWarnings(reports: Reports, belongs: (id: string) => boolean): SectionDraft['warnings'] {
  const warnings = (reports.get('mold')?.verdicts ?? [])
    .filter(({ id, word }) => word !== 'go' && belongs(id))
    .map(({ word, reason, fix }) => ({ word, reason, fix }));
  // Without a pattern all of them say the same.
  return warnings.filter(({ reason }, at) => warnings.findIndex((one) => one.reason === reason) === at);
}

const isOfPour = (id: string) => /^mold\.(?:mix|layers|float|heat|rimOnBoard)$/u.test(id);
const isOfDrying = (id: string) => /^mold\.(?:drying|negative\.dry|positive\.dry)$/u.test(id);
const isOfRepairs = (id: string) => id === 'mold.repairs';

const mm = (length: number, decimals = 1) => `${formatNumber(length, decimals)} mm`;
const minutes = (time: number) => `${formatNumber(time, Number.isInteger(time) ? 0 : 1)} min`;
const grams = (mass: number) => `${formatNumber(mass, 0)} g`;

function boxSection(
  { inputs, mold }: StepContext,
  reports: Reports,
  figures: Figures,
  work: MoldWork,
): SectionDraft {
  const { keyCount, keyDiameterMm, keyHeightMm, prySlotCount, prySlotWidthMm, prySlotDepthMm, sheetMm } =
    inputs.mold;
  const lines: LineDraft[] = [
    measuring(
      'box.inside',
      `Box glued square and tight, joints sealed with wax or clay; inside ${value(figures, 'mold.boxMm')}.`,
      'length inside',
      'mm',
      ['mold.boxMm'],
    ),
  ];
  if (mold !== null)
    lines.push(
      line(
        'box.marks',
        `Pour heights marked on the walls: negative ${mm(mold.box.negativeHeightMm)}, positive ${mm(mold.box.positiveHeightMm)} from the parting.`,
      ),
    );
  lines.push(
    line('box.pattern', 'Pattern and box sealed and released, no brush marks, nothing pooled in corners.'),
    measuring(
      'box.patternWeight',
      `Pattern weighed; taken as ${value(figures, 'mold.patternG')}.`,
      'pattern',
      'g',
      ['mold.patternG'],
    ),
    line(
      'box.keys',
      keyCount === 0 && prySlotCount === 0
        ? 'No registration keys, no pry slots: mark both halves so that they cannot be turned.'
        : `${keyCount} keys of ${mm(keyDiameterMm)} by ${mm(keyHeightMm)} high and ${prySlotCount} pry slots of ${mm(prySlotWidthMm)} by ${mm(prySlotDepthMm)} deep prepared at the parting.`,
      ['mold.keysPlaced'],
    ),
    line('box.level', 'Box stands level on a board that does not bend, with a tray under it.'),
  );
  return {
    id: 'box',
    title: 'Build the mold box',
    warnings: moldWarnings(reports, (id) => !isOfPour(id) && !isOfDrying(id) && !isOfRepairs(id)),
    cautions: cautionsOf(reports, 'mold.coats'),
    ...(work.geometry.known ? { table: cutList(work.geometry.value, sheetMm, inputs.mold.freeboardMm) } : {}),
    lines,
  };
}

function cutList(
  { box }: NonNullable<StepContext['mold']>,
  sheetMm: number,
  freeboardMm: number,
): ChecklistFactTable {
  return {
    caption: `Cut for the box, from sheets of ${mm(sheetMm)}`,
    columns: ['Piece', 'Count', 'Length, mm', 'Height, mm'],
    rows: boxSheets(box, sheetMm, freeboardMm, stripOverlapMm).map(({ name, count, lengthMm, heightMm }) => [
      name,
      String(count),
      formatNumber(lengthMm, 1),
      formatNumber(heightMm, 1),
    ]),
  };
}

function pourSection(
  half: Half,
  context: StepContext,
  reports: Reports,
  figures: Figures,
  work: MoldWork,
): SectionDraft {
  const { stone } = work;
  const { mixingMin } = context.inputs.mold;
  const answer = work.half[half];
  const first = half === 'negative';
  const lines: LineDraft[] = [];
  if (first) lines.push(holdLine(context, figures));
  else
    lines.push(
      line(
        'pour.positive.land',
        'Negative turned over with the pattern still in it; its land cleaned, sealed and released, keys too.',
      ),
    );
  if (answer.known) {
    const { plan } = answer.value;
    for (let batch = 1; batch <= plan.batches; batch++)
      lines.push(
        measuring(
          `pour.${half}.batch.${batch}`,
          `Batch ${batch} of ${plan.batches}: ${grams(plan.batchPowderG)} of powder strewn into ${grams(plan.batchWaterG)} of water, soaked, mixed for ${minutes(mixingMin)}, poured within ${minutes(stone.workingMin.value)} of the water in a thin stream from one corner while tapping${batch === 1 ? '' : '; the layer before it is still wet'}.`,
          'powder',
          'g',
          [`mold.${half}.powderG`, `mold.${half}.waterG`],
        ),
      );
  } else lines.push(line(`pour.${half}.unknown`, `The mix is not known yet. ${answer.why}`));
  lines.push(
    line(
      `pour.${half}.timers`,
      `Timers: mixing ${minutes(mixingMin)}, working time ${minutes(stone.workingMin.value)}, set after ${minutes(stone.finalSetMin.value)}, box opened no sooner than ${minutes(stone.demoldMin.value)}.`,
      ['mold.workingMin', 'mold.finalSetMin', 'mold.demoldMin'],
    ),
  );
  if (first && known(figures, 'mold.settingPeakC'))
    lines.push(
      measuring(
        'pour.heat',
        `Warmest while setting, by thermometer in a trial cup as thick as the thickest stone; estimated ${value(figures, 'mold.settingPeakC')}, the pattern softens at ${value(figures, 'mold.patternSoftensC')}.`,
        'peak',
        '°C',
        ['mold.settingPeakC', 'mold.patternSoftensC'],
      ),
    );
  if (!first)
    lines.push(
      line(
        'pour.positive.thermocouple',
        'Channel for the thermocouple’s wire cast in, from the coldest place of the laminate worked out (Clamp & cure, heat view) to the outside.',
      ),
    );
  lines.push(
    measuring(
      `pour.${half}.demold`,
      first
        ? 'Set and cooled; counterweight off, box left on for the second pour.'
        : 'Box off, halves parted with wooden wedges, negative first, pattern out. Time noted: drying starts here.',
      'time of day',
      'h:min',
    ),
  );
  return {
    id: `pour.${half}`,
    title: `Pour the ${half}`,
    warnings: first ? moldWarnings(reports, isOfPour) : [],
    cautions: first
      ? cautionsOf(reports, 'mold.dust', 'mold.settingHeat', 'mold.drain')
      : cautionsOf(reports, 'mold.dust', 'mold.settingHeat', 'mold.opening'),
    ...(first ? { table: poursTable(work) } : {}),
    lines,
  };
}

function holdLine({ inputs }: StepContext, figures: Figures): LineDraft {
  const weight = value(figures, 'mold.counterweightG');
  const ids = ['mold.counterweightG', 'mold.floatUpForceN', 'mold.leakCounterweightG'];
  const text =
    inputs.mold.pourMethod === 'pressed in'
      ? `Counterweight of ${weight} at hand, to be spread over the rim once the pattern is pressed in flush.`
      : inputs.mold.pourMethod === 'board, sealed'
        ? `Pattern rim down on the board, sealed all round; ${value(figures, 'mold.leakCounterweightG')} at hand should the seal let go.`
        : `Pattern rim down on the board, held down with ${weight} before the stone is in.`;
  return measuring('pour.counterweight', text, 'weight laid on', 'g', ids);
}

function poursTable({ half }: MoldWork): ChecklistFactTable {
  return {
    caption: 'The two pours, losses included',
    columns: ['Half', 'Powder, g', 'Water, g', 'Batches', 'Powder each, g', 'Water each, g'],
    rows: halves.map((name) => {
      const answer = half[name];
      if (!answer.known) return [name, '–', '–', '–', '–', '–'];
      const { plan } = answer.value;
      return [
        name,
        formatNumber(plan.powderG, 0),
        formatNumber(plan.waterG, 0),
        String(plan.batches),
        formatNumber(plan.batchPowderG, 0),
        formatNumber(plan.batchWaterG, 0),
      ];
    }),
  };
}

function dryingSection(
  { inputs }: StepContext,
  reports: Reports,
  figures: Figures,
  work: MoldWork,
): SectionDraft {
  const { dryingC, dryingHours, dryingLog, scaleStepG, repairs } = inputs.mold;
  const blank = Math.max(0, weighingRows - dryingLog.length);
  return {
    id: 'drying',
    title: 'Dry both halves',
    warnings: [...moldWarnings(reports, isOfDrying), ...moldWarnings(reports, isOfRepairs)],
    cautions: cautionsOf(reports, 'mold.dampOven'),
    table: {
      caption: 'Drying log: hours since demolding, each half alone on the scale',
      columns: ['Hours', 'Negative, g', 'Positive, g', 'Initials'],
      rows: [
        ...dryingLog.map(({ hours, negativeG, positiveG }) => [
          formatNumber(hours, 1),
          negativeG === null ? '' : formatNumber(negativeG, 1),
          positiveG === null ? '' : formatNumber(positiveG, 1),
          '',
        ]),
        ...Array.from({ length: blank }, () => ['', '', '', '']),
      ],
    },
    lines: [
      line(
        'drying.rack',
        `On a rack with a fan at ${formatNumber(dryingC, 0)} °C, ${formatNumber(dryingHours, 0)} h planned; the weighings decide.`,
      ),
      ...halves.map((half) => {
        const answer = work.half[half];
        const within = answer.known
          ? ` within ${formatNumber(expectedShare * answer.value.stone.freeWaterG, 1)} g, steady within ${formatNumber(dryToleranceG(answer.value.stone.freeWaterG, scaleStepG), 1)} g over ${steadyHours} h or more`
          : '';
        return measuring(
          `drying.${half}`,
          `The ${half} weighed until it stops: expected ${value(figures, `mold.${half}.dryTargetG`)}${within}.`,
          'dry weight',
          'g',
          [`mold.${half}.dryTargetG`, `mold.${half}.freeWaterG`],
        );
      }),
      ...repairs.map((repair, index) =>
        line(
          `drying.repair.${index + 1}`,
          `Repair ${index + 1} on the ${repair.half} at ${repair.atMm.map((at) => formatNumber(at, 1)).join(', ')} mm: ${repair.kind === 'filled' ? 'bubble filled' : 'scraped'}, wall ${formatNumber(repairStepMm(repair), 2)} mm${repair.note.trim() === '' ? '' : `; ${repair.note.trim()}`}.`,
          ['mold.repairCount'],
        ),
      ),
      line(
        'drying.bubbles',
        'Faces looked over in slanting light: bubbles filled, fins scraped, both noted.',
      ),
    ],
  };
}

function sealSection({ inputs }: StepContext, reports: Reports, figures: Figures): SectionDraft {
  const { sealerCoats, sealerWaitMin, releaseCoats, releaseWaitMin } = inputs.mold;
  return {
    id: 'seal',
    title: 'Seal and release both halves',
    warnings: [],
    cautions: cautionsOf(reports, 'mold.coats'),
    lines: [
      line(
        'seal.sealer',
        `Sealer: ${sealerCoats} coats, ${value(figures, 'mold.sealerMl')} in all, ${minutes(sealerWaitMin)} after each, or as the supplier says.`,
        ['mold.sealerMl', 'mold.sealerWaitMin'],
      ),
      line(
        'seal.wetOut',
        'Wet-out checked: a drop of water on the land stands and is not drawn in; else one coat more.',
      ),
      line(
        'seal.release',
        `Release: ${releaseCoats} coats, ${value(figures, 'mold.releaseMl')} in all, ${minutes(releaseWaitMin)} after each, polished; lands, keys and steep walls too.`,
        ['mold.releaseMl', 'mold.releaseWaitMin'],
      ),
    ],
  };
}
