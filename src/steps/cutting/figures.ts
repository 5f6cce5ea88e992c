/** The figures of the Ply cutting step. */
import type { CutPlies, CutPly } from '../../core/drape/cutPlies';
import { outlineAreaMm2 } from '../../core/drape/smoothOutline';
import type { Figure } from '../../core/figure';
import { prepregArealMassGsm } from '../../core/laminate/plyThickness';
import { formatNumber } from '../../core/units/formatNumber';
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
  pieces: { id: 'cutting.pieces', label: 'Pieces', unit: '', decimals: 0 },
  area: { id: 'cutting.clothAreaCm2', label: 'Area of the pieces', unit: 'cm²', decimals: 0 },
  roll: { id: 'cutting.rollLengthMm', label: 'Length of roll', unit: 'mm', decimals: 0 },
  waste: { id: 'cutting.wasteShare', label: 'Share of the roll that is left over', unit: '', decimals: 2 },
  mass: { id: 'cutting.clothMassG', label: 'Mass of the pieces', unit: 'g', decimals: 1 },
} as const satisfies Record<string, FigureSpec>;

const notNested = 'The pieces are not laid out on the roll yet.';

const share = (value: number) => `${formatNumber(100 * value, 1)} %`;

export function cuttingFigures(inputs: ProjectInputs, cut: CutPlies): readonly Figure[] {
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
    figure(
      cuttingSpecs.pieces,
      pieces.length,
      ...pieces.map(
        ({ name, outlineMm }) => `${name}: ${formatNumber(outlineAreaMm2(outlineMm) / 100, 1)} cm²`,
      ),
    ),
    figure(cuttingSpecs.area, areaMm2 / 100, 'Of the outlines of all pieces, flat.'),
    unknownFigure(cuttingSpecs.roll, notNested),
    unknownFigure(cuttingSpecs.waste, notNested),
    massFigure(inputs, cut),
  ];
}

function limitsSaid(inputs: ProjectInputs): readonly string[] {
  return cuttingChoicesOf(inputs).plies.map(
    ({ ply, limits: { warningDeg, lockingDeg, of, status } }) =>
      `Ply ${ply}: wrinkles from ${formatNumber(warningDeg, 0)}°, locks at ${formatNumber(lockingDeg, 0)}° (${of}, ${status}).`,
  );
}

function massFigure({ plies }: ProjectInputs, { pieces }: CutPlies): Figure {
  const stack = resolveStack(plies);
  if (!stack.known) return unknownFigure(cuttingSpecs.mass, stack.reason);
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
  return figure(cuttingSpecs.mass, massG, ...said);
}
