/** The one registry of sources that figures and docstrings cite by key. */
export interface Source {
  /** Short form for a figure's working, e.g. on paper. */
  readonly short: string;
  readonly full: string;
}

export const sources = {
  fiberVolumeNotes: {
    short: 'lecture notes on fiber volume fraction',
    full: 'Lecture notes on fiber volume fraction and laminate thickness: Vf from mass fractions and densities; n plies held in a gap.',
  },
  plyVolumeSum: {
    short: 'sum of fiber and resin volume',
    full: 'Cured ply thickness as the sum of fiber and resin volume per area (no bleed, no voids); exact arithmetic.',
  },
  divergenceTheorem: {
    short: 'divergence theorem over the facets',
    full: 'Volume, centroid and area summed over facets (divergence theorem); exact for the facets of a closed surface.',
  },
  rayWall: {
    short: 'ray along the inward normal',
    full: 'Distance from the facet center along the inward normal to the first surface met; geometry of the mesh.',
  },
  ballWall: {
    short: 'largest touching ball',
    full: 'Diameter of the largest ball inside the material that touches the facet center; geometry of the mesh.',
  },
  draftHandbook: {
    short: 'composites trade handbook: draft',
    full: 'Composites trade handbook page on mold draft: 1 to 3 degrees, aim for 3 or more, never below 1.',
  },
} as const satisfies Record<string, Source>;

export type SourceKey = keyof typeof sources;
