/** The figures of the Ply cutting step. */
import type { CutPlies, CutPly } from '../../core/drape/cutPlies';
import { dartsTogether, togetherMm } from '../../core/drape/dartsTogether';
import { outlineAreaMm2 } from '../../core/drape/smoothOutline';
import type { Figure } from '../../core/figure';
import { prepregArealMassGsm } from '../../core/laminate/plyThickness';
import type { FabricNest } from '../../core/templates/nest';
import { formatNumber } from '../../core/units/formatNumber';
import { usualRollWidthMm } from '../inputs/material';
import type { ProjectInputs } from '../inputs/project';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import { resolveStack } from '../shared/stack';
import { cuttingChoicesOf } from './choicesOf';

export const cuttingSpecs = {
  covered: { id: 'cutting.coveredShare', label: 'Share of the faces under cloth', unit: '', decimals: 3 },
  shear: { id: 'cutting.largestShearDeg', label: 'Largest shear', unit: '°', decimals: 1 },
  over: { id: 'cutting.shareOverLimit', label: 'Share over the warning angle', unit: '', decimals: 3 },
  thickness: {
    id: 'cutting.thickestSheared',
    label: 'Thickest sheared cloth over flat cloth',
    unit: '',
    decimals: 2,
  },
  darts: {
    id: 'cutting.dartsTogetherShare',
    label: 'Darts over those of the ply below',
    unit: '',
    decimals: 2,
  },
  pieces: { id: 'cutting.pieces', label: 'Pieces', unit: '', decimals: 0 },
  area: { id: 'cutting.clothAreaCm2', label: 'Area of the pieces', unit: 'cm²', decimals: 0 },
  piecesMass: { id: 'cutting.piecesMassG', label: 'Mass of the pieces', unit: 'g', decimals: 1 },
  roll: { id: 'cutting.rollLengthMm', label: 'Length of roll', unit: 'mm', decimals: 0 },
  waste: { id: 'cutting.wasteShare', label: 'Share of the roll that is left over', unit: '', decimals: 2 },
  mass: { id: 'cutting.clothMassG', label: 'Mass of the cloth taken', unit: 'g', decimals: 1 },
} as const satisfies Record<string, FigureSpec>;

const share = (value: number) => `${formatNumber(100 * value, 1)} %`;

/** @param nests in words: why there is none */
export function cuttingFigures(
  inputs: ProjectInputs,
  cut: CutPlies,
  nests: readonly FabricNest[] | string,
): readonly Figure[] {
  const { plies, pieces } = cut;
  const sum = (of: (one: CutPly) => number) => plies.reduce((total, one) => total + of(one), 0);
  const covered = sum(({ coveredMm2 }) => coveredMm2);
  const each = (say: (one: CutPly) => string) => plies.map((one) => `Ply ${one.ply}: ${say(one)}`);
  const worst = Math.max(...plies.map(({ largestShearDeg }) => largestShearDeg));
  const areaMm2 = pieces.reduce((total, { outlineMm }) => total + outlineAreaMm2(outlineMm), 0);
  return [
    figure(
      cuttingSpecs.covered,
      covered / sum(({ wantedMm2 }) => wantedMm2),
      'Area of the cells of each net, its square times cos(shear), over the area of its face.',
      ...each((one) => share(one.coveredMm2 / one.wantedMm2)),
    ),
    figure(
      cuttingSpecs.shear,
      worst,
      'How far the threads of a cell are from square, by a pin-jointed net; where the cloth would lock, it is cut.',
      ...limitsSaid(inputs),
    ),
    figure(
      cuttingSpecs.over,
      covered > 0 ? sum((one) => one.shareOverWarning * one.coveredMm2) / covered : 0,
      ...each((one) => `${share(one.shareOverWarning)} over ${formatNumber(one.warningDeg, 0)}°`),
    ),
    figure(
      cuttingSpecs.thickness,
      Math.max(...plies.map(({ largestThickness }) => largestThickness)),
      `1 / cos(${formatNumber(worst, 1)}°): sheared threads lie closer, so there is that much more cloth; in a gap that does not give way the fiber fraction rises as much.`,
      ...each((one) => `on average ${formatNumber(one.meanThickness, 3)}`),
    ),
    dartsFigure(cut),
    figure(
      cuttingSpecs.pieces,
      pieces.length,
      ...pieces.map(
        ({ name, outlineMm }) => `${name}: ${formatNumber(outlineAreaMm2(outlineMm) / 100, 1)} cm²`,
      ),
    ),
    figure(cuttingSpecs.area, areaMm2 / 100, 'Of the outlines of all pieces, flat.'),
    piecesMassFigure(inputs, cut),
    ...(typeof nests === 'string'
      ? [cuttingSpecs.roll, cuttingSpecs.waste, cuttingSpecs.mass].map((spec) => unknownFigure(spec, nests))
      : nestFigures(inputs, nests)),
  ];
}

