/** Figures of the Walls & draft step. */
import type { Figure } from '../../core/figure';
import { draftToleranceDeg, dragsBelowDeg } from '../../core/mesh/draft';
import type { FacetKind, PartSummary, WallQuantiles } from '../../core/mesh/types';
import { areaShares } from '../../core/numeric/areaShares';
import { formatNumber } from '../../core/units/formatNumber';
import { wallBand } from '../band';
import type { StepContext } from '../context';
import { figure, percent, unknownFigure, type FigureSpec } from '../figures';
import { availablePart, type Missing } from '../missing';
import { resolveStack } from '../plies/stack';
import { wallInUse } from '../wallInUse';

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
    ...cornerFigures(summary),
  ];
}

/** A summary, or why there is none. */
type SummaryOrMissing = PartSummary | Missing;
const isMissing = (summary: SummaryOrMissing): summary is Missing => 'reason' in summary;

function bandFigures({ inputs }: StepContext): readonly Figure[] {
  const low = { id: 'walls.bandLowMm', label: 'Thinnest wall accepted', unit: 'mm', decimals: 2 } as const;
  const high = { id: 'walls.bandHighMm', label: 'Thickest wall accepted', unit: 'mm', decimals: 2 } as const;
  const stack = resolveStack(inputs.plies);
  const band = wallBand(inputs);
  if (!stack.known || band === null) {
    const why = stack.known ? '' : stack.reason;
    return [unknownFigure(low, why), unknownFigure(high, why)];
  }
  const { underMm, overMm } = inputs.walls;
  return [
    figure(low, band.lowMm, `cured stack ${mm(band.curedMm)} − tolerance under ${mm(underMm)}`),
    figure(high, band.highMm, `stack as laid ${mm(band.laidMm)} + tolerance over ${mm(overMm)}`),
  ];
}

function shareFigures(context: StepContext): readonly Figure[] {
  const specs = (
    [
      ['walls.inBandPercent', 'Show face with a wall in the band', 'within'],
      ['walls.overPercent', 'Show face with a wall over the band', 'over'],
      ['walls.underPercent', 'Show face with a wall under the band', 'under'],
    ] as const
  ).map(([id, label, share]) => ({ spec: { id, label, unit: '%', decimals: 1 }, share }));
  const band = wallBand(context.inputs);
  const wall = wallInUse(context);
  const stack = resolveStack(context.inputs.plies);
  if (band === null || !wall.known) {
    const why = wall.known ? (stack.known ? '' : stack.reason) : wall.reason;
    return specs.map(({ spec }) => unknownFigure(spec, why));
  }
  const shares = wall.shares(band.lowMm, band.highMm);
  return specs.map(({ spec, share }) =>
    figure(
      { ...spec, status: wall.nominal ? 'your entry' : 'computed' },
      percent(shares[share]),
      `Band ${mm(band.lowMm)} to ${mm(band.highMm)}; wall: ${wall.how}.`,
    ),
  );
}

function quantileFigures(summary: SummaryOrMissing): readonly Figure[] {
  const rows = [
    ['walls.rayMedianMm', 'Wall by ray, median', 'showRayWall', 'median', 'half of the area is thinner'],
    ['walls.rayP5Mm', 'Wall by ray, thinnest 5 %', 'showRayWall', 'p5', '5 % of the area is thinner'],
    ['walls.rayP95Mm', 'Wall by ray, thickest 5 %', 'showRayWall', 'p95', '5 % of the area is thicker'],
    ['walls.ballMedianMm', 'Wall by ball, median', 'showBallWall', 'median', 'half of the area is thinner'],
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
        : 'Largest ball inside the material that touches the facet center.',
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
    ['walls.trappedAreaMm2', 'Locked area', 'trapped', 'Neither mold half reaches it along the pull.'],
    ['walls.unmeasuredAreaMm2', 'Not measured', 'unmeasured', 'No surface behind: the model is open there.'],
  ];
  const areas = rows.map(([id, label, kind, meaning]) => {
    // Faces are told apart to some facets' areas; a locked place is small and counts.
    const spec = { id, label, unit: 'mm²', decimals: kind === 'trapped' ? 1 : 0 };
    return isMissing(summary)
      ? unknownFigure(spec, summary.reason)
      : figure(spec, summary.kindAreaMm2[kind], meaning);
  });
  const share = { id: 'walls.trappedPercent', label: 'Locked share of the surface', unit: '%', decimals: 2 };
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
    `Draft asin(n · pull) toward the facet's own mold half, under ${formatNumber(leastDraftDeg, 1)}° by more than ${draftToleranceDeg}°; rims, bosses and locked places not counted.`,
  );
}

function cornerFigures(summary: SummaryOrMissing): readonly Figure[] {
  const rows = [
    ['walls.insideCornerMm', 'Tightest inside corner, radius', 'min'],
    ['walls.insideCornerP5Mm', 'Inside corners, tightest 5 %, radius', 'p5'],
  ] as const;
  return rows.map(([id, label, key]) => {
    const spec = { id, label, unit: 'mm', decimals: 2 };
    if (isMissing(summary)) return unknownFigure(spec, summary.reason);
    const value = summary.insideCornerRadiusMm[key];
    return value === null
      ? unknownFigure(spec, 'No inside corner was found.')
      : figure(spec, value, 'From the fold between neighboring facets; 0 is a sharp corner.');
  });
}
