/** A first look at strength: the load at which the first ply fails, where cards have strengths. An estimate. */
import type { Figure } from '../../core/figure';
import { firstPlyFailure } from '../../core/laminate/firstPlyFailure';
import type { PlateLoad } from '../../core/laminate/plyStresses';
import { formatNumber } from '../../core/units/formatNumber';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import { processOf } from '../shared/process';
import { plyStrength } from './plyConstants';
import { stackLaminate } from './stackLaminate';

const loads: readonly { readonly spec: FigureSpec; readonly load: PlateLoad }[] = [
  {
    spec: {
      id: 'plies.firstFailureXNPerMm',
      label: 'First ply fails at a pull along the part, estimate',
      unit: 'N/mm',
      decimals: 0,
      source: 'tsaiWu1971',
    },
    load: { forceNPerMm: [1, 0, 0], momentN: [0, 0, 0] },
  },
  {
    spec: {
      id: 'plies.firstFailureYNPerMm',
      label: 'First ply fails at a pull across the part, estimate',
      unit: 'N/mm',
      decimals: 0,
      source: 'tsaiWu1971',
    },
    load: { forceNPerMm: [0, 1, 0], momentN: [0, 0, 0] },
  },
  {
    spec: {
      id: 'plies.firstFailureBendingN',
      label: 'First ply fails at a bending moment per width, estimate',
      unit: 'N·mm/mm',
      decimals: 1,
      source: 'tsaiWu1971',
    },
    load: { forceNPerMm: [0, 0, 0], momentN: [1, 0, 0] },
  },
];

export function strengthFigures(context: StepContext): readonly Figure[] {
  const answer = stackLaminate(context);
  if (!answer.known) return loads.map(({ spec }) => unknownFigure(spec, answer.reason));
  const strengths = answer.stack.plies.map(({ card }) => plyStrength(card));
  const { inUse, stressFree, stressFreeFarC } = processOf(context.inputs);
  const changeK = inUse.valueC - stressFree.valueC;
  return loads.map(({ spec, load }) => {
    const failure = (fromC: number) =>
      firstPlyFailure(answer.laminate, strengths, load, inUse.valueC - fromC);
    const found = failure(stressFree.valueC);
    if (found === null)
      return unknownFigure(
        spec,
        'No card of the stack has all five strengths, so nothing is said about strength.',
      );
    if (found.reserveFactor === null)
      return unknownFigure(spec, 'This load does not stress the plies that have strengths.');
    const notJudged = found.layersNotJudged.map((layer) => layer + 1).join(', ');
    const ends = [found.reserveFactor, failure(stressFreeFarC)?.reserveFactor ?? found.reserveFactor];
    const shown = figure(
      answer.typical ? { ...spec, status: 'from memory' } : spec,
      found.reserveFactor,
      `Tsai-Wu reaches 1 in ply ${found.layer + 1} at ${formatNumber(found.reserveFactor, spec.decimals)} ${spec.unit}, stresses from cooling by ${formatNumber(-changeK, 0)} K included (free of stress at ${formatNumber(stressFree.valueC, 0)} °C, ${stressFree.how}).`,
      `An estimate: stresses in the plane only, no edges, holes, buckling or delamination${notJudged === '' ? '' : `; not judged for want of strengths: ply ${notJudged}`}. Never the proof that a part holds.`,
    );
    return ends[0] === ends[1] ? shown : { ...shown, band: [Math.min(...ends), Math.max(...ends)] };
  });
}
