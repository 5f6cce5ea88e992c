/** Figures of the Walls & draft step. */
import type { Figure } from '../../core/figure';
import { draftToleranceDeg, dragsBelowDeg } from '../../core/mesh/draft';
import type { FacetKind, WallQuantiles } from '../../core/mesh/types';
import type { PartSummary } from '../../core/part/partSummary';
import { areaShares } from '../../core/numeric/areaShares';
import { formatNumber } from '../../core/units/formatNumber';
import { leastOuterEdgeRadiusMm, wallBand } from '../shared/band';
import type { StepContext } from '../shared/context';
import { figure, percent, unknownFigure, type FigureSpec } from '../kit/figures';
import { availablePart, type Missing } from '../shared/missing';
import { resolveStack } from '../shared/stack';
import { wallFit } from '../shared/wallFit';

const mm = (value: number) => `${formatNumber(value, 2)} mm`;
const mm2 = (value: number) => `${formatNumber(value, 1)} mm²`;

export function wallsFigures(context: StepContext): readonly Figure[] {
  const part = availablePart(context);
  const summary = part.known ? part.measured.summary : part;
  return [
    ...bandFigures(context),
    ...shareFigures(context),
    ...quantileFigures(summary),
    ...areaFigures(summary),
    dragsFigure(context, summary),
    ...cornerFigures(summary, context),
  ];
}

/** A summary, or why there is none. */
type SummaryOrMissing = PartSummary | Missing;
const isMissing = (summary: SummaryOrMissing): summary is Missing => 'reason' in summary;

const limitSpec = (id: string, label: string): FigureSpec => ({
  id,
  label,
  unit: 'mm',
  decimals: 2,
  status: 'common practice',
  source: 'wallPractice',
});

function bandFigures({ inputs }: StepContext): readonly Figure[] {
  const low = limitSpec('walls.bandLowMm', 'Thinnest wall that is right');
  const high = limitSpec('walls.bandHighMm', 'Thickest wall that is right');
  const stack = resolveStack(inputs.plies);
  const band = wallBand(inputs);
  if (!stack.known || band === null) {
    const why = stack.known ? '' : stack.reason;
    return [unknownFigure(low, why), unknownFigure(high, why)];
  }
  const filled = `Your plies fill ${mm(band.voidFreeMm)}, of which ${formatNumber(band.fiberMm, 3)} mm are fiber.`;
  return [
    figure(
      low,
      band.goLowMm,
      `fiber ${formatNumber(band.fiberMm, 3)} mm / Vf ${formatNumber(band.fiberMm / band.goLowMm, 2)}; up to be looked at from ${mm(band.lookLowMm)} (Vf ${formatNumber(band.fiberMm / band.lookLowMm, 2)})`,
      filled,
    ),
    figure(
      high,
      band.goHighMm,
      `${formatNumber(band.voidFreeMm, 3)} mm / (1 − ${formatNumber(inputs.walls.goVoidPercent, 1)} % voids); to be looked at up to ${mm(band.lookHighMm)} (${formatNumber(inputs.walls.lookVoidPercent, 1)} %)`,
      filled,
    ),
  ];
}

function shareFigures(context: StepContext): readonly Figure[] {
  const specs = (
    [
      ['walls.inBandPercent', 'Show face with a wall that is right', 'within'],
      ['walls.overPercent', 'Show face with a wall too thick', 'over'],
      ['walls.underPercent', 'Show face with a wall too thin', 'under'],
    ] as const
  ).map(([id, label, share]) => ({ spec: { id, label, unit: '%', decimals: 1 }, share }));
  const fit = wallFit(context);
  if (!fit.known) return specs.map(({ spec }) => unknownFigure(spec, fit.reason));
  const { shares, band, wall } = fit;
  return specs.map(({ spec, share }) =>
    figure(
      { ...spec, status: wall.nominal ? 'your entry' : 'computed' },
      percent(shares[share]),
      `Right from ${mm(band.goLowMm)} to ${mm(band.goHighMm)}; wall: ${wall.how}.`,
    ),
  );
}

function quantileFigures(summary: SummaryOrMissing): readonly Figure[] {
  const rows = [
    [
      'walls.rayMedianMm',
      'Wall along the normal, median',
      'showRayWall',
      'median',
      'half of the area is thinner',
    ],
    [
      'walls.rayP5Mm',
      'Wall along the normal, thinnest 5 %',
      'showRayWall',
      'p5',
      '5 % of the area is thinner',
    ],
    [
      'walls.rayP95Mm',
      'Wall along the normal, thickest 5 %',
      'showRayWall',
      'p95',
      '5 % of the area is thicker',
    ],
    [
      'walls.ballMedianMm',
      'Wall by largest sphere, median',
      'showBallWall',
      'median',
      'half of the area is thinner',
    ],
  ] as const;
  return rows.map(([id, label, from, quantile, meaning]) => {
    const source = from === 'showRayWall' ? 'rayWall' : 'ballWall';
    const spec: FigureSpec = { id, label, unit: 'mm', decimals: 3, source };
    if (isMissing(summary)) return unknownFigure(spec, summary.reason);
    const quantiles: WallQuantiles = summary[from];
    const value = quantiles[quantile];
    if (value === null || summary.solid)
      return unknownFigure(
        spec,
        summary.solid ? 'The model is drawn solid.' : 'No show face with a core face behind it was found.',
      );
    return figure(
      spec,
      value,
      `Over ${mm2(summary.showWall.cumulativeAreaMm2.at(-1) ?? 0)} of show face, weighted by area: ${meaning}; outside corners left out, no wall stands square behind them.`,
      from === 'showRayWall'
        ? 'From each facet center along the inward normal to the first surface that faces back.'
        : 'Largest sphere inside the material that touches the facet center.',
    );
  });
}

