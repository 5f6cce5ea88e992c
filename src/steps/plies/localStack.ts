/** Doublers, overlaps and darts: places where more plies lie than elsewhere, held against the wall there. */
import { acceptedWalls, filledWall, wallWord, type WallWord } from '../../core/laminate/acceptedWalls';
import { laidPlyThicknessMm } from '../../core/laminate/plyThickness';
import { stackVolume } from '../../core/laminate/stackVolume';
import { compensatedSum } from '../../core/numeric/compensatedSum';
import type { Figure, Verdict } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import { fiberGaps, wallLimits } from '../shared/band';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, withScatter, type FigureSpec } from '../kit/figures';
import { wallInUse } from '../shared/wallInUse';
import { resolveStack, type KnownStack } from '../shared/stack';

const specs = {
  area: {
    id: 'plies.patchAreaCm2',
    label: 'Doublers and overlaps, area',
    unit: 'cm²',
    decimals: 1,
    status: 'your entry',
  },
  laid: { id: 'plies.patchLaidMm', label: 'Thickest place, as laid', unit: 'mm', decimals: 2 },
  filled: {
    id: 'plies.localVoidFreeMm',
    label: 'Thickest place fills',
    unit: 'mm',
    decimals: 2,
    source: 'plyVolumeSum',
  },
} as const satisfies Record<string, FigureSpec>;

/** What lies at one place: the stack and all that is named for it. */
interface LocalStack {
  readonly place: string;
  readonly what: string;
  readonly laidMm: number;
  readonly voidFreeMm: number;
  readonly fiberMm: number;
  readonly filmMm: number;
  readonly wantedMm: number;
  /** Drawn there, or the wall of the rest; null when that is not known. */
  readonly wallMm: number | null;
  readonly word: WallWord | null;
}

function localStacks(context: StepContext, stack: KnownStack): readonly LocalStack[] {
  const { walls, plies } = context.inputs;
  const rest = wallInUse(context);
  const places = new Map<string, KnownStack['patches'][number][]>();
  for (const one of stack.patches) places.set(one.patch.place, [...(places.get(one.patch.place) ?? []), one]);
  return [...places].map(([place, own]) => {
    const added = own.map(({ card }) => card);
    const volume = stackVolume(added);
    const voidFreeMm = stack.volume.voidFreeMm + volume.voidFreeMm;
    const fiberMm = stack.volume.fiberMm + volume.fiberMm;
    const accepted = acceptedWalls(
      { voidFreeMm, fiberMm },
      fiberGaps([...stack.plies.map(({ card }) => card), ...added], walls),
      wallLimits(walls),
    );
    const drawn = own.find(({ patch }) => patch.wallMm !== null)?.patch.wallMm ?? null;
    const wallMm = drawn ?? (rest.known ? rest.medianMm : null);
    return {
      place: place.trim() === '' ? 'the place' : place.trim(),
      what: [...new Set(own.map(({ patch }) => patch.kind))].join(' and '),
      laidMm:
        stack.total.laidMm + compensatedSum(added.map((card) => laidPlyThicknessMm(card, plies.bulkFactor))),
      voidFreeMm,
      fiberMm,
      filmMm: accepted.filmMm,
      wantedMm: accepted.wantedMm,
      wallMm,
      word: wallMm === null ? null : wallWord(accepted, wallMm),
    };
  });
}

const thickestOf = (places: readonly LocalStack[]) =>
  places.toSorted((a, b) => b.voidFreeMm - a.voidFreeMm)[0] ?? null;

const mm = (value: number) => `${formatNumber(value, 2)} mm`;

export function localFigures(context: StepContext): readonly Figure[] {
  const stack = resolveStack(context.inputs.plies);
  if (!stack.known) return Object.values(specs).map((spec) => unknownFigure(spec, stack.reason));
  const { patches, total, volume } = stack;
  const thickest = thickestOf(localStacks(context, stack));
  const itself = 'The stack itself; there are no doublers or overlaps.';
  return [
    figure(
      specs.area,
      compensatedSum(patches.map(({ patch }) => patch.areaCm2)),
      patches.length === 0
        ? 'There are none.'
        : patches.map(({ patch }) => `${patch.place} ${formatNumber(patch.areaCm2, 1)}`).join(' + '),
    ),
    withScatter(
      figure(
        { ...specs.laid, status: stack.laidStatus },
        thickest?.laidMm ?? total.laidMm,
        thickest === null
          ? itself
          : `stack ${mm(total.laidMm)} + ${mm(thickest.laidMm - total.laidMm)} at ${thickest.place}; what is named for one place lies on each other`,
      ),
      stack.laidScatter,
    ),
    figure(
      specs.filled,
      thickest?.voidFreeMm ?? volume.voidFreeMm,
      thickest === null
        ? itself
        : `plies ${mm(volume.voidFreeMm)} + ${mm(thickest.voidFreeMm - volume.voidFreeMm)} at ${thickest.place}`,
      'The wall of the pattern there wants as much, less the tolerance.',
    ),
  ];
}

/** One verdict when something lies on the stack, none else. */
export function localVerdict(context: StepContext, stack: KnownStack): readonly Verdict[] {
  if (stack.patches.length === 0) return [];
  const id = 'plies.local';
  const places = localStacks(context, stack);
  const wrong = places.filter(({ word }) => word !== 'go');
  const [first] = wrong.toSorted((a, b) => rank(b.word) - rank(a.word));
  if (first === undefined)
    return [
      {
        id,
        word: 'go',
        reason: `The wall suits the doublers and overlaps: ${places.map(({ place }) => place).join('; ')}.`,
        fix: '',
      },
    ];
  if (first.wallMm === null || first.word === null)
    return [
      {
        id,
        word: 'not yet known',
        reason: `At ${first.place} the plies fill ${mm(first.voidFreeMm)}; the wall there is not known.`,
        fix: 'Import the model, or give the wall drawn there.',
      },
    ];
  const { voidShare, fiberFraction } = filledWall(first, first.wallMm);
  const comes =
    voidShare > 0
      ? `${formatNumber(100 * voidShare, 0)} % of it would be air`
      : `fiber would fill ${formatNumber(100 * fiberFraction, 0)} % of it and hold the mold open`;
  return [
    {
      id,
      word: first.word,
      reason: `At ${first.place} (${first.what}) the plies fill ${mm(first.voidFreeMm)} and the wall is ${mm(first.wallMm)}: ${comes}.`,
      fix: '',
    },
  ];
}

const rank = (word: WallWord | null) => (word === 'stop' ? 2 : word === 'look again' ? 1 : 0);
