/** What cooling from the cure does to the shape: curvature of a free strip, bow over the part, corners that close. */
import type { Figure } from '../../core/figure';
import { springInDeg } from '../../core/laminate/springIn';
import { laminateExpansionPerK } from '../../core/laminate/thermalResponse';
import { bowMm, warpOf, type Warp } from '../../core/laminate/warp';
import type { Vector3 } from '../../core/numeric/matrix3';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import { availablePart } from '../shared/missing';
import { processOf } from '../shared/process';
import { stackLaminate, type KnownLaminate, type LaminateState } from './stackLaminate';

const specs = {
  curvature: {
    id: 'plies.curvaturePerM',
    label: 'Curvature in use, strongest direction',
    unit: '1/m',
    decimals: 3,
    source: 'kaw2006',
  },
  bow: { id: 'plies.bowMm', label: 'Bow over the part’s length', unit: 'mm', decimals: 2, source: 'kaw2006' },
  springIn: {
    id: 'plies.springInDeg',
    label: 'A corner of 90° closes by, estimate',
    unit: '°',
    decimals: 2,
    status: 'from memory',
    source: 'springInForm',
  },
} as const satisfies Record<string, FigureSpec>;

/** A strip's strongest curvature, 1/m; of two equal and opposite ones (a saddle) the positive. */
export function strongestPerM(curvaturePerM: Vector3): number {
  const { strongestPerM: strongest, otherPerM } = warpOf(curvaturePerM);
  return Math.abs(strongest + otherPerM) <= 1e-9 * Math.abs(strongest) ? Math.abs(strongest) : strongest;
}

/** The longest side of the part's box, mm; null without a part. */
export function partLengthMm(context: StepContext): number | null {
  const part = availablePart(context);
  if (!part.known) return null;
  const { boxMinMm, boxMaxMm } = part.measured.summary;
  const longest = Math.max(...boxMaxMm.map((high, axis) => high - (boxMinMm[axis] ?? 0)));
  return longest > 0 ? longest : null;
}

const strengthOfBend = ({ curvaturePerM }: LaminateState) => Math.abs(strongestPerM(curvaturePerM));

/** The half of the part that curves more. */
export function worseHalf(answer: KnownLaminate): LaminateState {
  const { secondHalf } = answer;
  return secondHalf !== null && strengthOfBend(secondHalf) > strengthOfBend(answer) ? secondHalf : answer;
}

export function warpFigures(context: StepContext): readonly Figure[] {
  const { stressFree, inUse } = processOf(context.inputs);
  const answer = stackLaminate(context);
  if (!answer.known) return Object.values(specs).map((spec) => unknownFigure(spec, answer.reason));
  const status = answer.warpTypical ? 'from memory' : 'computed';
  const worse = worseHalf(answer);
  const curvaturePerM = strongestPerM(worse.curvaturePerM);
  const band = worse.warps ? curvatureBand(answer, worse) : null;
  const curvature: Figure = {
    ...figure(
      { ...specs.curvature, status },
      curvaturePerM,
      `κ x ${shown(worse.curvaturePerM[0])}, κ y ${shown(worse.curvaturePerM[1])}, κ xy ${shown(worse.curvaturePerM[2])} 1/m, free of stress at ${celsius(stressFree.valueC)} (${stressFree.how}), in use at ${celsius(inUse.valueC)} (${inUse.how})${coatWords(context)}`,
      warpWords(warpOf(worse.curvaturePerM)),
      'A flat strip that lies free, after lamination theory; positive hollows the show face. Cure shrinkage, moisture and resin-rich faces are left out.',
    ),
    ...(band === null ? {} : { band }),
  };
  return [curvature, bowFigure(context, curvature, status), springInFigure(context, answer)];
}

/** Over the constants from memory, and over how far the laminate gives way while it is hotter than where it gelled. */
function curvatureBand(answer: KnownLaminate, worse: LaminateState): readonly [number, number] | null {
  const values = [worse, ...answer.ends].flatMap((state) => [
    strongestPerM(state.curvaturePerM),
    strongestPerM(state.farCurvaturePerM),
  ]);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return low === high ? null : [low, high];
}

