/** From two closed halves to a part that is out of them. */
import { gentleKPerMin } from '../../core/cure/ovenProgram';
import { formatNumber } from '../../core/units/formatNumber';
import { openUnderC } from '../../steps/cure/opening';
import { celsius, clockHours, hoursMinutes, treatmentNames } from '../../steps/cure/say';
import { cureState, type CureAnswer } from '../../steps/cure/state';
import { liftWords, moldOpening, orderWords } from '../../steps/mold/opening';
import {
  heldBack,
  line,
  reading,
  stopsOf,
  isKnown,
  type Material,
  type PhaseDraft,
  type Step,
} from '../lines';
import type { FactTable } from '../model';

export function ovenPhase(material: Material): PhaseDraft {
  const state = cureState(material.context);
  return {
    id: 'oven',
    title: 'Oven and opening',
    stops: stopsOf(material, 'cure.'),
    table: state.known && !material.isHeld ? dwellTable(state) : null,
    actions: [...beforeLines(material), ...runLines(material), ...openingLines(material, state)],
  };
}

/** Supplier cures lie at the laminate; so do the times of this table. */
function dwellTable(state: CureAnswer & { readonly known: true }): FactTable {
  const { dwells, runs } = state.prediction;
  return {
    caption: 'h:min from the start; the laminate counts from 5 K under the dwell',
    columns: [
      'Dial',
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

function beforeLines({ context }: Material): readonly Step[] {
  const { clampLimitC, patternInside } = context.inputs.cure;
  return [
    line(
      'oven.sheet',
      'Cure of the resin’s data sheet at hand; nothing with cells or electronics in the oven.',
    ),
    ...(patternInside === 'out'
      ? []
      : [
          line(
            'oven.pattern',
            'The printed pattern is still in the mold: out with it, or stay under its limit.',
          ),
        ]),
    line(
      'oven.clamps',
      `Clamps checked one by one: tight, fit for ${celsius(clampLimitC)}, no plastic in the heat.`,
    ),
  ];
}

function runLines(material: Material): readonly Step[] {
  const { stages } = material.context.inputs.cure;
  const program = stages.map(
    ({ targetC, rampKPerMin, dwellHours }) =>
      `${celsius(targetC)} for ${hoursMinutes(3600 * dwellHours)}${rampKPerMin === null ? '' : ` at ${formatNumber(rampKPerMin, 1)} K/min`}`,
  );
  return [
    line(
      'cure.start',
      material.isHeld
        ? `The program is ${heldBack}.`
        : `Oven on: ${program.join(', then ')}. Start time written down.`,
    ),
    line(
      'cure.reclamp',
      'Early in the first dwell, laminate at 50 to 60 °C: clamps tightened again in the same order, with gloves; resin wiped off while soft.',
    ),
    ...(isKnown(material, 'cure.neededDwellS') && !material.isHeld
      ? [
          line(
            'cure.dwell',
            `Last dwell: ${dwellWords(material)}. Ended by the laminate’s log, not by the oven’s clock.`,
            ['cure.neededDwellS'],
          ),
        ]
      : []),
    ...reading(
      material,
      'cure.readings',
      'From the log of the laminate.',
      ['ovenPeak', 'held'],
      ['cure.coldest.peakC'],
    ),
  ];
}

function dwellWords({ figures }: Material): string {
  const dwell = figures.get('cure.neededDwellS');
  if (typeof dwell?.value !== 'number') return 'not known';
  return dwell.band === undefined
    ? `${hoursMinutes(dwell.value)} cure the coldest place`
    : `${hoursMinutes(dwell.band[0])} to ${hoursMinutes(dwell.band[1])} cure the coldest place, by what the stone does`;
}

const jackingWords = ({ context }: Material) =>
  context.inputs.mold.prySlotCount < 2
    ? 'Jacked level at two opposite places.'
    : `Wooden wedges in the ${context.inputs.mold.prySlotCount} pry slots, a little at each in turn, so that it rises level.`;

function openingLines(material: Material, state: CureAnswer): readonly Step[] {
  const { cure, walls } = material.context.inputs;
  const after = state.known ? state.middle.demoldAfterS : null;
  const opening = moldOpening(material.context);
  return [
    line(
      'cool.shut',
      `Door shut, dial down by at most ${formatNumber(gentleKPerMin, 0)} K/min until the stone is under ${celsius(openUnderC)}: opened hot it can crack.`,
    ),
    line(
      'cool.gate',
      `GATE: laminate under ${celsius(cure.demoldC)}${after === null ? '' : `, about ${hoursMinutes(after)} after the oven is turned down`}. Not under it: not opened.`,
      ['cure.demoldAfterS'],
    ),
    line('cool.clamps', 'Clamps off in turn, a little each.'),
    line(
      'cool.open',
      `${jackingWords(material)} ${opening.known ? `${orderWords[opening.value.grip]}${liftWords(opening)}` : 'Along the pull; the half that comes loose first.'}`,
      ['mold.liftToFreeMm'],
    ),
    ...(walls.filmFaces === 'none'
      ? []
      : [line('cool.film', 'Film peeled off; as many pieces out as went in.')]),
    line(
      'cool.look',
      'Part looked at for dry places, voids and soft resin; soft: cure again, free-standing, slowly.',
    ),
  ];
}
