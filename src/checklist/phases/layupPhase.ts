/** From the roll to a mold that is closed and clamped. */
import { formatNumber } from '../../core/units/formatNumber';
import { closingState } from '../../steps/closedMold/state';
import { laidAngleDeg, type PlyPatch } from '../../steps/inputs/ply';
import type { Material as Card } from '../../steps/inputs/material';
import { rollsInUse, type Roll } from '../../steps/plies/rolls';
import { resolveStack, type KnownStack } from '../../steps/shared/stack';
import {
  degrees,
  line,
  millimeters,
  reading,
  stopsOf,
  value,
  type Material,
  type PhaseDraft,
  type Step,
} from '../lines';
import type { FactTable } from '../model';

export function layupPhase(material: Material): PhaseDraft {
  const { inputs } = material.context;
  const stack = resolveStack(inputs.plies);
  return {
    id: 'layup',
    title: 'Layup and clamp',
    stops: stopsOf(material, 'plies.', 'closing.'),
    table: stack.known ? plyTable(stack) : null,
    actions: [
      ...rollLines(material),
      ...(stack.known ? cuttingLines(material, stack) : [line('layup.cut', stack.fix)]),
      line('layup.gate', 'GATE: both halves weigh what they weighed as sealed; heavier: dry them again.'),
      line(
        'layup.mold',
        'Pattern out of the mold. Thermocouple at T, its wire in the channel; a second one for the air.',
      ),
      ...layingLines(material),
      ...clampLines(material),
    ],
  };
}

function plyTable({ plies }: KnownStack): FactTable {
  return {
    caption: 'Plies, laid from the show face inward',
    columns: ['Ply', 'Material', 'Cut at', 'Lies at', 'Way up', 'Pieces'],
    rows: plies.map(({ ply, card }, index) => [
      String(index + 1),
      card.name,
      degrees(ply.angleDeg),
      ply.mirroredPair && ply.angleDeg !== 0
        ? `${degrees(laidAngleDeg(ply))} and ${degrees(laidAngleDeg(ply, 'second'))}`
        : degrees(laidAngleDeg(ply)),
      ply.faceDown ? 'face down' : 'face up',
      ply.mirroredPair ? 'mirrored pair' : 'one',
    ]),
  };
}

const hours = (time: number) => `${formatNumber(time, 1)} h`;

function rollLines({ context }: Material): readonly Step[] {
  return rollsInUse(context.inputs.plies).map((roll) =>
    line(`prepreg.${roll.card.id}.roll`, rollText(roll), ['plies.outTimeLeftH']),
  );
}

function rollText({ card, time }: Roll): string {
  const date = card.freezerDate.trim() === '' ? '' : `, freezer date ${card.freezerDate.trim()}`;
  const left =
    time === null
      ? 'label within shelf life and out-time'
      : `${hours(card.hoursOutH)} out of ${hours(card.allowedOutTimeH ?? 0)} allowed, ${hours(time.afterLayupH)} left after the layup`;
  return `${card.name}${date}: ${left}; thawed in the closed bag until no water forms on it.`;
}

function cuttingLines(material: Material, { plies, patches }: KnownStack): readonly Step[] {
  const paired = plies.flatMap(({ ply }, index) => (ply.mirroredPair ? [index + 1] : []));
  return [
    line(
      'layup.cut',
      `${value(material, 'plies.plyCount')} plies cut${patches.length === 0 ? '' : ' and the patches'}, ${value(material, 'plies.prepregBuyCm2')} of blanks; each marked with number and fiber direction.`,
      ['plies.plyCount', 'plies.prepregBuyCm2'],
    ),
    ...(paired.length === 0
      ? []
      : [
          line(
            'layup.bookMatched',
            `Mirrored pair for ply ${paired.join(', ')}: both pieces cut from the same side of the roll, one turned over.`,
          ),
        ]),
    ...reading(
      material,
      'layup.caliper',
      'Offcuts laid on each other, pressed by hand: caliper.',
      ['caliper.'],
      ['plies.laidThicknessMm'],
    ),
    ...patches.map(({ patch, card }, index) =>
      line(`layup.patch.${index + 1}`, patchText(patch, card, index)),
    ),
  ];
}

function patchText(patch: PlyPatch, card: Card, index: number): string {
  const place = patch.place.trim() === '' ? '' : ` at ${patch.place.trim()}`;
  const on = patch.afterPly === 0 ? 'before ply 1' : `on ply ${patch.afterPly}`;
  const down = patch.faceDown ? `, face down: lies at ${degrees(laidAngleDeg(patch))}` : '';
  return `${patch.kind.charAt(0).toUpperCase()}${patch.kind.slice(1)} ${index + 1}${place}: ${card.name}, ${degrees(patch.angleDeg)}${down}, ${formatNumber(patch.areaCm2, 1)} cm², laid ${on}.`;
}

function layingLines(material: Material): readonly Step[] {
  const { walls } = material.context.inputs;
  const inNegative = walls.laidIn === 'negative';
  return [
    line(
      'layup.lay',
      inNegative
        ? 'Into the negative: ply 1 against the show face, the others on it in order, backing off each time; pressed into every corner, none bridging.'
        : 'Onto the positive: the last ply against the stone, ply 1 outermost, backing off each time; pressed into every corner, none bridging.',
    ),
    ...(walls.filmFaces === 'none'
      ? []
      : [
          line(
            'layup.film',
            `Separator film on ${walls.filmFaces === 'one' ? 'one face' : 'both faces'}, smoothed; pieces counted in.`,
          ),
        ]),
    line('layup.trim', 'No ply end over the rim or on a land; backing sheets counted out.'),
    ...reading(
      material,
      'layup.stack',
      'Stack debulked (by hand, or vacuum at 40 to 50 °C for 15 min), caliper at the rim.',
      ['stack'],
      ['plies.laidThicknessMm'],
    ),
  ];
}

function clampLines(material: Material): readonly Step[] {
  const { closing } = material.context.inputs;
  const state = closingState(material.context);
  return [
    line(
      'close.lands',
      `Lands clean${closing.lands !== 'none' && closing.shimMm > 0 ? `, shims of ${millimeters(closing.shimMm, 2)} all round` : ''}; keys in line; ${closing.resin === 'trapped' ? 'dam land whole, vent open, overflow behind it' : 'the way out for resin is open'}.`,
    ),
    ...reading(
      material,
      'close.springs',
      'Weakest clamp of each kind on the scale, opened as on the mold (10 N is about 1 kg).',
      ['clamp.'],
    ),
    line('close.clamps', 'Clamps set by hand, then tightened a little at a time in the order of the card.'),
    ...reading(
      material,
      'close.cold',
      'Cold: feeler gauge at the rim, widest place.',
      ['standOff'],
      ['closing.coldStandOffMm'],
    ),
    ...(state.known
      ? [
          line(
            'close.expected',
            `Expected warm: ${value(material, 'closing.restsOn')}; ${value(material, 'closing.laminateForceN')} in the laminate of ${value(material, 'closing.clampForceN')} in all.`,
            ['closing.restsOn', 'closing.laminateForceN', 'closing.clampForceN'],
          ),
        ]
      : []),
  ];
}