function areaFigures(summary: SummaryOrMissing): readonly Figure[] {
  const rows: readonly (readonly [string, string, FacetKind, string])[] = [
    ['walls.showAreaMm2', 'Show face', 'show', 'Outside meets the negative, and a core face stands behind.'],
    [
      'walls.coreAreaMm2',
      'Core face',
      'core',
      'Outside meets the positive, and the show face stands behind.',
    ],
    ['walls.rimAreaMm2', 'Rims and lands', 'rim', 'Left out of the verdict: lands between the two faces.'],
    ['walls.detailAreaMm2', 'Bosses and ribs', 'detail', 'Left out: what stands behind is not the wall.'],
    ['walls.trappedAreaMm2', 'Undercut area', 'trapped', 'Neither mold half reaches it along the pull.'],
    ['walls.unmeasuredAreaMm2', 'Not measured', 'unmeasured', 'No surface behind: the model is open there.'],
  ];
  const areas = rows.map(([id, label, kind, meaning]) => {
    // Faces are told apart to some facets' areas; a locked place is small and counts.
    const spec = { id, label, unit: 'mm²', decimals: kind === 'trapped' ? 1 : 0 };
    return isMissing(summary)
      ? unknownFigure(spec, summary.reason)
      : figure(spec, summary.kindAreaMm2[kind], meaning);
  });
  const share = {
    id: 'walls.trappedPercent',
    label: 'Undercut share of the surface',
    unit: '%',
    decimals: 2,
  };
  if (isMissing(summary)) return [...areas, unknownFigure(share, summary.reason)];
  if (!(summary.areaMm2 > 0)) return [...areas, unknownFigure(share, 'The body has no surface.')];
  const trapped = summary.kindAreaMm2.trapped;
  return [
    ...areas,
    figure(share, (100 * trapped) / summary.areaMm2, `${mm2(trapped)} of ${mm2(summary.areaMm2)}`),
  ];
}

/** Area share of show and core face below the least draft by more than the tolerance, 0 to 1; null when neither was found. */
export function dragsShare(summary: PartSummary, leastDraftDeg: number): number | null {
  const { draftDeg, cumulativeAreaMm2 } = summary.releaseDraft;
  const below = dragsBelowDeg(leastDraftDeg);
  return areaShares(draftDeg, cumulativeAreaMm2, below, Number.POSITIVE_INFINITY)?.under ?? null;
}

function dragsFigure({ inputs }: StepContext, summary: SummaryOrMissing): Figure {
  const { leastDraftDeg } = inputs.walls;
  const spec: FigureSpec = {
    id: 'walls.dragsPercent',
    label: 'Show and core face that drags',
    unit: '%',
    decimals: 1,
    source: 'draftHandbook',
  };
  if (isMissing(summary)) return unknownFigure(spec, summary.reason);
  return figure(
    spec,
    percent(dragsShare(summary, leastDraftDeg)),
    `Draft asin(n · pull) toward the facet's own mold half, under ${formatNumber(leastDraftDeg, 1)}° by more than ${draftToleranceDeg}°; rims, bosses and undercuts not counted.`,
  );
}

function cornerFigures(summary: SummaryOrMissing, { inputs }: StepContext): readonly Figure[] {
  const inside = 'From the fold between neighboring facets; 0 is a sharp corner.';
  const outside = `Between facets of the show face, the edges to rims and openings left out; plies laid in the ${inputs.walls.laidIn} want ${mm(leastOuterEdgeRadiusMm(inputs))} (common practice).`;
  const rows = [
    ['walls.insideCornerMm', 'Tightest inside corner, radius', 'insideCornerRadiusMm', 'min', inside],
    ['walls.insideCornerP5Mm', 'Inside corners, tightest 5 %, radius', 'insideCornerRadiusMm', 'p5', inside],
    ['walls.outerEdgeMm', 'Tightest outer edge, radius', 'outerEdgeRadiusMm', 'min', outside],
    ['walls.outerEdgeP5Mm', 'Outer edges, tightest 5 %, radius', 'outerEdgeRadiusMm', 'p5', outside],
  ] as const;
  return rows.map(([id, label, from, key, how]) => {
    const spec = { id, label, unit: 'mm', decimals: 2 };
    if (isMissing(summary)) return unknownFigure(spec, summary.reason);
    const value = summary[from][key];
    return value === null ? unknownFigure(spec, 'None was found.') : figure(spec, value, how);
  });
}
