import { facetBox } from './integrals';
import { findingSearches, isWorse, type Finding, type FindingSearch } from './patchFindings';
import { fromWorst, isAllOver, placeName, type PartFrame } from './place';
import { labelRegions } from './regions';
import {
  facetKind,
  type FacetKind,
  type IndexedMesh,
  type Measurement,
  type Patch,
  type PatchBand,
  type Vec3,
} from './types';

/** Patches smaller than this are put together with others of the same finding at the same place. */
const speckMm2 = 0.5;
/** So many patches are told, the weightiest first, with so many of each finding among them. */
const mostPatches = 50;
const leastOfEachFinding = 5;

/** How much a finding weighs beside the others; a boss or rib is told, not judged. */
const weightOfFinding: Record<Finding, number> = {
  locks: 1,
  thick: 1,
  thin: 1,
  drags: 0.5,
  'tight corner': 0.1,
  'tight edge': 0.1,
  'boss or rib': 0.005,
};

const kindNames = Object.keys(facetKind) as FacetKind[];

/**
 * Connected patches (over shared edges) of facets with the same finding, ranked.
 *
 * `thick` and `thin`: show facets whose wall lies above or below the band (not at a wall's outside corner, where the ray
 * runs along the next wall); `locks`: trapped facets, told by their
 * draft; `drags`: show and core facets with less draft toward their own mold half than wanted; `tight corner`: inside
 * corners under the least radius; `boss or rib`: details, told by their ray wall (show facets over a rim,
 * whose rays run along a wall, belong to no boss and are left out).
 *
 * Rank: area times miss times weight, summed over the facets of the patch. Miss is the distance from the limit as a
 * share of the limit (for draft: of the least draft or 1 degree), at most 1; it is 1 for locks and details. Weight is 1
 * for locks, thick and thin, 0.5 for drags, 0.1 for tight corners (the facets beside a corner say little about its
 * length), 0.005 for bosses and ribs (told, not judged). Patches under 0.5 mm2 with the same finding and place are told
 * as one; when that stays under 0.5 mm2 it is left out. At most 50 are told, among them the first 5 of each finding.
 */
export function findPatches(mesh: IndexedMesh, measurement: Measurement, band: PatchBand): Patch[] {
  const box = facetBox(mesh);
  const frame: PartFrame = { boxMinMm: box.min, boxMaxMm: box.max, pull: measurement.pull };
  const told: RankedPatch[] = [];
  const more: RankedPatch[] = [];
  for (const search of findingSearches(measurement, band)) {
    const ranked = joinSpecks(patchesOf(search, measurement, frame)).sort(byRank);
    told.push(...ranked.slice(0, leastOfEachFinding));
    more.push(...ranked.slice(leastOfEachFinding));
  }
  more.sort(byRank);
  return [...told, ...more.slice(0, mostPatches - told.length)].sort(byRank).map(({ patch }) => patch);
}

const byRank = (one: RankedPatch, other: RankedPatch) => other.rank - one.rank;

interface RankedPatch {
  readonly patch: Patch;
  readonly rank: number;
}

