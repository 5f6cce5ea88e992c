import { halfEdgeLength } from './edgeTurns';
import { pending, wall } from './kindWork';
import { labelRegions } from './regions';
import { side, type FacetFindings } from './skinSides';
import { facetKind, type IndexedMesh } from './types';

/** Lands end at folds sharper than this. */
const landTurnRad = (50 * Math.PI) / 180;
/** A land runs along the skins it joins: it touches each with at least this share of its outline. */
const leastTouchShare = 0.1;

/** Marks the lands between the skins: smooth regions of what is left over, by what they touch. */
export function markRims(
  mesh: IndexedMesh,
  findings: FacetFindings,
  sides: Int8Array,
  kind: Uint8Array,
): void {
  const { neighbor, turnRad, rayFacet, geometry } = findings;
  const { areaMm2 } = geometry;
  const left = new Uint8Array(kind.length);
  for (let facet = 0; facet < kind.length; facet++) if (kind[facet] === pending) left[facet] = 1;
  const { label, count } = labelRegions(left, neighbor, turnRad, landTurnRad);
  const area = new Float64Array(count);
  const ownSkinArea = new Float64Array(count);
  const outlineMm = new Float64Array(count);
  const showMm = new Float64Array(count);
  const coreMm = new Float64Array(count);
  const sideArea = new Float64Array(count);
  const touching: { region: number; other: number; lengthMm: number }[] = [];
  for (let facet = 0; facet < kind.length; facet++) {
    const region = label[facet]!;
    if (region < 0) continue;
    area[region] = area[region]! + areaMm2[facet]!;
    sideArea[region] = sideArea[region]! + areaMm2[facet]! * sides[facet]!;
    if (sides[rayFacet[facet]!] === sides[facet]) {
      ownSkinArea[region] = ownSkinArea[region]! + areaMm2[facet]!;
    }
    for (let halfEdge = 3 * facet; halfEdge < 3 * facet + 3; halfEdge++) {
      const other = neighbor[halfEdge]!;
      if (other >= 0 && label[other] === region) continue;
      const lengthMm = halfEdgeLength(mesh, halfEdge);
      outlineMm[region] = outlineMm[region]! + lengthMm;
      if (other < 0) continue;
      if (kind[other] === wall || kind[other] === facetKind.trapped) {
        if (sides[other] === side.show) showMm[region] = showMm[region]! + lengthMm;
        else coreMm[region] = coreMm[region]! + lengthMm;
      } else if (label[other]! >= 0 && label[other]! !== region) {
        touching.push({ region, other: label[other]!, lengthMm });
      }
    }
  }
  // What is left over beside one skin only (a small outside round, a rib) continues that skin for the land next to it.
  const continues = Float64Array.from(sideArea, (sum, region) => {
    if (sum > 0 && showMm[region]! > 0 && coreMm[region] === 0) return side.show;
    return sum < 0 && coreMm[region]! > 0 && showMm[region] === 0 ? side.core : side.none;
  });
  for (const { region, other, lengthMm } of touching) {
    if (continues[other] === side.show) showMm[region] = showMm[region]! + lengthMm;
    else if (continues[other] === side.core) coreMm[region] = coreMm[region]! + lengthMm;
  }
  const isRim = new Uint8Array(count);
  const joins = (oneMm: number, otherMm: number, region: number) =>
    Math.min(oneMm, otherMm) > leastTouchShare * outlineMm[region]!;
  for (let region = 0; region < count; region++) {
    if (joins(showMm[region]!, coreMm[region]!, region)) isRim[region] = 1;
  }
  // Stepped and rounded lands: each round carries the rim one smooth region further.
  for (let round = 0; round < 3; round++) {
    const rimMm = new Float64Array(count);
    for (const { region, other, lengthMm } of touching) {
      if (isRim[other] === 1) rimMm[region] = rimMm[region]! + lengthMm;
    }
    for (let region = 0; region < count; region++) {
      if (isRim[region] === 1 || ownSkinArea[region]! > area[region]! / 2) continue;
      const skinMm = Math.max(showMm[region]!, coreMm[region]!);
      if (rimMm[region]! > 0 && joins(rimMm[region]!, skinMm, region)) isRim[region] = 1;
    }
  }
  for (let facet = 0; facet < kind.length; facet++) {
    if (label[facet]! >= 0 && isRim[label[facet]!] === 1) kind[facet] = facetKind.rim;
  }
}