const shown = (value: number) => formatNumber(value, 3);
const celsius = (value: number) => `${formatNumber(value, 0)} °C`;
const ppm = (perK: number) => formatNumber(perK * 1e6, 1);

function coatWords({ inputs }: StepContext): string {
  const { coatFace, coatThicknessMm } = inputs.plies;
  const { coatSet } = processOf(inputs);
  return coatFace === 'none'
    ? ''
    : `, coat of ${formatNumber(coatThicknessMm, 2)} mm set at ${celsius(coatSet.valueC)} (${coatSet.how}; its constants from memory)`;
}

function warpWords({ shape, radiusMm, directionDeg }: Warp): string {
  if (radiusMm === null) return 'Nothing bends it: no thermal moment is left when the plate has stretched.';
  const radius = `Radius ${formatNumber(radiusMm / 1000, 2)} m, a ${shape}`;
  const direction =
    directionDeg === null ? 'alike in all directions' : `most along ${formatNumber(directionDeg, 0)}°`;
  return shape === 'saddle'
    ? `${radius}, ${direction}; a real thin plate settles as a cylinder and may snap from one to the other.`
    : `${radius}, ${direction}.`;
}

function bowFigure(context: StepContext, curvature: Figure, status: 'from memory' | 'computed'): Figure {
  const spec = { ...specs.bow, status };
  const lengthMm = partLengthMm(context);
  if (lengthMm === null) {
    const part = availablePart(context);
    return unknownFigure(spec, part.known ? 'The part has no length.' : part.reason);
  }
  const bow = bowMm(Number(curvature.value), lengthMm);
  const one = figure(
    spec,
    bow,
    `|κ| L² / 8 with L ${formatNumber(lengthMm, 1)} mm, the longest side of the part: ${formatNumber(bow, 2)} mm`,
    'Of a flat strip of that length; a shell with sides holds itself much straighter and shows it as a pull at the seam.',
  );
  if (curvature.band === undefined) return one;
  const ends = curvature.band.map((end) => bowMm(end, lengthMm));
  const crossesZero = curvature.band[0] < 0 && curvature.band[1] > 0;
  return { ...one, band: [crossesZero ? 0 : Math.min(...ends), Math.max(...ends)] };
}

function springInFigure({ inputs }: StepContext, answer: KnownLaminate): Figure {
  const { cureShrinkagePercent } = inputs.plies;
  const { inUse, stressFree, stressFreeFarC } = processOf(inputs);
  const [expansionX] = laminateExpansionPerK(answer.laminate);
  const closes = (throughPerK: number, shrinkagePercent: number, fromC = stressFree.valueC) =>
    springInDeg({
      arcAngleDeg: 90,
      expansionInPlanePerK: expansionX,
      expansionThroughPerK: throughPerK,
      temperatureChangeK: inUse.valueC - fromC,
      cureStrainInPlane: 0,
      cureStrainThrough: -shrinkagePercent / 100,
    });
  const value = closes(answer.expansionThroughPerK, cureShrinkagePercent);
  const ends = answer.expansionThroughBand.flatMap((through) =>
    [0, 2 * cureShrinkagePercent].flatMap((shrinkage) => [
      closes(through, shrinkage),
      closes(through, shrinkage, stressFreeFarC),
    ]),
  );
  return {
    ...figure(
      specs.springIn,
      value,
      `90° × [(${ppm(expansionX)} − ${ppm(answer.expansionThroughPerK)}) × 10⁻⁶ × ${formatNumber(inUse.valueC - stressFree.valueC, 0)} K + cure shrinkage ${formatNumber(cureShrinkagePercent, 2)} %] = ${formatNumber(value, 2)}°`,
      `From ${celsius(stressFree.valueC)} (${stressFree.how})${stressFreeFarC > stressFree.valueC ? `, in the band from ${celsius(stressFreeFarC)} too` : ''}; the cure shrinkage entered, nothing to twice it in the band. The mold’s own movement and friction are left out.`,
    ),
    band: [Math.min(...ends), Math.max(...ends)],
  };
}
