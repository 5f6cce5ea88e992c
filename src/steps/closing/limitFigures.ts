/** Figures of what closing does to steep walls, and of the friction bound. */
import { longestSlide } from '../../core/closing/sliding';
import { binCenter } from '../../core/closing/closingHistogram';
import { placeName } from '../../core/mesh/place';
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import { figure, withBand, type FigureSpec } from '../kit/figures';
import type { ClosingInputs } from '../inputs/closing';
import { areaPercent, mm, newtons } from './say';
import type { ClosingState } from '../closedMold/state';

export const limitSpecs = {
  slide: {
    id: 'closing.longestSlideMm',
    label: 'Longest slide of a steep wall on the stack',
    unit: 'mm',
    decimals: 1,
    source: 'rigidStroke',
  },
  wipes: {
    id: 'closing.wipedShare',
    label: 'Walls that wipe the stack over their whole depth',
    unit: '',
    decimals: 3,
    source: 'rigidStroke',
  },
  frictionStandOff: {
    id: 'closing.frictionStandOffMm',
    label: 'Stand-off with the most friction',
    unit: 'mm',
    decimals: 2,
    source: 'closingBalance',
  },
  frictionLoose: {
    id: 'closing.frictionLooseShare',
    label: 'Loose with the most friction',
    unit: '',
    decimals: 3,
    source: 'closingBalance',
  },
} as const satisfies Record<string, FigureSpec>;

/** Steep walls of less area than this, together, are crumbs of the mesh (common practice). */
const noticedShare = 0.001;

export function slideOf({ histogram, laidMm }: ClosingState) {
  return longestSlide(histogram, laidMm, histogram.frame.depthMm, noticedShare);
}

export function slidePlace({ histogram, measured: { summary } }: ClosingState, bin: number): string {
  return placeName({ ...summary, pull: histogram.frame.pull }, binCenter(histogram, bin), 'show');
}

export function limitFigures(state: ClosingState, { frictionCoefficient }: ClosingInputs): readonly Figure[] {
  const { histogram, laidMm, withFriction, frictionShares } = state;
  const slide = slideOf(state);
  const { depthMm } = histogram.frame;
  const status = state.laidIsMeasured ? 'measured' : 'common practice';
  const scatter = state.laidIsMeasured ? 0 : state.stack.laidScatter;
  const ends = [1 - scatter, 1 + scatter].map((factor) =>
    longestSlide(histogram, factor * laidMm, depthMm, noticedShare),
  );
  const overLaid = (one: Figure, read: (end: typeof slide) => number) =>
    scatter === 0 ? one : withBand(one, read(ends[0]!), read(ends[1]!));
  return [
    overLaid(
      figure(
        { ...limitSpecs.slide, status },
        slide.slideMm,
        ...(slide.place < 0
          ? [`No steep wall is narrower than the stack of ${mm(laidMm)} before closing.`]
          : [
              `(stack ${mm(laidMm)} − wall ${mm(histogram.wallMm[slide.place]!)}) / sin ${formatNumber(draftOf(histogram.pullCosine[slide.place]!), 1)}°, at most the depth of ${mm(depthMm, 1)}; at ${slidePlace(state, slide.place)}.`,
              'A wall without draft touches from the first moment and wipes all the way down.',
            ]),
      ),
      ({ slideMm }) => slideMm,
    ),
    overLaid(
      figure(
        { ...limitSpecs.wipes, status },
        slide.allTheWayShare,
        `Of the show face: narrower than the stack of ${mm(laidMm)} and too upright to come free within ${mm(depthMm, 1)} of stroke.`,
      ),
      ({ allTheWayShare }) => allTheWayShare,
    ),
    figure(
      { ...limitSpecs.frictionStandOff, status: 'common practice' },
      withFriction.standOffMm,
      `Along the pull alone, with the bed resisting by pressure × (c + ${formatNumber(frictionCoefficient, 2)} √(1 − c²)): ${newtons(withFriction.laminateForceN)} of ${newtons(withFriction.clampForceN)}.`,
      'The other bound is no friction. Cold tacky plies lie near this one, warm running resin near the other.',
    ),
    figure(
      { ...limitSpecs.frictionLoose, status: 'common practice' },
      frictionShares.loose,
      `${areaPercent(frictionShares.loose)} of the show face at a stand-off of ${mm(withFriction.standOffMm)}.`,
    ),
  ];
}

const draftOf = (cosine: number) => (Math.asin(Math.min(1, cosine)) * 180) / Math.PI;
