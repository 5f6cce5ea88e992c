/** The checklist lines from the clamps to a closed mold, with the box of what is checked before it is closed. */
import { lineOfActionMm } from '../core/closing/clamps';
import { formatNumber } from '../core/units/formatNumber';
import { clampLetter } from '../steps/closing/clampLetter';
import { isPlaced } from '../steps/closing/figures';
import type { Clamp } from '../steps/inputs/clamp';
import { closingState, type ClosingState } from '../steps/closedMold/state';
import type { StepContext } from '../steps/shared/context';
import {
  cautionsOf,
  line,
  measuring,
  value,
  warningsOf,
  type Figures,
  type LineDraft,
  type Reports,
  type SectionDraft,
} from './lineDrafts';
import type { ChecklistFactTable } from './model';

export function beforeClosingSection(context: StepContext, reports: Reports): SectionDraft {
  const { closing } = context.inputs;
  const state = closingState(context);
  return {
    id: 'beforeClosing',
    title: 'Check before you close',
    warnings: warningsOf(reports, 'closing'),
    cautions: [],
    ...(closing.clamps.length === 0 ? {} : { table: clampTable(closing.clamps) }),
    lines: [
      ...closing.clamps.map((clamp, index) => springLine(clamp, index)),
      ...(state.known ? placeLines(state) : []),
      line('beforeClosing.release', 'Both halves dry, released and polished, steep walls above all.'),
      line('beforeClosing.lands', 'Lands clean: no crumb, no fiber, no ply end on them.'),
      ...(closing.lands !== 'none' && closing.shimMm > 0
        ? [
            line(
              'beforeClosing.shim',
              `Shims of ${formatNumber(closing.shimMm, 2)} mm on the lands, all round.`,
            ),
          ]
        : []),
      ...(context.inputs.walls.filmFaces === 'none'
        ? []
        : [
            measuring(
              'beforeClosing.film',
              `Separator film on ${context.inputs.walls.filmFaces === 'one' ? 'one face' : 'both faces'}, smoothed: every wrinkle prints. Pieces counted in.`,
              'pieces in',
              '',
            ),
          ]),
      ...(state.known ? [stackLine(state)] : []),
      line(
        'beforeClosing.edges',
        'Plies pressed into every corner, none bridging, none standing over the rim, all backing sheets counted.',
      ),
      line(
        'beforeClosing.resin',
        closing.resin === 'trapped'
          ? 'Released dam land whole all round, vent for the air open, overflow behind it: resin is to stay in.'
          : 'The way out for resin is open: it loses its pressure over it; dam it if you can.',
      ),
      line(
        'beforeClosing.keys',
        'Keys of both halves in line; the halves marked so that they cannot be turned.',
      ),
    ],
  };
}

const newtons = (force: number) => `${formatNumber(force, 0)} N`;
const millimeters = (mm: number, decimals: number) => `${formatNumber(mm, decimals)} mm`;

function placeOf({ placed, xMm, yMm }: Clamp): string {
  return placed === 'round the rim'
    ? 'evenly round the rim'
    : `x ${millimeters(xMm, 0)}, y ${millimeters(yMm, 0)} from the middle`;
}

function clampTable(clamps: readonly Clamp[]): ChecklistFactTable {
  return {
    caption: 'Clamps, places on the plan seen along the pull',
    columns: ['Mark', 'Count', 'Force of one', 'Place'],
    rows: clamps.map((clamp, index) => [
      clampLetter(index),
      formatNumber(clamp.count, 0),
      newtons(clamp.forceN),
      placeOf(clamp),
    ]),
  };
}

function springLine(clamp: Clamp, index: number): LineDraft {
  const wider =
    clamp.atOpeningMm === 0
      ? 'opened as far as on the shut mold'
      : `opened ${millimeters(clamp.atOpeningMm, 1)} wider than on the shut mold`;
  return measuring(
    `beforeClosing.${clamp.id}`,
    `Clamps ${clampLetter(index)}: weakest one on a scale, ${wider}; expected ${newtons(clamp.forceN)}, about ${formatNumber(clamp.forceN / 9.81, 1)} kg on the scale.`,
    'force',
    'N',
  );
}

