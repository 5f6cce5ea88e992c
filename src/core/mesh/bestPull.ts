import { draftDegrees } from './draft';
import { facetGeometry, type FacetGeometry } from './facetGeometry';
import { heldWater } from './heldWater';
import { pullCandidates } from './pullCandidates';
import { lookAlong, pictureSide, prepareLooks } from './pullDepth';
import { distribute, quantile } from './quantiles';
import { rightWayUp } from './rightWayUp';
import { measureReach } from './reach';
import { buildSurfaceIndex, slotsOf, type SurfaceIndex } from './surfaceIndex';
import type { IndexedMesh, PullChoice, Vec3 } from './types';

/** Facets that a direction is confirmed on at most, in blocks spread over the part. */
const mostFacetsConfirmed = 24_000;
const confirmBlock = 128;
/** So many of the best directions by the quick look are confirmed by rays, besides the three axes. */
const confirmedCount = 10;
const axisCount = 3;
/** Trapped shares this close are as good as each other: then draft decides. */
const sameTrappedShare = 0.002;
/** Median drafts this close are as good as each other: then the earlier candidate stays, an axis before a tilt. */
const sameDraftDeg = 2;

/**
 * The straight two-way pull that traps the least area and, among those as good, gives the most draft (area-weighted
 * median over the reachable facets, toward their own mold half). Deterministic.
 *
 * A pull and its opposite trap the same; the one returned points the way in which the negative leaves the outside
 * of the shell: held with that end up, the part holds less water than with the other, to which its hollow opens. When
 * both ends are alike it points toward +z, else +y, else +x.
 * @param onProgress called with the share done, 0 to 1
 */
export function bestPull(
  mesh: IndexedMesh,
  index: SurfaceIndex = buildSurfaceIndex(mesh),
  onProgress: (share: number) => void = () => {},
): PullChoice {
  const geometry = facetGeometry(mesh);
  const candidates = pullCandidates(geometry);
  const facetCount = geometry.areaMm2.length;
  const setup = prepareLooks(mesh, geometry);
  const looks = candidates.map((direction, at) => {
    if (at % 8 === 0) onProgress((0.7 * at) / candidates.length);
    return { direction, at, trappedShare: lookAlong(setup, direction).trappedShare };
  });
  const best = looks
    .slice(axisCount)
    .sort((one, other) => one.trappedShare - other.trappedShare || one.at - other.at)
    .slice(0, confirmedCount)
    .sort((one, other) => one.at - other.at);
  const blocks = blocksOf(facetCount, mostFacetsConfirmed);
  const confirmed = [...looks.slice(0, axisCount), ...best].map(({ direction }, at, all) => {
    onProgress(0.7 + (0.25 * at) / all.length);
    return { direction, ...confirm(index, geometry, direction, blocks) };
  });
  const least = Math.min(...confirmed.map(({ trappedShare }) => trappedShare));
  const asGood = confirmed.filter(({ trappedShare }) => trappedShare <= least + sameTrappedShare);
  let chosen = asGood[0]!;
  for (const candidate of asGood) {
    if (candidate.medianDraftDeg > chosen.medianDraftDeg + sameDraftDeg) chosen = candidate;
  }
  const { top, bottom } = lookAlong(setup, chosen.direction);
  const pull = pointed(
    chosen.direction,
    heldWater(top, pictureSide),
    heldWater(
      bottom.map((depth) => -depth),
      pictureSide,
    ),
  );
  onProgress(0.95);
  const whole = confirm(index, geometry, pull, [[0, facetCount]]);
  onProgress(1);
  return { pull, ...whole };
}

/** What the search for a pull tells the maker. */
export interface BestPull extends PullChoice {
  /**
   * A pull off the rim's normal that traps less, or as little with more draft; null where none does. The halves of the mold
   * then part on a slope, so it is the maker's to choose.
   */
  readonly leaning: (PullChoice & { readonly byDeg: number }) | null;
}

/** Pulls closer than this are the same. */
const leastLeanDeg = 0.5;

/**
 * The pull along the normal of the rim, out of the side that is not hollow; `leaning` tells what another direction would gain.
 * Of a part whose shape does not tell the right way up, the direction that `bestPull` finds.
 */
export function bestPullOffTheRim(
  mesh: IndexedMesh,
  index: SurfaceIndex = buildSurfaceIndex(mesh),
  onProgress: (share: number) => void = () => {},
): BestPull {
  const { pull, toldBy } = rightWayUp(mesh);
  const best = bestPull(mesh, index, onProgress);
  if (toldBy === null) return { ...best, leaning: null };
  const geometry = facetGeometry(mesh);
  const level = { pull, ...confirm(index, geometry, pull, [[0, geometry.areaMm2.length]]) };
  const cosine = Math.abs(best.pull.reduce((sum, one, axis) => sum + one * pull[axis]!, 0));
  const byDeg = (Math.acos(Math.min(1, cosine)) * 180) / Math.PI;
  const gains =
    best.trappedShare < level.trappedShare - sameTrappedShare ||
    (best.trappedShare <= level.trappedShare && best.medianDraftDeg > level.medianDraftDeg + sameDraftDeg);
  return { ...level, leaning: gains && byDeg > leastLeanDeg ? { ...best, byDeg } : null };
}

type Block = readonly [from: number, to: number];

/** The whole range when it is small, else blocks spread evenly over it. */
function blocksOf(facetCount: number, most: number): Block[] {
  if (facetCount <= most) return [[0, facetCount]];
  const count = Math.floor(most / confirmBlock);
  return Array.from({ length: count }, (_, block): Block => {
    const from = Math.floor((block * (facetCount - confirmBlock)) / (count - 1));
    return [from, from + confirmBlock];
  });
}

function confirm(
  index: SurfaceIndex,
  { areaMm2, normal }: FacetGeometry,
  direction: Vec3,
  blocks: readonly Block[],
): Omit<PullChoice, 'pull'> {
  const reach = new Uint8Array(areaMm2.length);
  const steepness = draftDegrees(normal, direction);
  const reached = new Uint8Array(areaMm2.length);
  let whole = 0;
  let trapped = 0;
  for (const [from, to] of blocks) {
    measureReach(index, direction, slotsOf(index, from, to), reach);
    for (let facet = from; facet < to; facet++) {
      const area = areaMm2[facet]!;
      whole += area;
      // A half only reaches what looks its way, so the size of the draft is the draft toward that half.
      steepness[facet] = Math.abs(steepness[facet]!);
      if (reach[facet] === 0) trapped += area;
      else reached[facet] = 1;
    }
  }
  return {
    trappedShare: whole > 0 ? trapped / whole : 0,
    medianDraftDeg: quantile(distribute(steepness, areaMm2, reached), 0.5) ?? 0,
  };
}

/** Hollows this close as a share of the larger one make both ends alike. */
const sameHollowShare = 0.02;

/** Points a direction to the end that holds less water. */
function pointed(direction: Vec3, heldAlong: number, heldAgainst: number): Vec3 {
  const opposite: Vec3 = [0 - direction[0], 0 - direction[1], 0 - direction[2]];
  if (Math.abs(heldAlong - heldAgainst) > sameHollowShare * Math.max(heldAlong, heldAgainst)) {
    return heldAlong < heldAgainst ? direction : opposite;
  }
  const [x, y, z] = direction;
  const leading = z !== 0 ? z : y !== 0 ? y : x;
  return leading > 0 ? direction : opposite;
}
