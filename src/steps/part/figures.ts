/** Figures of the Part step: what the file holds and how large the part is. */
import type { Figure } from '../../core/figure';
import { formatNumber } from '../../core/units/formatNumber';
import { mmPerUnit } from '../../core/units/length';
import type { StepContext } from '../shared/context';
import { figure, unknownFigure, type FigureSpec } from '../kit/figures';
import { availablePart } from '../shared/missing';
import { patternVolume, type PatternVolume } from '../shared/patternVolume';
import { takenUnit } from './unit';

/** Volume and surface go without decimals: facets tell the shape that was drawn no closer. */
const sizeSpecs = {
  triangles: { id: 'part.triangles', label: 'Triangles in the file', unit: '', decimals: 0 },
  bodies: { id: 'part.bodies', label: 'Separate bodies in the file', unit: '', decimals: 0 },
  box: { id: 'part.boxMm', label: 'Size of the part, x × y × z', unit: 'mm', decimals: 2 },
  volume: {
    id: 'part.volumeMm3',
    label: 'Volume of material',
    unit: 'mm³',
    decimals: 0,
    source: 'divergenceTheorem',
  },
  area: {
    id: 'part.areaMm2',
    label: 'Surface, all sides',
    unit: 'mm²',
    decimals: 0,
    source: 'divergenceTheorem',
  },
  centroid: {
    id: 'part.centroidMm',
    label: 'Center of gravity, x × y × z',
    unit: 'mm',
    decimals: 2,
    source: 'divergenceTheorem',
  },
  packError: {
    id: 'part.packErrorMm',
    label: 'Largest shift of a corner by saving',
    unit: 'mm',
    decimals: 5,
  },
} as const satisfies Record<string, FigureSpec>;

const healthSpecs = [
  ['openEdges', 'part.openEdges', 'Open edges', 'edges that belong to one facet only'],
  [
    'crowdedEdges',
    'part.crowdedEdges',
    'Edges with more than two facets',
    'edges that three or more facets share',
  ],
  ['flippedFacets', 'part.flippedFacets', 'Flipped facets', 'facets wound against the rest of their body'],
  [
    'degenerateFacets',
    'part.degenerateFacets',
    'Facets without area',
    'facets with two corners in one place; left out, they hold no surface',
  ],
  ['duplicateFacets', 'part.duplicateFacets', 'Duplicate facets', 'facets that stand in the file twice'],
  [
    'selfTouchingFacets',
    'part.selfTouchingFacets',
    'Facets that cut through others',
    'facets that cut or touch another one without sharing a corner',
  ],
] as const;

export function partFigures(context: StepContext): readonly Figure[] {
  return [...sizeFigures(context), ...healthFigures(context), ...entryFigures(context)];
}

function sizeFigures(context: StepContext): readonly Figure[] {
  const part = availablePart(context);
  if (!part.known) return Object.values(sizeSpecs).map((spec) => unknownFigure(spec, part.reason));
  const { pattern, measured } = part;
  const { summary, health } = measured;
  const unit = takenUnit(context);
  const size = summary.boxMaxMm.map((high, axis) => high - (summary.boxMinMm[axis] ?? 0));
  const bodyNote =
    context.inputs.part.body === 0
      ? 'all bodies of the file together'
      : `body ${context.inputs.part.body} of the file`;
  return [
    figure(sizeSpecs.triangles, pattern.triangles, 'Counted in the file, before anything was left out.'),
    figure(sizeSpecs.bodies, health.bodies.length, 'Groups of facets that hang together over shared edges.'),
    figure(
      sizeSpecs.box,
      size,
      `Box around ${bodyNote}, in the file's axes.`,
      unit === null
        ? ''
        : `1 file unit = ${formatNumber(mmPerUnit[unit.unit], 1)} mm × scale ${formatNumber(context.inputs.part.scale, 4)}`,
    ),
    volumeFigure(patternVolume(context), summary.solid),
    figure(
      sizeSpecs.area,
      summary.areaMm2,
      `Σ |(b − a) × (c − a)| / 2 over ${formatNumber(summary.facetCount, 0)} facets, inside and outside.`,
    ),
    summary.centroidMm === null
      ? unknownFigure(sizeSpecs.centroid, 'Nothing was measured.')
      : figure(
          sizeSpecs.centroid,
          summary.centroidMm,
          summary.volumeMm3 === null || summary.volumeBandMm3 !== null
            ? 'Of the surface, because it is not closed.'
            : 'Of the volume.',
        ),
    unit === null
      ? unknownFigure(sizeSpecs.packError, 'The unit is not known yet.')
      : figure(
          sizeSpecs.packError,
          pattern.packErrorFileUnits * unit.mmPerFileUnit,
          'The model is saved on a fine grid; everything on these pages is measured on what is saved.',
          `${pattern.packErrorFileUnits.toExponential(1)} file units × ${formatNumber(unit.mmPerFileUnit, 4)} mm`,
        ),
  ].map((one) => ({ ...one, working: one.working.filter((line) => line !== '') }));
}

function volumeFigure(volume: PatternVolume | null, isSolid: boolean): Figure {
  if (volume === null)
    return unknownFigure(
      sizeSpecs.volume,
      'The holes in the surface could hold most of what it encloses, so it has no volume. Close the model and import it again.',
    );
  const shown = figure(
    sizeSpecs.volume,
    volume.mm3,
    ...volume.working,
    ...(isSolid ? ['Of the solid as drawn; a hollow print has less.'] : []),
  );
  return volume.bandMm3 === null ? shown : { ...shown, band: volume.bandMm3 };
}

function healthFigures(context: StepContext): readonly Figure[] {
  const part = availablePart(context);
  return healthSpecs.map(([key, id, label, what]) => {
    const spec: FigureSpec = { id, label, unit: '', decimals: 0 };
    if (!part.known) return unknownFigure(spec, part.reason);
    const inMesh = part.measured.health[key];
    // Facets without area were left out on import; the saved mesh cannot show them any more.
    const leftOut = key === 'degenerateFacets' ? part.pattern.degenerateFacets : 0;
    const value = inMesh === null ? null : inMesh + leftOut;
    return value === null
      ? unknownFigure(spec, 'Not looked for yet; it takes a while on a large model.')
      : figure(spec, value, `Count over the whole file: ${what}.`);
  });
}

function entryFigures({ inputs }: StepContext): readonly Figure[] {
  const { scale, nominalWall, printLines } = inputs.part;
  const { lineWidthMm } = inputs.plies;
  const wallSpec = {
    id: 'part.nominalWallMm',
    label: 'Wall that the print lays',
    unit: 'mm',
    decimals: 2,
    status: 'your entry',
  } as const;
  return [
    figure(
      { id: 'part.scale', label: 'Scale', unit: '', decimals: 4, status: 'your entry' },
      scale,
      'Factor on all three axes, after the unit.',
    ),
    nominalWall === 'print'
      ? figure(
          wallSpec,
          printLines * lineWidthMm,
          `${printLines} beads × ${formatNumber(lineWidthMm, 2)} mm = ${formatNumber(printLines * lineWidthMm, 2)} mm`,
        )
      : unknownFigure(wallSpec, 'Not used: the wall is taken from the model.'),
  ];
}
