/** The checklist from two closed halves to a part that may be demolded: oven gate, cure by laminate times, cool-down gate. */
import { gentleKPerMin } from '../core/cure/ovenProgram';
import { steadyHours } from '../core/stone/drying';
import { formatNumber } from '../core/units/formatNumber';
import type { StepContext } from '../steps/shared/context';
import { openUnderC } from '../steps/cure/opening';
import { celsius, clockHours, hoursMinutes, treatmentNames } from '../steps/cure/say';
import { jackingWords, liftWords, moldOpening, orderWords } from '../steps/mold/opening';
import { cureState, type CureAnswer } from '../steps/cure/state';
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

export function cureSections(
  context: StepContext,
  reports: Reports,
  figures: Figures,
): readonly SectionDraft[] {
  const state = cureState(context);
  return [
    ovenSection(context, reports, figures),
    runSection(context, reports, figures, state),
    coolSection(context, reports, state),
  ];
}

function cureWarnings(reports: Reports, ids: readonly string[]): SectionDraft['warnings'] {
  return (reports.get('cure')?.verdicts ?? [])
    .filter(({ id, word }) => word !== 'go' && ids.includes(id))
    .map(({ word, reason, fix }) => ({ word, reason, fix }));
}

function ovenSection({ inputs }: StepContext, reports: Reports, figures: Figures): SectionDraft {
  const { clampLimitC, patternInside } = inputs.cure;
  const weight = (half: 'negative' | 'positive') =>
    measuring(
      `oven.${half}.weight`,
      `Dry gate: the ${half} weighed before layup, no fall over ${steadyHours} h or more${known(figures, `mold.${half}.dryTargetG`) ? `; dry at ${value(figures, `mold.${half}.dryTargetG`)}` : ''}. Not dry: not into the oven.`,
      'weight',
      'g',
      [`mold.${half}.dryTargetG`],
    );
  return {
    id: 'oven',
    title: 'Before the oven',
    warnings: cureWarnings(reports, ['cure.damp', 'cure.voids', 'cure.clamps']),
    cautions: cautionsOf(reports, 'cure.oven', 'cure.dampStone'),
    lines: [
      weight('negative'),
      weight('positive'),
      line(
        'oven.pattern',
        patternInside === 'out'
          ? 'The printed pattern is out of the mold.'
          : 'The printed pattern is still in the mold: take it out, or stay under its limit.',
      ),
      line(
        'oven.clamps',
        `Clamps checked one by one: all tight, evenly set, fit for ${celsius(clampLimitC)}, no plastic in the heat.`,
      ),
      line(
        'oven.thermocouple',
        'Thermocouple at the coldest place of the laminate worked out (marked in the heat view), its wire in the channel cast for it and led out through the door; a second one in the air beside the mold.',
      ),
      line('oven.sheet', 'The cure of the supplier’s data sheet read and at hand; local rules known.'),
    ],
  };
}

/** Supplier cures lie at the laminate; so do the times of this table. */
function cureTable(state: CureAnswer & { readonly known: true }): ChecklistFactTable {
  const { dwells, runs } = state.prediction;
  return {
    caption: 'Dial and laminate, h:min from the start; the laminate counts from 5 K under the dwell',
    columns: [
      'Dwell',
      'Dial there',
      ...runs.map(({ treatment }) => `Laminate, if ${treatmentNames[treatment]}`),
    ],
    rows: dwells.map(({ targetC, fromS, untilS }, index) => [
      `${celsius(targetC)} until ${clockHours(untilS)}`,
      clockHours(fromS),
      ...runs.map(({ coldest }) => {
        const atS = coldest.dwells[index]?.atS ?? null;
        return atS === null ? 'never' : clockHours(atS);
      }),
    ]),
  };
}

