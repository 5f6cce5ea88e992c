/** What each finding on the mesh means for the numbers, in plain words. */
import type { MeshHealth } from '../../core/mesh/types';

export interface HealthFinding {
  readonly id: keyof MeshHealth['show'];
  readonly label: string;
  readonly count: (health: MeshHealth) => number | null;
  /** What it does to the measurements when there are any. */
  readonly meaning: string;
}

export const healthFindings: readonly HealthFinding[] = [
  {
    id: 'openEdges',
    label: 'Open edges',
    count: (health) => health.openEdges,
    meaning: 'The surface has a hole: there is no true volume, and walls behind the hole are not measured.',
  },
  {
    id: 'crowdedEdges',
    label: 'Edges with more than two facets',
    count: (health) => health.crowdedEdges,
    meaning: 'Surfaces meet in a fold that no solid has: inside and outside are unclear beside it.',
  },
  {
    id: 'flippedFacets',
    label: 'Flipped facets',
    count: (health) => health.flippedFacets,
    meaning: 'Wound inside out: turned right for measuring unless you say otherwise under "Given".',
  },
  {
    id: 'degenerateFacets',
    label: 'Facets without area',
    count: (health) => health.degenerateFacets,
    meaning: 'Left out; they carry no area, so no figure changes.',
  },
  {
    id: 'duplicateFacets',
    label: 'Facets that stand twice',
    count: (health) => health.duplicateFacets,
    meaning: 'Their area counts twice, and a wall measured between two of them is not a wall.',
  },
  {
    id: 'selfTouching',
    label: 'Facets that cut through others',
    count: (health) => health.selfTouchingFacets,
    meaning: 'Bodies overlap there: volume counts the overlap twice, walls end at the inner surface.',
  },
];