function patchesOf(search: FindingSearch, measurement: Measurement, frame: PartFrame): RankedPatch[] {
  const { facetCount, areaMm2, centerMm, draftDeg, kind, neighbor } = measurement;
  const { finding, valueOf, missOf } = search;
  const isFound = new Uint8Array(facetCount);
  let any = false;
  for (let facet = 0; facet < facetCount; facet++) {
    if (Number.isNaN(valueOf(facet))) continue;
    isFound[facet] = 1;
    any = true;
  }
  if (!any) return [];
  const { label, count } = labelRegions(
    search.bridges ? withNeighbors(isFound, neighbor) : isFound,
    neighbor,
  );
  const area = new Float64Array(count);
  const missTimesArea = new Float64Array(count);
  const facets = new Uint32Array(count);
  const worstFacet = new Int32Array(count).fill(-1);
  const areaOfKind = new Float64Array(count * kindNames.length);
  const centers = new Float64Array(count * 3);
  const lowest = new Float64Array(count * 3).fill(Infinity);
  const highest = new Float64Array(count * 3).fill(-Infinity);
  for (let facet = 0; facet < facetCount; facet++) {
    const region = label[facet]!;
    if (region < 0 || isFound[facet] === 0) continue;
    const value = valueOf(facet);
    area[region] = area[region]! + areaMm2[facet]!;
    missTimesArea[region] = missTimesArea[region]! + areaMm2[facet]! * missOf(value);
    facets[region] = facets[region]! + 1;
    const at = region * kindNames.length + kind[facet]!;
    areaOfKind[at] = areaOfKind[at]! + areaMm2[facet]!;
    for (let axis = 0; axis < 3; axis++) {
      const along = centerMm[3 * facet + axis]!;
      const to = 3 * region + axis;
      centers[to] = centers[to]! + areaMm2[facet]! * along;
      if (along < lowest[to]!) lowest[to] = along;
      if (along > highest[to]!) highest[to] = along;
    }
    const worst = worstFacet[region]!;
    if (worst < 0 || isWorse(finding, value, valueOf(worst))) worstFacet[region] = facet;
  }
  const found: RankedPatch[] = [];
  for (let region = 0; region < count; region++) {
    const worst = worstFacet[region]!;
    const at = 3 * region;
    const centroid = area[region]! > 0 ? scaled(centers, at, 1 / area[region]!) : scaled(centerMm, 3 * worst);
    const kinds = areaOfKind.subarray(region * kindNames.length, (region + 1) * kindNames.length);
    const mostly = kindNames[kinds.indexOf(Math.max(...kinds))]!;
    found.push({
      rank: missTimesArea[region]! * weightOfFinding[finding],
      patch: {
        finding,
        place: isAllOver(frame, scaled(lowest, at), scaled(highest, at))
          ? fromWorst(frame, scaled(centerMm, 3 * worst), mostly)
          : placeName(frame, centroid, mostly),
        areaMm2: area[region]!,
        worst: valueOf(worst),
        worstAtMm: scaled(centerMm, 3 * worst),
        worstFacet: worst,
        draftDeg: draftDeg[worst]!,
        facetCount: facets[region]!,
      },
    });
  }
  return found;
}

/** The facets and what lies next to them. */
function withNeighbors(isFound: Uint8Array, neighbor: Int32Array): Uint8Array {
  const wider = isFound.slice();
  for (let halfEdge = 0; halfEdge < neighbor.length; halfEdge++) {
    const other = neighbor[halfEdge]!;
    if (other >= 0 && isFound[(halfEdge / 3) | 0] === 1) wider[other] = 1;
  }
  return wider;
}

function scaled(numbers: Float64Array | Float32Array, at: number, factor = 1): Vec3 {
  return [numbers[at]! * factor, numbers[at + 1]! * factor, numbers[at + 2]! * factor];
}

/** Puts small patches of one place together and leaves out what stays too small to see. */
function joinSpecks(found: readonly RankedPatch[]): RankedPatch[] {
  const large = found.filter(({ patch }) => patch.areaMm2 >= speckMm2);
  const specks = new Map<string, RankedPatch>();
  for (const speck of found) {
    if (speck.patch.areaMm2 >= speckMm2) continue;
    const known = specks.get(speck.patch.place);
    specks.set(speck.patch.place, known ? joined(known, speck) : speck);
  }
  return [...large, ...[...specks.values()].filter(({ patch }) => patch.areaMm2 >= speckMm2)];
}

function joined(one: RankedPatch, other: RankedPatch): RankedPatch {
  const [worse, better] = isWorse(one.patch.finding, other.patch.worst, one.patch.worst)
    ? [other, one]
    : [one, other];
  return {
    rank: one.rank + other.rank,
    patch: {
      ...worse.patch,
      areaMm2: worse.patch.areaMm2 + better.patch.areaMm2,
      facetCount: worse.patch.facetCount + better.patch.facetCount,
    },
  };
}