/** Each ply on the one before it. */
export const dartPairs = ({ plies }: CutPlies) =>
  plies
    .slice(1)
    .map((upper, at) => ({ upper, under: plies[at]!, ...dartsTogether(plies[at]!.dartsMm, upper.dartsMm) }));

function dartsFigure(cut: CutPlies): Figure {
  const pairs = dartPairs(cut);
  return figure(
    cuttingSpecs.darts,
    Math.max(0, ...pairs.map((pair) => pair.share)),
    `Largest share of a ply’s dart edges within ${togetherMm} mm of one of the ply below. Where darts begin, in a corner, they always meet.`,
    ...pairs.map(
      ({ upper, under, share: own, leastMm }) =>
        `Ply ${upper.ply} on ply ${under.ply}: ${leastMm === null ? 'no darts' : `${share(own)}, nearest ${formatNumber(leastMm, 1)} mm`}`,
    ),
  );
}

function limitsSaid(inputs: ProjectInputs): readonly string[] {
  return cuttingChoicesOf(inputs).plies.map(
    ({ ply, limits: { warningDeg, lockingDeg, of, status } }) =>
      `Ply ${ply}: wrinkles from ${formatNumber(warningDeg, 0)}°, locks at ${formatNumber(lockingDeg, 0)}° (${of}, ${status}).`,
  );
}

const costOf = ({ cost }: FabricNest) => (cost === null ? '' : `, cost ${formatNumber(cost, 2)}`);

function nestFigures({ plies }: ProjectInputs, nests: readonly FabricNest[]): readonly Figure[] {
  const sum = (of: (nest: FabricNest) => number) => nests.reduce((total, one) => total + of(one), 0);
  const each = (say: (nest: FabricNest) => string) => nests.map((one) => `${one.roll.fabric}: ${say(one)}`);
  const isUsual = plies.materials.some(({ rollWidthMm }) => rollWidthMm === null);
  const usual = `A roll whose card tells no width is taken as ${formatNumber(usualRollWidthMm, 0)} mm wide, common practice.`;
  return [
    figure(
      cuttingSpecs.roll,
      sum(({ rollLengthMm }) => rollLengthMm),
      ...each(
        (one) =>
          `${formatNumber(one.rollLengthMm, 0)} mm of a roll ${formatNumber(one.roll.widthMm ?? 0, 0)} mm wide${costOf(one)}`,
      ),
      ...(isUsual ? [usual] : []),
    ),
    figure(
      cuttingSpecs.waste,
      1 - sum(({ piecesMm2 }) => piecesMm2) / sum(({ takenMm2 }) => takenMm2),
      'One less the area of the pieces over that of the length of roll and of remnants cut into.',
      ...each(({ wasteShare }) => share(wasteShare)),
    ),
    figure(
      cuttingSpecs.mass,
      sum(({ clothMassG }) => clothMassG),
      'Of all that is taken, with what is left over between the pieces.',
      ...each(
        ({ takenMm2, roll, clothMassG }) =>
          `${formatNumber(takenMm2 / 100, 0)} cm² × ${formatNumber(roll.arealWeightGsm, 0)} g/m² of prepreg = ${formatNumber(clothMassG, 1)} g`,
      ),
    ),
  ];
}

function piecesMassFigure({ plies }: ProjectInputs, { pieces }: CutPlies): Figure {
  const stack = resolveStack(plies);
  if (!stack.known) return unknownFigure(cuttingSpecs.piecesMass, stack.reason);
  const said: string[] = [];
  let massG = 0;
  stack.plies.forEach(({ card }, index) => {
    const own = pieces.filter(({ ply }) => ply === index + 1);
    const areaMm2 = own.reduce((sum, { outlineMm }) => sum + outlineAreaMm2(outlineMm), 0);
    const gsm = prepregArealMassGsm(card);
    massG += (areaMm2 * gsm) / 1e6;
    said.push(
      `Ply ${index + 1}: ${formatNumber(areaMm2 / 100, 1)} cm² × ${formatNumber(gsm, 0)} g/m² of prepreg = ${formatNumber((areaMm2 * gsm) / 1e6, 1)} g`,
    );
  });
  return figure(cuttingSpecs.piecesMass, massG, ...said);
}