function runSection(
  { inputs }: StepContext,
  reports: Reports,
  figures: Figures,
  state: CureAnswer,
): SectionDraft {
  const stages = inputs.cure.stages.map(
    ({ targetC, rampKPerMin, dwellHours }) =>
      `${celsius(targetC)} for ${hoursMinutes(3600 * dwellHours)}${rampKPerMin === null ? '' : ` at ${formatNumber(rampKPerMin, 2)} K/min`}`,
  );
  const dwellLines: LineDraft[] = inputs.cure.stages.map(({ targetC }, index) =>
    measuring(
      `cure.stage.${index + 1}`,
      `Stage ${index + 1}, dial at ${celsius(targetC)}: time at which the laminate, not the oven, is within 5 K of it.`,
      'laminate there at',
      'h:min',
      ['cure.coldest.lagS'],
    ),
  );
  return {
    id: 'cure',
    title: 'Cure',
    warnings: cureWarnings(reports, ['cure.program', 'cure.ramp', 'cure.cures', 'cure.stone']),
    cautions: cautionsOf(reports, 'cure.fumes', 'cure.hotClamps'),
    ...(state.known ? { table: cureTable(state) } : {}),
    lines: [
      measuring('cure.start', `Program set: ${stages.join(', then ')}. Oven on.`, 'started at', 'h:min'),
      ...dwellLines,
      line(
        'cure.reclamp',
        'Early in the first dwell: clamps looked at, tightened with gloves where the stack has thinned.',
      ),
      ...(known(figures, 'cure.neededDwellS')
        ? [
            measuring(
              'cure.dwell',
              `Last dwell on the dial: ${dwellWords(figures)}. Ended by the laminate’s own log, not by the oven’s clock.`,
              'held for',
              'h:min',
              ['cure.neededDwellS'],
            ),
          ]
        : []),
      measuring('cure.peak', 'Hottest reading at the laminate.', 'peak', '°C', ['cure.coldest.peakC']),
      measuring('cure.dose', 'Dose from the measured log; under 1 the part is cured again.', 'dose', '', [
        'cure.coldest.dose',
      ]),
    ],
  };
}

function dwellWords(figures: Figures): string {
  const dwell = figures.get('cure.neededDwellS');
  if (typeof dwell?.value !== 'number') return 'not known';
  return dwell.band === undefined
    ? `${hoursMinutes(dwell.value)} cure the coldest place`
    : `${hoursMinutes(dwell.band[0])} to ${hoursMinutes(dwell.band[1])} cure the coldest place, by what the stone does`;
}

/** Which half goes first, and how far until the part is free. */
function openingLine(context: StepContext): string {
  const opening = moldOpening(context);
  return opening.known
    ? `${orderWords[opening.value.grip]}${liftWords(opening)}`
    : 'Opened along the pull; the half that comes loose first, then the part is eased out of the other.';
}

function coolSection(context: StepContext, reports: Reports, state: CureAnswer): SectionDraft {
  const { demoldC } = context.inputs.cure;
  const after = state.known ? state.middle.demoldAfterS : null;
  return {
    id: 'cool',
    title: 'Cool down and open',
    warnings: cureWarnings(reports, ['cure.cool', 'cure.opening', 'cure.service']),
    cautions: cautionsOf(reports, 'cure.hotMold', 'mold.opening'),
    lines: [
      line(
        'cool.shut',
        `Door shut, the dial turned down by at most ${formatNumber(gentleKPerMin, 0)} K/min until the stone is under ${celsius(openUnderC)}: hot stone opened at once can crack.`,
      ),
      measuring(
        'cool.gate',
        `Cool-down gate: laminate under ${celsius(demoldC)}${after === null ? '' : `, about ${hoursMinutes(after)} after the oven is turned down`}. Not under it: not opened.`,
        'laminate at',
        '°C',
        ['cure.demoldAfterS'],
      ),
      line('cool.clamps', 'Clamps off in turn, a little each.'),
      line('cool.jack', jackingWords(context)),
      line('cool.open', openingLine(context), ['mold.liftToFreeMm']),
      ...(context.inputs.walls.filmFaces === 'none'
        ? []
        : [
            measuring(
              'cool.film',
              'Separator film peeled off; the pieces counted back out, as many as went in.',
              'pieces out',
              '',
            ),
          ]),
      line(
        'cool.look',
        'Part looked at for dry places, voids and soft resin; soft resin means: cure again, free-standing, slowly.',
      ),
    ],
  };
}
