import { facetBox } from './integrals';
import { findingSearches, isWorse, type Finding, type FindingSearch } from './patchFindings';
import { placeName, type PartFrame } from './place';
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
/** So many patches are told, the weightiest first. */
const mostPatches = 50;

/** How much a finding weighs beside the others; a boss or rib is told, not judged. */
const weightOfFinding: Record<Finding, number> = {
  locks: 1,
  thick: 1,
  thin: 1,
  drags: 0.5,
  'tight corner': 0.5,
  'boss or rib': 0.05,
};

const kindNames = Object.keys(facetKind) as FacetKind[];

/**
 * Connected patches (over shared edges) of facets with the same finding, ranked.
 *
 * `thick` and `thin`: show facets whose wall lies above or below the band; `locks`: trapped facets, told by their
 * draft; `drags`: show and core facets with less draft toward their own mold half than wanted; `tight corner`: inside
 * corners under the least radius; `boss or rib`: details, told by their ray wall (show facets over the end of a wall
 * belong to no boss and are left out).
 *
 * Rank: area times miss times weight, summed over the facets of the patch. Miss is the distance from the limit as a share of the
 * limit (for draft: of the least draft or 1 degree), at most 1; it is 1 for locks and details. Weight is 1 for locks,
 * thick and thin, 0.5 for drags and tight corners, 0.05 for bosses and ribs. Patches under 0.5 mm2 with the same
 * finding and place are told as one; when that stays under 0.5 mm2 it is left out. At most 50 are told.
 */
export function findPatches(mesh: IndexedMesh, measurement: Measurement, band: PatchBand): Patch[] {
  const box = facetBox(mesh);
  const frame: PartFrame = { boxMinMm: box.min, boxMaxMm: box.max, pull: measurement.pull };
  const found: RankedPatch[] = [];
  for (const search of findingSearches(measurement, band)) {
    found.push(...joinSpecks(patchesOf(search, measurement, frame)));
  }
  return found
    .sort((one, other) => other.rank - one.rank)
    .slice(0, mostPatches)
    .map(({ patch }) => patch);
}

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
  const { label, count } = labelRegions(isFound, neighbor);
  const area = new Float64Array(count);
  const missTimesArea = new Float64Array(count);
  const facets = new Uint32Array(count);
  const worstFacet = new Int32Array(count).fill(-1);
  const areaOfKind = new Float64Array(count * kindNames.length);
  for (let facet = 0; facet < facetCount; facet++) {
    const region = label[facet]!;
    if (region < 0) continue;
    const value = valueOf(facet);
    area[region] = area[region]! + areaMm2[facet]!;
    missTimesArea[region] = missTimesArea[region]! + areaMm2[facet]! * missOf(value);
    facets[region] = facets[region]! + 1;
    const at = region * kindNames.length + kind[facet]!;
    areaOfKind[at] = areaOfKind[at]! + areaMm2[facet]!;
    const worst = worstFacet[region]!;
    if (worst < 0 || isWorse(finding, value, valueOf(worst))) worstFacet[region] = facet;
  }
  const found: RankedPatch[] = [];
  for (let region = 0; region < count; region++) {
    const worst = worstFacet[region]!;
    const worstAtMm: Vec3 = [centerMm[3 * worst]!, centerMm[3 * worst + 1]!, centerMm[3 * worst + 2]!];
    const kinds = areaOfKind.subarray(region * kindNames.length, (region + 1) * kindNames.length);
    const mostly = kindNames[kinds.indexOf(Math.max(...kinds))]!;
    found.push({
      rank: missTimesArea[region]! * weightOfFinding[finding],
      patch: {
        finding,
        place: placeName(frame, worstAtMm, mostly),
        areaMm2: area[region]!,
        worst: valueOf(worst),
        worstAtMm,
        worstFacet: worst,
        draftDeg: draftDeg[worst]!,
        facetCount: facets[region]!,
      },
    });
  }
  return found;
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
