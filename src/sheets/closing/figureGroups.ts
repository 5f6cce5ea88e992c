/** The figures of this step in the order in which a maker asks for them. */
import type { Figure } from '../../core/figure';

const groups = {
  'Where the mold stands': ['restsOn', 'standOffMm', 'widestStandOffMm', 'tiltDeg'],
  'Where the clamp load goes': [
    'clampForceN',
    'laminateForceN',
    'landForceN',
    'clampPressureKpa',
    'contactPressureKpa',
    'contactFiberFraction',
    'followUpNPerMm',
  ],
  'What becomes of the laminate': [
    'voidPercent',
    'worstVoidPercent',
    'badVoidShare',
    'resinAtGelKPa',
    'resinNeedKPa',
    'cavityCm3',
    'laminateCm3',
    'airCm3',
    'looseShare',
    'lightShare',
    'packedShare',
    'chokedShare',
  ],
  'What would help': [
    'wantedWallMm',
    'wallChangeMm',
    'wantedPlies',
    'carryingWallPlies',
    'wantedClampForceN',
    'landChangeMm',
  ],
  'Steep walls and friction': ['longestSlideMm', 'wipedShare', 'frictionStandOffMm', 'frictionLooseShare'],
} as const;

/** Drawn as a bar of shares. */
const drawnElsewhere = 'closing.sharesAtShut';

/** Whatever is in no group above: resin, and what is added to the report later. */
const rest = 'Resin and the limits';

export type GroupTitle = keyof typeof groups | typeof rest;

export function figureGroups(figures: readonly Figure[]): ReadonlyMap<GroupTitle, readonly Figure[]> {
  const byId = new Map(figures.map((figure) => [figure.id, figure]));
  byId.delete(drawnElsewhere);
  const sorted = new Map<GroupTitle, readonly Figure[]>();
  for (const [title, names] of Object.entries(groups)) {
    const own = names.flatMap((name) => byId.get(`closing.${name}`) ?? []);
    for (const { id } of own) byId.delete(id);
    sorted.set(title as GroupTitle, own);
  }
  sorted.set(rest, [...byId.values()]);
  return sorted;
}
