/** Opening the cured mold: which half grips the part, which is lifted first, and how far until the part is free. */
import { gripAfterCooling, type GripSide } from '../../core/cure/coolDown';
import type { Figure } from '../../core/figure';
import { Problem } from '../../core/problem';
import { liftToFreeMm, steepestDraftDeg } from '../../core/stone/opening';
import { coolingMismatchMm } from '../../core/stone/sizeChain';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, withBand, type FigureSpec } from '../kit/figures';
import { availablePart } from '../shared/missing';
import { figureFrom, mm } from './say';
import { axes, axisSizes, mismatchBandMm, sizeChoices } from './sizes';
import type { Answer } from '../stone/work';

/** Fewer jacking points than this lift one side only and break the land (common practice). */
const leastJackingPoints = 2;

export interface MoldOpening {
  /** Longest finished length across the pull, and by how much the mold ends smaller than the part over it. */
  readonly lengthMm: number;
  readonly mismatchMm: number;
  readonly grip: GripSide;
  /** Draft of the steepest walls; null when there are none. */
  readonly draftDeg: number | null;
  /** Lift that frees the part from the half that grips it. */
  readonly lift: Answer<number>;
}

export function moldOpening(context: StepContext): Answer<MoldOpening> {
  const part = availablePart(context);
  if (!part.known) return { known: false, why: part.reason };
  const sizes = axisSizes(context);
  if (!sizes.known) return sizes;
  const along = alongPull(context);
  const across = sizes.value.filter(({ axis }) => axis !== along).map(({ chain }) => chain.finishedMm);
  const lengthMm = Math.max(...across);
  const mismatchMm = coolingMismatchMm(lengthMm, sizeChoices(context));
  const draftDeg = steepestDraftDeg(part.measured.summary.releaseDraft);
  return {
    known: true,
    value: {
      lengthMm,
      mismatchMm,
      grip: gripAfterCooling(mismatchMm),
      draftDeg,
      lift: liftOf(mismatchMm, draftDeg),
    },
  };
}

/** The part axis nearest to the pull. */
function alongPull({ inputs }: StepContext): (typeof axes)[number] {
  const shares = inputs.part.pull.map(Math.abs);
  return axes[shares.indexOf(Math.max(...shares))]!;
}

function liftOf(mismatchMm: number, draftDeg: number | null): Answer<number> {
  if (draftDeg === null) return { known: false, why: 'No walls with a draft were found on the two faces.' };
  try {
    return { known: true, value: liftToFreeMm(mismatchMm, draftDeg) };
  } catch (error) {
    if (error instanceof Problem) return { known: false, why: error.message };
    throw error;
  }
}

export function liftFigure(context: StepContext): Figure {
  const spec: FigureSpec = {
    id: 'mold.liftToFreeMm',
    label: 'Lift that frees the part, cooled to room',
    unit: 'mm',
    decimals: 1,
    status: 'from memory',
    source: 'expansionsFromMemory',
  };
  return figureFrom(spec, moldOpening(context), ({ lift, mismatchMm, draftDeg, lengthMm, grip }) =>
    figureFrom(spec, lift, (liftMm) =>
      withBand(
        figure(
          spec,
          liftMm,
          `${mm(Math.abs(mismatchMm), 3)} over ${mm(lengthMm)} across the pull / (2 tan ${formatNumber(draftDeg ?? 0, 1)}°), the draft of the steepest walls`,
          `${orderWords[grip]} Each wall has half of the mismatch to give. Warmer than the room it is less; a rough or badly released face holds longer.`,
        ),
        ...liftBand(context, lengthMm, draftDeg ?? 0),
      ),
    ),
  );
}

/** Lift at the ends of the mismatch; from none where it may go either way. */
function liftBand(context: StepContext, lengthMm: number, draftDeg: number): readonly [number, number] {
  const [low, high] = mismatchBandMm(context, lengthMm);
  const [one, other] = [liftToFreeMm(low, draftDeg), liftToFreeMm(high, draftDeg)];
  return [low <= 0 && high >= 0 ? 0 : Math.min(one, other), Math.max(one, other)];
}

/** In which order the closed mold is opened. */
export const orderWords: Readonly<Record<GripSide, string>> = {
  negative:
    'The negative grips the part and the positive comes loose: lift the positive first, then ease the part out.',
  positive:
    'The positive grips the part and the negative comes loose: lift the negative first, then ease the part off.',
  neither: 'Neither half grips: lift the positive first, then ease the part out.',
};

/** Where to jack, and how: what stands on the checklist and with the verdict. */
export function jackingWords({ inputs: { mold } }: Pick<StepContext, 'inputs'>): string {
  const evenly = 'a little at each in turn, so that the half rises level and no land carries it alone';
  return mold.prySlotCount < leastJackingPoints
    ? `Jacking points: ${mold.prySlotCount === 0 ? 'none is' : 'only one is'} planned. Give the box two pry slots or more, opposite each other, or cast nuts into the land for jacking screws with a steel washer under each (common practice).`
    : `Jacking points: wooden wedges in the ${mold.prySlotCount} pry slots of ${mm(mold.prySlotHeightMm)}, ${evenly}; for a heavy half nuts cast into its land, each jacking screw on a steel washer (common practice).`;
}

/** Lift in words, for the checklist; '' while not known. */
export function liftWords(opening: Answer<MoldOpening>): string {
  if (!opening.known || opening.value.grip === 'neither') return '';
  const { lift } = opening.value;
  return lift.known ? ` It is free after about ${mm(lift.value)} along the pull.` : ` ${lift.why}`;
}
