/** The checklist from the roll of prepreg to the cut plies. */
import { formatNumber } from '../core/units/formatNumber';
import type { StepContext } from '../steps/context';
import { resolveStack } from '../steps/plies/stack';
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

export function prepregSection({ inputs }: StepContext, reports: Reports): SectionDraft {
  const used = inputs.plies.materials.filter(({ id }) =>
    inputs.plies.stack.some(({ materialId }) => materialId === id),
  );
  return {
    id: 'prepreg',
    title: 'Take out the prepreg',
    warnings: [],
    cautions: cautionsOf(reports, 'plies.resinSkin'),
    lines: [
      ...used.map((card) =>
        line(
          `prepreg.${card.id}.roll`,
          `${card.name}: label read, within shelf life and out-time of the supplier.`,
        ),
      ),
      line(
        'prepreg.thaw',
        'Thawed in the closed bag until no water forms on it; time out of the freezer written down.',
      ),
      ...used.map((card) =>
        measuring(
          `prepreg.${card.id}.laid`,
          `${card.name}: three plies laid on each other, caliper reading divided by three${card.laidThicknessMm === null ? '' : `; the card says ${formatNumber(card.laidThicknessMm, 3)} mm`}.`,
          'one ply as laid',
          'mm',
          ['plies.laidPlyMm'],
        ),
      ),
    ],
  };
}

export function layupSection({ inputs }: StepContext, reports: Reports, figures: Figures): SectionDraft {
  const stack = resolveStack(inputs.plies);
  const lines: LineDraft[] = stack.known
    ? [
        line(
          'layup.cut',
          `${value(figures, 'plies.plyCount')} plies cut, about ${value(figures, 'plies.prepregAreaCm2')} in all; each one marked with its number and fiber direction.`,
          ['plies.plyCount', 'plies.prepregAreaCm2'],
        ),
        ...stack.plies.map(({ ply, card }, index) =>
          line(
            `layup.ply.${index + 1}`,
            `Ply ${index + 1}${index === 0 ? ' (show face)' : index === stack.plies.length - 1 ? ' (core face)' : ''}: ${card.name}, ${formatNumber(ply.angleDeg, 0)}°.`,
          ),
        ),
        measuring(
          'layup.stack',
          `Offcuts laid as a stack of all plies; expected ${value(figures, 'plies.laidThicknessMm')} as laid, ${value(figures, 'plies.curedThicknessMm')} cured.`,
          'stack as laid',
          'mm',
          ['plies.laidThicknessMm', 'plies.curedThicknessMm'],
        ),
      ]
    : [line('layup.cut', stack.fix)];
  return {
    id: 'layup',
    title: 'Cut the plies',
    warnings: warningsOf(reports, 'plies'),
    cautions: cautionsOf(reports, 'plies.blades', 'plies.carbonDust'),
    lines,
  };
}

export function laterSection(reports: Reports): SectionDraft {
  return {
    id: 'later',
    title: 'Before the work goes on',
    warnings: [],
    cautions: cautionsOf(reports, 'checklist.laterStages'),
    lines: [line('later.read', 'Safety data sheets of resin, stone and release agent read and at hand.')],
  };
}