/** Every place of clamps that stand round the rim, since nobody can measure "evenly". */
function placeLines({ clamps }: ClosingState): readonly LineDraft[] {
  const action = lineOfActionMm(clamps, 0);
  const counts = new Map<string, number>();
  for (const { planMm } of clamps) {
    const place = `(${formatNumber(planMm[0], 0)}, ${formatNumber(planMm[1], 0)})`;
    counts.set(place, (counts.get(place) ?? 0) + 1);
  }
  const places = [...counts].map(([place, count]) => (count === 1 ? place : `${place} × ${count}`));
  const middle =
    action === null
      ? ''
      : `; together they act at (${formatNumber(action[0], 0)}, ${formatNumber(action[1], 0)})`;
  return [
    line(
      'beforeClosing.places',
      `Places of the clamps marked on the mold, x and y in mm from the middle of the part: ${places.join(' ')}${middle}.`,
    ),
  ];
}

function stackLine({ laidMm }: ClosingState): LineDraft {
  return measuring(
    'beforeClosing.stack',
    `Stack debulked (hand pressure, or vacuum at 40 to 50 °C for 15 min) and measured at the rim; expected ${millimeters(laidMm, 2)}.`,
    'stack',
    'mm',
    ['plies.laidThicknessMm'],
  );
}

export function closingSection(context: StepContext, reports: Reports, figures: Figures): SectionDraft {
  const state = closingState(context);
  return {
    id: 'closing',
    title: 'Close and clamp',
    warnings: [],
    cautions: cautionsOf(reports, 'closing.fingers', 'closing.springs', 'closing.stoneBreaks'),
    lines: [
      line('closing.crosswise', 'Clamps set by hand, then tightened crosswise in small steps.'),
      ...(state.known && isPlaced(state) ? expectedLines(state, figures) : []),
      line(
        'closing.again',
        'Tightened again once the stack is warm and has thinned; squeezed-out resin wiped off while soft.',
      ),
    ],
  };
}

function expectedLines({ main, resin }: ClosingState, figures: Figures): readonly LineDraft[] {
  const [pp, mp, mm, pm] = main.solution.cornerStandOffMm;
  return [
    measuring(
      'closing.cold',
      `Closed and clamped cold: stand-off at the rim by feeler gauge, at most ${millimeters(resin.coldStandOffMm, 2)}.`,
      'stand-off, cold',
      'mm',
      ['closing.coldStandOffMm'],
    ),
    line(
      'closing.warm',
      'Warmed to 50 to 60 °C, clamps tightened crosswise again as it sinks; air comes out at the vent, then resin.',
    ),
    line(
      'closing.expected',
      `The mold ${value(figures, 'closing.restsOn')}; warm it stands off by ${value(figures, 'closing.standOffMm')} in the middle, ${value(figures, 'closing.laminateForceN')} in the laminate (resin ${value(figures, 'closing.resinAtGelKPa')}) and ${value(figures, 'closing.landForceN')} on the lands of ${value(figures, 'closing.clampForceN')} in all.`,
      [
        'closing.restsOn',
        'closing.standOffMm',
        'closing.laminateForceN',
        'closing.landForceN',
        'closing.clampForceN',
      ],
    ),
    corner('plusPlus', '+x +y', pp),
    corner('minusPlus', '−x +y', mp),
    corner('minusMinus', '−x −y', mm),
    corner('plusMinus', '+x −y', pm),
  ];
}

function corner(id: string, name: string, expectedMm: number): LineDraft {
  return measuring(
    `closing.corner.${id}`,
    `Warm: stand-off at the ${name} corner, by feeler gauge; expected ${millimeters(expectedMm, 2)}.`,
    'stand-off',
    'mm',
    ['closing.standOffMm', 'closing.tiltDeg'],
  );
}
