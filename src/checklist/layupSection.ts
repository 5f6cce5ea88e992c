/** The checklist lines about the cut plies: the ply table, the order of laying, patches and mirrored pairs. */
import { formatNumber } from '../core/units/formatNumber';
import type { StepContext } from '../steps/shared/context';
import type { Material } from '../steps/inputs/material';
import type { Ply, PlyPatch } from '../steps/inputs/ply';
import { laidAngleDeg } from '../steps/inputs/ply';
import { resolveStack, type KnownStack } from '../steps/shared/stack';
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

export function layupSection({ inputs }: StepContext, reports: Reports, figures: Figures): SectionDraft {
  const stack = resolveStack(inputs.plies);
  return {
    id: 'layup',
    title: 'Cut the plies',
    warnings: warningsOf(reports, 'plies'),
    cautions: cautionsOf(reports, 'plies.blades', 'plies.carbonDust'),
    ...(stack.known ? { table: plyTable(stack) } : {}),
    lines: stack.known ? layupLines(stack, figures) : [line('layup.cut', stack.fix)],
  };
}

const degrees = (angle: number) => `${formatNumber(angle, 0)}°`;

function plyTable({ plies }: KnownStack): ChecklistFactTable {
  return {
    caption: 'Plies from the show face inward',
    columns: ['Ply', 'Material', 'Cut at', 'Lies at', 'Way up', 'Pieces'],
    rows: plies.map(({ ply, card }, index) => [
      String(index + 1),
      card.name,
      degrees(ply.angleDeg),
      ply.mirroredPair && ply.angleDeg !== 0
        ? `${degrees(laidAngleDeg(ply))} and ${degrees(laidAngleDeg(ply, 'second'))}`
        : degrees(laidAngleDeg(ply)),
      ply.faceDown ? 'face down' : 'face up',
      ply.mirroredPair ? 'mirrored pair' : 'one',
    ]),
  };
}

function layupLines(stack: KnownStack, figures: Figures): readonly LineDraft[] {
  const { plies, patches } = stack;
  const paired = plies.flatMap(({ ply }, index) => (ply.mirroredPair ? [index + 1] : []));
  return [
    line(
      'layup.cut',
      `${value(figures, 'plies.plyCount')} plies cut, blanks of about ${value(figures, 'plies.prepregBuyCm2')} in all${patches.length === 0 ? '' : ', patches included'}; each one marked with its number and fiber direction.`,
      ['plies.plyCount', 'plies.prepregBuyCm2'],
    ),
    ...(paired.length === 0
      ? []
      : [
          line(
            'layup.bookMatched',
            `Mirrored pair for ply ${paired.join(', ')}: two pieces cut with one pattern from the same side of the roll, one of them turned over; outline, fiber direction and line of the weave are then mirror images. Laid side by side and looked at before the backing comes off.`,
          ),
        ]),
    ...plies.map(({ ply, card }, index) =>
      line(`layup.ply.${index + 1}`, plyText(ply, card, index, plies.length)),
    ),
    ...patches.map(({ patch, card }, index) =>
      line(`layup.patch.${index + 1}`, patchText(patch, card, index)),
    ),
    measuring(
      'layup.stack',
      `Offcuts laid as a stack of all plies; expected ${value(figures, 'plies.laidThicknessMm')} as laid; fiber and resin in it fill ${value(figures, 'plies.curedThicknessMm')}.`,
      'stack as laid',
      'mm',
      ['plies.laidThicknessMm', 'plies.curedThicknessMm'],
    ),
  ];
}

function plyText(ply: Ply, card: Material, index: number, count: number): string {
  const end = index === 0 ? ' (show face)' : index === count - 1 ? ' (core face)' : '';
  const pair = ply.mirroredPair ? ', mirrored pair' : '';
  return `Ply ${index + 1}${end}: ${card.name}, ${degrees(ply.angleDeg)}${faceDownWords(ply)}${pair}.`;
}

function patchText(patch: PlyPatch, card: Material, index: number): string {
  const place = patch.place.trim() === '' ? '' : ` at ${patch.place.trim()}`;
  const on = patch.afterPly === 0 ? 'before ply 1' : `on ply ${patch.afterPly}`;
  return `${patch.kind.charAt(0).toUpperCase()}${patch.kind.slice(1)} ${index + 1}${place}: ${card.name}, ${degrees(patch.angleDeg)}${faceDownWords(patch)}, ${formatNumber(patch.areaCm2, 1)} cm², laid ${on}.`;
}

function faceDownWords(ply: Pick<Ply, 'angleDeg' | 'faceDown'>): string {
  return ply.faceDown ? `, face down: lies at ${degrees(laidAngleDeg(ply))}` : '';
}
