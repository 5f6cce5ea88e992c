/**
 * Pattern step: what do I print? The import as it is, unless a shell is made from it. One is made when the maker asks for it, not with
 * every change of an input, and judged by the other steps once it is the project's pattern.
 */
import type { Caution, Figure, StepReport, Verdict } from '../../core/figure';
import { beadsFor } from '../../core/pattern/beads';
import type { PatternChoices, PatternSummary } from '../../core/pattern/makePattern';
import { formatNumber } from '../../core/units/formatNumber';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import { wallBand } from '../shared/band';
import type { StepContext } from '../shared/context';

const specs = {
  wallP1: { id: 'pattern.wallP1Mm', label: 'Wall, all but the thinnest hundredth', unit: 'mm', decimals: 3 },
  wallMedian: { id: 'pattern.wallMedianMm', label: 'Wall, half of the show face', unit: 'mm', decimals: 3 },
  wallP99: {
    id: 'pattern.wallP99Mm',
    label: 'Wall, all but the thickest hundredth',
    unit: 'mm',
    decimals: 3,
  },
  leastDraft: { id: 'pattern.leastDraftDeg', label: 'Least draft of any facet', unit: '°', decimals: 1 },
  underDraft: {
    id: 'pattern.shareUnderDraft',
    label: 'Share of both faces under the draft',
    unit: '',
    decimals: 5,
  },
  added: { id: 'pattern.addedShare', label: 'Share of the show face that stands out', unit: '', decimals: 3 },
  addedMax: { id: 'pattern.addedMaxMm', label: 'Farthest that it stands out', unit: 'mm', decimals: 2 },
  taken: { id: 'pattern.takenMaxMm', label: 'Farthest that it is drawn in', unit: 'mm', decimals: 2 },
  filled: { id: 'pattern.filledMm3', label: 'Material over holes and undercuts', unit: 'mm³', decimals: 0 },
  holes: { id: 'pattern.holes', label: 'Holes in the show face', unit: '', decimals: 0 },
  rimShift: { id: 'pattern.rimShiftMm', label: 'Shift of the outline at the rim', unit: 'mm', decimals: 3 },
  triangles: { id: 'pattern.triangles', label: 'Triangles of the pattern', unit: '', decimals: 0 },
  layerStep: { id: 'pattern.layerStepMm', label: 'Layer step of the show face', unit: 'mm', decimals: 3 },
} as const satisfies Record<string, FigureSpec>;

const cuttingHoles: Caution = {
  id: 'pattern.cuttingHoles',
  text: 'Covered holes are cut after the cure: carbon dust irritates and gets into everything. Cut and drill wet or under extraction, with dust mask, eye protection and gloves; clamp the part, and keep hands out of the way of blade and bit. The safety data sheet of the prepreg and local rules come first.',
};

const beadSpecs = {
  beads: { id: 'pattern.beads', label: 'Beads side by side in the wall', unit: '', decimals: 0 },
  beadWidth: { id: 'pattern.beadWidthMm', label: 'Width of a bead', unit: 'mm', decimals: 3 },
} as const satisfies Record<string, FigureSpec>;

/** How the wall is to be printed, which no pattern needs to be made for. */
function beadFigures({ inputs }: StepContext): readonly Figure[] {
  const wallMm = inputs.pattern.wallMm ?? wallBand(inputs)?.wantedMm;
  if (wallMm === undefined)
    return Object.values(beadSpecs).map((spec) =>
      unknownFigure(spec, 'The wall is not known: complete the stack at Ply schedule, or enter a wall here.'),
    );
  const { printScale } = inputs.mold;
  const { nozzleMm } = inputs.pattern;
  const { count, widthMm, isUsual } = beadsFor(wallMm * printScale, nozzleMm);
  const working = [
    `${mm(wallMm)} × print scale ${formatNumber(printScale, 4)} in ${count}; a nozzle of ${mm(nozzleMm)} lays beads of 0.8 to 1.6 times its diameter (common practice, from memory).`,
    ...(isUsual ? [] : ['No number of beads of this nozzle makes the wall: take another nozzle.']),
  ];
  return [
    figure(beadSpecs.beads, count, ...working),
    figure(
      beadSpecs.beadWidth,
      widthMm,
      'Set this line width and no infill, and the wall comes out exactly.',
    ),
  ];
}

/** While no pattern is made, or the one that was made belongs to other inputs. */
export function patternReport(context: StepContext): StepReport {
  const why = 'Make the pattern, and this is measured on it.';
  return {
    figures: [...Object.values(specs).map((spec) => unknownFigure(spec, why)), ...beadFigures(context)],
    verdicts: [whatIsPrinted(context.pattern?.fileName ?? null)],
    cautions: [],
  };
}

const isOfBeads = (id: string) => Object.values(beadSpecs).some((spec) => spec.id === id);

/** The same with a pattern that is made from the import. */
export function withMadePattern(
  report: StepReport,
  choices: PatternChoices,
  made: PatternSummary,
  layerMm: number,
): StepReport {
  return {
    ...report,
    figures: [
      ...patternFigures(choices, made),
      layerStepFigure(made, layerMm),
      ...report.figures.filter(({ id }) => isOfBeads(id)),
    ],
    verdicts: [...report.verdicts, ...drawnInTooFar(choices, made)],
    cautions: cautionsFor(made),
  };
}

