/** From the data sheets to a pattern that is printed and measured, in its box. */
import { formatNumber } from '../../core/units/formatNumber';
import { placesThatMatter } from '../../steps/bench/places';
import {
  heldBack,
  line,
  millimeters,
  reading,
  stopsOf,
  value,
  isKnown,
  type Material,
  type PhaseDraft,
  type Step,
} from '../lines';

/** Verdicts on what is printed. */
const ofThePrint = ['part.', 'walls.', 'mold.locking'] as const;

/** Places that are told to be mended; the rest is on the sheet on screen. */
const mostMended = 3;

export function printPhase(material: Material): PhaseDraft {
  return {
    id: 'print',
    title: 'Print and box',
    stops: stopsOf(material, 'part.', 'walls.', 'mold.box', 'mold.thinnest', 'mold.locking'),
    table: null,
    actions: [
      line(
        'print.sheets',
        'Data sheets of print material, stone, sealer, release and resin read and at hand.',
      ),
      ...patternLines(material),
      ...mendingLines(material),
      line('print.clean', 'Layer steps and seams sanded, surface sealed, no loose strings inside.'),
      ...reading(
        material,
        'print.lengths',
        'Caliper over the whole print, along its axes.',
        ['print.x', 'print.y', 'print.z'],
        ['part.boxMm'],
      ),
      ...reading(
        material,
        'print.walls',
        wallWords(material),
        ['wall.'],
        ['walls.bandLowMm', 'walls.bandHighMm'],
      ),
      ...boxLines(material),
    ],
  };
}

function wallWords(material: Material): string {
  return isKnown(material, 'walls.bandLowMm')
    ? `Caliper on the wall; the plies accept ${value(material, 'walls.bandLowMm')} to ${value(material, 'walls.bandHighMm')}.`
    : 'Caliper on the wall.';
}

function patternLines(material: Material): readonly Step[] {
  const { inputs, pattern } = material.context;
  if (pattern === null)
    return [line('print.file', 'Import the model of the pattern; this sheet has none yet.')];
  const { part, plies } = inputs;
  const beads = `beads of ${millimeters(plies.lineWidthMm, 2)}`;
  const wall =
    part.nominalWall === 'print'
      ? `${part.printLines} ${beads} for ${value(material, 'part.nominalWallMm')} of wall, open face ${part.openFace === 'againstPull' ? 'away from the pull' : `toward ${part.openFace}`}`
      : `${beads}, wall as drawn (${value(material, 'walls.rayMedianMm')})`;
  const what = `${pattern.fileName} at scale ${value(material, 'part.scale')}: ${value(material, 'part.boxMm')}; ${wall}`;
  return [
    line(
      'print.file',
      stopsOf(material, ...ofThePrint).length === 0
        ? `Print ${what}.`
        : `Not printed like this (${what}): ${heldBack}. See Decision, or make the pattern anew.`,
      ['part.boxMm', 'part.scale', 'part.nominalWallMm', 'walls.rayMedianMm'],
    ),
    line(
      'print.pull',
      `Mark the pull on it: the negative leaves along (${part.pull.map((one) => formatNumber(one, 2)).join(', ')}).`,
    ),
  ];
}

function mendingLines({ context }: Material): readonly Step[] {
  return placesThatMatter(context)
    .filter(({ finding }) => finding === 'locks')
    .slice(0, mostMended)
    .map(({ letter, place, areaMm2 }) =>
      line(
        `print.fix.${letter}`,
        `Undercut at ${letter} filled or drawn away: ${place}, ${formatNumber(areaMm2, 0)} mm².`,
      ),
    );
}

function boxLines(material: Material): readonly Step[] {
  const { inputs, mold } = material.context;
  const { keyCount, keyDiameterMm, keyHeightMm, prySlotCount, prySlotWidthMm, prySlotDepthMm } = inputs.mold;
  return [
    line('box.cut', `Box cut: ${value(material, 'mold.boxSheets')}.`, ['mold.boxSheets']),
    line(
      'box.inside',
      `Box glued square and tight, level on a stiff board in a tray; inside ${value(material, 'mold.boxMm')}.`,
      ['mold.boxMm'],
    ),
    ...(mold === null
      ? []
      : [
          line(
            'box.marks',
            `Pour heights marked from the parting: negative ${millimeters(mold.box.negativeHeightMm)}, positive ${millimeters(mold.box.positiveHeightMm)}.`,
          ),
        ]),
    line(
      'box.keys',
      keyCount === 0 && prySlotCount === 0
        ? 'No keys, no pry slots: halves marked so that they cannot be turned.'
        : `${keyCount} keys of ${millimeters(keyDiameterMm)} × ${millimeters(keyHeightMm)} and ${prySlotCount} pry slots of ${millimeters(prySlotWidthMm)} × ${millimeters(prySlotDepthMm)} ready for the parting.`,
      ['mold.keysPlaced'],
    ),
    line('box.pattern', 'Pattern and box sealed and released: no brush marks, nothing pooled in corners.'),
    ...reading(
      material,
      'box.patternWeight',
      'Pattern weighed as it goes into the stone.',
      ['pattern'],
      ['mold.patternG'],
    ),
  ];
}