/** Farther than this what is left is no longer the part that was drawn. Our own judgement. */
const mostTakenMm = 3;

function drawnInTooFar(
  { insideRadiusMm, edges }: PatternChoices,
  { takenMaxMm }: PatternSummary,
): readonly Verdict[] {
  if (takenMaxMm <= mostTakenMm) return [];
  const sharp = edges === 'eased' ? ', or keep the outer edges sharp' : '';
  return [
    {
      id: 'pattern.drawnIn',
      word: 'look again',
      reason: `The made show face leaves out up to ${mm(takenMaxMm)} of what is drawn: an inside radius of ${mm(insideRadiusMm)} and the wall are more than the part has room for there.`,
      fix: `Enter a smaller inside radius${sharp}, and make it again.`,
    },
  ];
}

/** Where holes are covered. */
const cautionsFor = ({ holes }: PatternSummary): readonly Caution[] =>
  holes.some(({ plugged }) => plugged) ? [cuttingHoles] : [];

function whatIsPrinted(fileName: string | null): Verdict {
  const id = 'pattern.printed';
  if (fileName === null)
    return {
      id,
      word: 'not yet known',
      reason: 'No model is imported, so there is nothing to make a pattern from.',
      fix: 'Import a model at Part.',
    };
  return {
    id,
    word: 'go',
    reason: `${fileName} is what you print, as it was imported; the other steps judge it.`,
    fix: 'Where they say stop, make the pattern here: its wall is the one that the stack wants, and stone lets go of it.',
  };
}

const mm = (value: number) => `${formatNumber(value, 2)} mm`;

function patternFigures(choices: PatternChoices, made: PatternSummary): readonly Figure[] {
  const walls = `By exact distance from the centers of the show facets to the core face; asked for ${mm(choices.wallMm)}, on a grid of ${mm(choices.gridMm)}.`;
  const { rimShiftMm } = made;
  return [
    figure(specs.wallP1, made.wallMm.p1, walls),
    figure(specs.wallMedian, made.wallMm.median, walls),
    figure(specs.wallP99, made.wallMm.p99, walls),
    figure(
      specs.leastDraft,
      made.leastDraftDeg,
      `asin(n · pull) over all facets of both faces; asked for ${formatNumber(choices.draftDeg, 1)}°.`,
    ),
    figure(
      specs.underDraft,
      made.shareUnderDraft,
      `Area with less than the draft asked for, less 0.1°: ${formatNumber(choices.draftDeg - 0.1, 1)}°.`,
    ),
    figure(specs.added, made.addedShare, 'Area that lies more than 0.1 mm outside of the import.'),
    figure(specs.addedMax, made.addedMaxMm, 'To the nearest place of the import; 25 mm where it is more.'),
    figure(
      specs.taken,
      made.takenMaxMm,
      'From the import, seen along the pull, to the show face: edges that are rounded, draft that is taken, places too narrow for wall and inside radius; 25 mm where it is more.',
    ),
    figure(
      specs.filled,
      made.filledMm3,
      ...made.filled
        .slice(0, 10)
        .map(({ volumeMm3, centerMm }) => `${formatNumber(volumeMm3, 0)} mm³ at ${placeOf(centerMm)}.`),
    ),
    figure(
      specs.holes,
      made.holes.length,
      ...made.holes.map(
        ({ areaMm2, depthMm, centerMm, plugged }) =>
          `${formatNumber(areaMm2, 0)} mm², ${formatNumber(depthMm, 1)} mm deep at ${placeOf(centerMm)}: ${plugged ? 'covered, cut after the cure' : 'kept open'}.`,
      ),
    ),
    figure(
      specs.rimShift,
      rimShiftMm.p99,
      `Distance from the outline to the import at the rim, all but a hundredth of it; half of it ${formatNumber(rimShiftMm.median, 3)} mm, at most ${formatNumber(rimShiftMm.max, 3)} mm. It is more where corners are rounder than drawn, and across openings in the rim.`,
    ),
    figure(
      specs.triangles,
      made.triangles,
      `Leaving out triangles moved the surface by ${formatNumber(made.movedMm, 3)} mm at most.`,
    ),
  ];
}

/** The mean over the show face, standing on the bed so that it is least. */
function layerStepFigure({ layerSteps }: PatternSummary, layerMm: number): Figure {
  const standings = [
    ['on its rim', layerSteps.onRim],
    ['on a long side', layerSteps.onLongSide],
    ['on a short side', layerSteps.onShortSide],
  ] as const;
  const [best, share] = standings.reduce((least, one) => (one[1] < least[1] ? one : least));
  return figure(
    specs.layerStep,
    share * layerMm,
    `Layer height ${mm(layerMm)} × cos(angle of the face to the layers), mean over the show face; a level face has none.`,
    `Least printed standing ${best}: ${standings.map(([how, one]) => `${how} ${formatNumber(one * layerMm, 3)} mm`).join(', ')}. Off the rim, supports touch a face.`,
  );
}

const placeOf = (place: readonly number[]): string => place.map((value) => formatNumber(value, 1)).join(', ');
